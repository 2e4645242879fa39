package sample

import (
	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/practice"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	drills "strokeledger/web/practice"
)

// practicePages are the plan of practice and the drills.
func practicePages() []Page {
	own, pupil := paths.Whose{Player: 1, Own: true}, paths.Whose{Player: 1}
	engine := analysis.NewEngine()
	plan := func(state string, page layout.Page, whose paths.Whose, played []golf.Played) Page {
		p, err := engine.Plan(analysis.PlanInput{History: played, Target: 79, Minutes: 180})
		if err != nil {
			panic("sample: " + err.Error())
		}
		return Page{"practice", "plan", state, drills.NewPlanPage(page, drills.PlanInput{Whose: whose, Name: Player, Target: 79, Minutes: 180,
			Units: form.StandardUnits, Today: sampleDay, Taken: []drills.TakenDay{{ID: 1, Day: golf.Date{Year: 2026, Month: 5, Day: 2}, Rounds: 12}}, Plan: p}).View()}
	}
	season := playedSeason()
	all := []Page{
		plan("full", signedIn(own.Lessons()), own, season), plan("coach", teaches(paths.Coaching), pupil, season),
		plan("few", signedIn(own.Lessons()), own, season[:2]), plan("empty", signedIn(own.Lessons()), own, nil), plan("coach-empty", teaches(paths.Coaching), pupil, nil),
	}
	for _, d := range practice.Drills() {
		f, err := engine.Drill(d.Key, analysis.DrillInput{PlanInput: analysis.PlanInput{History: season, Target: 79, Minutes: 180}})
		if err != nil {
			panic("sample: " + err.Error())
		}
		all = append(all, Page{"practice", "drill", d.Key, drills.NewDrillPage(signedIn(own.Lessons()), drills.DrillInput{Whose: own, Name: Player, Target: 79, Units: form.StandardUnits, DrillFor: f}).View()})
	}
	none, err := engine.Drill("start-line", analysis.DrillInput{PlanInput: analysis.PlanInput{Target: 79, Minutes: 180}})
	if err != nil {
		panic("sample: " + err.Error())
	}
	all = append(all, drillPages(engine, season)...)
	return append(all, Page{"practice", "drill", "no-rounds", drills.NewDrillPage(teaches(paths.Coaching), drills.DrillInput{Whose: pupil, Name: Player, Target: 79, Units: form.StandardUnits, DrillFor: none}).View()})
}
