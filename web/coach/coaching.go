package coach

import (
	"fmt"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// CoachingPage is where a player lets coaches in, and a coach finds the pupils.
type CoachingPage struct {
	layout.Page
	Heading string
	At      string // the day
	Lede    string
	Mine    string // address of the player's own lessons and practice
	Looks   string // address of what coaches opened
	Kept    string // address of private notes on pupils of the past
	Coaches []CoachLine
	Pupils  bool // the player is a coach of somebody
	Roster  Roster
	Link    string // one that was just made
	Unused  string // how many links can still be used, empty for none
	From    components.Field
	Wrong   components.Summary
}

// CoachingInput is what was asked of the form that makes a link, and what came of it.
type CoachingInput struct {
	From   form.Day // the first day shared
	Link   string   // that was made
	Unused int      // links that can still be used
}

// CoachLine is an account that is let in, or waits for it.
type CoachLine struct {
	Player, Coach, Name, Email, What string // a name may be anybody's, an e-mail address is one account's
	Waits                            bool
}

// NewCoachLine says what a coach sees and when the coach last looked.
func NewCoachLine(player, coach golf.PlayerID, name, email string, from *time.Time, confirmed bool, looked *time.Time) CoachLine {
	l := CoachLine{Player: fmt.Sprint(player), Coach: fmt.Sprint(coach), Name: name, Email: email, Waits: !confirmed, What: "sees everything"}
	if from != nil {
		l.What = "sees what was played from " + words.ShortDay(golf.DateOf(*from)) + " on"
	}
	switch {
	case !confirmed:
		l.What = "waits for your word; then " + l.What
	case looked == nil:
		l.What += ", and has not looked yet"
	default:
		l.What += ", and last looked on " + looked.Format("2 Jan 2006, 15:04 MST")
	}
	return l
}

// NewCoachingPage makes the page.
func NewCoachingPage(page layout.Page, mine paths.Whose, coaches []CoachLine, roster RosterInput, ask CoachingInput) CoachingPage {
	page.Title, page.Here = "Coach", paths.Coaching
	page.Foot = "A coach reads your rounds, months and practice and changes no round. You can end it at any time; the coach's next click then finds no page."
	c := CoachingPage{Page: page, Heading: "Coach", Coaches: coaches, Link: ask.Link, Mine: mine.Lessons(), Looks: paths.CoachLooks, Kept: paths.CoachKept,
		From: components.Filled(components.Field{Name: "from", Label: "Share what was played from", Type: "date", Hint: "Leave it empty to share everything."}, ask.From)}
	c.Wrong = components.Summed(c.From).Saying("No link was made.")
	if ask.Unused > 0 {
		c.Unused = words.Plural(ask.Unused, "link is out and not used yet.", "links are out and not used yet.")
	}
	c.Lede = "Nobody but you sees your rounds."
	if n := len(coaches); n > 0 {
		c.Lede = fmt.Sprintf("%s let in, or waiting for your word.", words.Capital(words.Plural(n, "coach is", "coaches are")))
	}
	if n := len(roster.Pupils); n > 0 {
		c.Pupils, c.Roster = true, NewRoster(roster)
		c.Heading, c.At, c.Lede = fmt.Sprintf("Your %s %s", words.Spelled(n), words.OneOrMany(n, "pupil", "pupils")), words.LongDay(roster.Today)+".", c.Roster.Lede
		if n == 1 {
			c.Heading = "Your pupil"
		}
		c.Page.Foot = "Fixed golfer. Plays to compares every pupil on one scale, whatever the course. Better or worse stands where the ten rounds before lie outside the interval of the last ten. A pupil shares rounds with you and can stop at any time, and sees which pages you opened."
	}
	return c
}

// InvitationPage is what a pupil's link asks of who opens it.
type InvitationPage struct {
	layout.Page
	Lede, Player, Token string
}

// NewInvitationPage makes the page.
func NewInvitationPage(page layout.Page, name, player, token string) InvitationPage {
	page.Title, page.Here = "An invitation", paths.Coaching
	return InvitationPage{page, fmt.Sprintf("%s asks you to be the coach: to read rounds and months, once %s has confirmed you. Your name and your e-mail address are shown for that.", name, name), player, token}
}
