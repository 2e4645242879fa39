package form

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
)

func TestUnlikelyHolesRaiseQuestions(t *testing.T) {
	metres := Units{golf.Metres, golf.Metres}
	for _, c := range []struct {
		par   int
		units Units
		line  string
		item  int
		want  string // empty for no question
	}{
		{4, StandardUnits, "f140 g30 3", 0, ""},
		{4, StandardUnits, "f140x g30 3", 0, ""},
		{4, StandardUnits, "x f140 g30 3", 0, ""},
		{4, StandardUnits, "f140w r160 g30 3", 0, ""},
		{4, StandardUnits, "f400 g3", 0, "400 yd is longer than the hole (378 yd). Is that right?"},
		{4, StandardUnits, "t420 f400 g3", 0, ""},
		{4, metres, "f350 g3", 0, "350 m is longer than the hole (346 m). Is that right?"},
		{4, metres, "v345.9 g3", 0, ""},
		{4, StandardUnits, "f140 r160 g3", 1, "160 yd is farther from the hole than the shot before (140 yd). Is that right?"},
		{4, StandardUnits, "f5 g20 3", 1, "20 ft is farther from the hole than the shot before (15 ft). Is that right?"},
		{4, StandardUnits, "f140 g2.5 3", 2, "3 ft is farther from the hole than the shot before (2.5 ft). Is that right?"},
		{4, StandardUnits, "f140 g3 3", 0, ""},
		{4, StandardUnits, "f140 g122", 1, "122 ft is a very long putt. Is that right?"},
		{4, StandardUnits, "f140 g90 3", 0, ""},
		{4, StandardUnits, "f140 x f140 g30 2", 2, "After x you play again from the same spot, so 140 yd here is one more stroke from there. Is that right?"},
		{4, StandardUnits, "f140x 140 g30 2", 1, "After x you play again from the same spot, so 140 yd here is one more stroke from there. Is that right?"},
		{4, StandardUnits, "x t378 f140 g3", 1, "After x you play again from the same spot, so 378 yd here is one more stroke from there. Is that right?"},
		{4, StandardUnits, "f140x f139 g30 2", 0, ""},
		{4, StandardUnits, "=1", 0, "A hole in one on a par 4. Is that right?"},
		{4, StandardUnits, "h", 0, "A hole in one on a par 4. Is that right?"},
		{3, StandardUnits, "=1", 0, ""},
		{4, StandardUnits, "=15", 0, ""},
		{4, StandardUnits, "=16", 0, "16 is a very high score for a hole. Is that right?"},
		{4, StandardUnits, "xxxxxxx f140 g3", 2, "17 is a very high score for a hole. Is that right?"},
		{4, StandardUnits, "f140", 0, "Did you hole it from 140 yd on the fairway? If not, the next shot is missing."},
		{4, StandardUnits, "f140x", 0, "Did you hole it from 140 yd on the fairway? If not, the next shot is missing."},
		{4, StandardUnits, "f140 h", 0, ""},
		{4, StandardUnits, "f140 =2", 0, ""},
		{4, StandardUnits, "f140-", 0, ""},
		{4, StandardUnits, "f180ww r120 g3", 0, "Two drops stand behind one shot. Was the ball dropped twice before the next stroke?"},
		{4, StandardUnits, "r20s 4 g3", 1, "Is 4 the yards of green? Then write s4. As it stands, the next shot is from 4 yd."},
		{4, StandardUnits, "b20 u 2 g3", 2, "Is this the relief that costs two strokes? Then write u2. As it stands, the next shot is from 2 yd."},
		{4, StandardUnits, "f140 g30,3", 1, "Is “30,3” one distance, 30.3? If these are two shots, put a space between them."},
		{4, StandardUnits, "f140 g2,5", 0, ""},
		{4, StandardUnits, "f140,g5,2", 1, "Are these two shots, 5 and 2? If “5,2” is one distance, write 5.2."},
		{4, StandardUnits, "f140,g30,3", 0, ""},
		{4, StandardUnits, "f140/7i,g30 h", 0, "Is “7i,g30” the name of a club? If a shot comes after the club, put a space before it."},
	} {
		l := ParseLine(c.line, par(c.par, 378), c.units)
		if !l.Sound() {
			t.Errorf("%q: %v", c.line, l.Problems)
		}
		var want []Question
		if c.want != "" {
			want = []Question{{Item: c.item, Text: c.want, End: strings.HasPrefix(c.want, "Did you hole")}}
		}
		if diff := cmp.Diff(want, l.Questions); diff != "" {
			t.Errorf("%q: %s", c.line, diff)
		}
	}
	if l := ParseLine("f400 q", par(4, 378), StandardUnits); l.Questions != nil {
		t.Errorf("a line with a problem asks: %v", l.Questions)
	}
}

