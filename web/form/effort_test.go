package form

import (
	"os"
	"strings"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/shotsfile"
)

// Operator times of the keystroke-level model (Card, Moran and Newell 1980):
// a key of an average skilled typist, of one who is not, pointing, moving a hand
// to another device, and making up one's mind.
const (
	keySkilled = 0.20
	keyOther   = 0.28
	pointing   = 1.10
	preparing  = 1.35
)

// What it takes to enter a round of 84 strokes: keys by line, with Enter for
// every hole, and taps by pad, with Save for every hole.
func TestEffortOfEnteringARound(t *testing.T) {
	file, err := os.Open("../../testdata/shots/card84.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	var round golf.Round
	for r, err := range shotsfile.NewReader(file, shotsfile.Limits{}).Rounds() {
		if err != nil {
			t.Fatal(err)
		}
		round = r
	}
	keys, taps, strokes := 0, 0, 0
	for _, h := range round.Holes {
		card := golf.CardHole{Number: h.Number, Par: h.Par, Length: h.Length()}
		line := WriteLine(h, card, StandardUnits)
		if l := ParseLine(line, card, StandardUnits); !l.Sound() || l.Hole.Strokes() != h.Strokes() {
			t.Fatalf("hole %d: %q reads as %s", h.Number, line, tell(l.Hole))
		}
		keys += len(line) + 1
		strokes += h.Strokes()
		pressed := ""
		for _, key := range padKeys(line) {
			pressed = Press(pressed, key)
			taps++
		}
		taps++
		if l := ParseLine(pressed, card, StandardUnits); !l.Sound() || tell(l.Hole) != tell(h) {
			t.Fatalf("hole %d: the pad wrote %q", h.Number, pressed)
		}
	}
	t.Logf("%d strokes by line: %d keys, %.0f s for who types well, %.0f s for who does not, %d holes to make up one's mind on",
		strokes, keys, float64(keys)*keySkilled+18*preparing, float64(keys)*keyOther+18*preparing, len(round.Holes))
	t.Logf("%d strokes by pad: %d taps, %.2f a stroke, %.0f s", strokes, taps, float64(taps)/float64(strokes), float64(taps)*pointing+18*preparing)
	if keys > 235 {
		t.Errorf("by line: %d keys", keys)
	}
	if float64(taps) > 2.6*float64(strokes) {
		t.Errorf("by pad: %d taps for %d strokes", taps, strokes)
	}
}

// padKeys are the keys that write a line on the pad: a lie key begins every
// shot, as there is no key for a space.
func padKeys(line string) []string {
	var keys []string
	last := "t"
	for word := range strings.FieldsSeq(line) {
		if word[0] >= '0' && word[0] <= '9' {
			word = last + word
		}
		for _, c := range word {
			keys = append(keys, string(c))
		}
		last = word[:1]
	}
	return keys
}
