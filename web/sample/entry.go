package sample

import (
	"slices"
	"strconv"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/shotsfile"
	"strokeledger/web/entry"
	"strokeledger/web/form"
	"strokeledger/web/paths"
	"strokeledger/web/site"
)

// entryPages are the pages on which a round is entered.
func entryPages() []Page {
	return slices.Concat(courseListPages(), coursePages(), addCoursePages(), beginPages(), detailsPages(), holePages(), shotsPages(), importPages())
}

// harrowFen is the invented course of the samples, by hole from 1. The lengths are
// in yards.
var harrowFen = []golf.CardHole{
	{Number: 1, Par: 4, Length: golf.Yards.Of(384), Index: 7}, {Number: 2, Par: 3, Length: golf.Yards.Of(158), Index: 17},
	{Number: 3, Par: 5, Length: golf.Yards.Of(498), Index: 5}, {Number: 4, Par: 4, Length: golf.Yards.Of(410), Index: 1},
	{Number: 5, Par: 4, Length: golf.Yards.Of(345), Index: 13}, {Number: 6, Par: 4, Length: golf.Yards.Of(417), Index: 3},
	{Number: 7, Par: 3, Length: golf.Yards.Of(182), Index: 11}, {Number: 8, Par: 5, Length: golf.Yards.Of(520), Index: 9},
	{Number: 9, Par: 4, Length: golf.Yards.Of(371), Index: 15},
}

func courseListPages() []Page {
	listed := []entry.ListedCourse{
		{ID: 1, Name: "Harrow Fen", Tee: "white", Holes: 9, Size: 9, Par: 36, Length: golf.Yards.Of(3285), Mine: true, Times: 14},
		{ID: 2, Name: "Quarry Hill", Holes: 6, Size: 18, Par: 24, Length: golf.Yards.Of(2010), Times: 1},
		{ID: 3, Name: "The Royal and Ancient Course of Little Marsh under Wold", Tee: "yellow, winter greens", Holes: 18, Size: 18, Par: 71, Length: golf.Yards.Of(6104)},
	}
	removed := signedIn(paths.Courses)
	removed.Undo = site.NewUndo(site.RemovedThing{Name: "course.4.1", Kind: "course", Text: "Old Warren, red"})
	metric := form.Units{Far: golf.Metres, Green: golf.Metres}
	return []Page{
		{"entry", "courses", "empty", entry.NewCoursesPage(signedIn(paths.Courses), nil, form.StandardUnits).View()},
		{"entry", "courses", "one", entry.NewCoursesPage(signedIn(paths.Courses), listed[:1], metric).View()},
		{"entry", "courses", "full", entry.NewCoursesPage(signedIn(paths.Courses), listed, form.StandardUnits).View()},
		{"entry", "courses", "removed", entry.NewCoursesPage(removed, listed, form.StandardUnits).View()},
	}
}

// holeInput is hole 6 of a round at Harrow Fen with the line as typed so far. The
// first saved holes of the round are entered.
func holeInput(line string, saved int) entry.HoleInput {
	hole := harrowFen[5]
	in := entry.HoleInput{ID: 7, Course: "Harrow Fen", Hole: hole, Target: 79, Units: form.StandardUnits, Reading: readingInput(line, hole)}
	for i, h := range harrowFen {
		r := entry.RoundHole{Number: h.Number, Par: h.Par, Length: h.Length}
		if i < saved {
			r.Score, r.Lost, r.Known = h.Par+i%3, float64(i%3)-0.3, true
		}
		in.Round, in.Order = append(in.Round, r), append(in.Order, h.Number)
	}
	return in
}

// readingInput reads a line for a golfer with a target of 79.
func readingInput(line string, hole golf.CardHole) entry.ReadingInput {
	in := entry.ReadingInput{Line: form.ParseLine(line, hole, form.StandardUnits), Hole: hole, Units: form.StandardUnits}
	played := in.Line.Hole
	if len(played.Shots) == 0 {
		played = golf.Hole{Number: hole.Number, Par: hole.Par, Shots: []golf.Shot{{Lie: golf.Tee, Distance: hole.Length}}}
	}
	if in.Line.Empty() || in.Line.Sound() || in.Line.Unfinished {
		in.Account = analyst.Statement(golf.Round{Holes: []golf.Hole{played}}, 0).Account
	}
	return in
}

// analyst works out what shots cost, for a target of 79.
var analyst = newAnalyst()

func newAnalyst() *analysis.Analyst {
	a, err := analysis.NewAnalyst(analysis.Level(analysis.StandardTarget), golf.StandardBoundary)
	if err != nil {
		panic("sample: the standard target is not a level: " + err.Error())
	}
	return a
}

func holePages() []Page {
	var pages []Page
	add := func(state string, in entry.HoleInput) {
		pages = append(pages, Page{"entry", "hole", state, entry.NewHolePage(signedIn(paths.NewRound), in).View()})
	}
	for state, line := range lines {
		add(state, holeInput(line, 5))
	}
	slices.SortFunc(pages, func(a, b Page) int { return strings.Compare(a.State, b.State) })
	add("first", holeInput("", 0))
	add("eighteen", backNine())
	asked := holeInput("f150 r12", 5)
	asked.Reading.AskAll = true
	add("asked-on-saving", asked)
	conflict, theirs := holeInput("f202 b25 g30 3 1h", 5), form.ParseLine("f202 b25 g30 1h", harrowFen[5], form.StandardUnits)
	conflict.Reading.Conflict, conflict.Version, conflict.Stored = &theirs, 2, "f202 b25 g30 1h"
	add("conflict", conflict)
	card := holeInput("", 5)
	card.Hole.Length, card.Hole.Index = 0, 0
	card.Reading.Hole = card.Hole
	add("without-card", card)
	return pages
}

