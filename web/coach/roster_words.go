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

// furthest names the part of a pupil's game that changed most, among clear changes;
// empty when there is none.
func furthest(pupils []RosterPupil) string {
	most, text := 0.0, ""
	for i := range pupils {
		f := &pupils[i].Form
		for _, c := range golf.Categories {
			way, by := "better", math.Abs(f.Changes[c].Mean)
			switch moved := f.Moved(c); {
			case moved == compare.Within || by <= most:
				continue
			case moved == compare.Worse:
				way = "worse"
			}
			most = by
			text = fmt.Sprintf(" %s %s has changed most: %s %s a round of 18, and that is clear.", words.Whose(pupils[i].Name), words.PartName(c), words.StrokeCount(by), way)
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
