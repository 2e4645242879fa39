package sample

import (
	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/web/coach"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// pupilBar is the bar of the pupil on the pages that a coach sees.
func pupilBar() *layout.PupilBar {
	return &layout.PupilBar{Name: Player, Facts: "79, shared from 1 March 2025",
		Pages: []layout.Destination{{At: pupilsPages.Overview(), Name: "Overview", Current: "page"}, {At: pupilsPages.Rounds(), Name: "Rounds"}, {At: paths.Comparison{Whose: pupilsPages}.Months(), Name: "Months"},
			{At: pupilsPages.Lessons(), Name: "Practice"}, {At: pupilsPages.Plan(), Name: "Plan"}, {At: pupilsPages.Report(), Name: "Report"}},
		Turn: []layout.Turn{{At: pupilsPages.Round(8), Name: "10 Aug", Back: true}, {At: pupilsPages.Round(10), Name: "31 Aug", On: true}, {At: "/players/4/rounds/9#note-7", Name: "Next in queue: Bea Lund"}}}
}

// overviewPages are a coach's overview of a pupil.
func overviewPages() []Page {
	page := teaches(paths.Coaching)
	page.Pupil = pupilBar()
	overview := func(state string, in coach.OverviewInput) Page {
		return Page{"coach", "overview", state, coach.NewOverviewPage(page, in).View()}
	}
	full := overviewInput(playedYears())
	refused := overviewInput(playedYears()[:6])
	groups := form.Groups{Text: "x", Problem: "At most 12 groups."}
	refused.Returned = form.Returned{Groups: &groups}
	empty := overviewInput(nil)
	empty.Notes, empty.Assignments, empty.Lessons, empty.Pupil = nil, nil, nil, coach.RosterPupil{Archived: true}
	return []Page{overview("full", full), overview("refused", refused), overview("empty", empty)}
}

// overviewInput is an overview of some rounds with everything on it.
func overviewInput(played []golf.Played) coach.OverviewInput {
	all := lessons(pupilsPages)
	in := coach.OverviewInput{Whose: pupilsPages, Name: Player, Target: 79, Units: form.StandardUnits, Today: coachingDay, Visit: lastVisit, Notes: all.Notes, Me: all.Me, Phrases: all.Phrases, Lessons: all.Lessons, Assignments: all.Assignments,
		Pupil: coach.RosterPupil{ID: 1, Name: Player, NewRounds: 1, Asked: []coach.Question{{ID: 1, Round: 9, Hole: 4, Shot: 2}}, Groups: []string{"Tuesday six"}}}
	in.Assignments[0].Figure, in.Assignments[0].Given = "putting", coachingDay.AddDays(-20)
	in.Assignments[1].Figure, in.Assignments[1].Given = "approach", coachingDay.AddDays(90)
	of := analysis.OverviewInput{History: played, Target: 79, Boundary: golf.StandardBoundary, Lesson: coach.LastLesson(in.Notes)}
	for _, a := range coach.Figured(in.Assignments) {
		of.Practice = append(of.Practice, analysis.Practised{From: a.Given, Row: a.Figure})
	}
	var err error
	if in.Overview, err = analysis.NewEngine().Overview(of); err != nil {
		panic("sample: " + err.Error())
	}
	return in
}