// lines are what may stand in the field of hole 6, by the state it makes.
var lines = map[string]string{
	"open":        "",
	"a-lie":       "f202 b",
	"on-green":    "f202 b25 g30",
	"holed":       "f202 b25 g30 1h",
	"out":         "x f202",
	"dropped":     "f180w",
	"picked-up":   "f180 g9 2 1-",
	"score-only":  "=7",
	"unreadable":  "r165 q",
	"asked":       "f420 g30 1h",
	"many-shots":  "x r240/3w v190 v175 b30 b28 s12 r9 g40 12 6 3 1h",
	"with-a-club": "f202/7i b25/sw g30 2",
}

// backNine is hole 10 of eighteen, none of which is entered.
func backNine() entry.HoleInput {
	in := holeInput("", 0)
	in.Hole.Number = 10
	for _, h := range harrowFen {
		in.Round, in.Order = append(in.Round, entry.RoundHole{Number: h.Number + 9, Par: h.Par, Length: h.Length}), append(in.Order, h.Number+9)
	}
	return in
}

func shotsPages() []Page {
	hole := form.ParseLine("f202/3w b25/sw g30 2h", harrowFen[5], form.StandardUnits).Hole
	in := entry.ShotsInput{Round: 7, Hole: hole, Version: 1, Units: form.StandardUnits, Clubs: strings.Fields("d 3w 5i 6i 7i 8i 9i pw sw"), Details: form.ShotDetailsOf(hole.Played())}
	page := func(state string, in entry.ShotsInput) Page {
		return Page{"entry", "shots", state, entry.NewShotsPage(signedIn(paths.Rounds), in).View()}
	}
	filled, refused, scored := in, in, in
	filled.Details, refused.Details = form.ShotDetailsOf(hole.Played()), form.ShotDetailsOf(hole.Played())
	filled.Details.Shots[1].Miss = form.ChoiceOf(golf.Miss{Side: golf.Right, Depth: golf.Short})
	filled.Details.Shots[1].Word = form.TextOf("Tried to reach the green from a poor lie.")
	refused.Details.Shots[1].Club = form.Text{Text: "sand wedge", Problem: "Allowed: at most 40 characters, without spaces or slashes."}
	scored.Hole = golf.Hole{Number: 6, Par: 4, ScoreOnly: 7}
	return []Page{page("open", in), page("full", filled), page("refused", refused), page("score-only", scored)}
}

func importPages() []Page {
	ask := func(state, problem string, faults *shotsfile.Faults) Page {
		return Page{"entry", "import", state, entry.NewImportPage(signedIn(paths.Rounds), problem, faults).View()}
	}
	many := &shotsfile.Faults{More: 12}
	for i := range 5 {
		many.List = append(many.List, shotsfile.Fault{Line: 3 + i, Column: "lie", What: "unknown lie", Read: "sand", Allowed: "tee, fairway, rough, bunker, recovery or green"})
	}
	return append([]Page{ask("open", "", nil), ask("no-file", "No file was chosen. Allowed: a shots file or an account file.", nil), ask("faults", "", many)}, previewPages()...)
}

// ownPreview is a file of which only the bag, the drawings and the practice are new.
func ownPreview() Page {
	in := entry.PreviewInput{Own: entry.OwnInput{Drawings: 19, Courses: 2, Ranges: 1, Plans: 3}, Settings: &entry.SettingsInput{Name: Player, Far: "yd", Green: "ft", Target: 79, Bag: 4}}
	in.Add("Medal", golf.Round{Date: golf.Date{Year: 2026, Month: 5, Day: 2}, Course: "Harrow Fen", Tee: "white", Holes: []golf.Hole{{Number: 1, Par: 4, ScoreOnly: 5}}}, 5, entry.ThereSame)
	return Page{"entry", "preview", "own", entry.NewPreviewPage(signedIn(paths.Rounds), in).View()}
}

func previewPages() []Page {
	settings := &entry.SettingsInput{Name: Player, Far: "yd", Green: "ft", Target: 79, Clubs: "d 3w 5i 7i pw"}
	preview := func(state string, settings *entry.SettingsInput, unknown []string, there ...entry.There) Page {
		in := entry.PreviewInput{Settings: settings, Unknown: unknown}
		if settings != nil {
			in.Own.Trials = 12
		}
		for i, th := range there {
			in.Add("Medal "+strconv.Itoa(i+1), golf.Round{Date: golf.Date{Year: 2026, Month: 5, Day: 2 + i}, Course: "Harrow Fen", Tee: "white",
				Holes: []golf.Hole{{Number: 1, Par: 4, ScoreOnly: 5}, {Number: 2, Par: 3, ScoreOnly: 4}}}, 9, th)
		}
		return Page{"entry", "preview", state, entry.NewPreviewPage(signedIn(paths.Rounds), in).View()}
	}
	return []Page{
		preview("new", nil, nil, entry.ThereNot, entry.ThereNot),
		preview("mixed", settings, nil, entry.ThereNot, entry.ThereSame, entry.ThereOther),
		preview("unknown-columns", nil, []string{"wind", "mood"}, entry.ThereNot),
		preview("nothing-new", nil, nil, entry.ThereSame),
		preview("settings", settings, nil),
		ownPreview(),
	}
}
