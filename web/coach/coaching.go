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

// CoachingPage is where a player gives coaches access, and a coach finds the
// pupils.
type CoachingPage struct {
	layout.Page
	Heading     string
	Lede        string // who has access, or to a coach what is new on the roster
	Lessons     string // address of the player's own lessons and practice
	Looks       string // address of what coaches opened
	FormerNotes string // address of private notes on former pupils
	Coaches     []CoachLine
	Pupils      bool   // the player is a coach of somebody, so the roster is shown
	Roster      Roster // empty unless Pupils
	Link        string // the invitation that was just made, in full; empty for none
	Unused      string // how many links can still be used; empty for none
	From        components.Field
	Wrong       components.Summary
}

// CoachingInput is what the page is made of.
type CoachingInput struct {
	Whose   paths.Whose // the player's own pages
	Coaches []CoachInput
	Roster  RosterInput // without pupils where the player coaches nobody
	From    form.Day    // the first day shared, as it came back from the form
	Link    string      // the invitation that was just made, in full; empty for none
	Unused  int         // links that can still be used
}

// CoachInput is a coach who has access or is waiting for it.
type CoachInput struct {
	Player, Coach golf.PlayerID
	Name, Email   string
	From          *time.Time // first day that the coach can see; nil for everything
	Approved      bool       // the player has approved the coach
	Looked        *time.Time // when the coach last opened a page; nil for never
}

// CoachLine is a coach who has access or is waiting for it, with the forms that
// approve the coach and end access.
type CoachLine struct {
	Player, Coach string // ids, as the forms send them
	Name          string // anybody may have the same
	Email         string // nobody else has it
	Says          string // what the coach can see, and when they last looked
	Waits         bool   // not approved yet
}

func newCoachLine(in CoachInput) CoachLine {
	l := CoachLine{Player: fmt.Sprint(in.Player), Coach: fmt.Sprint(in.Coach), Name: in.Name, Email: in.Email, Waits: !in.Approved}
	what := "everything"
	if in.From != nil {
		what = "rounds played from " + words.ShortDay(golf.DateOf(*in.From)) + " on"
	}
	switch {
	case !in.Approved:
		l.Says = "is waiting for you to approve them, and will then see " + what
	case in.Looked == nil:
		l.Says = "can see " + what + ", and has not looked yet"
	default:
		l.Says = "can see " + what + ", and last looked on " + words.Moment(*in.Looked)
	}
	return l
}

// NewCoachingPage makes the page.
func NewCoachingPage(page layout.Page, in CoachingInput) CoachingPage {
	page.Title, page.Here = "Coach", paths.Coaching
	page.Foot = "A coach can read your rounds, months and practice, but cannot change a round. You can end a coach’s access at any time, and it stops at once."
	c := CoachingPage{Page: page, Heading: "Coach", Lede: accessLede(in.Coaches), Link: in.Link, Lessons: in.Whose.Lessons(), Looks: paths.CoachLooks, FormerNotes: paths.CoachKept,
		From: components.Filled(components.Field{Name: "from", Label: "Share rounds played from", Type: "date", Hint: "Leave it empty to share everything."}, in.From)}
	c.Wrong = components.Summed(c.From).Saying("No link was made.")
	for _, k := range in.Coaches {
		c.Coaches = append(c.Coaches, newCoachLine(k))
	}
	if in.Unused > 0 {
		c.Unused = words.Plural(in.Unused, "link has", "links have") + " not been used yet."
	}
	if len(in.Roster.Pupils) > 0 {
		c.addRoster(in.Roster)
	}
	return c
}

// addRoster makes it the page of a coach.
func (c *CoachingPage) addRoster(in RosterInput) {
	c.Pupils, c.Roster = true, NewRoster(in)
	c.Heading, c.Lede = words.LongDay(in.Today), c.Roster.Lede
	c.Page.Title, c.Page.BodyClass = "Pupils", "coaching-page"
	c.Page.Foot = "Strokes are for 18 holes, to the golfer of each pupil’s target. Better or worse compares the last ten rounds with the ten before, by the test of the months: clear is beyond luck, leaning probably so. One unchanged part in twenty looks clear all the same. Plays to puts every pupil on one scale, whatever the course. Pupils can see which of their pages you opened, and can end your access at any time."
}

// accessLede counts who can see the player's rounds, and who is waiting.
func accessLede(coaches []CoachInput) string {
	has, waits := 0, 0
	for _, c := range coaches {
		has += words.Tally(c.Approved)
		waits += words.Tally(!c.Approved)
	}
	text := "Only you can see your rounds"
	if has > 0 {
		text = words.Capital(words.Spelled(has)) + words.OneOrMany(has, " coach has access", " coaches have access")
	}
	switch {
	case waits == 0:
		return text + "."
	case has > 0:
		return fmt.Sprintf("%s, and %s waiting for your approval.", text, words.OneOrMany(waits, "one is", words.Spelled(waits)+" are"))
	default:
		return fmt.Sprintf("%s; %s waiting for your approval.", text, words.OneOrMany(waits, "one coach is", words.Spelled(waits)+" coaches are"))
	}
}

// InvitationPage is where a coach who opened a pupil's link accepts it.
type InvitationPage struct {
	layout.Page
	Lede          string // who invites, and what accepting means
	Player, Token string // as the form sends them
}

// NewInvitationPage makes the page; name is the pupil's.
func NewInvitationPage(page layout.Page, name, player, token string) InvitationPage {
	page.Title, page.Here = "An invitation", paths.Coaching
	lede := fmt.Sprintf("%s would like you as a coach. Once you accept and %s approves you, you can read the rounds and months shared with you. Accepting shows %s your name and e-mail address.", name, name, name)
	return InvitationPage{page, lede, player, token}
}
