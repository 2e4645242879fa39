package coach

import (
	"fmt"
	"math"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/words"
)

// rosterLede says who played and asked since the coach last looked, and whose
// game changed most.
func rosterLede(pupils []RosterPupil) string {
	played, asked := 0, 0
	for i := range pupils {
		played += words.Tally(pupils[i].NewRounds > 0)
		asked += words.Tally(pupils[i].Questions > 0)
	}
	text := fmt.Sprintf("%s of %s have entered rounds since you looked", words.Capital(words.Spelled(played)), words.Spelled(len(pupils)))
	switch {
	case played == 0:
		text = "Nobody has entered a round since you looked"
	case len(pupils) == 1:
		text = pupils[0].Name + " has entered " + words.SpelledPlural(pupils[0].NewRounds, "round", "rounds") + " since you looked"
	case played == 1:
		text = fmt.Sprintf("One of %s has entered rounds since you looked", words.Spelled(len(pupils)))
	}
	if asked > 0 {
		text += fmt.Sprintf(", and %s waiting for an answer", words.OneOrMany(asked, "one is", words.Spelled(asked)+" are"))
	}
	return text + "." + furthest(pupils)
}

// furthest names the part of a pupil's game that changed most, among changes
// that are likely more than luck; empty when there is none.
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
			text = fmt.Sprintf(" %s %s has changed most: from %s to %s.", words.Whose(pupils[i].Name), words.PartName(c), words.GameOf(f.Before[c]), words.GameOf(f.Now[c].Level))
		}
	}
	return text
}

// news counts what is new since the coach last looked.
func (p *RosterPupil) news() []string {
	var all []string
	for _, n := range []struct {
		count     int
		one, many string
	}{{p.Questions, "question", "questions"}, {p.Unread, "reply or note", "replies or notes"}, {p.NewRounds, "new round", "new rounds"}, {p.Changed, "round corrected", "rounds corrected"}, {p.Results, "practice result", "practice results"}} {
		if n.count > 0 {
			all = append(all, words.Plural(n.count, n.one, n.many))
		}
	}
	return all
}
