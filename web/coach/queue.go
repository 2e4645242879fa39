package coach

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// QueueItem is something that a pupil needs, and where the coach does it.
type QueueItem struct {
	Kind string // in a word or two
	Late bool   // it is overdue
	Who  string // the pupil
	What string // the rest of the sentence that begins with the pupil
	Do   string // what the link is for
	At   string // the very place

	player golf.PlayerID
	need   need
}

// need is why a pupil stands in the queue, the most pressing first.
type need int

const (
	asks need = iota
	wrote
	hasPlayed
	changed
	overdue
	quiet
	needs // how many there are
)

// Question is a question of a pupil's that nobody has answered.
type Question struct {
	ID    int64
	Round golf.RoundID
	Hole  int // 0 for the whole round
	Shot  int // 0 for the whole hole
	Day   golf.Date
}

// quietDays is after how many days without a round a pupil has gone quiet.
const quietDays = 28

// queueOf lists what the pupils need, the most pressing first and pupils by name. A
// pupil who is archived stands in it only with a question.
func queueOf(pupils []RosterPupil, today golf.Date) []QueueItem {
	var all []QueueItem
	for i := range pupils {
		all = append(all, pupils[i].queue(today)...)
	}
	slices.SortStableFunc(all, func(a, b QueueItem) int { return int(a.need) - int(b.need) })
	return all
}

// queue lists what a pupil needs.
func (p *RosterPupil) queue(today golf.Date) []QueueItem {
	pages := paths.Whose{Player: p.ID}
	var all []QueueItem
	add := func(why need, kind, what, do, at string) {
		all = append(all, QueueItem{Kind: kind, Late: why == overdue, Who: p.Name, What: what, Do: do, At: at, player: p.ID, need: why})
	}
	for _, q := range p.Asked {
		add(asks, "asks", "about "+q.words(today), "Answer", fmt.Sprintf("%s#note-%d", pages.Round(q.Round), q.ID))
	}
	if p.Archived {
		return all
	}
	if p.Unread > 0 {
		add(wrote, "wrote", words.SpelledPlural(p.Unread, "reply or note", "replies or notes"), "Read", pages.Lessons()+"#lessons")
	}
	if p.NewRounds > 0 {
		add(hasPlayed, "played", words.SpelledPlural(p.NewRounds, "new round", "new rounds"), "Review", pages.Round(p.NewRound))
	}
	if c := p.largest(); c != 0 && p.still(today) == 0 {
		add(changed, "clear change", p.changeWords(c), "See the months", lastTen(pages).Months())
	}
	if late := p.late(today); late > 0 {
		add(overdue, "late", "with "+p.DueWhat+": "+words.Plural(late, "day", "days")+" over", "See the results", pages.Lessons()+"#"+practiceID(p.DueID))
	}
	if days := p.still(today); days > 0 {
		add(quiet, "quiet", p.quietWords(days), "Write", pages.Lessons()+"#lessons")
	}
	return all
}

// words says what a question is about.
func (q Question) words(today golf.Date) string {
	day := "the round of " + words.NearDay(q.Day, today)
	switch {
	case q.Shot > 0:
		return fmt.Sprintf("hole %d, shot %d, of %s", q.Hole, q.Shot, day)
	case q.Hole > 0:
		return fmt.Sprintf("hole %d of %s", q.Hole, day)
	default:
		return day
	}
}

// largest is the part of the game with the largest clear change; 0 for none.
func (p *RosterPupil) largest() golf.Category {
	var largest golf.Category
	for _, c := range golf.Categories {
		if p.Form.Moved(c) != compare.Within && (largest == 0 || math.Abs(p.Form.Changes[c].Mean) > math.Abs(p.Form.Changes[largest].Mean)) {
			largest = c
		}
	}
	return largest
}

// changeWords says how a part of the game changed.
func (p *RosterPupil) changeWords(c golf.Category) string {
	change := p.Form.Changes[c].Mean
	way := "better"
	if change > 0 {
		way = "worse"
	}
	return fmt.Sprintf("%s %s a round %s", words.Where(c), words.StrokeCount(math.Abs(change)), way)
}

// still is for how many days a pupil has entered no round, counted from the day of
// the last round or from when the coach was let in; 0 while that is not long.
func (p *RosterPupil) still(today golf.Date) int {
	from := p.Last
	if p.Holes == 0 || from.Compare(p.Begun) < 0 {
		from = p.Begun
	}
	if days := words.DaysBetween(from, today); !from.IsZero() && days >= quietDays {
		return days
	}
	return 0
}

// quietWords says for how long a pupil has been quiet.
func (p *RosterPupil) quietWords(days int) string {
	if p.Holes == 0 {
		return fmt.Sprintf("no round yet, after %d days", days)
	}
	return fmt.Sprintf("no round for %d days", days)
}

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

// queueLede says how much waits.
func queueLede(queue []QueueItem, pupils int) string {
	who := map[golf.PlayerID]bool{}
	for _, q := range queue {
		who[q.player] = true
	}
	switch n := len(queue); {
	case n == 0 && pupils == 1:
		return "Nothing waits."
	case n == 0 && pupils == 2:
		return "Nothing waits for either of your pupils."
	case n == 0:
		return "Nothing waits for any of your " + words.Spelled(pupils) + " pupils."
	case pupils == 1:
		return words.Capital(words.SpelledPlural(n, "thing waits", "things wait")) + "."
	default:
		return fmt.Sprintf("%s, for %s.", words.Capital(words.SpelledPlural(n, "thing waits", "things wait")), someOf(len(who), pupils))
	}
}

// queueShown is how many lines of the queue stand open: as many as a phone's first
// screen holds.
const queueShown = 7

// restOf says what is folded away of a queue.
func restOf(rest []QueueItem) string {
	var count [needs]int
	for _, q := range rest {
		count[q.need]++
	}
	var all []string
	for i, k := range [needs][2]string{{"asks", "ask"}, {"wrote", "wrote"}, {"played", "played"}, {"has changed clearly", "have changed clearly"}, {"is late", "are late"}, {"has gone quiet", "have gone quiet"}} {
		if count[i] > 0 {
			all = append(all, words.Spelled(count[i])+" "+words.OneOrMany(count[i], k[0], k[1]))
		}
	}
	return fmt.Sprintf("%d more: %s", len(rest), strings.Join(all, ", "))
}

// NextInQueue is what another pupil needs, the first after a pupil's own place in the
// queue, or the first of all. It looks at what waits for an answer of the coach, which
// can be said without working out a round.
func NextInQueue(pupils []RosterPupil, here golf.PlayerID, today golf.Date) (next QueueItem, ok bool) {
	queue := slices.DeleteFunc(queueOf(pupils, today), func(q QueueItem) bool { return q.need == changed || q.need == quiet })
	own := -1
	for i, q := range queue {
		if q.player == here {
			own = i
		}
	}
	queue = append(queue[own+1:], queue[:own+1]...)
	for _, q := range queue {
		if q.player != here {
			return q, true
		}
	}
	return QueueItem{}, false
}
