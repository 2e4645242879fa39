package coach

import (
	"fmt"
	"slices"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/chart"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// SquadPage is several pupils side by side: what each lost in every part of the
// game over some days.
type SquadPage struct {
	layout.Page
	File   string // address of the same as a file; empty for none
	Sheet  string // address of what they practise together, on paper; empty for none
	At     string // how many rounds of how many pupils over which days; empty without a round
	Lede   string // where they lose most together, or why there is nothing to show
	From   components.Field
	To     components.Field
	Pupils []components.Choice // all pupils, with those chosen
	Table  figures.SpanTable   // a row for each chosen pupil with a round; empty when Empty
	Groups []SquadGroup        // none where nobody loses anything
	Teams  []components.Link   // the coach's groups and everybody, to come together
	Share  ShareList           // what they lose beyond what is usual at their scores
	Row    string              // what the lesson is to be about; empty for nothing
	Empty  bool                // there is no round to show
	Alone  bool                // there is no pupil at all
	Open   bool                // the choice of days and pupils is shown opened
	Wrong  components.Summary
}

// SquadGroup is a part of the game and the pupils who lose most in it.
type SquadGroup struct {
	Part  string // with a capital letter
	Names string // in the order of the pupils, with commas
}

// SquadInput is what the page, and its sheet, are made of.
type SquadInput struct {
	At      paths.SquadChoice // what the address chooses
	All     bool              // everybody comes who is not archived
	Row     string            // what the lesson is to be about, as compare.Row is written; empty for what they share
	Units   form.Units        // of the reader
	Today   golf.Date
	Days    form.Days              // the first day and the last; both left open for the latest rounds of each
	Members []SquadMember          // all pupils, by name
	Groups  []string               // the names of the coach's groups
	Squad   analysis.Squad         // a row for each member, empty unless chosen; what they lost against a golfer at their targets
	Shared  analysis.Shared        // what the chosen ones share; all who are not archived while nobody is chosen
	Lesson  []analysis.LessonDrill // on the sheet alone
}

// Choosing reports whether nobody has been chosen yet.
func (in SquadInput) Choosing() bool {
	return !slices.ContainsFunc(in.Members, func(m SquadMember) bool { return m.Chosen })
}

// at says how many rounds of how many pupils, and of when.
func (in SquadInput) at(played []squadRow) string {
	text := fmt.Sprintf("%s of %s, ", words.Plural(in.Squad.Rounds, "round", "rounds"), words.Plural(len(played), "pupil", "pupils"))
	switch {
	case in.Days.Open():
		return text + fmt.Sprintf("the last %s or fewer of each.", words.Spelled(analysis.SquadRounds))
	case in.Days.From.Value.IsZero():
		return text + "up to " + words.ShortDay(in.Days.To.Value) + "."
	case in.Days.To.Value.IsZero():
		return text + "from " + words.ShortDay(in.Days.From.Value) + " on."
	default:
		return text + words.Days(in.Days.From.Value, in.Days.To.Value) + "."
	}
}

// SquadMember is one pupil.
type SquadMember struct {
	ID     golf.PlayerID
	Name   string
	Target float64 // a score for 18 holes of par 72
	Chosen bool    // to be shown
}

// NewSquadPage makes the page.
func NewSquadPage(page layout.Page, in SquadInput) SquadPage {
	page.Title, page.Here, page.BodyClass = "Group lesson", paths.Squad, "squad-page"
	page.Foot = "Each pupil is compared with a golfer at that pupil’s target, for 18 holes. Whiskers are 95% intervals: how far luck alone could move a bar. Together is the plain average of the pupils. Usual is what a golfer of the model loses who plays everything equally well and has the pupil’s score."
	s := SquadPage{Page: page, Open: !in.Days.Sound(), Row: in.Row,
		From: components.Field{Name: "from", Label: "Played from", Type: "date", Value: in.Days.From.Text, Problem: in.Days.From.Problem},
		To:   components.Field{Name: "to", Label: "Played up to", Type: "date", Value: in.Days.To.Text, Problem: in.Days.To.Problem}}
	s.Wrong = components.Summed(s.From, s.To).Saying("These dates cannot be used.")
	for _, m := range in.Members {
		s.Pupils = append(s.Pupils, components.Choice{Value: fmt.Sprint(m.ID), Name: m.Name, Chosen: m.Chosen})
	}
	played := in.played()
	s.teams(in)
	switch {
	case len(in.Members) == 0:
		s.Empty, s.Alone, s.Lede = true, true, "No pupils yet. A player gives you access by sending you a link."
	case in.Choosing():
		s.Empty, s.Open, s.Share = true, true, newShareList(in)
		s.Lede = s.Share.lede(in)
	case len(played) == 0:
		s.Empty, s.Open, s.Lede = true, true, "None of the chosen pupils played on these days."
		if in.Days.Open() {
			s.Lede = "None of the chosen pupils has entered a round."
		}
	default:
		s.At, s.File, s.Sheet, s.Share = in.at(played), in.At.File(), in.At.Sheet(), newShareList(in)
		s.groups(played, in.Squad)
		s.Table = newSquadTable(played, in.Squad)
	}
	return s
}

// squadRow is a chosen pupil who has played.
type squadRow struct {
	SquadMember
	analysis.SquadRow
}

// played are the chosen pupils who have.
func (in SquadInput) played() []squadRow {
	var all []squadRow
	for i, row := range in.Squad.Rows {
		if row.Lost.Rounds > 0 {
			all = append(all, squadRow{in.Members[i], row})
		}
	}
	return all
}

// groups puts together the pupils who lose most in the same part of the game,
// and says where most is lost together.
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
	switch {
	case all.Together[all.Most] >= leastLost:
		s.Lede = squadLede(played, all.Most, printedSquad(played, all)[len(played)][all.Most], len(names[all.Most]))
	case len(played) == 1:
		s.Lede = played[0].Name + " loses no strokes to the target in any part of the game."
	default:
		s.Lede = "Together they lose no strokes to their targets in any part of the game."
	}
}

