package analysis

import (
	"slices"

	"strokeledger/analysis/account"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
)

// StripInput is what the strip of a hole is made of.
type StripInput struct {
	History  []golf.Played   // the player's rounds on the course
	Card     []golf.CardHole // of the course, as far as it is known
	Par18    int             // par of the whole course; 0 where it is not known
	Target   float64         // the player's, of 18 holes
	Boundary golf.Distance   // where the player's short game ends
	Hole     int             // number of the hole; 0, or one that was not played, for the one that costs most
}

// Strip answers "where do I play this hole from, and what does it cost?" over
// all rounds on a course, against the golfer of the player's target.
type Strip struct {
	Hole  golf.CardHole
	Holes []HoleCost  // every hole that was played shot by shot, by number; empty without one
	Steps []StripStep // what was played on Hole, in order of play; their losses add up to that of the hole
}

// HoleCost is what a hole cost.
type HoleCost struct {
	Number int
	Rounds int     // in which it was played shot by shot
	Lost   float64 // strokes a round
}

// StripStep is one stroke of a hole over all rounds, the later strokes off the
// green together, or those on the green.
type StripStep struct {
	Stroke int             // counted from 1; LaterStrokes stands for it and those after it; 0 on the green
	From   []golf.Distance // to the hole, where each was played from
	Lost   float64         // strokes a round
	Target golf.Distance   // from where the target's golfer plays this stroke; 0 when that is on the green, or is not one stroke
}

// LaterStrokes is the stroke that is counted with those after it.
const LaterStrokes = 4

// NewStrip makes the strip of a hole. Holes of which only a score is known, and
// holes that the card does not have, do not count.
func NewStrip(in StripInput) Strip {
	lens, course := expect.ForTarget(in.Card, golf.TargetOver(in.Card, in.Target, in.Par18))
	terms := account.Terms{Lens: lens, Course: course, Fixed: lens, Boundary: in.Boundary}
	played := map[int][]stripHole{}
	for _, r := range in.History {
		for i, h := range account.Of(r.Round, terms).Holes {
			if h.Detailed {
				played[h.Number] = append(played[h.Number], stripHole{r.Round.Holes[i], h})
			}
		}
	}
	var s Strip
	for _, card := range in.Card {
		if of := played[card.Number]; len(of) > 0 {
			s.Holes = append(s.Holes, HoleCost{card.Number, len(of), lostOn(of)})
		}
	}
	if len(s.Holes) == 0 {
		return s
	}
	cost := s.chosen(in.Hole)
	s.Hole = in.Card[slices.IndexFunc(in.Card, func(c golf.CardHole) bool { return c.Number == cost.Number })]
	s.Steps = stripSteps(played[cost.Number], lens, s.Hole)
	return s
}

// stripHole is a hole as it was played, with its account.
type stripHole struct {
	played golf.Hole
	worth  account.Hole
}

func lostOn(of []stripHole) float64 {
	sum := 0.0
	for _, h := range of {
		sum += h.worth.Lost
	}
	return sum / float64(len(of))
}

// chosen is the hole of a number, or the one that costs most.
func (s Strip) chosen(number int) HoleCost {
	worst := s.Holes[0]
	for _, h := range s.Holes {
		if h.Number == number {
			return h
		}
		if h.Lost > worst.Lost {
			worst = h
		}
	}
	return worst
}

// stripSteps gathers the strokes of a hole.
func stripSteps(of []stripHole, lens *expect.Baseline, card golf.CardHole) []StripStep {
	steps := make([]StripStep, LaterStrokes+1) // the last is the green
	for i := range steps[:LaterStrokes] {
		steps[i].Stroke = i + 1
	}
	for _, h := range of {
		for k, shot := range h.worth.Shots {
			at := min(k, LaterStrokes-1)
			if h.played.Shots[k].Lie == golf.Green {
				at = LaterStrokes
			}
			steps[at].From = append(steps[at].From, h.played.Shots[k].Distance)
			steps[at].Lost += shot.Lost / float64(len(of))
		}
	}
	steps[0].Target = card.Length
	for k := 1; k < LaterStrokes-1; k++ {
		steps[k].Target = fairwaySpot(lens, card.Length, lens.Strokes(golf.Tee, card.Length)-float64(k))
	}
	return slices.DeleteFunc(steps, func(s StripStep) bool { return len(s.From) == 0 })
}

// nearestSpot is how near to the hole a fairway is; nearer, a golfer with as many
// strokes left is as well said to be on the green (common practice).
const nearestSpot = 20 * golf.Yard

// fairwaySpot is where on the fairway a golfer has so many strokes left: where he
// stands when nothing was lost or won on the way. 0 when it is nearer than a
// fairway is.
func fairwaySpot(lens *expect.Baseline, length golf.Distance, strokes float64) golf.Distance {
	near, far := nearestSpot, length
	if lens.Strokes(golf.Fairway, near) > strokes {
		return 0
	}
	for range 30 { // halves a hole until far less than an inch is left
		middle := (near + far) / 2
		if lens.Strokes(golf.Fairway, middle) > strokes {
			far = middle
		} else {
			near = middle
		}
	}
	return near
}
