package figures

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
	"strokeledger/web/words"
)

// Recent is how many rounds a page looks back over to say where most is lost: as
// many on the list of rounds, on a pupil's page, on the roster, side by side and in a
// report, so that linked pages say the same.
const Recent = 10

// Late are the latest rounds with shots, Recent at most, of some with the latest
// first.
func Late(rounds []ListedRound) []ListedRound {
	var late []ListedRound
	for _, l := range rounds {
		if l.Account.Counts.Holes > 0 && len(late) < Recent {
			late = append(late, l)
		}
	}
	return late
}

// Lately says what the latest rounds with shots came to each, from when they are, and
// where the most of it went; whole strokes, of which those of the parts add up. whose
// is the player's name, empty for the reader's own rounds; among says of which rounds
// they are the last, where not of all. It is empty without a round with shots.
func Lately(rounds []ListedRound, whose, among string) string {
	late := Late(rounds)
	if len(late) == 0 {
		return ""
	}
	first, last := late[len(late)-1].Round.Date, late[0].Round.Date
	which, each := "The last round"+among+", of "+words.ShortDay(last)+": ", ""
	if n := len(late); n > 1 {
		which, each = fmt.Sprintf("The last %s rounds%s, %s: ", words.Spelled(n), among, words.Days(first, last)), " each"
	}
	return which + overEach(late, whose, each) + "."
}

// overEach says how far over the target rounds of 18 holes were on average, and
// the two parts of the game in which most of it was lost.
func overEach(late []ListedRound, whose, each string) string {
	mean, parts, holes := 0.0, make([]float64, splitParts), 0
	for _, l := range late {
		s := l.Split()
		mean += float64(s.Over) / 10
		for i, p := range s.Parts {
			parts[i] += float64(p) / 10
		}
		holes += len(l.Round.Holes)
	}
	for i := range parts {
		parts[i] *= 18 / float64(holes)
	}
	whole := math.Round(mean * 18 / float64(holes))
	if holes < 18*len(late) {
		each = " for every 18 holes"
	}
	target := targetOf(late, whose)
	switch {
	case whole < 0:
		return fmt.Sprintf("%s under %s%s", words.SpelledAmount(-whole), target, each)
	case whole == 0:
		return "level with " + target + each
	}
	return fmt.Sprintf("%s over %s%s%s", words.SpelledAmount(whole), target, each, ofThem(stat.RoundedTo(parts, 1, whole), whole))
}

// ofThem names the two parts in which most of whole strokes was lost.
func ofThem(parts []float64, whole float64) string {
	order := slices.Clone(golf.Categories[:])
	lost := func(c golf.Category) float64 { return parts[c-golf.TeeShots] }
	slices.SortStableFunc(order, func(a, b golf.Category) int { return cmp.Compare(lost(b), lost(a)) })
	first, second := order[0], order[1]
	switch {
	case lost(first) < 1:
		return ""
	case lost(first) >= whole:
		return ", most of it " + words.Where(first)
	case lost(second) < 1:
		return fmt.Sprintf(", %s of them %s", words.SpelledAmount(lost(first)), words.Where(first))
	default:
		return fmt.Sprintf(", %s of them %s and %s %s", words.SpelledAmount(lost(first)), words.Where(first), words.SpelledAmount(lost(second)), words.Where(second))
	}
}

// targetOf names the target of rounds.
func targetOf(all []ListedRound, whose string) string {
	owner := "your"
	if whose != "" {
		owner = words.Whose(whose)
	}
	for _, l := range all[1:] {
		if l.Target != all[0].Target {
			return owner + " target"
		}
	}
	if whose == "" {
		return "your " + words.Plain(all[0].Target)
	}
	return owner + " target of " + words.Plain(all[0].Target)
}
