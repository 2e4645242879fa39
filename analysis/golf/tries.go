package golf

import (
	"fmt"
	"strings"
)

// Outcome is what became of one try of a drill.
type Outcome byte

// What may become of a try. Its value is the letter that stands for it in a text;
// the zero value is invalid.
const (
	TryMade   Outcome = 'm' // it counts
	TryMissed Outcome = 'x' // it does not, where nothing more is asked
	TryLeft   Outcome = 'l'
	TryRight  Outcome = 'r'
	TryShort  Outcome = 's'
	TryLong   Outcome = 'g'
)

// Outcomes are all outcomes.
var Outcomes = []Outcome{TryMade, TryMissed, TryLeft, TryRight, TryShort, TryLong}

var outcomeNames = map[Outcome]string{TryMade: "made", TryMissed: "missed", TryLeft: "left", TryRight: "right", TryShort: "short", TryLong: "long"}

// String returns "made", "missed", "left", "right", "short" or "long".
func (o Outcome) String() string { return outcomeNames[o] }

// Letter is the letter that stands for the outcome.
func (o Outcome) Letter() string { return string(rune(o)) }

// Tries are the tries of a session in order.
type Tries []Outcome

// ParseTries reads tries from a text, a letter each; spaces between them do not
// count.
func ParseTries(text string) (Tries, error) {
	var all Tries
	for _, letter := range strings.ReplaceAll(text, " ", "") {
		if letter > 127 || outcomeNames[Outcome(letter)] == "" {
			return nil, fmt.Errorf("not a try %q; allowed: m made, x missed, l left, r right, s short, g long", string(letter))
		}
		all = append(all, Outcome(letter))
	}
	if len(all) > MaxTries {
		return nil, fmt.Errorf("%d tries; allowed: up to %d", len(all), MaxTries)
	}
	return all, nil
}

// String writes tries as ParseTries reads them.
func (t Tries) String() string {
	var b strings.Builder
	for _, o := range t {
		b.WriteString(o.Letter())
	}
	return b.String()
}

// Count is how many of the tries had an outcome.
func (t Tries) Count(of Outcome) int {
	n := 0
	for _, o := range t {
		if o == of {
			n++
		}
	}
	return n
}

// LongestRun is the most tries in a row that count.
func (t Tries) LongestRun() int {
	most, run := 0, 0
	for _, o := range t {
		if run++; o != TryMade {
			run = 0
		}
		most = max(most, run)
	}
	return most
}

// By shares tries out over stations that are played in turn: how many counted at
// each, and how many were played there.
func (t Tries) By(stations int) (counted, tried []int) {
	counted, tried = make([]int, stations), make([]int, stations)
	for i, o := range t {
		tried[i%stations]++
		if o == TryMade {
			counted[i%stations]++
		}
	}
	return counted, tried
}
