// Package paths has the address of every page, so that no other place writes
// one out.
package paths

import (
	"strconv"

	"strokeledger/analysis/golf"
)

// Addresses without a parameter.
const (
	Front   = "/"
	SignIn  = "/sign-in"
	SignOut = "/sign-out"

	SignInAgain = "/?again"      // the front page, for somebody whose session has ended
	FormAgain   = "/?again=form" // the same for somebody who sent a form whose fields only the browser keeps
	Join        = "/join"
	Rounds      = "/rounds"
	NewRound    = "/rounds/new"
	Courses     = "/courses"
	NewCourse   = "/courses/new"
	Accounts    = "/accounts"
	EndInvite   = "/accounts/invitations/remove"
	LeaveOffice = "/accounts/leave"
	Reset       = "/reset"
	Account     = "/account"
	Password    = "/account/password"
	Devices     = "/account/devices"
	Delete      = "/account/delete"
	Invite      = "/account/invite"
	Removed     = "/removed"
	Welcome     = "/welcome"
	Export      = "/export/shots.csv"
	Import      = "/import"

	Everything    = "/export/everything.json"
	ImportConfirm = "/import/confirm"
	Healthy       = "/healthz"
	Help          = "/help"
	OtherDevices  = "/account/devices/others"
	Feed          = "/account/feed"
	Digest        = "/account/mail"
	Offline       = "/offline"
	Worker        = "/worker.js"
	Manifest      = "/manifest.webmanifest"
	Ready         = "/readyz"
)

// Guide is a longer page of help.
func Guide(name string) string { return Help + "/" + name }

// Round is the statement of a round.
func Round(id golf.RoundID) string { return Rounds + "/" + number(int64(id)) }

// Hole is where a hole of a round is entered.
func Hole(id golf.RoundID, hole int) string { return HolesOf(id).At(hole) }

// Shots is where details of the shots of a hole are entered.
func Shots(id golf.RoundID, hole int) string { return Hole(id, hole) + "/shots" }

// Card is a round on a sheet of paper that folds to a card.
func Card(id golf.RoundID) string { return Round(id) + "/card" }

// Conditions is where the conditions of a round and the score of its nines are saved.
func Conditions(id golf.RoundID) string { return Round(id) + "/conditions" }

// Details is where the day, course, target and card of a round are corrected.
func Details(id golf.RoundID) string { return Round(id) + "/details" }

// RemoveRound removes a round.
func RemoveRound(id golf.RoundID) string { return Round(id) + "/remove" }

// Course is a course and, for the player who added it, where it is edited.
func Course(id golf.CourseID) string { return Courses + "/" + number(int64(id)) }

// OtherTees is where a course is added with pars and indexes of another.
func OtherTees(id golf.CourseID) string { return NewCourse + "?from=" + number(int64(id)) }

// RoundOn begins a round on a course.
func RoundOn(id golf.CourseID) string { return NewRound + "?course=" + number(int64(id)) }

// Strip is the strip of a hole on the page of its course.
func Strip(id golf.CourseID, hole int) string {
	return Course(id) + "?hole=" + strconv.Itoa(hole) + "#strip"
}

// UseCard gives rounds on a course its card.
func UseCard(id golf.CourseID) string { return Course(id) + "/use-card" }

// RemoveCourse removes a course.
func RemoveCourse(id golf.CourseID) string { return Course(id) + "/remove" }

// MergeCourse moves the rounds of a course to another and removes it.
func MergeCourse(id golf.CourseID) string { return Course(id) + "/merge" }

// Shot is a shot's place on the statement of its round.
func Shot(hole, shot int) string {
	return "#h" + strconv.Itoa(hole) + "-" + strconv.Itoa(shot)
}

// ResetOf is where the steward makes a link for a player's new password.
func ResetOf(id golf.PlayerID) string { return Accounts + "/" + number(int64(id)) + "/reset" }

// EndResetOf is where the steward withdraws such a link.
func EndResetOf(id golf.PlayerID) string { return ResetOf(id) + "/remove" }

// StewardOf is where the steward makes another account a steward.
func StewardOf(id golf.PlayerID) string { return Accounts + "/" + number(int64(id)) + "/steward" }

// ResetLink is where a player with the token sets a new password.
func ResetLink(id golf.PlayerID, token string) string {
	return Reset + "?player=" + number(int64(id)) + "&token=" + token
}

// Invited is where somebody with an invitation’s token makes an account.
func Invited(token string) string { return Join + "?token=" + token }

func number(n int64) string { return strconv.FormatInt(n, 10) }
