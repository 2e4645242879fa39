package sample

import (
	"fmt"
	"slices"
	"time"

	"strokeledger/analysis"
	"strokeledger/analysis/account"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
	"strokeledger/web/coach"
	"strokeledger/web/figures"
	"strokeledger/web/form"
	"strokeledger/web/notes"
	"strokeledger/web/paths"
)

// The day of the pages of coaching, the coach's previous visit, and whose pages
// a coach and the player look at.
var (
	coachingDay = golf.Date{Year: 2026, Month: time.August, Day: 31}
	lastVisit   = time.Date(2026, 8, 25, 10, 0, 0, 0, time.UTC)
	ownPages    = paths.Whose{Player: 1, Own: true}
	pupilsPages = paths.Whose{Player: 1}
)

// coachPages are the pages of coaching.
func coachPages() []Page {
	here, pupils, more := signedIn(paths.Coaching), teaches(paths.Coaching), signedIn(paths.Notices)
	more.Notices = 30
	refused := coach.CoachingInput{Whose: ownPages, From: form.ParseSharedFrom("May")}
	asked := coach.CoachingInput{Whose: ownPages, Coaches: coaches(), Ended: []coach.EndInput{{Player: 1, Coach: 5, CoachName: "Zed Ames", Own: true}, {Player: 6, Coach: 1, PlayerName: "Gwen Hale"}}, Link: "https://harrowfen.example/coaching/accept?token=ABC", Unused: 2}
	teaching := coach.CoachingInput{Whose: ownPages, Coaches: coaches()[:1], Roster: roster(paths.Roster{}), Codes: asksOf("Kit Rowan")}
	none := coach.CoachingInput{Whose: ownPages, Roster: roster(paths.Roster{Show: "late", Sort: "putting", Name: "Zoe"})}
	withBar := pupils
	withBar.Pupil = pupilBar()
	own, pupil, empty := lessons(ownPages), lessons(pupilsPages), coach.LessonsInput{Whose: ownPages, Name: Player, Target: 79, Today: coachingDay}
	first := lessons(pupilsPages)
	first.Visit = time.Time{}
	later := pupils
	later.Since = coachingDay.AddDays(-3)
	return append(slices.Concat(reportPages(), overviewPages(), besidePages(), squadPages(), codePages()),
		Page{"coach", "coaching", "empty", coach.NewCoachingPage(here, coach.CoachingInput{Whose: ownPages}).View()},
		Page{"coach", "coaching", "invited", coach.NewCoachingPage(here, asked).View()},
		Page{"coach", "coaching", "refused", coach.NewCoachingPage(here, refused).View()},
		Page{"coach", "roster", "full", coach.NewCoachingPage(pupils, teaching).View()},
		Page{"coach", "roster", "group", coach.NewCoachingPage(pupils, coach.CoachingInput{Whose: ownPages, Roster: roster(paths.Roster{Group: "Tuesday six"})}).View()},
		Page{"coach", "roster", "many", coach.NewCoachingPage(pupils, coach.CoachingInput{Whose: ownPages, Roster: crowd()}).View()},
		Page{"coach", "roster", "none-match", coach.NewCoachingPage(pupils, none).View()},
		Page{"coach", "roster", "refused-name", coach.NewCoachingPage(pupils, coach.CoachingInput{Whose: ownPages, Roster: roster(paths.Roster{}), Renamed: &coach.RenamedGroup{From: "Tuesday six", To: form.ParseGroup("Juniors, Seniors")}}).View()},
		Page{"coach", "invitation", "open", coach.NewInvitationPage(here, coach.Invitation{Name: "Bea Lund", Player: "4", Token: "ABC", From: coachingDay}).View()},
		Page{"coach", "invitation", "used", coach.NewInvitationPage(here, coach.Invitation{Name: "Bea Lund", Used: true}).View()},
		Page{"coach", "end", "own", coach.NewEndPage(here, coach.EndInput{Player: 1, Coach: 2, PlayerName: Player, CoachName: "Ines Vale", Own: true}).View()},
		Page{"coach", "end", "pupil", coach.NewEndPage(pupils, coach.EndInput{Player: 4, Coach: 1, PlayerName: "Bea Lund", CoachName: Player}).View()},
		Page{"coach", "lessons", "empty", coach.NewLessonsPage(here, empty).View()},
		Page{"coach", "lessons", "own", coach.NewLessonsPage(here, own).View()},
		Page{"coach", "lessons", "pupil", coach.NewLessonsPage(withBar, pupil).View()},
		Page{"coach", "lessons", "later-day", coach.NewLessonsPage(later, coach.LessonsInput{Whose: pupilsPages, Name: Player, Target: 79, Today: coachingDay}).View()},
		Page{"coach", "lessons", "first-visit", coach.NewLessonsPage(pupils, first).View()},
		Page{"coach", "lessons", "refused-lesson", coach.NewLessonsPage(pupils, refusedLessons(pupilsPages, form.Returned{Lesson: refusedNote()})).View()},
		Page{"coach", "lessons", "refused-next", coach.NewLessonsPage(pupils, refusedLessons(pupilsPages, form.Returned{Arranged: refusedLesson()})).View()},
		Page{"coach", "lessons", "refused-change", coach.NewLessonsPage(here, refusedLessons(ownPages, form.Returned{Of: 2, Arranged: refusedLesson()})).View()},
		Page{"coach", "lessons", "refused-practice", coach.NewLessonsPage(pupils, refusedLessons(pupilsPages, form.Returned{Assignment: &form.Assignment{What: form.Text{Text: "Putts"}, Due: form.ParseDay("soon")}})).View()},
		Page{"coach", "lessons", "refused-target", coach.NewLessonsPage(pupils, refusedLessons(pupilsPages, form.Returned{Target: &form.Number{Text: "150", Problem: "Allowed: " + form.TargetRange() + "."}})).View()},
		Page{"coach", "lessons", "refused-result", coach.NewLessonsPage(here, refusedLessons(ownPages, form.Returned{Of: 1, Result: &form.Result{Day: form.ParseDay("May"), Result: form.Text{Text: "33 of 40"}}})).View()},
		Page{"coach", "lessons", "refused-reply", coach.NewLessonsPage(here, refusedLessons(ownPages, form.Returned{Of: 2, Reply: refusedNote()})).View()},
		Page{"coach", "looks", "empty", coach.NewLooksPage(here, nil, 1, false).View()},
		Page{"coach", "looks", "full", coach.NewLooksPage(here, looks(), 2, true).View()},
		Page{"coach", "notices", "empty", coach.NewNoticesPage(here, nil).View()},
		Page{"coach", "notices", "full", coach.NewNoticesPage(pupils, notices()).View()},
		Page{"coach", "notices", "more", coach.NewNoticesPage(more, notices()).View()},
		Page{"coach", "former-notes", "empty", coach.NewFormerNotesPage(here, nil).View()},
		Page{"coach", "former-notes", "full", coach.NewFormerNotesPage(here, []coach.FormerNote{coach.NewFormerNote("4", "9", "Bea Lund", lastVisit, "Slow down:\n- count to three\n- then swing")}).View()},
	)
}

