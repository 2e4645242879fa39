package sample

import (
	"net/url"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/practice"
)

// bagOfTrials are invented trials: five clubs from the fairway to a medium green, two
// from the rough, one ball far off.
func bagOfTrials() []practice.BookTrial {
	var all []practice.BookTrial
	add := func(club string, lie golf.Lie, unit golf.TrialUnit, pairs ...float64) {
		for i := 0; i < len(pairs); i += 2 {
			all = append(all, practice.BookTrial{ID: int64(len(all) + 1), Day: golf.Date{Year: 2026, Month: 11, Day: 3 + len(all)/4},
				Trial: golf.Trial{Club: club, Lie: lie, Speed: golf.MediumGreen, Carry: pairs[i], Total: pairs[i+1], Unit: unit}})
		}
	}
	add("8i", golf.Fairway, golf.TrialYards, 7, 21, 8, 25, 9, 26, 10, 31, 12, 34)
	add("pw", golf.Fairway, golf.TrialYards, 10, 19, 11, 20, 12, 21, 13, 23, 14, 24, 16, 27)
	add("gap wedge", golf.Fairway, golf.TrialPaces, 11, 17, 12, 20, 14, 21, 15, 23, 17, 26)
	add("sw", golf.Fairway, golf.TrialPaces, 13, 17, 14, 20, 16, 20, 18, 24, 20, 25, 14, 19, 15, 20, 16, 21, 17, 22, 16, 20, 15, 19, 17, 34)
	add("lw", golf.Fairway, golf.TrialYards, 15, 19, 18, 20)
	add("sw", golf.Rough, golf.TrialMetres, 12, 19, 13, 21, 12, 18)
	add("pw", golf.Rough, golf.TrialMetres, 9, 21)
	return all
}

// runOutPages are the run-out book in its states.
func runOutPages() []Page {
	own, pupil := paths.Whose{Player: 1, Own: true}, paths.Whose{Player: 1}
	engine := analysis.NewEngine()
	page := func(state string, page layout.Page, in practice.RunOutInput) Page {
		in.Name, in.Clubs, in.Today, in.Entered = Player, []string{"8i", "pw", "sw"}, golf.Date{Year: 2026, Month: 11, Day: 26}, "page"
		if in.Units == (form.Units{}) {
			in.Units = form.StandardUnits
		}
		ask := analysis.RunOutInput{Chip: in.Chip.Ahead(), History: playedSeason(), Target: 79}
		for _, t := range in.Trials {
			ask.Trials = append(ask.Trials, t.Trial)
		}
		book, err := engine.RunOut(ask)
		if err != nil {
			panic("sample: " + err.Error())
		}
		in.RunOut = book
		return Page{"practice", "run-out", state, practice.NewRunOutPage(page, in).View()}
	}
	chip := func(distance, edge, lie, slope string, unit golf.Unit) form.Chip {
		return form.ParseChip(url.Values{"distance": {distance}, "edge": {edge}, "lie": {lie}, "speed": {"medium"}, "slope": {slope}}, unit)
	}
	refused := form.ParseTrials(url.Values{"pairs": {"12 21, 13, 14 24"}, "lie": {"fairway"}, "green": {"fast"}, "unit": {"paces"}, "day": {"2026-11-26"}})
	metres := form.Units{Far: golf.Metres, Green: golf.Metres}
	here := signedIn(own.Lessons())
	return []Page{
		page("full", here, practice.RunOutInput{Whose: own, Trials: bagOfTrials(), Chip: chip("23", "17", "fairway", "level", golf.Yards)}),
		page("metres", here, practice.RunOutInput{Whose: own, Trials: bagOfTrials(), Units: metres, Chip: chip("17", "12.5", "rough", "downhill", golf.Metres)}),
		page("book", here, practice.RunOutInput{Whose: own, Trials: bagOfTrials()}),
		page("empty", here, practice.RunOutInput{Whose: own}),
		page("refused", here, practice.RunOutInput{Whose: own, Trials: bagOfTrials()[:3], Typed: &refused}),
		page("asked-wrongly", here, practice.RunOutInput{Whose: own, Trials: bagOfTrials(), Chip: chip("23", "30", "fairway", "level", golf.Yards)}),
		page("too-little", here, practice.RunOutInput{Whose: own, Trials: bagOfTrials()[:8], Chip: chip("12", "4", "fairway", "level", golf.Yards)}),
		page("no-page", here, practice.RunOutInput{Whose: own, Trials: bagOfTrials()[:8], Chip: chip("12", "4", "rough", "level", golf.Yards)}),
		page("coach", teaches(paths.Coaching), practice.RunOutInput{Whose: pupil, Trials: bagOfTrials(), Chip: chip("23", "17", "fairway", "uphill", golf.Yards)}),
		page("coach-empty", teaches(paths.Coaching), practice.RunOutInput{Whose: pupil}),
	}
}
