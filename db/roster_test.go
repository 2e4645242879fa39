package db_test

import (
	"errors"
	"testing"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// today is the day on the machine, which is that of nobody in particular.
func today() golf.Date { return golf.DateOf(time.Now()) }

// thisMonth is the first day of the month on the machine.
func thisMonth() golf.Date { return golf.Month(today().Year, today().Month).From }

// looked is a page that was opened now.
func looked(kind db.LookKind, round golf.RoundID) db.Opened {
	return db.Opened{Kind: kind, Round: round, Day: today(), At: time.Now()}
}

// roster is the pupil's row of the coach's roster.
func (p pair) roster() db.Pupil {
	p.t.Helper()
	all, err := p.Roster(p.ctx, p.coach, thisMonth())
	p.must(err)
	p.must(p.RecordRosterLook(p.ctx, p.coach, db.LookRoster, map[golf.Date][]golf.PlayerID{today(): {p.pupil}}, time.Now()))
	if len(all) != 1 || all[0].ID != p.pupil {
		p.t.Fatalf("%+v", all)
	}
	return all[0]
}

// The roster counts what is new since the coach last looked at the pupil.
func TestRosterCountsWhatIsNew(t *testing.T) {
	p := newPair(t)
	if r := p.roster(); r.NewRounds != 1 || r.LookedAt != nil || r.Questions+r.Unread+r.Results+r.Month != 0 || r.Due != nil {
		t.Errorf("before the first look: %+v", r)
	}
	p.must(p.RecordLook(p.ctx, p.coach, p.pupil, looked(db.LookMonths, 0)))
	if r := p.roster(); r.NewRounds != 1 || r.LookedAt == nil || r.NewRound == nil || *r.NewRound != p.round {
		t.Errorf("while the coach is there: %+v", r)
	}
	p.later()
	if r := p.roster(); r.NewRounds != 0 || r.NewRound != nil {
		t.Errorf("after it: %+v", r)
	}
	now := time.Now()
	played := aRound()
	played.Name, played.PlayedOn = "today", now
	played.Holes[0] = entered(0)
	played.Holes[0].Length = 384 * golf.Yard
	second(p.NewRound(p.ctx, p.pupil, played))
	empty := aRound()
	empty.Name = "not entered"
	second(p.NewRound(p.ctx, p.pupil, empty))
	p.must(p.SaveHole(p.ctx, p.pupil, p.round, entered(1)))
	p.write(p.pupil, db.Note{Kind: db.KindQuestion, RoundID: &p.round, Body: "Why?"})
	note := p.write(p.coach, db.Note{Kind: db.KindNote, RoundID: &p.round, Body: "So."})
	p.must(p.ReplyTo(p.ctx, p.pupil, p.pupil, note, "Ah."))
	p.must(p.Assign(p.ctx, p.coach, p.pupil, db.Assignment{What: "Later", DueOn: now.AddDate(0, 0, 9)}))
	p.must(p.Assign(p.ctx, p.coach, p.pupil, db.Assignment{What: "Start line", DueOn: now.AddDate(0, 0, 2)}))
	given, err := p.Assignments(p.ctx, p.pupil, p.pupil, 0)
	p.must(err)
	p.must(p.RecordResult(p.ctx, p.pupil, given[0].ID, db.Result{Day: now, Result: "7 of 10"}))
	r := p.roster()
	if r.NewRounds != 1 || r.Changed != 1 || r.Month != 1 || r.DueID == nil || r.Questions != 1 || r.Unread != 1 || r.Results != 1 || r.DueWhat == nil || *r.DueWhat != "Start line" {
		t.Errorf("%+v", r)
	}
	p.must(p.RecordLook(p.ctx, p.coach, p.pupil, looked(db.LookStatement, *r.NewRound)))
	if r := p.roster(); r.NewRounds != 0 || r.Changed != 1 {
		t.Errorf("after the new round was opened: %+v", r)
	}
	p.must(p.EndCoaching(p.ctx, p.coach, p.pupil, p.coach))
	if all, err := p.Roster(p.ctx, p.coach, thisMonth()); err != nil || len(all) != 0 {
		t.Errorf("after the end: %+v, %v", all, err)
	}
	looks, err := p.Looks(p.ctx, p.pupil, 0, 9)
	if err != nil || len(looks) != 3 || looks[0].Kind != db.LookRoster || looks[0].Times != 5 {
		t.Errorf("%+v, %v", looks, err)
	}
	if looks, err := p.Looks(p.ctx, p.stranger, 0, 9); err != nil || len(looks) != 0 {
		t.Errorf("a stranger's: %+v, %v", looks, err)
	}
}

// A summary is stored until its round is saved again. One made from a round that has
// been saved since it was read is not stored.
func TestSummariesFollowTheirRound(t *testing.T) {
	p := newPair(t)
	summary := func(who golf.PlayerID) string {
		rows, err := p.Summaries(p.ctx, who, db.Chosen{Most: 20})
		p.must(err)
		if len(rows) == 0 {
			return "no round"
		}
		return rows[0].MadeFor + string(rows[0].Summary)
	}
	keep := func(who golf.PlayerID, r db.Round, text string) {
		t.Helper()
		p.must(p.SaveSummaries(p.ctx, who, p.pupil, []db.KeptSummary{{Round: r, MadeFor: "1", Summary: []byte(text)}}))
	}
	read := func() db.Round {
		rounds, err := p.Rounds(p.ctx, p.coach, p.pupil, db.Chosen{IDs: []golf.RoundID{p.round}})
		p.must(err)
		return rounds[0]
	}
	if got := summary(p.coach); got != "" {
		t.Errorf("at first %q", got)
	}
	keep(p.stranger, read(), "a stranger's")
	if got := summary(p.coach); got != "" {
		t.Errorf("a stranger keeps %q", got)
	}
	stale := read()
	keep(p.coach, stale, "a")
	keep(p.pupil, stale, "b")
	if got := summary(p.coach); got != "1b" {
		t.Errorf("%q", got)
	}
	p.must(p.SaveHole(p.ctx, p.pupil, p.round, entered(1)))
	if got := summary(p.coach); got != "" {
		t.Errorf("after another save: %q", got)
	}
	keep(p.pupil, stale, "stale")
	if got := summary(p.coach); got != "" {
		t.Errorf("of the round before the save: %q", got)
	}
	keep(p.pupil, read(), "c")
	if got := summary(p.coach); got != "1c" {
		t.Errorf("%q", got)
	}
	if got := summary(p.stranger); got != "no round" {
		t.Errorf("a stranger reads %q", got)
	}
	if rounds, err := p.Rounds(p.ctx, p.stranger, p.pupil, db.Chosen{IDs: []golf.RoundID{p.round}}); err != nil || len(rounds) != 0 {
		t.Errorf("a stranger sees %+v, %v", rounds, err)
	}
	p.must(p.EndCoaching(p.ctx, p.pupil, p.pupil, p.coach))
	p.let(p.coach, golf.Date{Year: 2026, Month: 5, Day: 3})
	if got := summary(p.coach); got != "no round" {
		t.Errorf("from the day after on: %q", got)
	}
}

// A coach or the player gives practice, only the player records it and ticks it off,
// and it stays when the coach's account is deleted.
func TestAssignments(t *testing.T) {
	p := newPair(t)
	due := time.Date(2026, 9, 1, 0, 0, 0, 0, time.UTC)
	p.must(p.Assign(p.ctx, p.coach, p.pupil, db.Assignment{What: "Start line 5 ft", Amount: "40 putts", PassMark: "32 of 40", DueOn: due}))
	all, err := p.Assignments(p.ctx, p.pupil, p.pupil, 0)
	if err != nil || len(all) != 1 || all[0].PassMark != "32 of 40" || *all[0].AuthorID != p.coach {
		t.Fatalf("%+v, %v", all, err)
	}
	id := all[0].ID
	p.must(p.RecordResult(p.ctx, p.pupil, id, db.Result{Day: due, Result: "33 of 40", Passed: true}))
	p.must(p.TickOff(p.ctx, p.pupil, id, true))
	seen, err := p.Assignments(p.ctx, p.coach, p.pupil, 0)
	if err != nil || len(seen) != 1 || seen[0].DoneAt == nil || len(seen[0].Results) != 1 || !seen[0].Results[0].Passed {
		t.Errorf("the coach sees %+v, %v", seen, err)
	}
	p.must(p.RecordResult(p.ctx, p.pupil, id, db.Result{Day: due.AddDate(-1, 0, 0), Result: "20 of 40"}))
	p.must(p.EndCoaching(p.ctx, p.pupil, p.pupil, p.other))
	p.let(p.other, golf.DateOf(due))
	if fromADay, err := p.Assignments(p.ctx, p.other, p.pupil, 0); err != nil || len(fromADay) != 1 || len(fromADay[0].Results) != 1 || fromADay[0].Results[0].Result != "33 of 40" {
		t.Errorf("a coach from a day on sees %+v, %v", fromADay, err)
	}
	if all, err := p.Roster(p.ctx, p.other, thisMonth()); err != nil || len(all) != 1 || all[0].Results != 1 {
		t.Errorf("a coach from a day on has on the roster %+v, %v", all, err)
	}
	if none, err := p.Assignments(p.ctx, p.stranger, p.pupil, 0); err != nil || len(none) != 0 {
		t.Errorf("a stranger sees %+v, %v", none, err)
	}
	p.refused(map[string]error{
		"a stranger gives":         p.Assign(p.ctx, p.stranger, p.pupil, db.Assignment{What: "x", DueOn: due}),
		"the coach records":        p.RecordResult(p.ctx, p.coach, id, db.Result{Day: due, Result: "x"}),
		"the coach unrecords":      p.RemoveResult(p.ctx, p.coach, seen[0].Results[0].ID),
		"the coach ticks off":      p.TickOff(p.ctx, p.coach, id, true),
		"a stranger removes":       p.RemoveAssignment(p.ctx, p.stranger, p.pupil, id),
		"another coach removes":    p.RemoveAssignment(p.ctx, p.other, p.pupil, id),
		"a stranger proposes":      p.ProposeTarget(p.ctx, p.stranger, p.pupil, 80),
		"the pupil proposes":       p.ProposeTarget(p.ctx, p.pupil, p.pupil, 80),
		"the coach accepts for it": p.AnswerProposal(p.ctx, p.coach, p.coach, true),
	})
	p.must(p.RemoveResult(p.ctx, p.pupil, seen[0].Results[0].ID))
	p.must(p.DeletePlayer(p.ctx, p.coach))
	if all, err := p.Assignments(p.ctx, p.pupil, p.pupil, 0); err != nil || len(all) != 1 || all[0].AuthorID != nil || *all[0].Author != "Robin" {
		t.Errorf("after the coach's account was deleted: %+v, %v", all, err)
	}
	p.must(p.RemoveAssignment(p.ctx, p.pupil, p.pupil, id))
}

// A proposed target becomes the player's only when the player accepts it.
func TestProposedTargets(t *testing.T) {
	p := newPair(t)
	target := func() float64 {
		seen, err := p.Seen(p.ctx, p.pupil, p.pupil)
		p.must(err)
		return seen.Target
	}
	p.must(p.ProposeTarget(p.ctx, p.coach, p.pupil, 83))
	p.must(p.ProposeTarget(p.ctx, p.coach, p.pupil, 82))
	p.must(p.ProposeTarget(p.ctx, p.other, p.pupil, 90))
	for who, want := range map[golf.PlayerID]int{p.pupil: 2, p.coach: 1, p.other: 1, p.stranger: 0} {
		if all, err := p.Proposals(p.ctx, who, p.pupil); err != nil || len(all) != want {
			t.Errorf("%d reads %+v, %v", who, all, err)
		}
	}
	if target() != 79 {
		t.Error("a proposal alone changes the target")
	}
	p.must(p.AnswerProposal(p.ctx, p.pupil, p.other, false))
	p.must(p.AnswerProposal(p.ctx, p.pupil, p.coach, true))
	if got := target(); got != 82 {
		t.Errorf("the target is %g", got)
	}
	if err := p.AnswerProposal(p.ctx, p.pupil, p.coach, true); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("accepted twice: %v", err)
	}
}

