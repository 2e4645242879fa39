package sample

import (
	"net/url"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/practice"
)

// puttSessions are invented sessions of the start line drill from 6 ft, which lean to
// the right.
func puttSessions(today golf.Date) []analysis.DrillSession {
	var all []analysis.DrillSession
	for week := 7; week >= 0; week-- {
		letters := strings.Repeat("rrlmr", week%4+1) + strings.Repeat("mrrmlmrsrm", 4)
		tries, err := golf.ParseTries(letters[:40])
		if err != nil {
			panic("sample: " + err.Error())
		}
		counted, tried := tries.By(1)
		all = append(all, analysis.DrillSession{ID: int64(8 - week), Name: "Start line", Day: today.AddDays(-7 * week), Feet: 6, Tries: tries, Counted: counted, Tried: tried})
	}
	short := all[3]
	short.Feet = 4
	return append(all, short)
}

// startLinePages are the page of the start line in its states.
func startLinePages() []Page {
	own, pupil := paths.Whose{Player: 1, Own: true}, paths.Whose{Player: 1}
	engine, today := analysis.NewEngine(), golf.Date{Year: 2026, Month: 11, Day: 26}
	page := func(state string, page layout.Page, whose paths.Whose, history []golf.Played, sessions []analysis.DrillSession, asked form.Putts) Page {
		l, err := engine.StartLine(analysis.StartLineInput{PlanInput: analysis.PlanInput{History: history, Target: 79}, Sessions: sessions, Today: today, Tries: practice.TriesOf(asked)})
		if err != nil {
			panic("sample: " + err.Error())
		}
		return Page{"practice", "start-line", state, practice.NewStartLinePage(page, practice.StartLineInput{Whose: whose, Name: Player, Asked: asked, StartLine: l}).View()}
	}
	asked := func(made, left, right string) form.Putts {
		return form.ParsePutts(url.Values{"feet": {"6"}, "tries": {"40"}, "made": {made}, "left": {left}, "right": {right}}, practice.LeastPuttFeet, practice.MostPuttFeet)
	}
	here, season := signedIn(own.Lessons()), playedSeason()
	return []Page{
		page("full", here, own, season, puttSessions(today), form.Putts{}), page("coach", teaches(paths.Coaching), pupil, season, puttSessions(today), form.Putts{}),
		page("empty", here, own, season, nil, form.Putts{}), page("no-rounds", here, own, nil, puttSessions(today), form.Putts{}),
		page("asked", here, own, season, nil, asked("22", "4", "9")), page("makes-alone", here, own, season, nil, asked("22", "", "")),
		page("straight", here, own, season, nil, asked("38", "1", "1")), page("refused", here, own, season, nil, asked("41", "4", "")),
	}
}
