package words

import (
	"fmt"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
)

// Thin says what is missing until a number is shown: “four more rounds until a
// level is shown”; empty when nothing is.
func Thin(t golf.Thin) string {
	more := Spelled(t.Missing()) + " more "
	rounds := more + OneOrMany(t.Missing(), "round", "rounds")
	switch t.Of {
	case golf.ThinLevel:
		return rounds + " until a level is shown"
	case golf.ThinChange:
		return fmt.Sprintf("it takes %s rounds in each to say how sure that is", Spelled(t.Need)) // a month that is over gets no more
	case golf.ThinInterval:
		return rounds + " until an interval is shown"
	case golf.ThinTrend:
		return rounds + " until the mean of the last eight is drawn"
	case golf.ThinIndex:
		return fmt.Sprintf("%s on a rated course %s an estimate", more+OneOrMany(t.Missing(), "score", "scores"), OneOrMany(t.Missing(), "makes", "make"))
	case golf.ThinSpread:
		return rounds + " until it can be said how far scores spread"
	case golf.ThinPlan:
		return rounds + " until a plan says much"
	default:
		return ""
	}
}

// Certainty says how sure a change is; empty when nothing can be said.
func Certainty(w compare.Word) string {
	switch w {
	case compare.Clear:
		return "clear"
	case compare.Leaning:
		return "leaning"
	case compare.Chance:
		return "could be chance"
	default:
		return ""
	}
}
