package coach

import (
	"fmt"
	"math"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/words"
)

// rosterLede says what happened since the coach looked, and who moved furthest.
func rosterLede(pupils []RosterPupil) string {
	played, asked := 0, 0
	for i := range pupils {
		played += words.OneIf(pupils[i].NewRounds > 0)
		asked += words.OneIf(pupils[i].Questions > 0)
	}
	text := fmt.Sprintf("%s of %s have played since you looked", words.Capital(words.Spelled(played)), words.Spelled(len(pupils)))
	switch {
	case played == 0:
		text = "Nobody has played since you looked"
	case len(pupils) == 1:
		text = pupils[0].Name + " has played since you looked"
	case played == 1:
		text = fmt.Sprintf("One of %s has played since you looked", words.Spelled(len(pupils)))
	}
	if asked > 0 {
		text += fmt.Sprintf(", and %s waiting for an answer", words.OneOrMany(asked, "one is", words.Spelled(asked)+" are"))
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
			text = fmt.Sprintf(" %s’s %s has moved furthest: from %s to %s.", pupils[i].Name, words.PartName(c), words.GolfersGame(f.Before[c]), words.GolfersGame(f.Now[c].Level))
		}
	}
	return text
}

// news lists what came since the coach last looked.
func (p *RosterPupil) news() []string {
	var all []string
	for _, n := range []struct {
		count     int
		one, many string
	}{{p.Questions, "question", "questions"}, {p.Unread, "reply or note", "replies or notes"}, {p.NewRounds, "round", "rounds"}, {p.Results, "practice result", "practice results"}} {
		if n.count > 0 {
			all = append(all, words.Plural(n.count, n.one, n.many))
		}
	}
	return all
}
