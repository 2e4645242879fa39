package statement

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
	"strokeledger/web/figures"
	"strokeledger/web/words"
)

// recent is how many rounds "the last" speaks of.
const recent = 10

// roundsLede says how the latest rounds went, or why there is none.
func roundsLede(in RoundsInput, narrowed bool) string {
	switch {
	case len(in.Rounds) == 0 && narrowed:
		return "No rounds on that course in those months."
	case len(in.Rounds) == 0 && !in.Narrow.Before.IsZero():
		return "No rounds before " + in.Narrow.Before.Time().Format("January 2006") + "."
	case len(in.Rounds) == 0 && !in.Whose.Own:
		return "No rounds yet."
	case len(in.Rounds) == 0:
		return "No rounds yet. Enter the first one from its card and your notes."
	case !in.Narrow.Before.IsZero():
		return "Rounds before " + in.Narrow.Before.Time().Format("January 2006") + "."
	}
	return lately(in)
}

// lately says what the latest rounds with shots came to each, and where the most
// of it went; whole strokes, of which those of the parts add up.
func lately(in RoundsInput) string {
	var late []figures.ListedRound
	for _, l := range in.Rounds {
		if l.Account.Counts.Holes > 0 && len(late) < recent {
			late = append(late, l)
		}
	}
	if len(late) == 0 {
		return words.Plural(len(in.Rounds), "round", "rounds") + ". No shots have been entered yet."
	}
	which, each := "The last round: ", ""
	if n := len(late); n > 1 {
		which, each = fmt.Sprintf("The last %s rounds: ", words.Spelled(n)), " each"
	}
	return which + overEach(late, in.Whose.Own, each) + "."
}

// overEach says how far over the target rounds of 18 holes were on average, and
// the two parts of the game in which most of it was lost.
func overEach(late []figures.ListedRound, own bool, each string) string {
	mean, parts, holes := 0.0, make([]float64, 5), 0
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
	target := targetOf(late, own)
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
func targetOf(all []figures.ListedRound, own bool) string {
	for _, l := range all[1:] {
		if l.Target != all[0].Target {
			return "target"
		}
	}
	if own {
		return "your " + words.Plain(all[0].Target)
	}
	return "the target of " + words.Plain(all[0].Target)
}
