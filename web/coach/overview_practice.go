package coach

import (
	"fmt"
	"slices"
	"strings"

	"strokeledger/analysis"
	"strokeledger/web/figures"
	"strokeledger/web/words"
)

// PracticeLine is something to practise with its figure before and since.
type PracticeLine struct {
	What, At string
	Due      string // by when; empty when late
	Late     string // by how many days; empty when not
	Says     string // how much, what passes, and how it went
	Figure   string // the figure that it is to move; empty for none
	Before   string // strokes a round; empty where it is not known
	Since    string
	Sure     string
}

// practice lists what there is to practise.
func (o *OverviewPage) practice(in OverviewInput) {
	figured := Figured(in.Assignments)
	for _, a := range in.Assignments {
		if a.Done {
			continue
		}
		card := newAssignmentCard(a, LessonsInput{Whose: in.Whose, Today: in.Today})
		line := PracticeLine{What: a.What, At: in.Whose.Lessons() + "#" + card.ID, Due: card.Due, Late: card.Late}
		said := slices.Clone(card.Facts)
		if card.Passed != "" {
			last := a.Results[len(a.Results)-1]
			said = append(said, card.Passed, fmt.Sprintf("last on %s: %s", words.NearDay(last.Day, in.Today), last.Result))
		} else {
			said = append(said, "no result yet")
		}
		line.Says = words.Capital(strings.Join(said, "; ")) + "."
		if k := slices.IndexFunc(figured, func(f Assignment) bool { return f.ID == a.ID }); k >= 0 && k < len(in.Overview.Practice) {
			line.moves(in, in.Overview.Practice[k])
		}
		o.Practice = append(o.Practice, line)
	}
}

// moves fills in the figure that a practice is to move.
func (l *PracticeLine) moves(in OverviewInput, b analysis.Between) {
	if b.Row < 0 || b.Row >= len(in.Overview.Sheet.Rows) {
		return
	}
	l.Figure = figures.RowName(in.Overview.Sheet.Rows[b.Row], in.Units)
	if !b.Known() {
		l.Sure = "no rounds since to compare"
		return
	}
	before, since := b.Before.Cells[b.Row], b.Since.Cells[b.Row]
	l.Before, l.Since, l.Sure = words.Signed(before.Mean, 1), words.Signed(since.Mean, 1), figures.Sure(since.Change.Word)
	if l.Sure == "" {
		l.Sure = "could be chance"
	}
}
