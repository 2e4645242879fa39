package form

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"strokeledger/analysis/golf"
)

// What a line says of every rule of a golf record that it breaks.
func TestEveryRuleInWords(t *testing.T) {
	metres := Units{golf.Metres, golf.Metres}
	covered := map[string]bool{}
	for _, c := range []struct {
		units Units
		card  golf.CardHole
		line  string
		item  int
		what  string
		allow string
	}{
		{StandardUnits, par(4, 392), "r900 g3", 0, "900 yd cannot be the distance of a shot", "over 0, at most 700 yd"},
		{metres, par(4, 392), "r641 g3", 0, "641 m cannot be the distance of a shot", "over 0, at most 640 m"},
		{StandardUnits, par(4, 392), "f140 g301", 1, "301 ft cannot be the distance of a shot", "over 0, at most 300 ft on the green"},
		{metres, par(4, 392), "f140 g92.5", 1, "92.5 m cannot be the distance of a shot", "over 0, at most 91 m on the green"},
		{StandardUnits, par(4, 392), "f140 g0", 1, "0 ft cannot be the distance of a shot", "over 0, at most 300 ft on the green"},
		{StandardUnits, par(4, 0), "f140 g3", -1, "the length of the hole is not known yet", "its length on the card, or the tee shot's distance, as in t385"},
		{StandardUnits, par(4, 0), "t0 f140 g3", 0, "0 yd cannot be the distance of a shot", "over 0, at most 700 yd"},
		{StandardUnits, par(4, 392), "f140 s", 0, "140 yd is too far from the hole for a short side", "s off the green only, 30 yd or nearer"},
		{StandardUnits, par(4, 392), "f140s9 g3", 0, "140 yd is too far from the hole for a short side", "s off the green only, 30 yd or nearer"},
		{metres, par(4, 392), "f28s9 g3", 0, "28 m is too far from the hole for a short side", "s off the green only, 30 yd or nearer"},
		{StandardUnits, par(4, 392), "r20 g10s", 1, "a putt has no short side", "s off the green only, 30 yd or nearer"},
		{StandardUnits, par(4, 392), "r20 g10s1", 1, "a putt has no short side", "s off the green only, 30 yd or nearer"},
		{StandardUnits, par(4, 392), "r20s20.5 g3", 0, "20.5 yd of green do not fit into a shot of 20 yd", "less green than the distance to the hole"},
		{StandardUnits, par(4, 392), "f140+9x+9w g3", 0, "10 penalty strokes for one shot are too many", "at most 9"},
		{StandardUnits, par(4, 392), "f140w -", 0, "the ball was picked up before that shot was played, so it cost no penalty", "the lie and distance where it was picked up, with - behind it"},
		{StandardUnits, golf.CardHole{Number: 19, Par: 4, Length: 9000}, "f140 g3", -1, "there is no hole 19", "1 to 18"},
		{StandardUnits, par(7, 392), "f140 g3", -1, "there is no par 7", "3 to 6"},
	} {
		l := ParseLine(c.line, c.card, c.units)
		if len(l.Problems) == 0 || l.Problems[0] != (Problem{c.item, c.what, c.allow}) {
			t.Errorf("%q: %+v", c.line, l.Problems)
		}
		for _, found := range l.Hole.Check() {
			covered[found.What] = true
		}
	}
	// rules that no line can break: none for a hole without a shot, one that starts
	// off the tee, a lie of no name, and a score with shots beside it
	for _, what := range []string{"no shot", "no lie", "the hole has other shots", "the hole is known by its score alone", "the hole is known by its score alone, penalties included"} {
		covered[what] = true
	}
	p := lineParser{line: Line{Hole: golf.Hole{Number: 1, Par: 4, Shots: []golf.Shot{{Lie: golf.Rough, Distance: 10 * golf.Yard}}, ScoreOnly: 100}}}
	said := []string{}
	for _, found := range p.line.Hole.Check() {
		covered[found.What] = true
		what, allowed := p.inWords(found)
		said = append(said, what+". Allowed: "+allowed)
	}
	if want := "nobody scores 100. Allowed: 1 to 99; a hole starts on the tee, not in the rough. Allowed: tee"; strings.Join(said, "; ") != want {
		t.Errorf("%q", said)
	}
	source, err := os.ReadFile("../../analysis/golf/check.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, rule := range regexp.MustCompile(`c\.add\([^"]*(?:"[a-z_]+"|field), "([^"]+)"`).FindAllStringSubmatch(string(source), -1) {
		if !covered[rule[1]] {
			t.Errorf("no line was tried that breaks %q", rule[1])
		}
	}
}
