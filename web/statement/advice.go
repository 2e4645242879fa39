package statement

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/words"
)

// mostAdvice is how many pieces of advice a verdict gives: more are not remembered
// on the course.
const mostAdvice = 2

// advice says what would have kept the later errors of chains from happening, by
// where they were played from, for the costliest first; empty without a chain.
// It is common practice, and nothing computes it.
func advice(in RoundInput) string {
	cost := map[string]float64{}
	var all []string
	for _, d := range in.Account.Doubles {
		i := slices.IndexFunc(in.Account.Holes, func(h account.Hole) bool { return h.Number == d.Hole })
		for _, n := range d.Chain[min(1, len(d.Chain)):] {
			worth := in.Account.Holes[i].Shots[n-1]
			text := adviceOn(in.Round.Holes[i].Shots[n-1], worth.Band.Category)
			if !slices.Contains(all, text) {
				all = append(all, text)
			}
			cost[text] += worth.Lost
		}
	}
	slices.SortStableFunc(all, func(a, b string) int { return cmp.Compare(cost[b], cost[a]) })
	return words.Capital(strings.Join(all[:min(len(all), mostAdvice)], "; "))
}

// adviceOn is advice for a shot played from trouble, or after an error.
func adviceOn(s golf.Shot, part golf.Category) string {
	switch {
	case s.Lie == golf.Bunker:
		return "from a bunker, out of the sand first"
	case s.Lie == golf.Tee:
		return "from the tee again, a club that stays in play"
	case s.Lie == golf.Recovery:
		return "from the trees, a plain shot back into play"
	case s.Lie == golf.Green:
		return "on the green, the first putt close before it is holed"
	case part == golf.ShortGame:
		return "beside the green, onto it first and close second"
	default:
		return "into the green, the side with the most room"
	}
}

// decisive is how many strokes a shot must lose or win back to be said to decide a
// part of the game (our choice).
const decisive = 1

// decidedBy is what a part of the game comes to without its one shot that weighs as
// much as all the others together; ok is false where no shot does.
func decidedBy(in RoundInput, part golf.Category) (shot string, without float64, ok bool) {
	var all []account.Shot
	var most account.Shot
	hole, number := 0, 0
	eachShot(in, func(h, k int, s account.Shot) {
		if s.Band.Category != part {
			return
		}
		all = append(all, s)
		if size(s) > size(most) {
			most, hole, number = s, h, k
		}
	})
	lost := figures.WorkingOf(most).Lost()
	without = figures.WorkingOf(all...).Lost() - lost
	if len(all) < 2 || size(most) < decisive || size(most) < max(without, -without) {
		return "", 0, false
	}
	return shotName(in, hole, number), without, true
}

// size is how much a shot lost or won back.
func size(s account.Shot) float64 { return max(s.Lost, -s.Lost) }

// shotName names a shot by what happened: the shot holed from 95 yd on hole 7, the
// penalty on hole 3, shot 2 on hole 5.
func shotName(in RoundInput, hole, number int) string {
	i := slices.IndexFunc(in.Round.Holes, func(h golf.Hole) bool { return h.Number == hole })
	h := in.Round.Holes[i]
	switch s := h.Shots[number-1]; {
	case number == len(h.Shots) && !h.PickedUp:
		what := "shot"
		if s.Lie == golf.Green {
			what = "putt"
		}
		return fmt.Sprintf("the %s holed from %s on hole %d", what, words.Distance(s.Lie, s.Distance, in.Units), hole)
	case s.Penalty > 0:
		return fmt.Sprintf("the %s on hole %d", words.OneOrMany(s.Penalty, "penalty", "penalties"), hole)
	default:
		return fmt.Sprintf("shot %d on hole %d", number, hole)
	}
}

// withoutIt says what the part of the game that weighs most in the sentence comes
// to without the shot that decides it; empty where no shot does.
func withoutIt(in RoundInput, printed map[string]float64) string {
	weight := func(c golf.Category) float64 { return math.Abs(printed[partName(c)]) }
	most := golf.Most(weight)
	shot, without, ok := decidedBy(in, most)
	if !ok || weight(most) < worthNaming-.01 {
		return ""
	}
	return fmt.Sprintf(" Without %s: %s %s.", shot, lostOrWon(without), words.Where(most))
}

// lostOrWon says an amount in tenths: 0.8 lost, 0.2 won back.
func lostOrWon(x float64) string {
	switch {
	case x >= .05:
		return fmt.Sprintf("%.1f lost", x)
	case x <= -.05:
		return fmt.Sprintf("%.1f won back", -x)
	default:
		return "nothing lost"
	}
}

// lineNotes say of the parts of the game what their lines do not: which shot
// decides one, and what the tee shots of par 3s come to, which are told inside the
// approach.
func lineNotes(in RoundInput) []string {
	var all []string
	for _, part := range golf.Categories {
		var said []string
		if tees := shortTees(in, part); len(tees) > 0 {
			said = append(said, fmt.Sprintf("%s from the tee of a par 3: %s", words.Plural(len(tees), "shot", "shots"), lostOrWon(figures.WorkingOf(tees...).Lost())))
		}
		if shot, without, ok := decidedBy(in, part); ok {
			said = append(said, fmt.Sprintf("without %s: %s", shot, lostOrWon(without)))
		}
		if len(said) > 0 {
			all = append(all, partName(part)+", "+strings.Join(said, "; ")+".")
		}
	}
	return all
}

// practise leads from every part of the game that lost strokes to its place in the
// plan of practice.
func practise(in RoundInput, printed map[string]float64) []components.Link {
	var all []components.Link
	for _, part := range golf.Categories {
		if name := partName(part); printed[name] > 0 {
			all = append(all, components.Link{Name: name, At: in.Whose.PlanFor(part, golf.Span{})})
		}
	}
	return all
}

// shortTees are the shots of a part of the game that were played from a tee but
// are no tee shots of the account: those of par 3s.
func shortTees(in RoundInput, part golf.Category) []account.Shot {
	var all []account.Shot
	for i, h := range in.Account.Holes {
		for k, s := range h.Shots {
			if s.Band.Category == part && part != golf.TeeShots && in.Round.Holes[i].Shots[k].Lie == golf.Tee {
				all = append(all, s)
			}
		}
	}
	return all
}
