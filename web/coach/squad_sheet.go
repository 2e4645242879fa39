package coach

import (
	"fmt"
	"math"
	"slices"

	"strokeledger/analysis"
	"strokeledger/analysis/practice"
	"strokeledger/web/components"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// SquadSheet is what pupils practise together, on a sheet of paper.
type SquadSheet struct {
	layout.Page
	At     string // how many come
	Lede   string // what the lesson is about, or why there is nothing to do
	Rows   []components.Link
	Drills []SheetDrill
	Left   string // who has too few rounds for a mark; empty for nobody
	Back   string // address of the pupils side by side
}

// SheetDrill is a drill with a line for each pupil.
type SheetDrill struct {
	ID     string
	Where  string // what it serves
	Name   string
	SetUp  []string
	Counts string // when a try counts; empty for a drill without a mark
	Rows   []SheetRow
}

// SheetRow is a pupil at a drill.
type SheetRow struct {
	Name  string
	Lost  string // strokes for 18 holes there
	Usual string // what is usual at the score
	Named bool   // that is more than usual, beyond luck
	Mark  string // how many of how many must count; empty for a drill without a mark
}

// NewSquadSheet makes the sheet of a group lesson.
func NewSquadSheet(page layout.Page, in SquadInput) SquadSheet {
	page.Title, page.Here, page.BodyClass = "Sheet for a group lesson", paths.Squad, "sheet-page"
	page.Foot = "Strokes a round against a golfer at the pupil’s target. Usual is what a golfer of the model loses who plays everything equally well and has the pupil’s score. A mark is what a golfer at the pupil’s target reaches three times in five."
	s := SquadSheet{Page: page, Back: in.At.Shared().Page()}
	known, come := map[int]bool{}, 0
	for i, l := range in.Lesson {
		s.Drills = append(s.Drills, in.sheetDrill(i, l))
		for _, u := range l.Who {
			known[u.Player] = true
		}
	}
	var left []string
	for i, m := range in.Members {
		if m.Chosen {
			come++
			if !known[i] {
				left = append(left, m.Name)
			}
		}
	}
	s.At = words.Plural(come, "pupil", "pupils") + ", " + words.LongDay(in.Today) + "."
	s.rows(in)
	if len(left) > 0 && len(known) > 0 {
		s.Left = fmt.Sprintf("Without a line, for want of %s rounds: %s.", words.Spelled(practice.MinRounds), words.List(left))
	}
	s.Lede = in.sheetLede()
	return s
}

// sheetLede says what the lesson is about.
func (in SquadInput) sheetLede() string {
	var about []string
	for _, l := range in.Lesson {
		if len(l.Who) > 0 && !slices.Contains(about, lowerFirst(in.rowName(l.SharedRow))) {
			about = append(about, lowerFirst(in.rowName(l.SharedRow)))
		}
	}
	switch {
	case len(about) == 0:
		return fmt.Sprintf("It takes %s rounds of a pupil to say what to practise.", words.Spelled(practice.MinRounds))
	case in.Row == "" && !in.Lesson[0].Named:
		return "None of them has anything unusual, beyond luck. They lose most beyond the usual here: " + about[0] + "."
	case in.Row == "" && len(about) > 1:
		return fmt.Sprintf("%s places where they lose more than is usual for their scores.", words.Capital(words.Spelled(len(about))))
	default:
		return words.Capital(about[0]) + "."
	}
}

// rows are the links to the sheet of each place of the lesson alone, and of all.
func (s *SquadSheet) rows(in SquadInput) {
	if in.Row != "" {
		s.Rows = []components.Link{{Name: "What they share", At: in.At.Shared().Sheet()}}
		return
	}
	for _, l := range in.Lesson {
		if len(in.Lesson) > 1 {
			s.Rows = append(s.Rows, components.Link{Name: "Only " + lowerFirst(in.rowName(l.SharedRow)), At: in.At.About(l.Row.String()).Sheet()})
		}
	}
}

// sheetDrill words a drill and its pupils; the figures are printed so that lost less
// usual is what a list of the unusual shows.
func (in SquadInput) sheetDrill(i int, l analysis.LessonDrill) SheetDrill {
	d := SheetDrill{ID: fmt.Sprintf("drill-%d", i+1), Where: in.rowName(l.SharedRow), Name: l.Drill.Name, SetUp: l.Drill.SetUp[:]}
	if !l.Drill.NoMark {
		d.Counts = "A try counts when " + l.Drill.Counts + "."
	}
	for k, u := range l.Who {
		lost := math.Round(10*u.Mean) / 10
		row := SheetRow{Name: in.Members[u.Player].Name, Lost: words.Signed(lost, 1), Usual: words.Signed(lost-math.Round(10*u.Excess())/10, 1), Named: u.Named()}
		if m := l.Marks[k]; m.Pass > 0 {
			row.Mark = fmt.Sprintf("%d of %d", m.Pass, m.Tries)
		}
		d.Rows = append(d.Rows, row)
	}
	return d
}
