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
	Ended       []EndedLine // by the reader, within a day
	Pupils      bool        // the player is a coach of somebody, so the roster is shown
	Roster      Roster      // empty unless Pupils
	Link        string      // the invitation that was just made, in full; empty for none
	Unused      string      // how many links can still be used; empty for none
	From        components.Field
	Wrong       components.Summary
	Codes       CodesPart
}

// CoachingInput is what the page is made of.
type CoachingInput struct {
	Whose   paths.Whose // the player's own pages
	Coaches []CoachInput
	Ended   []EndInput  // by the reader, within a day
	Roster  RosterInput // without pupils where the player coaches nobody
	From    form.Day    // the first day shared, as it came back from the form
	Link    string      // the invitation that was just made, in full; empty for none
	Unused  int         // links that can still be used
	Codes   CodesInput
	Renamed *RenamedGroup // a new name that was refused; nil for none
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
	ID            string           // place on the page
	Player, Coach string           // ids, as the forms send them
	Name          string           // anybody may have the same
	Email         string           // nobody else has it
	Says          string           // what the coach can see, and when they last looked
	Waits         bool             // not approved yet
	Day           components.Field // the first day shared, to change it
}

func newCoachLine(in CoachInput) CoachLine {
	l := CoachLine{ID: coachID(in.Coach), Player: fmt.Sprint(in.Player), Coach: fmt.Sprint(in.Coach), Name: in.Name, Email: in.Email, Waits: !in.Approved,
		Day: components.Field{Name: "from", ID: fmt.Sprintf("from-%d", in.Coach), Label: "Share rounds played from", Type: "date", Hint: "Leave it empty to share everything. It holds at once."}}
	what := "everything"
	if in.From != nil {
		l.Day.Value = golf.DateOf(*in.From).String()
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
	c.Codes = newCodesPart(in.Codes)
	for _, k := range in.Coaches {
		c.Coaches = append(c.Coaches, newCoachLine(k))
	}
	for _, e := range in.Ended {
		c.Ended = append(c.Ended, NewEndedLine(e))
	}
	if in.Unused > 0 {
		c.Unused = words.Plural(in.Unused, "link has", "links have") + " not been used yet."
	}
	if len(in.Roster.Pupils) > 0 {
		in.Roster.Askers = in.askers()
		if in.Renamed != nil {
			in.Roster.At.Group, in.Roster.Renamed = in.Renamed.From, &in.Renamed.To
		}
		c.addRoster(in.Roster)
	} else if n := len(in.Codes.Asks); n > 0 {
		c.Lede = askLede(n) + " " + c.Lede
	}
	return c
}

// askers are those who wait for a word of the reader's.
func (in CoachingInput) askers() (all []Asker) {
	for _, a := range in.Codes.Asks {
		all = append(all, Asker{Name: a.Name, What: "to be coached by you, since " + words.NearDay(a.Asked, in.Roster.Today), At: "#" + requestID(a.ID)})
	}
	for _, c := range in.Coaches {
		if !c.Approved {
			all = append(all, Asker{Name: c.Name, What: "to be approved as your coach", At: "#" + coachID(c.Coach)})
		}
	}
	return all
}

// requestID is the place of a golfer who asks, and coachID that of a coach.
func requestID(golfer golf.PlayerID) string { return fmt.Sprintf("request-%d", golfer) }
func coachID(coach golf.PlayerID) string    { return fmt.Sprintf("coach-%d", coach) }

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

// Invitation is a link that a pupil made, as the account that opened it finds it.
type Invitation struct {
	Name    string // the pupil's
	Player  string // ids, as the form sends them
	Token   string
	From    golf.Date // the first day that it gives access to; zero for everything
	Own     bool      // the reader made it
	Used    bool
	Mine    bool // the reader used it
	Revoked bool
	Expired bool
	Waits   bool // the reader has accepted, and waits for the pupil
	Coaches bool // the reader has access to the pupil
}

// Open reports whether the reader can accept it.
func (in Invitation) Open() bool { return !in.Own && !in.Used && !in.Revoked && !in.Expired }

// InvitationPage is where a coach who opened a pupil's link accepts it, or reads why
// that is not possible.
type InvitationPage struct {
	layout.Page
	Lede          string   // who invites, or what became of the link
	Facts         []string // what accepting means
	Player, Token string   // as the form sends them; empty where there is nothing to accept
}

// NewInvitationPage makes the page.
func NewInvitationPage(page layout.Page, in Invitation) InvitationPage {
	page.Title, page.Here = "An invitation", paths.Coaching
	p := InvitationPage{Page: page, Lede: in.state()}
	if !in.Open() {
		return p
	}
	what := "everything that " + in.Name + " has entered"
	if !in.From.IsZero() {
		what = "what " + in.Name + " played from " + words.ShortDay(in.From) + " on"
	}
	p.Player, p.Token = in.Player, in.Token
	p.Facts = []string{"You will see " + what + ": rounds, months, practice and questions, but you change no round.",
		"You get access once " + in.Name + " approves you by name; accepting shows " + in.Name + " your name and e-mail address.",
		in.Name + " reads which pages you open, and either of you can end the access at any time."}
	if in.Coaches {
		p.Facts = []string{"This link gives you " + what + ". Accepting takes nothing away that you see already."}
	}
	return p
}

// state says what the link is to the reader.
func (in Invitation) state() string {
	switch {
	case in.Own:
		return "This is your own link. Send it to your coach, who opens it and accepts."
	case in.Waits:
		return "You have accepted. " + in.Name + " still has to approve you, on the page named Coach."
	case in.Coaches && !in.Open():
		return "You have access to " + in.Name + " already."
	case in.Used:
		return "This link has been used. Ask " + in.Name + " for another."
	case in.Revoked:
		return in.Name + " has withdrawn this link. Ask for another."
	case in.Expired:
		return "This link has expired. Ask " + in.Name + " for another."
	case in.Coaches:
		return "You have access to " + in.Name + " already; this is another link."
	default:
		return in.Name + " would like you as a coach."
	}
}

// EndPage asks before an access ends.
type EndPage struct {
	layout.Page
	Lede          string
	Player, Coach string // ids, as the form sends them
	Back          string // address of what stays as it is
}

// EndInput is what the page is made of.
type EndInput struct {
	Player, Coach         golf.PlayerID
	PlayerName, CoachName string
	Own                   bool // the reader is the player
}

// NewEndPage makes the page.
func NewEndPage(page layout.Page, in EndInput) EndPage {
	page.Title, page.Here = "End the access", paths.Coaching
	e := EndPage{Page: page, Player: fmt.Sprint(in.Player), Coach: fmt.Sprint(in.Coach), Back: paths.Coaching,
		Lede: fmt.Sprintf("End the access of %s? It stops at once. Notes that you shared stay with both of you, and private notes with who wrote them. For a day you can take this back.", in.CoachName)}
	if !in.Own {
		e.Lede = fmt.Sprintf("Give up your access to %s? It stops at once. Your private notes stay with you, shared notes and practice with %s. For a day you can take this back.", in.PlayerName, in.PlayerName)
	}
	return e
}

// EndedLine is an access that the reader ended and can take up again.
type EndedLine struct {
	Text          string
	Player, Coach string // ids, as the form sends them
}

// NewEndedLine makes a line.
func NewEndedLine(in EndInput) EndedLine {
	l := EndedLine{Text: "You ended the access of " + in.CoachName + ".", Player: fmt.Sprint(in.Player), Coach: fmt.Sprint(in.Coach)}
	if !in.Own {
		l.Text = "You gave up your access to " + in.PlayerName + "."
	}
	return l
}
