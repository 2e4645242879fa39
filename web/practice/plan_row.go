package practice

import (
	"fmt"
	"math"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/practice"
	"strokeledger/web/chart"
	"strokeledger/web/components"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// row is a candidate of the plan.
func (in PlanInput) row(scale chart.Scale, place int, c analysis.PlanCandidate) CandidateRow {
	r := CandidateRow{ID: in.place(c), Place: place, Name: in.name(c), Bar: scale.Bar(c.WinBack), Whisker: scale.Whisker(0, c.Interval.Low, c.Interval.High),
		Strokes: words.Signed(c.WinBack, 1), Between: fmt.Sprintf("%s to %s", words.Signed(c.Interval.Low, 1), words.Signed(c.Interval.High, 1)),
		Minutes: fmt.Sprint(c.Minutes), Why: in.why(c), Drill: components.Link{At: in.Whose.Drill(c.Drill.Key), Name: c.Drill.Name}, Again: in.again(c)}
	if c.Kind == practice.OfPart {
		r.Band = lower(words.Band(c.Band, in.Units))
		r.Sure = sureWords[c.Sure]
	} else {
		r.Sure = "counted in its parts too"
	}
	for _, s := range c.Dearest {
		r.Dearest = append(r.Dearest, components.Link{At: in.Whose.Round(s.Round) + paths.Shot(s.Hole, s.Shot), Name: fmt.Sprintf("%s, hole %d", words.NearDay(s.Day, in.Today), s.Hole)})
	}
	if c.Mark.Pass > 0 {
		r.Mark, r.Chances = markWords(c.Mark), in.chances(c.Mark, max(c.Today, in.Target))
	}
	return r
}

var sureWords = [...]string{practice.Usual: "as large as for any golfer of this score", practice.Leaning: "leaning", practice.Clear: "clear"}

// why says what the loss stands beside.
func (in PlanInput) why(c analysis.PlanCandidate) string {
	switch c.Kind {
	case practice.Compounding:
		return fmt.Sprintf("What one error after another cost on doubles, beyond what it costs %s golfer. Practise the plain shot back into play.", words.A(in.Target))
	case practice.ShortSide:
		return "What too little green added to chips" + in.byBook() + ": aim at the side with room."
	case practice.ShortMisses:
		return "Missed putts of 6 ft or less are the ones that keep a double on the card."
	}
	e := in.Game.Parts[c.Part]
	return fmt.Sprintf("%s %s here for 18 holes; a golfer with %s usually loses %s.", in.loses(), amount(e.Mean), in.score(), amount(e.Usual))
}

// byBook says how many chips the player's run-out book judged; empty for none.
func (in PlanInput) byBook() string {
	chips := in.Game.Cross[practice.ShortSide]
	whose := "your"
	if !in.Whose.Own {
		whose = words.Whose(in.Name)
	}
	switch {
	case chips.Book == 0:
		return ""
	case chips.Book == chips.Times:
		return fmt.Sprintf(", judged by %s run-out book", whose)
	default:
		return fmt.Sprintf(", %s of %s judged by %s run-out book", words.Spelled(chips.Book), words.Spelled(chips.Times), whose)
	}
}

func (in PlanInput) loses() string {
	if in.Whose.Own {
		return "You lose"
	}
	return in.Name + " loses"
}

// amount is a loss in a sentence that says loses: what is won back is less than
// nothing.
func amount(x float64) string { return strings.TrimPrefix(words.Signed(x, 1), "+") }

// again says when the months may show what was won.
func (in PlanInput) again(c analysis.PlanCandidate) string {
	switch {
	case c.Kind != practice.OfPart:
		return ""
	case c.Again == 0:
		return "Rounds alone will not show the gain; the drill will."
	default:
		return fmt.Sprintf("After %d more rounds there is an even chance that Months shows the gain as leaning or clear.", c.Again)
	}
}

func markWords(m practice.Mark) string {
	text := fmt.Sprintf("%d of %d", m.Pass, m.Tries)
	if m.Sessions > 1 {
		text += fmt.Sprintf(" over %s", words.SpelledPlural(m.Sessions, "session", "sessions"))
	}
	return text
}

// chances says how often a mark is passed. today is the level of the player.
func (in PlanInput) chances(m practice.Mark, today float64) string {
	who := "you today"
	if !in.Whose.Own {
		who = in.Name + " today"
	}
	text := fmt.Sprintf("%s passes it %d times in 100", words.Capital(words.A(in.Target)), hundredths(m.Target))
	if today > in.Target {
		text += fmt.Sprintf(", %s %d", who, hundredths(m.Today))
	}
	if !m.Tells {
		text += ". One session cannot tell the two apart"
	}
	return text + "."
}

func hundredths(x float64) int { return int(math.Round(100 * x)) }

// after is what stands behind one of several links.
func after(i, of int) string {
	if i < of-1 {
		return ", "
	}
	return "."
}

func lower(s string) string { return strings.ToLower(s[:1]) + s[1:] }
