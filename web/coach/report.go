package coach

import (
	"fmt"
	"slices"
	"strings"

	"github.com/a-h/templ"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/chart"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/notes"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// ReportPage is one printed page about a span of a player's rounds: a sentence,
// what was lost, three pictures, what was written, and what to practise.
type ReportPage struct {
	layout.Page
	Name     string            // the player's
	At       string            // the span, and the day of the report
	Lede     string            // what changed from the span before, or that there are no rounds
	Empty    bool              // the player has no rounds: nothing is drawn
	Season   figures.Season    // unless Empty
	Putts    figures.Putts     // unless Empty
	Caption  string            // what the strokes are compared with
	Axis     components.Axis   // of the bars
	Ruler    components.Axis   // of the levels
	Lost     []ReportLine      // the parts of the game, then all of them
	Levels   []ReportLevel     // what each part of the game plays to
	Written  []notes.Card      // shared notes of the span, the latest first, that fit on the page
	Practice []AssignmentCard  // that fit on the page
	More     string            // notes and practice that do not fit; empty when all do
	Presets  []components.Link // spans that are one click away
	SpanAt   string            // where the form that chooses another span is sent
	From, To components.Field
	Wrong    components.Summary
	Back     string // address of lessons and practice
	File     string // address of the rounds of the span, one by one, as a file
}

// noRounds says that the player has no round, to the reader.
func noRounds(page layout.Page, in ReportInput) string {
	if in.Months.At.Own {
		return words.NoRounds("", page.Since)
	}
	return words.NoRounds(in.Months.Name, page.Since)
}

// Shows reports whether a note stands on the page.
func (r *ReportPage) Shows(note int64) bool {
	return slices.ContainsFunc(r.Written, func(c notes.Card) bool { return c.ID == notes.ID(note) })
}

// ReportLine is what a part of the game lost in the span, in strokes for 18
// holes.
type ReportLine struct {
	Name     string // the part of the game, or All
	Figure   string // the loss with its sign, or "no round"
	Of       figures.Voucher
	Interval string // 95% interval of the loss; empty with too few rounds
	Bar      chart.Bar
	Whisker  chart.Whisker       // the interval; not drawn with too few rounds
	Change   figures.ChangeWords // from the span before; empty when either has no rounds
	ChangeOf figures.Voucher
	All      bool // the line is of all parts together, without a bar
}

// mark says that a figure is added to those of all parts, or that it is their sum.
func (l ReportLine) mark(column string) templ.Attributes {
	if l.All {
		return templ.Attributes{"data-sum": column}
	}
	return templ.Attributes{"data-part": column}
}

// workings are those of the losses, for paper.
func (r *ReportPage) workings() []figures.Voucher {
	var all []figures.Voucher
	for _, l := range r.Lost {
		v := l.Of
		v.Name, _, _ = strings.Cut(v.Name, ", ") // the days stand at the head of the page
		all = append(all, v)
	}
	return all
}

// ReportLevel is what a part of the game plays to.
type ReportLevel struct {
	figures.PartLevel
	Of figures.Voucher
}

// ReportInput is what a report is made of.
type ReportInput struct {
	Months      figures.ComparisonInput // its last two columns are the span before and the span
	Span        golf.Span
	Notes       []notes.Note // the latest first
	Assignments []Assignment
	Drills      []DrillDone // that nobody set
	Today       golf.Date
	Problem     string // what is wrong with the span that was asked for; empty when nothing is
}

// NewReportPage makes the page.
func NewReportPage(page layout.Page, in ReportInput) ReportPage {
	whose := in.Months.At.Whose
	page.Title, page.Here, page.BodyClass = "Report for "+in.Months.Name, layout.Here(whose, paths.Coaching), "report-page"
	r := ReportPage{Page: page, Name: in.Months.Name, Back: whose.Lessons(), Empty: len(in.Months.Line) == 0, Lede: noRounds(page, in), Presets: reportPresets(whose, in), SpanAt: whose.Report(), File: whose.ReportFile(in.Span)}
	span := words.Span(in.Span, true)
	if in.Span.Last > 0 && !r.Empty {
		span = figures.SpanName(in.Months, len(in.Months.Sheet.Columns)-1)
	}
	r.At = fmt.Sprintf("%s. %s.", words.Capital(span), words.LongDay(in.Today))
	r.From = components.Field{Name: "from", Label: "From", Type: "date", Value: in.Span.From.String(), Problem: in.Problem}
	r.To = components.Field{Name: "to", Label: "To", Type: "date", Value: in.Span.To.String()}
	r.Wrong = components.Summed(r.From).Saying("These dates cannot be used.")
	if !r.Empty {
		r.Foot = figures.ComparisonFoot(in.Months)
		r.Lede, r.Season, r.Putts = figures.ComparisonLede(in.Months), figures.NewSeason(in.Months), figures.NewPutts(in.Months)
		r.lost(in)
		r.Levels = reportLevels(in)
	}
	first, last := notesBetween(in)
	for _, n := range in.Notes {
		if n.Private || n.Day.Compare(first) < 0 || n.Day.Compare(last) > 0 {
			continue
		}
		card := notes.NewCard(n, whose, false, form.Returned{})
		card.Who = n.Author // not "You": others read the report
		r.Written = append(r.Written, card)
	}
	r.Practice = practised(in, first, last)
	r.fit()
	return r
}

// reportPresets are the last ten rounds, this month, the month before and this
// year.
func reportPresets(whose paths.Whose, in ReportInput) []components.Link {
	today := in.Today.Time()
	before := today.AddDate(0, 0, -today.Day()) // last day of the month before
	var all []components.Link
	for _, p := range []struct {
		name string
		span golf.Span
	}{
		{"the last ten rounds", golf.Span{Last: 10}},
		{today.Format("January"), golf.Month(today.Year(), today.Month())},
		{before.Format("January"), golf.Month(before.Year(), before.Month())},
		{today.Format("2006"), golf.Year(today.Year())},
	} {
		all = append(all, components.Link{Name: p.name, At: whose.ReportOf(p.span), Here: p.span == in.Span})
	}
	return all
}

// lost fills in what each part of the game lost in the span.
func (r *ReportPage) lost(in ReportInput) {
	now := in.Months.Now()
	r.Caption = "Strokes lost for 18 holes against " + figures.Against(in.Months) + ", with a 95% interval"
	scale := figures.SpanScale(in.Months.Sheet)
	r.Axis, r.Ruler = components.NewAxis(scale, words.Tick), figures.LevelAxis()
	printed := figures.PrintedLosses(in.Months.Sheet, len(in.Months.Sheet.Columns)-1)
	pair := figures.NewPair(in.Months)
	if pair.Known {
		r.Caption += fmt.Sprintf(", and the change from %s; without a word it could be chance", pair.BeforeName)
	}
	for _, c := range append(slices.Clone(golf.Categories), 0) {
		line := newReportLine(c, now.Cells[c], printed[c], scale)
		line.Of = figures.LossVoucher(in.Months, len(in.Months.Sheet.Columns)-1, int(c), printed[c])
		if line.Change.Figure != "" && pair.Known {
			line.Change.Figure = words.Signed(pair.Moved[c], 1)
			line.ChangeOf = figures.MovedVoucher(in.Months, line.Name, pair, printed[c]-pair.Moved[c], printed[c])
		}
		r.Lost = append(r.Lost, line)
	}
}

// newReportLine makes a line of a part of the game, or of all of them at 0, with
// the loss as it is printed.
func newReportLine(c golf.Category, lost compare.Cell, printed float64, scale chart.Scale) ReportLine {
	line := ReportLine{Name: "All", Bar: figures.EmptyBar, Figure: "no round", All: c == 0}
	if !line.All {
		line.Name = words.Capital(c.String())
	}
	if lost.Known {
		line.Figure, line.Change = words.Signed(printed, 1), figures.NewChangeWords(lost.Change, words.OneDecimal)
		if !line.All {
			line.Bar = scale.Bar(lost.Mean)
		}
	}
	if lost.HasInterval() {
		line.Interval = words.Signed(lost.Interval.Low, 1) + " to " + words.Signed(lost.Interval.High, 1)
		if !line.All {
			line.Whisker = scale.Whisker(lost.Mean, lost.Interval.Low, lost.Interval.High)
		}
	}
	return line
}

// reportLevels are what each part of the game plays to in the span, and in the
// span before.
func reportLevels(in ReportInput) []ReportLevel {
	played := in.Months.Form()
	var all []figures.PartLevelInput
	for _, c := range golf.Categories {
		all = append(all, partLevel(&played, c, in.Months.Target))
	}
	var levels []ReportLevel
	for _, level := range all {
		l := ReportLevel{PartLevel: figures.NewPartLevel(level, figures.Levels)}
		if level.Now.Known() {
			l.Of = figures.LevelVoucher(in.Months, len(in.Months.Sheet.Columns)-1, level.Part)
		}
		levels = append(levels, l)
	}
	return levels
}

// notesBetween are the first and the last day whose notes are on a report: those
// of the span, or of its rounds up to today.
func notesBetween(in ReportInput) (first, last golf.Date) {
	first, last = in.Span.From, in.Span.To
	if c := in.Months.Sheet.Columns; in.Span.Last > 0 && len(c) > 0 && len(c[len(c)-1].Rounds) > 0 {
		first = c[len(c)-1].Rounds[0].Round.Date
	}
	if last.IsZero() {
		last = in.Today
	}
	return first, last
}

// partLevel is what a part of the game plays to in a form, beside a target.
func partLevel(f *compare.Form, c golf.Category, target float64) figures.PartLevelInput {
	return figures.PartLevelInput{Part: c, Now: f.Now[c], Before: f.Before[c], Change: f.Changes[c], Target: target}
}
