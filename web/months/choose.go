package months

import (
	"fmt"
	"strings"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// ChooseSpans are the forms that choose what is compared.
type ChooseSpans struct {
	At       string // address they ask
	Pairs    []SpanPair
	Spans    []string // as they are now, for the forms that keep them
	Versus   []components.Choice
	Level    components.Field
	Course   []components.Choice
	KeepLens string // versus as it is now
	KeepAt   string // course as it is now
	Rounds   []RoundChoice
	Wrong    components.Summary // with the days
	LensSaid components.Summary // with the golfer
	Open     bool
	Mark     MarkForm
}

// SpanPair is the two days of a span.
type SpanPair struct {
	Number   string
	From, To components.Field
}

// RoundChoice is a round that may be left out.
type RoundChoice struct {
	ID, Name string
	Out      bool
}

// MarkForm marks a day, for who owns the rounds.
type MarkForm struct {
	Own   bool
	At    string
	Day   components.Field
	What  components.Field
	Wrong components.Summary
	Marks []MarkLine
}

// MarkLine is a marked day.
type MarkLine struct{ Day, What, Remove string }

// The fields of the forms that choose, by which what is wrong is named.
const (
	FieldSpans = "span" // all of them
	FieldLevel = "level"
	FieldDay   = "day"
	FieldWhat  = "what"
)

const notCompared = "This cannot be compared."

func chooseSpans(q figures.ComparisonInput) ChooseSpans {
	at, _, _ := strings.Cut(q.At.Months(), "?")
	c := ChooseSpans{At: at, KeepAt: q.At.Course, Open: len(q.Problems) > 0}
	for _, span := range q.At.Spans {
		c.Spans = append(c.Spans, span.String())
	}
	if !q.At.Versus.IsTarget() {
		c.KeepLens = q.At.Versus.String()
	}
	for i := range golf.MaxSpans {
		p := SpanPair{Number: fmt.Sprint(i + 1)}
		var from, to string
		if i < len(q.Sheet.Columns) {
			from, to = days(q.Sheet.Columns[i])
		}
		p.From = components.Field{Name: "from", ID: "from" + p.Number, Label: "Span " + p.Number + ", from", Type: "date", Value: from}
		p.To = components.Field{Name: "to", ID: "to" + p.Number, Label: "Span " + p.Number + ", to", Type: "date", Value: to}
		if i == 0 {
			p.From.Problem = q.Problems[FieldSpans]
			c.Wrong = components.Summed(p.From).Saying(notCompared)
		}
		c.Pairs = append(c.Pairs, p)
	}
	level := ""
	if _, chosen := q.At.Versus.Level(); chosen {
		level = q.At.Versus.String()
	}
	c.Versus = []components.Choice{{Value: "target", Name: "the target, " + words.Plain(q.Target), Chosen: q.At.Versus.IsTarget()}, {Value: "level", Name: "a golfer of level", Chosen: level != ""}, {Value: "tour", Name: "a tour player", Chosen: q.At.Versus.IsTour()}}
	c.Level = components.Field{Name: "level", Label: "Level", Value: level, Mode: "decimal", Hint: fmt.Sprintf("%d to %d.", golf.MinTarget, golf.MaxTarget), Problem: q.Problems[FieldLevel]}
	c.LensSaid = components.Summed(c.Level).Saying(notCompared)
	c.Course = []components.Choice{{Value: "", Name: "every course", Chosen: q.At.Course == ""}}
	for _, name := range q.Courses {
		c.Course = append(c.Course, components.Choice{Value: name, Name: name, Chosen: name == q.At.Course})
	}
	c.Rounds = roundChoices(q)
	c.Mark = MarkForm{Own: q.At.Own, At: paths.Marks,
		Day:  components.Field{Name: FieldDay, Label: "Day", Type: "date", Value: q.Marking[0], Problem: q.Problems[FieldDay]},
		What: components.Field{Name: FieldWhat, Label: "What happened", Value: q.Marking[1], Hint: "At most 80 letters.", Problem: q.Problems[FieldWhat]}}
	c.Mark.Wrong = components.Summed(c.Mark.Day, c.Mark.What).Saying("The day is not marked.")
	for _, m := range q.Marks {
		c.Mark.Marks = append(c.Mark.Marks, MarkLine{words.ShortDay(m.Day), m.What, paths.RemoveMark(m.ID)})
	}
	return c
}

// days are the days of a span; of a span of rounds those of its first and last.
func days(c compare.Column) (from, to string) {
	if c.Span.Last > 0 && len(c.Rounds) > 0 {
		return c.Rounds[0].Round.Date.String(), c.Rounds[len(c.Rounds)-1].Round.Date.String()
	}
	return c.Span.From.String(), c.Span.To.String()
}