// coaches are one with access from a certain day on, and one waiting for access.
func coaches() []coach.CoachInput {
	from := time.Date(2026, 5, 2, 0, 0, 0, 0, time.UTC)
	return []coach.CoachInput{{Player: 1, Coach: 2, Name: "Ines Vale", Email: "ines@harrowfen.example", From: &from, Approved: true, Looked: &lastVisit},
		{Player: 1, Coach: 3, Name: "Tam Orr", Email: "tam@harrowfen.example"}}
}

// formOf is a form over ten rounds that plays to a level now and to another
// before.
func formOf(now, before float64) compare.Form {
	f := compare.Form{Rounds: 10, Doubles: 2.4, Compound: .5}
	for _, c := range golf.Categories {
		f.Now[c] = compare.PlaysTo{Rounds: 10, Level: compare.Level{Value: now}, Low: compare.Level{Value: now - 4}, High: compare.Level{Value: now + 4}}
		f.Before[c] = compare.Level{Value: before}
		f.Lost[c] = (now - 84) / 4 * float64(c) / 2
		f.Lost[0] += f.Lost[c]
		f.Changes[c] = compare.Change{Known: true, Mean: (now - before) / 4, Word: compare.Chance}
	}
	if now != before {
		f.Changes[golf.Approach].Word, f.Changes[golf.Putting].Word = compare.Clear, compare.Leaning
	}
	return f
}

