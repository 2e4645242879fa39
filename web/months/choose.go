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
	At       string // address that the forms ask
	Pairs    []SpanPair
	Spans    []string // the spans chosen now, sent on by the form that does not ask for them
	Versus   []components.Choice
	Level    components.Field // of the golfer to compare with
	Course   []components.Choice
	KeepLens string // the golfer chosen now, sent on like the spans; empty for the target
	KeepAt   string // the course chosen now, sent on like the spans; empty for every course
	Rounds   []RoundChoice
	Wrong    components.Summary // what is wrong with the days
	LensSaid components.Summary // what is wrong with the golfer
	Open     bool               // the forms are shown open, since one came back
	Mark     MarkForm
}

// SpanPair is the first and the last day of a span.
type SpanPair struct{ From, To components.Field }

// RoundChoice is a round that may be left out.
type RoundChoice struct {
	ID   string
	Name string // day, course and score
	Out  bool   // it is left out now
}

// MarkForm marks a day on which something changed.
type MarkForm struct {
	Own   bool               // who reads the page is the player; nobody else marks days
	At    string             // address that the form is sent to
	Day   components.Field   // the first day after the change
	What  components.Field   // what happened
	Wrong components.Summary // what is wrong with either
	Marks []MarkLine         // the days marked so far
}

// MarkLine is a marked day.
type MarkLine struct {
	Day    string
	What   string // in the player's words
	Remove string // address that removes the mark
}

// notCompared heads what is wrong with a choice.
const notCompared = "This cannot be compared."

func chooseSpans(in figures.ComparisonInput) ChooseSpans {
	at, _, _ := strings.Cut(in.At.Months(), "?")
	c := ChooseSpans{At: at, KeepAt: in.At.Course, Open: !in.Refused.Sound() || in.Mark.Day.Problem+in.Mark.What.Problem != ""}
	for _, span := range in.At.Spans {
		c.Spans = append(c.Spans, span.String())
	}
	if !in.At.Versus.IsTarget() {
		c.KeepLens = in.At.Versus.String()
	}
	for i := range golf.MaxSpans {
		var p SpanPair
		number := fmt.Sprint(i + 1)
		var from, to string
		if i < len(in.Sheet.Columns) {
			from, to = days(in.Sheet.Columns[i])
		}
		p.From = components.Field{Name: "from", ID: "from" + number, Label: "Span " + number + ", from", Type: "date", Value: from}
		p.To = components.Field{Name: "to", ID: "to" + number, Label: "Span " + number + ", to", Type: "date", Value: to}
		if i == 0 {
			p.From.Problem = in.Refused.Spans
			c.Wrong = components.Summed(p.From).Saying(notCompared)
		}
		c.Pairs = append(c.Pairs, p)
	}
	c.chooseGolfer(in)
	c.Rounds = roundChoices(in)
	c.Mark = newMarkForm(in)
	return c
}

// chooseGolfer offers the golfer to compare with and the course.
func (c *ChooseSpans) chooseGolfer(in figures.ComparisonInput) {
	level := ""
	if _, chosen := in.At.Versus.Level(); chosen {
		level = in.At.Versus.String()
	}
	c.Versus = []components.Choice{{Value: "target", Name: "the target, " + words.Plain(in.Target), Chosen: in.At.Versus.IsTarget()}, {Value: "level", Name: "a golfer at this level", Chosen: level != ""}, {Value: "tour", Name: "a tour player", Chosen: in.At.Versus.IsTour()}}
	c.Level = components.Field{Name: "level", Label: "Level", Value: level, Mode: "decimal", Hint: fmt.Sprintf("%d to %d.", golf.MinTarget, golf.MaxTarget), Problem: in.Refused.Level}
	c.LensSaid = components.Summed(c.Level).Saying(notCompared)
	c.Course = []components.Choice{{Value: "", Name: "every course", Chosen: in.At.Course == ""}}
	for _, name := range in.Courses {
		c.Course = append(c.Course, components.Choice{Value: name, Name: name, Chosen: name == in.At.Course})
	}
}

func newMarkForm(in figures.ComparisonInput) MarkForm {
	f := MarkForm{Own: in.At.Own, At: paths.Marks,
		Day:  components.Field{Name: "day", Label: "Day", Type: "date", Value: in.Mark.Day.Text, Problem: in.Mark.Day.Problem},
		What: components.Field{Name: "what", Label: "What happened", Value: in.Mark.What.Text, Hint: "At most 80 characters.", Problem: in.Mark.What.Problem}}
	f.Wrong = components.Summed(f.Day, f.What).Saying("Not marked yet.")
	for _, m := range in.Marks {
		f.Marks = append(f.Marks, MarkLine{words.ShortDay(m.Day), m.What, paths.RemoveMark(m.ID)})
	}
	return f
}

// days are the days of a span; of a span of rounds those of its first and last.
func days(c compare.Column) (from, to string) {
	if c.Span.Last > 0 && len(c.Rounds) > 0 {
		return c.Rounds[0].Round.Date.String(), c.Rounds[len(c.Rounds)-1].Round.Date.String()
	}
	return c.Span.From.String(), c.Span.To.String()
}
