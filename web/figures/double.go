package figures

import (
	"fmt"
	"slices"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/form"
	"strokeledger/web/words"
)

// ShotRow is one shot of a hole.
type ShotRow struct {
	ID      string
	Number  string
	Lie     string
	From    string
	Club    string
	CountAs string
	Before  string
	After   string
	Lost    string
	Tag     string // root, linked, error or trouble
	Root    bool
}

// NewShotRow makes the row of shot k+1 of a hole, with what it counts as and its
// place in the double d; the zero Double means that the hole is none.
func NewShotRow(units form.Units, hole, k int, shot golf.Shot, s account.Shot, d account.Double) ShotRow {
	r := ShotRow{ID: fmt.Sprintf("h%d-%d", hole, k+1), Number: fmt.Sprint(k + 1), Lie: shot.Lie.String(), Club: shot.Club,
		From:    fmt.Sprintf("%s %s", words.Capital(shot.Lie.String()), words.Distance(shot.Lie, shot.Distance, units)),
		CountAs: words.Capital(s.Band.Category.String()), Before: fmt.Sprintf("%.2f", s.Expected), After: fmt.Sprintf("%.2f", s.After), Lost: words.Signed(s.Lost, 2)}
	if s.After == 0 {
		r.After = "holed"
	}
	if shot.About {
		r.From = "About " + r.From
	}
	switch {
	case shot.GreenKnown:
		r.From += fmt.Sprintf(", %s of green", words.Distance(golf.Tee, shot.GreenToWork, units))
	case shot.ShortSided:
		r.From += ", short-sided"
	}
	if shot.Penalty > 0 {
		r.From += ", " + words.Plural(shot.Penalty, "penalty", "penalties")
	}
	switch {
	case d.Root == k+1:
		r.Tag, r.Root = "root", true
	case slices.Contains(d.Chain, k+1):
		r.Tag = "linked"
	case s.Error:
		r.Tag = "error"
	}
	return r
}

// DoubleStory tells how one double came about.
type DoubleStory struct {
	Heading string
	Kind    string
	At      string
	Steps   []Step
	Sums    []Sum
}

// StoryInput is the round of which a double is told.
type StoryInput struct {
	Round   golf.Round
	Account account.Account // of the round
	Target  float64         // of 18 holes, strokes
	Units   form.Units
}

// Step is one shot of the story.
type Step struct {
	Number, Lie, From, Cost, Tag, Did string
	Error, Root, Linked               bool
}

// Sum is one figure under a story.
type Sum struct{ Amount, Name string }

// NewDoubleStory makes the story of a double: its shots, the chain of errors, and
// what compounding and the hole cost.
func NewDoubleStory(q StoryInput, d account.Double) DoubleStory {
	st := DoubleStory{Heading: fmt.Sprintf("Hole %d, par %d: %s", d.Hole, d.Par, words.Spelled(d.Score)), Kind: d.Kind.String(), At: fmt.Sprintf("#h%d", d.Hole)}
	i := slices.IndexFunc(q.Round.Holes, func(h golf.Hole) bool { return h.Number == d.Hole })
	hole, played := q.Account.Holes[i], q.Round.Holes[i]
	for k, s := range hole.Shots {
		row := NewShotRow(q.Units, d.Hole, k, played.Shots[k], s, d)
		step := Step{Number: row.Number, Lie: row.Lie, From: row.From, Cost: row.Lost, Tag: row.Tag, Error: s.Error, Root: row.Root, Did: words.Joined(row.Club, played.Shots[k].Miss.String(), played.Shots[k].Word)}
		if row.Tag == "linked" {
			step.Tag = "linked error"
		}
		if at := slices.Index(d.Chain, k+1); at >= 0 && at < len(d.Chain)-1 && d.Chain[at+1] == k+2 {
			step.Linked = true
		}
		st.Steps = append(st.Steps, step)
	}
	if d.Compounding > 0 {
		st.Sums = append(st.Sums, Sum{words.Signed(d.Compounding, 2), "compounding, judged by the " + words.Plain(q.Target) + " golfer"})
	}
	if d.Kind != account.Unknown {
		st.Sums = append(st.Sums, Sum{words.Signed(d.Lost, 2), "hole"})
	}
	return st
}