// roster is four pupils: one with much that is new, one whose practice is late,
// one who got better, and one without a round.
func roster(at paths.Roster) coach.RosterInput {
	return coach.RosterInput{At: at, Today: coachingDay, Pupils: []coach.RosterPupil{
		{ID: 4, Name: "Bea Lund", Target: 79, Month: 3, NewRounds: 1, NewRound: 9, Asked: []coach.Question{{ID: 7, Round: 9, Hole: 4, Shot: 2, Day: coachingDay.AddDays(-2)}}, Groups: []string{"Juniors", "Tuesday six"}, Unread: 2, Results: 1, DueWhat: "Start line", Due: coachingDay.AddDays(2), RosterRow: analysis.RosterRow{From: coachingDay.AddDays(-420), Last: coachingDay.AddDays(-2), Score: 86, HolesTarget: 79, Holes: 18, Form: formOf(93, 84)}},
		{ID: 5, Name: "Dev Marsh", Target: 84, Month: 1, DueWhat: "Lag putts", Due: coachingDay.AddDays(-4), RosterRow: analysis.RosterRow{From: coachingDay.AddDays(-420), Last: coachingDay.AddDays(-9), Score: 41, HolesTarget: 42, Holes: 9, Form: formOf(86, 86)}},
		{ID: 6, Name: "Gwen Hale", Target: 75, Lessons: []coach.NearLesson{{ID: 3, Day: coachingDay, Starts: new(17*60 + 30), Aim: "Start line, and how far past the hole"}}, RosterRow: analysis.RosterRow{From: coachingDay.AddDays(-420), Last: coachingDay.AddDays(-400), Score: 78, HolesTarget: 75, Holes: 18, Form: formOf(74, 82)}},
		{ID: 7, Name: "Ruth Amis", Target: 95, Lessons: []coach.NearLesson{{ID: 4, Day: coachingDay.AddDays(1)}}, Since: coachingDay.AddDays(-30), Begun: coachingDay.AddDays(-30), Groups: []string{"Tuesday six"}},
		{ID: 8, Name: "Zed Ames", Target: 95, Archived: true},
	}}
}

// crowd is 63 pupils, one of them with a long name.
func crowd() coach.RosterInput {
	in := roster(paths.Roster{})
	four := in.Pupils[:4]
	in.Pupils = nil
	for i := range 63 {
		p := four[i%4]
		p.ID, p.Name = golf.PlayerID(100+i), fmt.Sprintf("%s %d", p.Name, i+1)
		if i == 0 {
			p.Name = "Maximiliana Featherstonehaugh-Wolfeschlegelstein" // 48 letters
		}
		in.Pupils = append(in.Pupils, p)
	}
	return in
}

// squad is three pupils side by side, one of whom has not played.
func squad() coach.SquadInput {
	in := coach.SquadInput{Days: form.Days{From: form.DayOf(coachingDay.AddDays(-91)), To: form.DayOf(coachingDay)}, At: paths.SquadChosen(nil).Of([]golf.PlayerID{4, 5}), Units: form.StandardUnits, Today: coachingDay, Groups: []string{"Juniors", "Tuesday six"}, Members: []coach.SquadMember{
		{ID: 4, Name: "Bea Lund", Target: 79, Chosen: true}, {ID: 5, Name: "Dev Marsh", Target: 84, Chosen: true}, {ID: 7, Name: "Ruth Amis", Target: 95}}}
	in.Squad = analysis.Squad{Rows: make([]analysis.SquadRow, 3), Played: 2, Rounds: 16, Most: golf.Putting}
	for i, worst := range []golf.Category{golf.Approach, golf.Putting} {
		row := &in.Squad.Rows[i]
		row.Lost.Rounds, row.First, row.Worst = 8, coachingDay.AddDays(-60), worst
		all := 0.0
		for _, c := range golf.Categories {
			lost := float64(c)*.43 - .58 + .27*float64(i)
			row.Lost.Cells[c] = cell(lost)
			in.Squad.Together[c] += lost / 2
			all += lost
		}
		row.Lost.Cells[0] = cell(all)
		in.Squad.Together[0] += all / 2
	}
	in.Shared = shared(0, 1)
	return in
}

// cell is a loss over eight rounds, with its interval and a change.
func cell(mean float64) compare.Cell {
	c := compare.Cell{Figure: compare.Figure{Known: true}, Interval: stat.Interval{Low: mean - 1, High: mean + 1}, Change: compare.Change{Known: true, Mean: -.4, Word: compare.Leaning}}
	c.Mean, c.N = mean, 8
	return c
}

