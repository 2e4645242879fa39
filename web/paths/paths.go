// Package paths has the address of every page, so that no other place writes
// one out.
package paths

import (
	"strconv"

	"strokeledger/analysis/golf"
)

// Addresses without a parameter.
const (
	Front     = "/"
	SignIn    = "/sign-in"
	SignOut   = "/sign-out"
	Join      = "/join"
	Rounds    = "/rounds"
	NewRound  = "/rounds/new"
	Courses   = "/courses"
	NewCourse = "/courses/new"
	Accounts  = "/accounts"
	Reset     = "/reset"
	Account   = "/account"
	Password  = "/account/password"
	Devices   = "/account/devices"
	Delete    = "/account/delete"
	Invite    = "/account/invite"
	Removed   = "/removed"
	Welcome   = "/welcome"
	Export    = "/export/shots.csv"
	Import    = "/import"

	Everything    = "/export/everything.json"
	ImportConfirm = "/import/confirm"
	Healthy       = "/healthz"
	Ready         = "/readyz"
)

// Round is the statement of a round.
func Round(id golf.RoundID) string { return Rounds + "/" + number(int64(id)) }

// Hole is where a hole of a round is entered.
func Hole(id golf.RoundID, hole int) string { return Round(id) + "/holes/" + strconv.Itoa(hole) }

// Echo is where a hole is understood without being saved.
func Echo(id golf.RoundID, hole int) string { return Hole(id, hole) + "/echo" }

// Shots is where more is said of the shots of a hole.
func Shots(id golf.RoundID, hole int) string { return Hole(id, hole) + "/shots" }

// Note is where the note of a round is saved.
func Note(id golf.RoundID) string { return Round(id) + "/note" }

// Details is where day, course, target and card of a round are put right.
func Details(id golf.RoundID) string { return Round(id) + "/details" }

// RemoveRound removes a round.
func RemoveRound(id golf.RoundID) string { return Round(id) + "/remove" }

// Course is a course and, for who made it, where it is changed.
func Course(id golf.CourseID) string { return Courses + "/" + number(int64(id)) }

// Shot is a shot's place on the statement of its round.
func Shot(hole, shot int) string {
	return "#h" + strconv.Itoa(hole) + "-" + strconv.Itoa(shot)
}

// ResetOf is where the steward makes a link for a player's new password.
func ResetOf(id golf.PlayerID) string { return Accounts + "/" + number(int64(id)) + "/reset" }

// ResetLink is where a player sets a new password by a token.
func ResetLink(id golf.PlayerID, token string) string {
	return Reset + "?player=" + number(int64(id)) + "&token=" + token
}

// Invited is the page on which an invitation's token makes an account.
func Invited(token string) string { return Join + "?token=" + token }

func number(n int64) string { return strconv.FormatInt(n, 10) }
