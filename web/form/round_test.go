package form

import (
	"net/url"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
)

const (
	needed    = "Allowed: 1 to 80 characters, in one line."
	perhaps   = "Allowed: at most 80 characters, in one line."
	weather   = "Allowed: at most 300 characters, in one line."
	anyHole   = "Allowed: 1 to 18."
	noCourse  = "Choose a course."
	wholePart = "Choose all holes, the front nine or the back nine."
)

func TestRoundStart(t *testing.T) {
	right := map[string]string{"course": "7", "date": "2026-05-02", "conditions": "", "first_hole": "1", "part": ""}
	fresh := map[string]string{"new_course": "Links", "new_tee": "", "new_holes": "9", "date": "2026-05-02", "part": "back"}
	checkForms(t, func(v url.Values) typedForm { return ParseRoundStart(v) }, []formCase{
		{right, nil},
		{with(right, "first_hole", "", "part", "front"), nil},
		{with(right, "course", ""), map[string]string{"Course": noCourse}},
		{with(right, "course", "-1"), map[string]string{"Course": noCourse}},
		{with(right, "date", "x"), map[string]string{"Date": dayAllowed}},
		{with(right, "conditions", strings.Repeat("a", 301)), map[string]string{"Conditions": weather}},
		{with(right, "first_hole", "19"), map[string]string{"First": anyHole}},
		{with(right, "part", "middle"), map[string]string{"Part": wholePart}},
		{map[string]string{"course": "x", "date": "x", "conditions": "a\nb", "first_hole": "x", "part": "x"},
			map[string]string{"Course": noCourse, "Date": dayAllowed, "Conditions": weather, "First": anyHole, "Part": wholePart}},
		{fresh, nil},
		{with(fresh, "new_course", ""), map[string]string{"NewName": needed}},
		{with(fresh, "new_course", long, "new_tee", long, "new_holes", "0"), map[string]string{"NewName": needed, "NewTee": perhaps, "NewHoles": anyHole}},
	})
}

func TestHolesOfAPart(t *testing.T) {
	eighteen := make([]golf.CardHole, 18)
	for i := range eighteen {
		eighteen[i] = golf.CardHole{Number: i + 1, Par: 4}
	}
	for _, c := range []struct {
		part, first string
		card        []golf.CardHole
		count, at   int
		wrong       map[string]string
	}{
		{"", "1", eighteen, 18, 1, nil},
		{"", "", eighteen, 18, 1, nil},
		{"", "10", eighteen, 18, 10, nil},
		{"back", "1", eighteen, 9, 10, nil},
		{"back", "12", eighteen, 9, 12, nil},
		{"back", "9", eighteen, 9, 9, map[string]string{"First": "Allowed: 10 to 18."}},
		{"front", "", eighteen, 9, 1, nil},
		{"front", "10", eighteen, 9, 10, map[string]string{"First": "Allowed: 1 to 9."}},
		{"back", "1", eighteen[:9], 0, 0, map[string]string{"Part": "The course has no such holes."}},
		{"back", "1", nil, 0, 0, nil},
	} {
		s := ParseRoundStart(url.Values{"course": {"1"}, "date": {"2026-05-02"}, "part": {c.part}, "first_hole": {c.first}})
		holes, first := s.ChooseHoles(c.card)
		if diff := cmp.Diff(c.wrong, problemsOf(s)); len(holes) != c.count || first != c.at || diff != "" {
			t.Errorf("part %q, first %q: %d holes from %d; %s", c.part, c.first, len(holes), first, diff)
		}
	}
}

// aRound is a round of three holes, of which one has no length yet.
func aRound() KnownRound {
	return KnownRound{First: 1, Holes: []golf.CardHole{{Number: 1, Par: 4, Length: golf.Metres.Of(346.25), Index: 5}, {Number: 2, Par: 3, Length: 158 * golf.Yard}, {Number: 3, Par: 4}}}
}

func aRoundTyped() map[string]string {
	return map[string]string{"day": "2026-05-02", "course": "Links", "tee": "", "target": "79", "par18": "72", "first_hole": "2", "conditions": "",
		"par-1": "4", "length-1": "378.7", "index-1": "5", "par-2": "3", "length-2": "158", "index-2": "", "par-3": "4", "length-3": "", "index-3": ""}
}

func TestRoundDetails(t *testing.T) {
	right := aRoundTyped()
	checkForms(t, func(v url.Values) typedForm { return ParseRoundDetails(v, aRound(), nil, golf.Yards) }, []formCase{
		{right, nil},
		{with(right, "day", "x"), map[string]string{"Day": dayAllowed}},
		{with(right, "course", ""), map[string]string{"Course": needed}},
		{with(right, "first_hole", "4"), map[string]string{"First": "The round has no such hole."}},
		{with(right, "first_hole", "0"), map[string]string{"First": anyHole}},
		{with(right, "index-2", "5"), map[string]string{"Holes.Index": "Hole 1 has it too."}},
		{with(right, "par-2", "7"), map[string]string{"Holes.Par": "Allowed: 3 to 6."}},
		{with(right, "length-2", ""), map[string]string{"Holes.Length": "Allowed: over 0, at most 700 yd."}},
		{with(right, "take", "x"), map[string]string{"Take": noCourse}},
		{map[string]string{"day": "x", "tee": long, "take": "0", "conditions": "a\tb", "par-1": "x", "length-1": "x", "index-1": "x"},
			map[string]string{"Day": dayAllowed, "Course": needed, "Tee": perhaps, "Take": noCourse, "Target": targetAllowed, "Par18": "Allowed: 27 to 108.", "First": anyHole,
				"Conditions": weather, "Holes.Par": "Allowed: 3 to 6.", "Holes.Length": "Allowed: over 0, at most 700 yd.", "Holes.Index": anyHole}},
	})
}

