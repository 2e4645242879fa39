package coach

import (
	"cmp"
	"fmt"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/web/words"
)

// someOf says how many of a coach's pupils are meant.
func someOf(n, pupils int) string {
	switch {
	case n < pupils:
		return words.Spelled(n) + " of your " + words.Spelled(pupils) + " pupils"
	case n == 2:
		return "both of your pupils"
	default:
		return "all " + words.Spelled(n) + " of your pupils"
	}
}

// queueLede says how much waits: lessons, who asks for a word, and then the rest.
func queueLede(queue []QueueItem, in RosterInput) string {
	who, n := map[golf.PlayerID]bool{}, 0
	for _, q := range queue {
		if q.need != meets && q.need != meetsNext && q.need != wishes {
			who[q.player] = true
			n++
		}
	}
	first := strings.TrimSpace(lessonsLede(queue) + " " + askersLede(in.Askers))
	pupils, rest := len(in.Pupils), ""
	switch {
	case n == 0 && first != "":
		rest = "Nothing else waits."
	case n == 0 && pupils == 1:
		rest = "Nothing waits."
	case n == 0 && pupils == 2:
		rest = "Nothing waits for either of your pupils."
	case n == 0:
		rest = "Nothing waits for any of your " + words.Spelled(pupils) + " pupils."
	case pupils == 1:
		rest = words.Capital(words.SpelledPlural(n, "thing waits", "things wait")) + "."
	default:
		rest = fmt.Sprintf("%s, for %s.", words.Capital(words.SpelledPlural(n, "thing waits", "things wait")), someOf(len(who), pupils))
	}
	return strings.TrimSpace(first + " " + rest)
}

// lessonsLede counts the lessons of today and tomorrow; empty for none.
func lessonsLede(queue []QueueItem) string {
	var count [needs]int
	for _, q := range queue {
		count[q.need]++
	}
	now, next := count[meets], count[meetsNext]
	switch lessons := words.Capital(words.SpelledPlural(cmp.Or(now, next), "lesson", "lessons")); {
	case now > 0 && next > 0:
		return fmt.Sprintf("%s today and %s tomorrow.", lessons, words.Spelled(next))
	case now > 0:
		return lessons + " today."
	case next > 0:
		return lessons + " tomorrow."
	default:
		return ""
	}
}

// askersLede counts who waits for a word of the reader's; empty for nobody.
func askersLede(all []Asker) string {
	golfers, coaches := 0, 0
	for _, a := range all {
		coaches += words.Tally(a.Coach)
		golfers += words.Tally(!a.Coach)
	}
	var said []string
	if golfers > 0 {
		said = append(said, words.Capital(words.SpelledPlural(golfers, "golfer asks", "golfers ask"))+" you to coach them.")
	}
	if coaches > 0 {
		said = append(said, words.Capital(words.SpelledPlural(coaches, "coach waits", "coaches wait"))+" for your approval.")
	}
	return strings.Join(said, " ")
}

// restOf says what is folded away of a queue.
func restOf(rest []QueueItem) string {
	var count [needs]int
	for _, q := range rest {
		count[q.need]++
	}
	var all []string
	for i, k := range [needs][2]string{{"has a lesson today", "have a lesson today"}, {"asks", "ask"}, {"asks to be let in", "ask to be let in"}, {"has a lesson tomorrow", "have a lesson tomorrow"}, {"wrote", "wrote"}, {"played", "played"}, {"has changed clearly", "have changed clearly"}, {"is late", "are late"}, {"has gone quiet", "have gone quiet"}} {
		if count[i] > 0 {
			all = append(all, words.Spelled(count[i])+" "+words.OneOrMany(count[i], k[0], k[1]))
		}
	}
	return fmt.Sprintf("%d more: %s", len(rest), strings.Join(all, ", "))
}
