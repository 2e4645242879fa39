package coach

import (
	"fmt"
	"slices"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/web/chart"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// SquadPage is several pupils side by side: what each lost in every part of the
// game over a span.
type SquadPage struct {
	layout.Page
	At     string
	Lede   string
	From   components.Field
	To     components.Field
	Pupils []components.Choice
	Table  figures.SpanTable
	Groups []SquadGroup
	Empty  bool
	Alone  bool // there is no pupil at all
	Open   bool // the choice of days is shown opened
	Wrong  components.Summary
}

// SquadGroup is a part of the game and who loses most in it.
type SquadGroup struct{ Part, Names string }

// SquadInput is what the page is made of.
type SquadInput struct {
	From, To golf.Date
	Problems map[string]string // what is wrong with the days
	Members  []SquadMember
	Squad    analysis.Squad // of those who are chosen: a row for each member, empty for the others
}

// SquadMember is one pupil.
type SquadMember struct {
	ID     golf.PlayerID
	Name   string
	Target float64
	Chosen bool
}

// NewSquadPage makes the page.
func NewSquadPage(page layout.Page, q SquadInput) SquadPage {
	page.Title, page.Here = "Pupils side by side", paths.Coaching
	page.Foot = "Each pupil is compared with the golfer of the own target, for 18 holes; whiskers are the interval of 95 % and reach as far as luck alone could move a bar. Together is the plain average of the pupils."
	s := SquadPage{Page: page,
		From: components.Field{Name: "from", Label: "Played from", Type: "date", Value: q.From.String(), Problem: q.Problems["from"]},
		To:   components.Field{Name: "to", Label: "up to", Type: "date", Value: q.To.String(), Problem: q.Problems["to"]}, Open: len(q.Problems) > 0}
	s.Wrong = components.Summed(s.From, s.To).Saying("These days cannot be shown.")
	var played []squadRow
	for i, m := range q.Members {
		s.Pupils = append(s.Pupils, components.Choice{Value: fmt.Sprint(m.ID), Name: m.Name, Chosen: m.Chosen})
		if q.Squad.Rows[i].Lost.Rounds > 0 {
			played = append(played, squadRow{m, q.Squad.Rows[i]})
		}
	}
	if len(q.Members) == 0 {
		s.Empty, s.Alone, s.Lede = true, true, "No pupils yet. A player lets you in by a link."
		return s
	}
	if len(played) == 0 {
		s.Empty, s.Open, s.Lede = true, true, "None of them has played in these days."
		return s
	}
	s.At = fmt.Sprintf("%s of %s, %s to %s.", words.Plural(q.Squad.Rounds, "round", "rounds"), words.Plural(len(played), "pupil", "pupils"), words.ShortDay(q.From), words.ShortDay(q.To))
	s.groups(played, q.Squad)
	s.Table = squadTable(played, q.Squad)
	return s
}

// squadRow is a pupil who has played.
type squadRow struct {
	SquadMember
	analysis.SquadRow
}

func (s *SquadPage) groups(played []squadRow, all analysis.Squad) {
	names := map[golf.Category][]string{}
	for _, m := range played {
		names[m.Worst] = append(names[m.Worst], m.Name)
	}
	for _, c := range golf.Categories {
		if len(names[c]) > 0 {
			s.Groups = append(s.Groups, SquadGroup{words.Capital(c.String()), strings.Join(names[c], ", ")})
		}
	}
	most := all.Most
	s.Lede = fmt.Sprintf("Together most is lost %s: %s a round over target", words.Where(most), words.StrokeCount(all.Together[most]))
	switch n := len(names[most]); {
	case len(played) == 1:
		s.Lede += "."
	case n == 0:
		s.Lede += ", though nobody loses most there."
	case n == len(played):
		s.Lede += ", and all of them lose most there."
	default:
		s.Lede += fmt.Sprintf(", and %s of %s %s most there.", words.Spelled(n), words.Spelled(len(played)), words.OneOrMany(n, "loses", "lose"))
	}
}

func squadTable(played []squadRow, all analysis.Squad) figures.SpanTable {
	scale := squadScale(played)
	t := figures.SpanTable{Caption: "Strokes lost for 18 holes against the golfer of the own target, with the interval of 95 %; every column on the same scale", Kind: "Pupil", Axis: components.NewAxis(scale, words.Tick)}
	columns := append(slices.Clone(golf.Categories), 0)
	for _, c := range columns {
		name := "All"
		if c != 0 {
			name = words.Capital(c.String())
		}
		t.Heads = append(t.Heads, figures.SpanHead{Name: name})
	}
	together := figures.SpanRow{Name: "Together"}
	for i, c := range columns {
		for k, m := range played {
			if i == 0 {
				t.Rows = append(t.Rows, figures.SpanRow{Name: fmt.Sprintf("%s, target %s", m.Name, words.Plain(m.Target)), At: paths.Whose{Player: m.ID}.Lessons()})
			}
			cell := m.Lost.Cells[c]
			made := figures.SpanCell{Head: t.Heads[i].Name, Bar: scale.Bar(cell.Mean), Figure: words.Signed(cell.Mean, 1)}
			if cell.HasInterval() {
				made.Interval = words.Signed(cell.Interval.Low, 1) + " to " + words.Signed(cell.Interval.High, 1)
				made.Whisker = scale.Whisker(cell.Mean, cell.Interval.Low, cell.Interval.High)
			}
			if i == 0 {
				made.Behind = words.Plural(m.Lost.Rounds, "round", "rounds")
			}
			t.Rows[k].Cells = append(t.Rows[k].Cells, made)
		}
		together.Cells = append(together.Cells, figures.SpanCell{Head: t.Heads[i].Name, Figure: words.Signed(all.Together[c], 1), Bar: figures.EmptyBar})
	}
	t.Foot = []figures.SpanRow{together}
	return t
}

func squadScale(played []squadRow) chart.Scale {
	var values []float64
	for _, m := range played {
		for _, c := range append(slices.Clone(golf.Categories), 0) {
			cell := m.Lost.Cells[c]
			values = append(values, cell.Mean)
			if cell.HasInterval() {
				values = append(values, max(cell.Mean-figures.WhiskerRoom, cell.Interval.Low), min(cell.Mean+figures.WhiskerRoom, cell.Interval.High))
			}
		}
	}
	return chart.NewScale(values...).Fewer(figures.ColumnTicks)
}