func valuesOf(typed map[string]string) url.Values {
	v := url.Values{}
	for name, text := range typed {
		v.Set(name, text)
	}
	return v
}

// A length that stands as it was shown keeps its last digit, and one that is not
// known may stay so.
func TestDetailsKeepLengths(t *testing.T) {
	d := ParseRoundDetails(valuesOf(aRoundTyped()), aRound(), nil, golf.Yards)
	if diff := cmp.Diff(aRound().Holes, d.Card()); diff != "" {
		t.Error(diff)
	}
}

// A course that is taken over stands in the place of what was typed, on the holes
// that it has, and what was wrong there does not matter.
func TestTakeOver(t *testing.T) {
	typed := with(aRoundTyped(), "course", "", "par-1", "x", "index-1", "99", "take", "7")
	taken := TakenCourse{"Heath", "White", []golf.CardHole{{Number: 1, Par: 5, Length: 500 * golf.Yard, Index: 3}}}
	d := ParseRoundDetails(valuesOf(typed), aRound(), &taken, golf.Yards)
	want := aRound().Holes
	want[0] = taken.Holes[0]
	if diff := cmp.Diff(want, d.Card()); diff != "" || !d.Sound() || d.Course.Value != "Heath" || d.Course.Text != "" || d.Tee.Value != "White" || d.Par18.Value != 72 {
		t.Errorf("%+v %s", d, diff)
	}
	taken.Holes = make([]golf.CardHole, 18)
	for i := range taken.Holes {
		taken.Holes[i] = golf.CardHole{Number: i + 1, Par: 3, Length: 100 * golf.Yard}
	}
	if d = ParseRoundDetails(valuesOf(typed), aRound(), &taken, golf.Yards); d.Par18.Value != 54 {
		t.Errorf("par of the course: %+v", d.Par18)
	}
	taken.Holes = []golf.CardHole{{Number: 10, Par: 4, Length: 300 * golf.Yard}}
	if d = ParseRoundDetails(valuesOf(aRoundTyped()), aRound(), &taken, golf.Yards); d.Take.Problem != "It has none of the holes of this round." || d.Sound() {
		t.Errorf("%+v", d.Take)
	}
}

func TestRoundCard(t *testing.T) {
	nine := "Allowed: 1 to 200."
	kept := RoundCard{TextOf("dry"), WholeOf(41), WholeOf(43)}
	parse := func(v url.Values) typedForm { return ParseRoundCard(v, kept) }
	checkForms(t, parse, []formCase{
		{nil, nil},
		{map[string]string{"out": "", "in": "44", "conditions": "wet"}, nil},
		{map[string]string{"out": "0"}, map[string]string{"Out": nine}},
		{map[string]string{"out": "x", "in": "201", "conditions": "a\nb"}, map[string]string{"Out": nine, "In": nine, "Conditions": weather}},
	})
	if diff := cmp.Diff(RoundCard{TextOf("dry"), Whole{}, WholeOf(44)}, parse(url.Values{"out": {""}, "in": {"44"}})); diff != "" {
		t.Error(diff)
	}
}

func TestHoleCard(t *testing.T) {
	right := map[string]string{"par": "4", "length": "346 m", "index": ""}
	parse := func(v url.Values) typedForm { return ParseHoleCard(v, 7, golf.Yards) }
	checkForms(t, parse, []formCase{
		{right, nil},
		{with(right, "par", "4.5"), map[string]string{"Par": "Allowed: 3 to 6."}},
		{with(right, "length", "701"), map[string]string{"Length": "Allowed: over 0, at most 700 yd."}},
		{with(right, "index", "19"), map[string]string{"Index": anyHole}},
		{map[string]string{"index": "x"}, map[string]string{"Par": "Allowed: 3 to 6.", "Length": "Allowed: over 0, at most 700 yd.", "Index": anyHole}},
	})
	if got := ParseHoleCard(valuesOf(right), 7, golf.Yards).Hole(); got != (golf.CardHole{Number: 7, Par: 4, Length: golf.Metres.Of(346)}) {
		t.Errorf("%+v", got)
	}
	if got := HoleCardOf(golf.CardHole{Number: 2, Par: 3, Length: 158 * golf.Yard}, golf.Yards); got.Par.Text != "3" || got.Length.Text != "158" || got.Index.Text != "" || !got.Sound() {
		t.Errorf("%+v", got)
	}
}
