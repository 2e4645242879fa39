package coach

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

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
		"a coach of others": {CoachingInput{Roster: RosterInput{Pupils: pupils()[3:5], Today: today}}, "Monday 31 August 2026", "Two things wait, for two of your two pupils.", ""},
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

func TestInvitationPage(t *testing.T) {
	p := NewInvitationPage(layout.Page{}, "Abara", "7", "token")
	if p.Title != "An invitation" || p.Lede != "Abara would like you as a coach. Once you accept and Abara approves you, you can read the rounds and months shared with you. Accepting shows Abara your name and e-mail address." {
		t.Errorf("%q %q", p.Title, p.Lede)
	}
	if p.Player != "7" || p.Token != "token" || p.Here != paths.Coaching {
		t.Errorf("%+v", p)
	}
}
