package coach

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/form"
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

	player golf.PlayerID // 0 for somebody who is no pupil
	need   need
	order  int // among those of the same need
}

// need is why a pupil stands in the queue, the most pressing first.
type need int

const (
	meets need = iota
	asks
	wishes
	meetsNext
	wrote
	unsent
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

// NearLesson is a lesson of the coach's with a pupil, today or tomorrow, that is not
// written up.
type NearLesson struct {
	ID     int64
	Day    golf.Date
	Starts *int   // minutes after midnight, where it is; nil where no time is set
	Aim    string // may be empty
}

// UnsentRound is a round that the coach has begun to enter for a pupil and has not sent.
type UnsentRound struct {
	ID  int64
	Day golf.Date
}

// Asker is somebody who waits for a word of the reader's before anything is shared: a
// golfer who asks to be coached, or a coach to be approved.
type Asker struct {
	Name, What string // the sentence that begins with the name
	At         string // where the answer is given
}

// quietDays is after how many days without a round a pupil has gone quiet.
const quietDays = 28

// queueOf lists what the pupils need, the most pressing first and pupils by name, or
// lessons by their time. A pupil who is archived stands in it only with a lesson or a
// question.
func queueOf(in RosterInput) []QueueItem {
	var all []QueueItem
	for i := range in.Pupils {
		all = append(all, in.Pupils[i].queue(in.Today)...)
	}
	for _, a := range in.Askers {
		all = append(all, QueueItem{Kind: "asks", Who: a.Name, What: a.What, Do: "Answer", At: a.At, need: wishes})
	}
	slices.SortStableFunc(all, func(a, b QueueItem) int {
		return cmp.Or(cmp.Compare(a.need, b.need), cmp.Compare(a.order, b.order))
	})
	return all
}

// queue lists what a pupil needs.
func (p *RosterPupil) queue(today golf.Date) []QueueItem {
	pages := paths.Whose{Player: p.ID}
	var all []QueueItem
	add := func(why need, kind, what, do, at string) {
		all = append(all, QueueItem{Kind: kind, Late: why == overdue, Who: p.Name, What: what, Do: do, At: at, player: p.ID, need: why})
	}
	for _, l := range p.Lessons {
		all = append(all, l.item(p, today))
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
	for _, u := range p.Unsent {
		add(unsent, "not sent", "the round of "+words.NearDay(u.Day, today)+" that you entered", "Go on", pages.Walked(u.ID))
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

// item is the line of a lesson with a pupil.
func (l NearLesson) item(p *RosterPupil, today golf.Date) QueueItem {
	q := QueueItem{Kind: "lesson", Who: p.Name, What: words.DueDay(l.Day, today), Do: "Get ready", At: fmt.Sprintf("%s#%s", paths.Whose{Player: p.ID}.Overview(), lessonID(l.ID)), player: p.ID, need: meetsNext, order: -1}
	if l.Day == today {
		q.need = meets
	}
	if l.Starts != nil {
		q.What, q.order = q.What+" at "+form.TimeOf(l.Starts).Text, *l.Starts
	}
	if l.Aim != "" {
		q.What += ": " + l.Aim
	}
	return q
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

// queueShown is how many lines of the queue stand open: as many as a phone's first
// screen holds.
const queueShown = 7

// NextInQueue is what another pupil needs, the first after a pupil's own place in the
// queue, or the first of all. It looks at lessons and at what waits for an answer of the
// coach, which can be said without working out a round.
func NextInQueue(pupils []RosterPupil, here golf.PlayerID, today golf.Date) (next QueueItem, ok bool) {
	queue := slices.DeleteFunc(queueOf(RosterInput{Pupils: pupils, Today: today}), func(q QueueItem) bool { return q.need == changed || q.need == quiet })
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