// later lets the coach's visit end: all that has happened is five hours ago.
func (p pair) later() {
	p.t.Helper()
	for _, sql := range []string{"update coachings set looked_at = looked_at - interval '5 hours', before_at = before_at - interval '5 hours'",
		"update rounds set entered_at = entered_at - interval '5 hours', changed_at = changed_at - interval '5 hours'"} {
		dbtest.Exec(p.t, p.url, sql)
	}
}

// A round is new to a coach when a hole of it was entered for the first time since
// the visit before, and changed when it was only saved again.
func TestEnteredAndCorrected(t *testing.T) {
	p := newPair(t)
	p.must(p.RecordLook(p.ctx, p.coach, p.pupil, looked(db.LookMonths, 0)))
	p.later()
	p.must(p.SaveHole(p.ctx, p.pupil, p.round, entered(1)))
	if r := p.roster(); r.NewRounds != 0 || r.Changed != 1 {
		t.Errorf("corrected: %+v", r)
	}
	rounds, err := p.Rounds(p.ctx, p.coach, p.pupil, db.Chosen{})
	p.must(err)
	if r := rounds[0]; !r.ChangedAt.After(r.EnteredAt) {
		t.Errorf("entered %s, changed %s", r.EnteredAt, r.ChangedAt)
	}
	p.must(p.RecordLook(p.ctx, p.coach, p.pupil, looked(db.LookMonths, 0)))
	p.later()
	second := entered(0)
	second.Number = 2
	p.must(p.SaveHole(p.ctx, p.pupil, p.round, second))
	if r := p.roster(); r.NewRounds != 1 || r.Changed != 0 {
		t.Errorf("another hole entered: %+v", r)
	}
	p.must(p.RecordLook(p.ctx, p.coach, p.pupil, looked(db.LookMonths, 0)))
	p.later()
	p.must(p.SaveDetails(p.ctx, p.pupil, p.round, db.Details{PlayedOn: aRound().PlayedOn, Course: "Elsewhere", Target: 84, Par18: 72}))
	if r := p.roster(); r.NewRounds != 0 || r.Changed != 1 {
		t.Errorf("target changed: %+v", r)
	}
}
