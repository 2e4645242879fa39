package figures

import (
	"fmt"
	"math"

	"strokeledger/analysis/account"
	"strokeledger/web/words"
)

// Working shows how the loss of shots comes about. It counts in the hundredths
// that are printed, so that whoever adds up the line comes to the same loss.
type Working struct {
	before, after int // strokes to hole out before and after the shots, hundredths
	shots         int // how many were played
	penalties     int // strokes
}

// WorkingOf is the working of shots together.
func WorkingOf(shots ...account.Shot) Working {
	var w Working
	for _, s := range shots {
		w.before += hundredths(s.Expected)
		w.after += hundredths(s.After)
		w.shots++
		w.penalties += int(math.Round(s.Lost-s.After+s.Expected)) - 1
	}
	return w
}

func hundredths(x float64) int { return int(math.Round(x * 100)) }

// Lost is what the shots lost, in strokes.
func (w Working) Lost() float64 {
	return float64(100*(w.shots+w.penalties)+w.after-w.before) / 100
}

// Shots is how many shots it is about.
func (w Working) Shots() int { return w.shots }

// String says it in one line: 4.14 to play, 1 played, 3.65 left: 0.51 lost.
func (w Working) String() string {
	return w.write(w.before, w.after)
}

// OfHole says it of the shots of a hole, from where the first was played to where
// the last one left the ball.
func OfHole(shots []account.Shot) string {
	w := WorkingOf(shots...)
	return w.write(hundredths(shots[0].Expected), hundredths(shots[len(shots)-1].After))
}

func (w Working) write(before, after int) string {
	played, left := fmt.Sprintf("%d played", w.shots), fmt.Sprintf("%.2f left", float64(after)/100)
	if w.penalties > 0 {
		played += ", " + words.Plural(w.penalties, "penalty stroke", "penalty strokes")
	}
	if after == 0 {
		left = "holed"
	}
	return fmt.Sprintf("%.2f to play, %s, %s: %s", float64(before)/100, played, left, LostWords(w.Lost()))
}

// ScoreLost is what a hole known by its score alone lost, so that it follows from
// the two decimals printed of its expected strokes.
func ScoreLost(h account.Hole) float64 {
	return (100*math.Round(h.Score) - math.Round(100*(h.Score-h.Lost))) / 100
}

// OfScore says how the loss of a hole known by its score alone comes about.
func OfScore(h account.Hole) string {
	return fmt.Sprintf("%.2f to play, %.0f taken: %s", h.Score-h.Lost, h.Score, LostWords(ScoreLost(h)))
}

// LostWords says an amount as the end of a working: 0.51 lost, 0.20 won back.
func LostWords(lost float64) string {
	switch {
	case lost > .004:
		return fmt.Sprintf("%.2f lost", lost)
	case lost < -.004:
		return fmt.Sprintf("%.2f won back", -lost)
	default:
		return "nothing lost"
	}
}
