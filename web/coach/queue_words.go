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

// queueLede says how much waits: the lessons, and then the rest.
func queueLede(queue []QueueItem, in RosterInput) string {
	who, n := map[golf.PlayerID]bool{}, 0
	for _, q := range queue {
		if q.need != meets && q.need != meetsNext {
			who[q.player] = true
			n++
		}
	}
	lessons, pupils := lessonsLede(queue), len(in.Pupils)
	things := words.Capital(words.SpelledPlural(n, "thing waits", "things wait"))
	switch {
	case n == 0 && lessons != "":
		return lessons + " Nothing else is waiting."
	case n == 0 && pupils == 1:
		return "Nothing waits."
	case n == 0 && pupils == 2:
		return "Nothing waits for either of your pupils."
	case n == 0:
		return "Nothing waits for any of your " + words.Spelled(pupils) + " pupils."
	case lessons != "":
		return lessons + " " + things + "."
	case pupils == 1 || len(in.Askers) > 0: // who asks to be let in is no pupil
		return things + "."
	default:
		return fmt.Sprintf("%s, for %s.", things, someOf(len(who), pupils))
	}
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

// askLede says how many golfers ask to be coached.
func askLede(golfers int) string {
	return words.Capital(words.SpelledPlural(golfers, "golfer asks", "golfers ask")) + " you to coach them."
}

// restOf says what is folded away of a queue.
func restOf(rest []QueueItem) string {
	var count [needs]int
	for _, q := range rest {
		count[q.need]++
	}
	var all []string
	for i, k := range [needs][2]string{{"has a lesson today", "have a lesson today"}, {"asks", "ask"}, {"asks to be let in", "ask to be let in"}, {"has a lesson tomorrow", "have a lesson tomorrow"}, {"wrote", "wrote"}, {"has a round that is not sent", "have a round that is not sent"}, {"played", "played"}, {"has changed clearly", "have changed clearly"}, {"is late", "are late"}, {"has gone quiet", "have gone quiet"}} {
		if count[i] > 0 {
			all = append(all, words.Spelled(count[i])+" "+words.OneOrMany(count[i], k[0], k[1]))
		}
	}
	return fmt.Sprintf("%d more: %s", len(rest), strings.Join(all, ", "))
}
