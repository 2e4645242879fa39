package coach

import (
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

func TestCoachLine(t *testing.T) {
	from, looked := time.Date(2026, 5, 2, 0, 0, 0, 0, time.UTC), time.Date(2026, 8, 30, 9, 5, 0, 0, time.UTC)
	for name, c := range map[string]struct {
		in   CoachInput
		want CoachLine
	}{
		"waiting, for everything": {CoachInput{Player: 1, Coach: 2, Name: "Ines", Email: "ines@harrowfen.example"},
			CoachLine{Player: "1", Coach: "2", Name: "Ines", Email: "ines@harrowfen.example", Waits: true, Says: "is waiting for you to approve them, and will then see everything"}},
		"waiting, from a day on": {CoachInput{Player: 1, Coach: 2, Name: "Ines", From: &from},
			CoachLine{Player: "1", Coach: "2", Name: "Ines", Waits: true, Says: "is waiting for you to approve them, and will then see rounds played from 2 May 2026 on"}},
		"not looked yet": {CoachInput{Player: 1, Coach: 2, Name: "Ines", Approved: true},
			CoachLine{Player: "1", Coach: "2", Name: "Ines", Says: "can see everything, and has not looked yet"}},
		"looked": {CoachInput{Player: 1, Coach: 2, Name: "Ines", From: &from, Approved: true, Looked: &looked},
			CoachLine{Player: "1", Coach: "2", Name: "Ines", Says: "can see rounds played from 2 May 2026 on, and last looked on 30 Aug 2026, 09:05 UTC"}},
	} {
		page := NewCoachingPage(layout.Page{}, CoachingInput{Coaches: []CoachInput{c.in}})
		c.want.ID = "coach-2"
		c.want.Day = components.Field{Name: "from", ID: "from-2", Label: "Share rounds played from", Type: "date", Hint: "Leave it empty to share everything. It takes effect at once."}
		if c.in.From != nil {
			c.want.Day.Value = "2026-05-02"
		}
		if diff := cmp.Diff([]CoachLine{c.want}, page.Coaches); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

func TestCoachingPage(t *testing.T) {
	has, waits := CoachInput{Approved: true}, CoachInput{}
	for name, c := range map[string]struct {
		in                    CoachingInput
		heading, lede, unused string
	}{
		"nobody":            {CoachingInput{}, "Coach", "Only you can see your rounds.", ""},
		"one waits":         {CoachingInput{Coaches: []CoachInput{waits}}, "Coach", "Only you can see your rounds; one coach is waiting for your approval.", ""},
		"two wait":          {CoachingInput{Coaches: []CoachInput{waits, waits}}, "Coach", "Only you can see your rounds; two coaches are waiting for your approval.", ""},
		"one has access":    {CoachingInput{Coaches: []CoachInput{has}, Unused: 1}, "Coach", "One coach has access.", "1 link has not been used yet."},
		"some of each":      {CoachingInput{Coaches: []CoachInput{has, waits, has}, Unused: 2}, "Coach", "Two coaches have access, and one is waiting for your approval.", "2 links have not been used yet."},
		"a coach of one":    {CoachingInput{Coaches: []CoachInput{has}, Roster: RosterInput{Pupils: pupils()[:1], Today: today}}, "Monday 31 August 2026", "Nothing waits.", ""},
		"a coach of others": {CoachingInput{Roster: RosterInput{Pupils: pupils()[3:5], Today: today}}, "Monday 31 August 2026", "Two things wait, for both of your pupils.", ""},
	} {
		p := NewCoachingPage(layout.Page{}, c.in)
		if p.Heading != c.heading || p.Lede != c.lede || p.Unused != c.unused {
			t.Errorf("%s: %q %q %q", name, p.Heading, p.Lede, p.Unused)
		}
		if n := len(c.in.Roster.Pupils); p.Pupils != (n > 0) || len(p.Roster.Rows) != n {
			t.Errorf("%s: %d rows on the roster", name, len(p.Roster.Rows))
		}
	}
}

func TestInvitingACoach(t *testing.T) {
	p := NewCoachingPage(layout.Page{}, CoachingInput{Whose: paths.Whose{Player: 7, Own: true}, From: form.Day{Text: "May", Problem: "Not a day."}})
	if p.Wrong.Heading != "No link was made." || p.From.Value != "May" || p.From.Problem != "Not a day." || p.Link != "" {
		t.Errorf("%+v", p)
	}
	if p.Lessons != "/players/7/lessons" || p.Looks != "/coaching/looks" || p.FormerNotes != "/coaching/kept" {
		t.Errorf("%q %q %q", p.Lessons, p.Looks, p.FormerNotes)
	}
	made := NewCoachingPage(layout.Page{}, CoachingInput{Link: "https://harrowfen.example/x"})
	if made.Link != "https://harrowfen.example/x" || made.Wrong.Heading != "" {
		t.Errorf("%+v", made)
	}
}

// A link says who invites and what accepting gives, or what became of it.
func TestInvitationPage(t *testing.T) {
	day := golf.Date{Year: 2026, Month: time.May, Day: 2}
	for name, c := range map[string]struct {
		in   Invitation
		lede string
		open bool
	}{
		"open":             {Invitation{Name: "Abara", Player: "7", Token: "t"}, "Abara would like you as a coach.", true},
		"own":              {Invitation{Name: "Abara", Token: "t", Own: true}, "This is your own link. Send it to your coach, who opens it and accepts.", false},
		"used":             {Invitation{Name: "Abara", Token: "t", Used: true}, "This link has been used. Ask Abara for another.", false},
		"used, waiting":    {Invitation{Name: "Abara", Token: "t", Used: true, Mine: true, Waits: true}, "You have accepted. Abara still has to approve you, on the page named Coach.", false},
		"used, has access": {Invitation{Name: "Abara", Token: "t", Used: true, Mine: true, Coaches: true}, "You have access to Abara already.", false},
		"withdrawn":        {Invitation{Name: "Abara", Token: "t", Revoked: true}, "Abara has withdrawn this link. Ask for another.", false},
		"expired":          {Invitation{Name: "Abara", Token: "t", Expired: true}, "This link has expired. Ask Abara for another.", false},
		"another":          {Invitation{Name: "Abara", Token: "t", Coaches: true, From: day}, "You have access to Abara already; this is another link.", true},
	} {
		p := NewInvitationPage(layout.Page{}, c.in)
		if p.Lede != c.lede || (p.Token != "") != c.open || (len(p.Facts) > 0) != c.open {
			t.Errorf("%s: %+v", name, p)
		}
	}
	from := NewInvitationPage(layout.Page{}, Invitation{Name: "Abara", Token: "t", From: day})
	if from.Facts[0] != "You will see what Abara played from 2 May 2026 on: rounds, months, practice and questions, but you cannot change a round." {
		t.Error(from.Facts[0])
	}
}

// Ending asks first, in the words of who asks, and can be taken back.
func TestEnding(t *testing.T) {
	in := EndInput{Player: 1, Coach: 2, PlayerName: "Bea", CoachName: "Ines"}
	if p := NewEndPage(layout.Page{}, in); !strings.HasPrefix(p.Lede, "Give up your access to Bea?") || p.Player != "1" || p.Coach != "2" {
		t.Errorf("%+v", p)
	}
	if l := NewEndedLine(in); l.Text != "You gave up your access to Bea." {
		t.Error(l.Text)
	}
	in.Own = true
	if p := NewEndPage(layout.Page{}, in); !strings.HasPrefix(p.Lede, "End the access of Ines?") {
		t.Errorf("%+v", p)
	}
	page := NewCoachingPage(layout.Page{}, CoachingInput{Ended: []EndInput{in}})
	if len(page.Ended) != 1 || page.Ended[0].Text != "You ended the access of Ines." {
		t.Errorf("%+v", page.Ended)
	}
}