// lessons is a page of lessons with everything on it.
func lessons(whose paths.Whose) coach.LessonsInput {
	written := time.Date(2026, 8, 20, 18, 5, 0, 0, time.UTC)
	round := figures.ListedRound{ID: 9, Card: 18, Target: 79, New: figures.Entered, NewDay: coachingDay.AddDays(-1), Round: golf.Round{Date: coachingDay.AddDays(-2), Course: "Harrow Fen", Holes: make([]golf.Hole, 18)},
		Account: account.Account{Score: 86, Expected: 79, Lost: account.Split{Approach: 5, Putting: 2, Total: 7}, Doubles: make([]account.Double, 2)}}
	begun := figures.ListedRound{ID: 10, Card: 18, Target: 79, Round: golf.Round{Date: coachingDay, Course: "Harrow Fen"}}
	return coach.LessonsInput{Whose: whose, Me: 2, Name: Player, Target: 79, Coached: true, Today: coachingDay, Visit: lastVisit, Rounds: []figures.ListedRound{begun, round},
		Notes: []notes.Note{
			{ID: 1, Author: Player, Mine: whose.Own, Question: true, Unread: true, Round: 9, Hole: 4, Shot: 2, Day: coachingDay.AddDays(-2), Body: "Was that the club?", Written: written},
			{ID: 2, Author: "Ines Vale", Mine: !whose.Own, Lesson: true, Day: coachingDay.AddDays(-11), Body: "Two things:\n- the ball further back\n- count to three\n\nThen play.", Written: written, Edited: true, Read: lastVisit,
				Replies: []notes.Reply{{ID: 1, Author: Player, Mine: whose.Own, Body: "It works.", Written: lastVisit}}},
			{ID: 3, Author: "Ines Vale", Mine: !whose.Own, Private: !whose.Own, Round: 9, Day: coachingDay.AddDays(-2), Body: "Tired after twelve holes.", Written: written},
		},
		Assignments: []coach.Assignment{
			{ID: 1, By: "Ines Vale", Mine: !whose.Own, What: "Start line", Amount: "40 putts", PassMark: "32 of 40", Due: coachingDay.AddDays(-1),
				Results: []coach.AssignmentResult{{ID: 1, Day: coachingDay.AddDays(-5), Result: "30 of 40"}, {ID: 2, Day: coachingDay.AddDays(-2), Result: "33 of 40", Passed: true}}},
			{ID: 2, What: "Bunker shots", Due: coachingDay.AddDays(3)}, {ID: 3, What: "Lag putts", Done: true},
		},
		Phrases: phrasesFor(whose), Lessons: arrangedLessons(), Coaches: []coach.LessonCoach{{ID: 2, Name: "Ines Vale"}, {ID: 3, Name: "Tam Orr"}},
		Proposals: []coach.Proposal{{CoachID: 2, Coach: "Ines Vale", Target: 82.5}}}
}

// refusedLessons is that page with a form that came back.
func refusedLessons(whose paths.Whose, back form.Returned) coach.LessonsInput {
	in := lessons(whose)
	in.Returned = back
	return in
}

// refusedNote is a note without a word, on a day that cannot be read.
func refusedNote() *form.Note {
	return &form.Note{Body: form.Text{Problem: "Allowed: 1 to 4000 letters."}, Day: form.ParseDay("May")}
}

// notices are one of every kind, to the player and about a pupil.
func notices() []coach.Notice {
	var all []coach.Notice
	for i, kind := range []string{"question", "answer", "note", "proposed", "accepted", "declined", "practice", "recorded", "late", "removed", "arranged", "moved", "off", "walked", "walkin", "walkout", "request", "taken", "refused", "asked", "linked", "approved", "day", "ended", "resumed", "gone"} {
		for _, whose := range []paths.Whose{ownPages, pupilsPages} {
			n := coach.Notice{Kind: kind, By: "Ines Vale", Whose: whose, What: "82", At: lastVisit, New: i < 3, Day: coachingDay}
			if i < 3 {
				n.Round, n.Note = 9, 7
			}
			all = append(all, n)
		}
	}
	return all
}

// looks are a statement, several statements and another page.
func looks() []coach.Look {
	day := coachingDay.AddDays(-2)
	return []coach.Look{{Name: "Ines Vale", Kind: "lessons", Times: 1, Last: lastVisit},
		{Name: "Ines Vale", Kind: "statement", Times: 2, Last: lastVisit, Rounds: []coach.LookedRound{{ID: 9, Day: day, Course: "Harrow Fen", Times: 2}}},
		{Name: "Tam Orr", Kind: "statement", Times: 4, Last: lastVisit, Rounds: []coach.LookedRound{{ID: 9, Day: day, Times: 1}, {ID: 8, Day: day, Course: "Harrow Fen", Times: 1, Removed: true}, {ID: 7, Times: 2}}}}
}
