package sample

import (
	"slices"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/practice"
	"strokeledger/web/form"
	"strokeledger/web/paths"
	drills "strokeledger/web/practice"
)

var sampleDay = golf.Date{Year: 2026, Month: 11, Day: 26}

// tried is a session of tries in order from 6 ft, some weeks ago.
func tried(id int64, weeks, stations int, text, note string) analysis.DrillSession {
	tries, err := golf.ParseTries(text)
	if err != nil {
		panic("sample: " + err.Error())
	}
	s := analysis.DrillSession{ID: id, Name: "Start line", Day: sampleDay.AddDays(-7 * weeks), Feet: 6, Tries: tries, Minutes: 20, Note: note}
	s.Counted, s.Tried = tries.By(stations)
	return s
}

// straightPutts are the sessions of a player who gets better and starts to the right.
func straightPutts() []analysis.DrillSession {
	var all []analysis.DrillSession
	for i, made := range []int{8, 9, 11, 10, 12, 13} {
		all = append(all, tried(int64(i+1), 12-2*i, 1, strings.Repeat("m", made)+strings.Repeat("r", 15-made)+"lrslg", ""))
	}
	return all
}

// lately are the rounds of a season as if they had been played every few days up to
// the day of the samples.
func lately(season []golf.Played) []golf.Played {
	all := slices.Clone(season)
	for i := range all {
		all[i].Target, all[i].Round.Date = 79, sampleDay.AddDays(-6*(len(all)-1-i))
	}
	return all
}

// drillPages are drills in every state: entered, refused, saved, told.
func drillPages(engine *analysis.Engine, season []golf.Played) []Page {
	own, pupil := paths.Whose{Player: 1, Own: true}, paths.Whose{Player: 1}
	of := func(key string, sessions ...analysis.DrillSession) analysis.DrillFor {
		f, err := engine.Drill(key, analysis.DrillInput{PlanInput: analysis.PlanInput{History: season, Target: 79, Minutes: 180}, Sessions: sessions, Today: sampleDay})
		if err != nil {
			panic("sample: " + err.Error())
		}
		return f
	}
	in := func(f analysis.DrillFor, typed *form.Session) drills.DrillInput {
		d := drills.DrillInput{Whose: own, Name: Player, Target: 79, Units: form.StandardUnits, Day: sampleDay, DrillFor: f}
		first := drills.FirstSession(f, "a-page-of-the-gallery", sampleDay)
		if typed != nil {
			first = *typed
		}
		d.Form = &drills.SessionInput{At: own.Drill(f.Key), Typed: first, Offline: true}
		return d
	}
	page := func(state string, d drills.DrillInput) Page {
		return Page{"practice", "session", state, drills.NewDrillPage(signedIn(own.Lessons()), d).View()}
	}
	typed := func(f analysis.DrillFor, fields ...string) *form.Session {
		v := map[string][]string{"entered": {"a-page-of-the-gallery"}, "day": {sampleDay.String()}, "feet": {"6"}}
		for i := 0; i < len(fields); i += 2 {
			v[fields[i]] = []string{fields[i+1]}
		}
		s := form.ParseSession(v, drills.AskOf(f, sampleDay))
		return &s
	}
	putts, wedges, side := of("start-line", straightPutts()...), of("wedge-ladder", analysis.DrillSession{ID: 9, Name: "Wedge ladder", Day: sampleDay, Counted: []int{5, 4, 3}, Tried: []int{9, 9, 9}, Minutes: 40, Note: "wind across"}), of("short-side")
	going := typed(putts, "tries", "mmlrmmsgmmr").AsTyped()
	conflict := in(putts, &going)
	conflict.Form.Kept = drills.KeptText(straightPutts()[0])
	coach := drills.DrillInput{Whose: pupil, Name: Player, Target: 79, Units: form.StandardUnits, Day: sampleDay, DrillFor: putts}
	beside := func(played []golf.Played) drills.DrillInput {
		d := in(putts, nil)
		var err error
		if d.Carry, err = engine.CarryOver(analysis.CarryInput{Drill: putts, History: played, Boundary: golf.StandardBoundary, Today: sampleDay}); err != nil {
			panic("sample: " + err.Error())
		}
		return d
	}
	coach.Carry = beside(lately(season)).Carry
	offline := drills.NewDrillPage(signedIn(own.Lessons()), in(putts, &going))
	offline.Form.State = "Offline: the session is kept on this phone and sent when the connection is back." // as static/drill.js tells it
	change := in(putts, &going)
	change.Form = &drills.SessionInput{At: own.Session(3), Typed: going, Remove: own.RemoveSession(3), Changing: true}
	return append(planPages(engine, season),
		page("keys", in(putts, &going)), Page{"practice", "session", "offline", offline.View()}, page("keys-empty", in(of("start-line"), nil)), page("keys-refused", in(putts, typed(putts, "tries", "", "feet", "40", "minutes", "x"))), page("keys-conflict", conflict),
		page("round-the-hole", in(of("round-the-hole", tried(7, 1, 8, "mmmxmmmmmmmxmmmm", "")), nil)),
		page("counts", in(wedges, nil)), page("counts-refused", in(wedges, typed(wedges, "each", "9", "count-0", "12", "count-1", "3"))),
		page("notes", in(side, nil)), page("one-session", in(of("start-line", straightPutts()[5]), nil)), page("few-tries", in(of("start-line", tried(1, 0, 1, "mml", "rain")), nil)),
		page("carry", beside(lately(season))), page("carry-no-rounds", beside(nil)), page("own", in(analysis.ToldOwn(analysis.OwnDrill{Key: "own-3", Name: "Gate", SetUp: "Two tees a ball and a half apart, ten balls.", Tries: 20, Mark: 14},
			analysis.DrillInput{PlanInput: analysis.PlanInput{Target: 79}, Today: sampleDay, Sessions: []analysis.DrillSession{tried(1, 1, 1, strings.Repeat("m", 15)+"xxxxx", "")}}), nil)),
		Page{"practice", "session", "coach", drills.NewDrillPage(teaches(paths.Coaching), coach).View()},
		Page{"practice", "session-change", "full", drills.NewSessionPage(signedIn(own.Lessons()), change).View()},
	)
}

