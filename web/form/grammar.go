package form

import (
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
)

// The signs of a line, as the grammar in the package's comment has them. A test
// holds the two together.
const (
	aboutSign = "~" // the distance is not remembered well
	scoreSign = "=" // the strokes of the hole follow
	clubSign  = "/" // the club follows, up to the next space
)

// lies are the letters for where a shot was played from.
var lies = []struct {
	letter byte
	lie    golf.Lie
}{
	{'t', golf.Tee}, {'f', golf.Fairway}, {'r', golf.Rough}, {'b', golf.Bunker}, {'v', golf.Recovery}, {'g', golf.Green},
}

// units are those a distance may be typed in. p is a pace, taken as a yard.
var units = []struct {
	written string
	unit    golf.Unit
}{
	{"ft", golf.Feet}, {"yd", golf.Yards}, {"m", golf.Metres}, {"p", golf.Yards},
}

// number says what number a mark has behind it.
type number uint8

const (
	noNumber   number = iota
	mayNumber         // perhaps one right behind it
	mustNumber        // always one, perhaps after a gap
)

// mark is something that may stand behind a shot: right behind it in its item,
// or in an item of its own.
type mark struct {
	written   string
	means     string
	number    number
	penalty   int      // strokes it costs the shot before it
	drop      bool     // the next shot is where the ball was dropped
	ends      bool     // ends the hole and its item: only the score may follow
	notBehind []string // marks of the same shot that it must not stand behind
	apply     func(p *lineParser, m *mark, rest string) (left string)
}

// marks are all there are. One that begins with another stands before it.
var marks = []mark{
	{written: "s", means: "little green between the ball and the hole; a number is the yards of it", number: mayNumber, apply: (*lineParser).shortSide},
	{written: "x", means: "lost or out of bounds, and played again from the same spot", penalty: 1, notBehind: []string{"w", "u", "u2", "d"}, apply: (*lineParser).playAgain},
	{written: "w", means: "penalty area", penalty: 1, drop: true, apply: (*lineParser).dropBall},
	{written: "u2", means: "unplayable in a bunker, dropped outside", penalty: 2, drop: true, apply: (*lineParser).dropBall},
	{written: "u", means: "unplayable", penalty: 1, drop: true, apply: (*lineParser).dropBall},
	{written: "d", means: "local rule for a lost ball", penalty: 2, drop: true, apply: (*lineParser).dropBall},
	{written: "+", means: "that many other penalty strokes", number: mustNumber, apply: (*lineParser).addPenalty},
	{written: "-", means: "picked up: the last shot was not played", ends: true, apply: (*lineParser).pickUp},
	{written: "h", means: "holed, needed only for a hole in one", ends: true, apply: (*lineParser).holeOut},
}

// leadingMark cuts a mark off the front of a text; nil when there is none.
func leadingMark(s string) (*mark, string) {
	for i := range marks {
		rest, found := strings.CutPrefix(s, marks[i].written)
		if found && (rest == "" || !marks[i].ends) {
			return &marks[i], rest
		}
	}
	return nil, s
}

// leadingLie cuts the letter of a lie off the front of a text; 0 when there is
// none.
func leadingLie(s string) (golf.Lie, string) {
	if s != "" {
		for _, l := range lies {
			if l.letter == s[0] {
				return l.lie, s[1:]
			}
		}
	}
	return 0, s
}

// leadingUnit cuts a unit off the front of a text; 0 when there is none.
func leadingUnit(s string) (golf.Unit, string) {
	for _, u := range units {
		if rest, found := strings.CutPrefix(s, u.written); found {
			return u.unit, rest
		}
	}
	return 0, s
}

// leadingNumber cuts digits with at most one decimal point or comma off the
// front of a text.
func leadingNumber(s string) (number, rest string) {
	i, point := 0, false
	for i < len(s) && (digit(s[i]) || !point && i > 0 && (s[i] == '.' || s[i] == ',')) {
		point = point || s[i] == '.' || s[i] == ','
		i++
	}
	return s[:i], s[i:]
}

// parseNumber reads a number with a decimal point or comma.
func parseNumber(s string) (float64, error) {
	return strconv.ParseFloat(strings.Replace(strings.TrimSpace(s), ",", ".", 1), 64)
}

func digit(c byte) bool { return c >= '0' && c <= '9' }

// lower puts the letters of the grammar in lower case and leaves every other
// byte as it is.
func lower(s string) string {
	b := []byte(s)
	for i, c := range b {
		if c >= 'A' && c <= 'Z' {
			b[i] = c + 'a' - 'A'
		}
	}
	return string(b)
}