// leastLost is the least loss that is called one, in strokes for 18 holes: less
// is printed as 0.0.
const leastLost = .05

// squadLede says where the pupils lose most together, how much that is, and how
// many of them lose most there.
func squadLede(played []squadRow, most golf.Category, lost float64, n int) string {
	much := fmt.Sprintf("%s: %s over target for 18 holes", words.Where(most), words.StrokeCount(lost))
	if len(played) == 1 {
		return fmt.Sprintf("%s loses most %s.", played[0].Name, much)
	}
	text := "Together they lose most " + much
	switch n {
	case 0:
		return text + ", though it is the worst part of none of them."
	case len(played):
		return text + ", and all of them lose most there."
	default:
		return text + fmt.Sprintf(", and %s of %s %s most there.", words.Spelled(n), words.Spelled(len(played)), words.OneOrMany(n, "loses", "lose"))
	}
}

// newSquadTable makes a row for each pupil, with a cell for each part of the game
// and for all of it.
func newSquadTable(played []squadRow, all analysis.Squad) figures.SpanTable {
	scale := squadScale(played)
	t := figures.SpanTable{Caption: "Strokes lost for 18 holes against a golfer at each pupil’s target, with a 95% interval; every column on the same scale", Kind: "Pupil", Axis: components.NewAxis(scale, words.Tick)}
	columns := append(slices.Clone(golf.Categories), 0)
	for _, c := range columns {
		name := "All"
		if c != 0 {
			name = words.Capital(c.String())
		}
		t.Heads = append(t.Heads, figures.SpanHead{Name: name})
	}
	together := figures.SpanRow{Name: "Together"}
	printed := printedSquad(played, all)
	for k, m := range played {
		row := figures.SpanRow{Name: fmt.Sprintf("%s, target %s", m.Name, words.Plain(m.Target)), At: paths.Whose{Player: m.ID}.Lessons()}
		for i, c := range columns {
			row.Cells = append(row.Cells, newSquadCell(t.Heads[i].Name, m.Lost.Cells[c], printed[k][c], scale))
		}
		row.Cells[0].Behind = words.Plural(m.Lost.Rounds, "round", "rounds") + " from " + words.ShortDay(m.First)
		t.Rows = append(t.Rows, row)
	}
	for i, c := range columns {
		together.Cells = append(together.Cells, figures.SpanCell{Head: t.Heads[i].Name, Figure: words.Signed(printed[len(played)][c], 1), Bar: figures.EmptyBar})
	}
	t.Foot = []figures.SpanRow{together}
	return t
}

// printedSquad are the amounts of the pupils, and of all of them together at the
// end, in tenths whose parts add up to everything.
func printedSquad(played []squadRow, all analysis.Squad) [][golf.Putting + 1]float64 {
	var printed [][golf.Putting + 1]float64
	add := func(of func(c golf.Category) float64) {
		row := [golf.Putting + 1]float64{figures.Tenth(of(0))}
		var exact []float64
		for _, c := range golf.Categories {
			exact = append(exact, of(c))
		}
		for i, tenths := range figures.Tenths(exact, row[0]) {
			row[golf.Categories[i]] = tenths
		}
		printed = append(printed, row)
	}
	for _, m := range played {
		add(func(c golf.Category) float64 { return m.Lost.Cells[c].Mean })
	}
	add(func(c golf.Category) float64 { return all.Together[c] })
	return printed
}

func newSquadCell(head string, lost compare.Cell, printed float64, scale chart.Scale) figures.SpanCell {
	c := figures.SpanCell{Head: head, Bar: scale.Bar(lost.Mean), Figure: words.Signed(printed, 1)}
	if lost.HasInterval() {
		c.Interval = words.Signed(lost.Interval.Low, 1) + " to " + words.Signed(lost.Interval.High, 1)
		c.Whisker = scale.Whisker(lost.Mean, lost.Interval.Low, lost.Interval.High)
	}
	return c
}

// squadScale is the one scale of every column, with as much of the whiskers as
// figures.WhiskerRoom allows.
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