// planPages are plans that were taken, and the log.
func planPages(engine *analysis.Engine, season []golf.Played) []Page {
	own, pupil := paths.Whose{Player: 1, Own: true}, paths.Whose{Player: 1}
	season = slices.Clone(season)
	for i := range season {
		season[i].Target = 79
	}
	plan, err := engine.Plan(analysis.PlanInput{History: season[:9], Target: 79, Minutes: 180})
	if err != nil {
		panic("sample: " + err.Error())
	}
	data, err := plan.Kept()
	if err != nil {
		panic("sample: " + err.Error())
	}
	kept, err := analysis.ReadKept(data)
	if err != nil {
		panic("sample: " + err.Error())
	}
	taken := func(whose paths.Whose, rounds int) drills.TakenInput {
		since, err := engine.Since(analysis.SinceInput{History: season[:9+rounds], First: plan.First, Last: plan.Last, Target: 79})
		if err != nil {
			panic("sample: " + err.Error())
		}
		in := drills.TakenInput{Whose: whose, ID: 1, Name: Player, Day: plan.Last, First: plan.First, Last: plan.Last, Rounds: 9, Target: 79, Minutes: 180, Units: form.StandardUnits, Kept: kept, Since: since}
		return in
	}
	putts, err := engine.Told("start-line", 88, analysis.DrillInput{PlanInput: analysis.PlanInput{Target: 79}, Sessions: straightPutts(), Today: sampleDay})
	if err != nil {
		panic("sample: " + err.Error())
	}
	full := taken(own, len(season)-9)
	full.Done = map[string][]analysis.SessionResult{}
	for _, d := range practice.Drills() {
		full.Done[d.Key] = putts.Results
	}
	log := drills.LogInput{Whose: own, Name: Player, Minutes: 180, Today: sampleDay, Told: map[string]analysis.DrillFor{"start-line": putts},
		Words: []drills.Recorded{{Day: sampleDay, What: "Nine holes with one club", Result: "47 strokes", Passed: true}}}
	coached, empty := log, log
	coached.Whose, empty.Told, empty.Words = pupil, nil, nil
	return []Page{
		{"practice", "taken", "full", drills.NewTakenPage(signedIn(own.Lessons()), full).View()}, {"practice", "taken", "fresh", drills.NewTakenPage(signedIn(own.Lessons()), taken(own, 0)).View()},
		{"practice", "taken", "coach", drills.NewTakenPage(teaches(paths.Coaching), taken(pupil, 3)).View()},
		{"practice", "log", "full", drills.NewLogPage(signedIn(own.Lessons()), log).View()}, {"practice", "log", "coach", drills.NewLogPage(teaches(paths.Coaching), coached).View()},
		{"practice", "log", "empty", drills.NewLogPage(signedIn(own.Lessons()), empty).View()},
	}
}