func TestShotStillToBePlayed(t *testing.T) {
	for _, c := range []struct {
		line              string
		ended, unfinished bool
		toPlay            string // "" for none
	}{
		{"", false, false, "tee 392"},
		{"  ", false, false, "tee 392"},
		{"t", false, true, "tee 392"},
		{"t385", false, true, "tee 385"},
		{"x", false, false, "tee 392"},
		{"f185 g12", false, false, "green 12"},
		{"f185x", false, false, "fairway 185"},
		{"f185 g12 h", true, false, ""},
		{"f185 g12 -", true, false, ""},
		{"f185 g12 =3", true, false, ""},
		{"=5", true, false, ""},
		{"f185w", false, true, ""},
		{"f185w h", true, false, ""},
		{"f185w =5", true, false, ""},
		{"f185 g", false, true, ""},
		{"f185 g~", false, true, ""},
		{"f", false, true, ""},
		{"f g12", false, false, ""},
		{"fx", false, false, ""},
		{"185", false, true, ""},
		{"185 ", false, false, ""},
		{"185 f", false, false, ""},
		{"f185 =", false, true, ""}, // no score stands there yet
		{"f185+", false, true, ""},
		{"f185 g8f", false, true, ""},
		{"f185 g8q", false, false, ""},
		{"f185 g0", false, true, ""},
		{"f900", false, false, ""},
		{"f140 s", false, false, ""},
		{"r20s", false, false, "rough 20 short-sided"},
		{"r20 g1 1 1 1 1 1 1 1 1 1 =1", true, true, ""},
		{"r20 g1 1 =5", true, false, ""},
		{"q", false, false, ""},
		{"h", true, false, ""},
	} {
		l := ParseLine(c.line, par(3, 392), StandardUnits)
		shot, open := l.ToPlay()
		said := ""
		if open {
			said, _, _ = strings.Cut(tell(golf.Hole{Shots: []golf.Shot{shot}}), ":")
			said = strings.NewReplacer("yd", "", "ft", "").Replace(said)
		}
		if l.Ended != c.ended || l.Unfinished != c.unfinished || said != c.toPlay {
			t.Errorf("%q: ended %t, unfinished %t, %q to play; %v", c.line, l.Ended, l.Unfinished, said, l.Problems)
		}
	}
	if _, open := (&Line{}).ToPlay(); open {
		t.Error("the tee shot of a hole without a length is to play")
	}
}

// A penalty behind a shot and a ball played again, in every order.
func TestPenaltiesAndPlayingAgain(t *testing.T) {
	for _, c := range []struct {
		line, want string
		again      []int
	}{
		{"r165+1x g20 2", "tee 392yd, rough 165yd + 2, rough 165yd, green 20ft, green 2ft: 7", []int{2}},
		{"r165x+1 g20 2", "tee 392yd, rough 165yd + 1, rough 165yd + 1, green 20ft, green 2ft: 7", []int{2}},
		{"r165xx g20 2", "tee 392yd, rough 165yd + 1, rough 165yd + 1, rough 165yd, green 20ft, green 2ft: 8", []int{2, 3}},
		{"r165xw f90 g2", "tee 392yd, rough 165yd + 1, rough 165yd + 1, fairway 90yd, green 2ft: 7", []int{2}},
		{"r165xu2 f90 g2", "tee 392yd, rough 165yd + 1, rough 165yd + 2, fairway 90yd, green 2ft: 8", []int{2}},
		{"r165wu f90 g2", "tee 392yd, rough 165yd + 2, fairway 90yd, green 2ft: 6", nil},
		{"r165+1w f90 g2", "tee 392yd, rough 165yd + 2, fairway 90yd, green 2ft: 6", nil},
		{"x+2 r165 g2", "tee 392yd + 1, tee 392yd + 2, rough 165yd, green 2ft: 7", []int{1}},
		{"w r90x g2", "tee 392yd + 1, rough 90yd + 1, rough 90yd, green 2ft: 6", []int{2}},
		{"r14xs4 g2", "tee 392yd, rough 14yd short-sided 4 of green + 1, rough 14yd short-sided 4 of green, green 2ft: 5", []int{2}},
	} {
		l := ParseLine(c.line, par(4, 392), StandardUnits)
		if got := tell(l.Hole); got != c.want || !l.Sound() {
			t.Errorf("%q reads as\n%s, want\n%s; %v", c.line, got, c.want, l.Problems)
		}
		var again []int
		for i := range l.Hole.Shots {
			if l.Again(i) {
				again = append(again, i)
			}
		}
		if diff := cmp.Diff(c.again, again); diff != "" {
			t.Errorf("%q: played again %s", c.line, diff)
		}
	}
	for _, line := range []string{"r165wx g20 2", "r165ux g20 2", "r165u2x g20 2", "dx r165 g2", "w x r165 g2", "r165w+1x g2"} {
		l := ParseLine(line, par(4, 392), StandardUnits)
		if len(l.Problems) == 0 || l.Problems[0].What != "the ball was dropped, so it was not played again from the same spot" {
			t.Errorf("%q reads as %s; %v", line, tell(l.Hole), l.Problems)
		}
	}
}
