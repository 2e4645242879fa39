package pages

import (
	"fmt"
	"math"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
)

// rosterLede says what happened since the coach looked, and who moved furthest.
func rosterLede(pupils []RosterPupil) string {
	played, asked := 0, 0
	for i := range pupils {
		played += flag(pupils[i].NewRounds > 0)
		asked += flag(pupils[i].Questions > 0)
	}
	text := fmt.Sprintf("%s of %s have played since you looked", capital(spelled(played)), spelled(len(pupils)))
	switch {
	case played == 0:
		text = "Nobody has played since you looked"
	case len(pupils) == 1:
		text = pupils[0].Name + " has played since you looked"
	case played == 1:
		text = fmt.Sprintf("One of %s has played since you looked", spelled(len(pupils)))
	}
	if asked > 0 {
		text += fmt.Sprintf(", and %s waiting for an answer", word(asked, "one is", spelled(asked)+" are"))
	}
	return text + "." + furthest(pupils)
}

// furthest names the part of a pupil's game that moved furthest, among those
// that moved by more than luck is likely to.
func furthest(pupils []RosterPupil) string {
	most, text := 0.0, ""
	for i := range pupils {
		f := &pupils[i].Form
		for _, c := range golf.Categories {
			way := f.Moved(c)
			by := math.Abs(f.Before[c].Value - f.Now[c].Level.Value)
			if way == compare.Within || by <= most {
				continue
			}
			most = by
			text = fmt.Sprintf(" %s’s %s has moved furthest: from %s to %s.", pupils[i].Name, partName(c), aGolfers(f.Before[c]), aGolfers(f.Now[c].Level))
		}
	}
	return text
}

// partName names a part of the game in a sentence.
func partName(c golf.Category) string {
	if c == golf.TeeShots {
		return "game off the tee"
	}
	return c.String()
}

// aGolfers says whose game a level is.
func aGolfers(l compare.Level) string {
	if l.Past != compare.Within {
		return levelName(l)
	}
	n := levelName(l)
	article := "a"
	if n[0] == '8' {
		article = "an"
	}
	return article + " " + n + "’s"
}

// news lists what came since the coach last looked.
func (p *RosterPupil) news() []string {
	var all []string
	for _, n := range []struct {
		count     int
		one, many string
	}{{p.Questions, "question", "questions"}, {p.Unread, "reply or note", "replies or notes"}, {p.NewRounds, "round", "rounds"}, {p.Results, "practice result", "practice results"}} {
		if n.count > 0 {
			all = append(all, plural(n.count, n.one, n.many))
		}
	}
	return all
}

// dayNear writes a day, its year only when it is another than today's.
func dayNear(d, today golf.Date) string {
	if d.Year == today.Year {
		return d.Time().Format("2 Jan")
	}
	return shortDay(d)
}

// dueDay writes a day to come as one says it.
func dueDay(d, today golf.Date) string {
	switch n := daysFrom(today, d); {
	case n == 0:
		return "today"
	case n == 1:
		return "tomorrow"
	case n > 1 && n < 7:
		return d.Time().Format("Monday")
	default:
		return dayNear(d, today)
	}
}
