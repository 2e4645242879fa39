package statement

import (
	"fmt"
	"strings"
	"testing"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/web/form"
	"strokeledger/web/layout"
)

// statementOf is the statement of some holes for a target of 79.
func statementOf(t *testing.T, holes ...golf.Hole) RoundPage {
	t.Helper()
	for i := range holes {
		holes[i].Number = i + 1
	}
	return NewRoundPage(layout.Page{}, asked(t, golf.Round{Holes: holes}, 79, form.StandardUnits))
}

// Advice fits where the later errors were played from, the costliest first.
func TestAdviceFitsTheLie(t *testing.T) {
	sand := hole(1, 4, yd(golf.Tee, 390), yd(golf.Bunker, 230), yd(golf.Bunker, 210), yd(golf.Rough, 105), ft(24), ft(2))
	out := yd(golf.Tee, 415)
	out.Penalty = 1
	twice := hole(1, 4, out, out, yd(golf.Tee, 415), yd(golf.Fairway, 160), ft(20), ft(2))
	trees := hole(1, 4, yd(golf.Tee, 410), yd(golf.Recovery, 210), yd(golf.Recovery, 195), yd(golf.Fairway, 60), ft(15), ft(2))
	chips := hole(1, 4, yd(golf.Tee, 390), yd(golf.Fairway, 150), yd(golf.Rough, 18), yd(golf.Rough, 10), ft(12), ft(1))
	chips.Shots[2].ShortSided, chips.Shots[3].ShortSided = true, true
	greens := hole(1, 5, yd(golf.Tee, 495), yd(golf.Fairway, 250), yd(golf.Fairway, 30), ft(55), ft(14), ft(6), ft(1))
	for _, c := range []struct {
		holes []golf.Hole
		want  string
	}{
		{[]golf.Hole{sand}, ". From a bunker, out of the sand first."},
		{[]golf.Hole{twice}, ". From the tee again, a club that stays in play."},
		{[]golf.Hole{trees}, ". From the trees, a plain shot back into play."},
		{[]golf.Hole{chips}, ". Beside the green, onto it first and close second."},
		{[]golf.Hole{greens}, ". On the green, the first putt close before it is holed."},
		{[]golf.Hole{trees, sand, twice, greens}, ". From the tee again, a club that stays in play; from the trees, a plain shot back into play."},
	} {
		if s := statementOf(t, c.holes...); !strings.HasSuffix(s.Verdict, c.want) {
			t.Errorf("%q, want %q", s.Verdict, c.want)
		}
	}
}

// What a missed putt would have kept is what the golfer compared with needs beyond
// one putt: about half a stroke from six feet, and less from nearer.
func TestHoledItKeeps(t *testing.T) {
	missed := hole(1, 4, yd(golf.Tee, 400), yd(golf.Recovery, 200), yd(golf.Recovery, 195), yd(golf.Fairway, 60), ft(6), ft(3), ft(1))
	s := statementOf(t, missed)
	card := golf.Round{Holes: []golf.Hole{missed}}.Card()
	lens, _ := expect.ForTarget(card, golf.TargetOver(card, 79, 72))
	if len(s.MissedFew) != 2 {
		t.Fatalf("%+v", s.MissedFew)
	}
	for i, feet := range []float64{6, 3} {
		if want := fmt.Sprintf("%.2f", lens.Strokes(golf.Green, golf.Feet.Of(feet))-1); s.MissedFew[i].Keeps != want {
			t.Errorf("from %g ft %s, by the model %s", feet, s.MissedFew[i].Keeps, want)
		}
	}
	if s.MissedFew[0].Keeps < "0.35" || s.MissedFew[0].Keeps > "0.60" || s.MissedFew[1].Keeps >= s.MissedFew[0].Keeps {
		t.Errorf("%+v", s.MissedFew)
	}
}

// A part of the game that one shot decides says what it comes to without it, and
// the approach what the tee shots of par 3s are of it.
func TestOneShotDecidesAPart(t *testing.T) {
	par := hole(1, 4, yd(golf.Tee, 390), yd(golf.Fairway, 150), ft(20), ft(2))
	wedge := hole(1, 4, yd(golf.Tee, 380), yd(golf.Fairway, 95))
	three := hole(1, 3, yd(golf.Tee, 165), ft(30), ft(2))
	lost := yd(golf.Tee, 165)
	lost.Penalty = 1
	outOfBounds := hole(1, 3, lost, yd(golf.Tee, 165), ft(30), ft(2))

	s := statementOf(t, par, wedge, three)
	if want := "Approach, 1 shot from the tee of a par 3: "; len(s.LineNotes) != 1 || !strings.HasPrefix(s.LineNotes[0], want) || !strings.Contains(s.LineNotes[0], "; without the shot holed from 95 yd on hole 2: ") {
		t.Errorf("%q", s.LineNotes)
	}
	if !strings.Contains(s.Lede, ". Without the shot holed from 95 yd on hole 2: ") {
		t.Errorf("%q", s.Lede)
	}
	s = statementOf(t, par, outOfBounds)
	if len(s.LineNotes) != 1 || !strings.HasPrefix(s.LineNotes[0], "Approach, 2 shots from the tee of a par 3: 1.") || !strings.Contains(s.LineNotes[0], "; without the penalty on hole 2: ") {
		t.Errorf("%q", s.LineNotes)
	}
	if s = statementOf(t, par, par); len(s.LineNotes) != 0 || strings.Contains(s.Lede, "Without") {
		t.Errorf("%q, %q", s.LineNotes, s.Lede)
	}
}
