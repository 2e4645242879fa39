package db_test

import (
	"errors"
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// teaches reports whether an account says that it has pupils.
func (p pair) teaches(who golf.PlayerID) bool {
	p.t.Helper()
	seen, err := p.Seen(p.ctx, who, who)
	p.must(err)
	return seen.Teaches
}

// An account says that it has pupils from when one confirms it until the last one has
// ended the access or deleted the account.
func TestAccountsSayWhetherTheyTeach(t *testing.T) {
	p := newPair(t)
	if p.teaches(p.pupil) || p.teaches(p.stranger) || !p.teaches(p.coach) || !p.teaches(p.other) {
		t.Error("after both coaches were confirmed")
	}
	if err := p.EndCoaching(p.ctx, p.stranger, p.pupil, p.coach); !errors.Is(err, golf.ErrNotFound) || !p.teaches(p.coach) {
		t.Errorf("a stranger ends it: %v", err)
	}
	p.must(p.NewCoachInvitation(p.ctx, p.stranger, []byte("s"), golf.Date{}, 7))
	p.must(p.AcceptCoaching(p.ctx, p.coach, p.stranger, []byte("s")))
	p.must(p.ConfirmCoach(p.ctx, p.stranger, p.coach))
	p.must(p.EndCoaching(p.ctx, p.coach, p.pupil, p.coach))
	if !p.teaches(p.coach) {
		t.Error("one of two pupils left")
	}
	p.must(p.DeletePlayer(p.ctx, p.stranger))
	if p.teaches(p.coach) {
		t.Error("the last pupil's account is gone")
	}
	p.must(p.EndCoaching(p.ctx, p.pupil, p.pupil, p.other))
	if p.teaches(p.other) {
		t.Error("the only pupil ended it")
	}
}

// A second link never takes anything away from a coach who has access, and one from
// an earlier day gives more.
func TestASecondLinkTakesNothingAway(t *testing.T) {
	p := newPair(t)
	day := golf.DateOf(aRound().PlayedOn)
	p.must(p.EndCoaching(p.ctx, p.pupil, p.pupil, p.coach))
	p.let(p.coach, day)
	for _, c := range []struct{ link, want golf.Date }{{day.AddDays(9), day}, {day.AddDays(-9), day.AddDays(-9)}, {golf.Date{}, golf.Date{}}, {day, golf.Date{}}} {
		p.must(p.NewCoachInvitation(p.ctx, p.pupil, []byte("again "+c.link.String()), c.link, 7))
		p.must(p.AcceptCoaching(p.ctx, p.coach, p.pupil, []byte("again "+c.link.String())))
		seen, err := p.Seen(p.ctx, p.coach, p.pupil)
		p.must(err)
		got := golf.Date{}
		if seen.SharedFrom != nil {
			got = golf.DateOf(*seen.SharedFrom)
		}
		if got != c.want {
			t.Errorf("after a link from %v the coach sees from %v on, not %v", c.link, got, c.want)
		}
	}
}

// Groups are a coach's own: a pupil is in several, and nobody else reads or changes
// them.
func TestGroups(t *testing.T) {
	p := newPair(t)
	groups := func(coach golf.PlayerID) []db.Grouped {
		t.Helper()
		all, err := p.Groups(p.ctx, coach)
		p.must(err)
		return all
	}
	p.must(p.SetGroups(p.ctx, p.coach, p.pupil, []string{"Tuesday six", "Juniors"}))
	p.must(p.SetGroups(p.ctx, p.other, p.pupil, []string{"Friday"}))
	if diff := cmp.Diff([]db.Grouped{{PupilID: p.pupil, Name: "Juniors"}, {PupilID: p.pupil, Name: "Tuesday six"}}, groups(p.coach)); diff != "" {
		t.Error(diff)
	}
	p.must(p.SetGroups(p.ctx, p.coach, p.pupil, []string{"Tuesday six"}))
	p.must(p.RenameGroup(p.ctx, p.coach, "Tuesday six", "Tuesday eight"))
	if diff := cmp.Diff([]db.Grouped{{PupilID: p.pupil, Name: "Tuesday eight"}}, groups(p.coach)); diff != "" {
		t.Error(diff)
	}
	if len(groups(p.other)) != 1 || len(groups(p.pupil)) != 0 || len(groups(p.stranger)) != 0 {
		t.Error("the groups of others changed")
	}
	p.refused(map[string]error{
		"a stranger groups":     p.SetGroups(p.ctx, p.stranger, p.pupil, []string{"x"}),
		"another coach renames": p.RenameGroup(p.ctx, p.other, "Tuesday eight", "x"),
		"a stranger archives":   p.ArchivePupil(p.ctx, p.stranger, p.pupil, true),
		"the pupil archives":    p.ArchivePupil(p.ctx, p.pupil, p.pupil, true),
	})
	p.must(p.SetGroups(p.ctx, p.coach, p.pupil, nil))
	if len(groups(p.coach)) != 0 {
		t.Error("a pupil in no group is in one")
	}
}

// A coach puts a pupil away and brings the pupil back; access stays as it is.
func TestArchive(t *testing.T) {
	p := newPair(t)
	for _, away := range []bool{true, false} {
		p.must(p.ArchivePupil(p.ctx, p.coach, p.pupil, away))
		if r := p.roster(); r.Archived != away {
			t.Errorf("archived is %v, not %v", r.Archived, away)
		}
		if _, err := p.Seen(p.ctx, p.coach, p.pupil); err != nil {
			t.Error(err)
		}
	}
}

// Questions wait until somebody other than the pupil answers; only coaches of the
// pupil hear of them, from the day that they see.
func TestOpenQuestions(t *testing.T) {
	p := newPair(t)
	shot := 1
	asked := p.write(p.pupil, db.Note{Kind: db.KindQuestion, RoundID: &p.round, Hole: at(1), Shot: &shot, Body: "Why?"})
	waiting := func(coach golf.PlayerID) []db.OpenQuestion {
		t.Helper()
		all, err := p.Waiting(p.ctx, coach, golf.Date{}, golf.Date{})
		p.must(err)
		return all.Questions
	}
	if all := waiting(p.coach); len(all) != 1 || all[0].ID != asked || all[0].RoundID != p.round || *all[0].Shot != 1 {
		t.Errorf("%+v", all)
	}
	if len(waiting(p.stranger)) != 0 || len(waiting(p.pupil)) != 0 {
		t.Error("somebody else hears of it")
	}
	p.must(p.EndCoaching(p.ctx, p.pupil, p.pupil, p.other))
	p.let(p.other, golf.DateOf(aRound().PlayedOn).AddDays(1))
	if len(waiting(p.other)) != 0 {
		t.Error("a coach from a later day hears of it")
	}
	p.must(p.ReplyTo(p.ctx, p.pupil, p.pupil, asked, "I mean the club."))
	if len(waiting(p.coach)) != 1 {
		t.Error("the pupil's own words are an answer")
	}
	p.must(p.ReplyTo(p.ctx, p.coach, p.pupil, asked, "So."))
	if len(waiting(p.coach)) != 0 {
		t.Error("an answered question waits")
	}
}

// The rounds before and after another are those that are entered and that asker sees.
func TestNeighbours(t *testing.T) {
	p := newPair(t)
	day := golf.DateOf(aRound().PlayedOn)
	add := func(name string, days int, line bool) golf.RoundID {
		r := aRound()
		r.Name, r.PlayedOn = name, r.PlayedOn.AddDate(0, 0, days)
		if line {
			r.Holes[0] = entered(0)
			r.Holes[0].Length = 384 * golf.Yard
		}
		id, err := p.NewRound(p.ctx, p.pupil, r)
		p.must(err)
		return id
	}
	before, _, after := add("before", -1, true), add("begun", 1, false), add("after", 2, true)
	add("later", 3, true)
	near := func(asker golf.PlayerID) string {
		t.Helper()
		all, err := p.Neighbours(p.ctx, asker, p.pupil, p.round, day)
		p.must(err)
		text := ""
		for _, n := range all {
			switch {
			case n.ID == before && !n.After:
				text += "before "
			case n.ID == after && n.After:
				text += "after "
			default:
				text += "another "
			}
		}
		return text
	}
	if got := near(p.coach); got != "before after " {
		t.Errorf("the coach finds %q", got)
	}
	if got := near(p.stranger); got != "" {
		t.Errorf("a stranger finds %q", got)
	}
	p.must(p.EndCoaching(p.ctx, p.pupil, p.pupil, p.other))
	p.let(p.other, day)
	if got := near(p.other); got != "after " {
		t.Errorf("a coach from that day on finds %q", got)
	}
}

// Who ended an access can take it up again for a day, as it was; nobody else can.
func TestEndedAccessIsTakenUpAgain(t *testing.T) {
	p := newPair(t)
	day := golf.DateOf(aRound().PlayedOn)
	p.must(p.ShareFrom(p.ctx, p.pupil, p.coach, day))
	for _, who := range []golf.PlayerID{p.pupil, p.coach} {
		p.must(p.EndCoaching(p.ctx, who, p.pupil, p.coach))
		if p.teaches(p.coach) {
			t.Error("the coach still teaches")
		}
		theOther := p.pupil + p.coach - who
		p.refused(map[string]error{"the other": p.ResumeCoaching(p.ctx, theOther, p.pupil, p.coach), "a stranger": p.ResumeCoaching(p.ctx, p.stranger, p.pupil, p.coach)})
		for asker, want := range map[golf.PlayerID]int{who: 1, theOther: 0, p.stranger: 0} {
			if all, err := p.EndedCoachings(p.ctx, asker); err != nil || len(all) != want {
				t.Errorf("%d lists %+v, %v", asker, all, err)
			}
		}
		p.must(p.ResumeCoaching(p.ctx, who, p.pupil, p.coach))
		if c, err := p.Coaching(p.ctx, who, p.pupil, p.coach); err != nil || !c.Confirmed || c.SharedFrom == nil || !p.teaches(p.coach) {
			t.Errorf("%+v, %v", c, err)
		}
	}
	p.must(p.EndCoaching(p.ctx, p.pupil, p.pupil, p.coach))
	dbtest.Exec(t, p.url, "update ended_coachings set ended_at = now() - interval '25 hours'")
	p.refused(map[string]error{
		"after a day": p.ResumeCoaching(p.ctx, p.pupil, p.pupil, p.coach), "the coach changes the day": p.ShareFrom(p.ctx, p.coach, p.pupil, day),
		"a stranger asks": second(p.Coaching(p.ctx, p.stranger, p.pupil, p.other)),
	})
}

// An access that ended is not taken up again beside a later one, confirmed or waiting
// for the pupil, nor once the pupil has asked the coach anew.
func TestEndedAccessGivesWayToALaterOne(t *testing.T) {
	p := newPair(t)
	const code = "KXT-WRM-GHB"
	p.must(p.SetCoachCode(p.ctx, p.coach, code))
	june := golf.Date{Year: 2026, Month: 6, Day: 1}
	link := func(token string) {
		t.Helper()
		p.must(p.NewCoachInvitation(p.ctx, p.pupil, []byte(token), june, 7))
		p.must(p.AcceptCoaching(p.ctx, p.coach, p.pupil, []byte(token)))
	}
	gone := func(when string) {
		t.Helper()
		for _, who := range []golf.PlayerID{p.pupil, p.coach} {
			if all, err := p.EndedCoachings(p.ctx, who); err != nil || len(all) != 0 {
				t.Errorf("%s: %d lists %+v, %v", when, who, all, err)
			}
			p.refused(map[string]error{when: p.ResumeCoaching(p.ctx, who, p.pupil, p.coach)})
		}
	}
	is := func(when string, confirmed bool) {
		t.Helper()
		c, err := p.Coaching(p.ctx, p.pupil, p.pupil, p.coach)
		if err != nil || c.Confirmed != confirmed || c.SharedFrom == nil || golf.DateOf(*c.SharedFrom) != june {
			t.Errorf("%s: %+v, %v", when, c, err)
		}
	}
	ways := map[string]func(){
		"a link that waits":        func() { link("waits") },
		"a link that was approved": func() { link("approved"); p.must(p.ConfirmCoach(p.ctx, p.pupil, p.coach)) },
		"a code": func() {
			p.must(p.AskCoach(p.ctx, p.pupil, code, june))
			gone("the pupil asked by a code")
			p.must(p.TakeRequest(p.ctx, p.coach, p.pupil))
		},
	}
	for when, way := range ways {
		for _, who := range []golf.PlayerID{p.pupil, p.coach} {
			p.must(p.EndCoaching(p.ctx, who, p.pupil, p.coach))
			way()
			gone(when)
			is(when, when != "a link that waits")
			p.must(p.EndCoaching(p.ctx, who, p.pupil, p.coach))
			p.let(p.coach, golf.Date{})
			dbtest.Exec(t, p.url, "delete from coach_invitations")
		}
	}
	// As a copy from before the rule has it, or one in the middle of two requests.
	p.must(p.ShareFrom(p.ctx, p.pupil, p.coach, june))
	dbtest.Exec(t, p.url, "insert into ended_coachings (player_id, coach_id, accepted_at, ended_by) select player_id, coach_id, accepted_at, player_id from coachings")
	gone("it was left beside a later one")
	is("it was left beside a later one", true)
}
