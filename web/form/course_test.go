package form

import (
	"net/url"
	"strings"
	"testing"

	"strokeledger/analysis/golf"
)

// aCourse is a course of one hole, with the answer to what is unusual about that.
func aCourse() map[string]string {
	return map[string]string{"name": "Links", "tee": "White", "rating": "71.4", "slope": "126", "holes": "1", "par-1": "4", "length-1": "380", "index-1": "7", "anyway": "holes:1"}
}

func TestCourseForm(t *testing.T) {
	right := aCourse()
	slope, nine := "Allowed: 55 to 155.", "Allowed: 10 to 50."
	checkForms(t, func(v url.Values) typedForm { return ParseCourseForm(v, golf.Yards, KnownCard{}) }, []formCase{
		{right, nil},
		{with(right, "tee", "", "rating", "", "slope", ""), nil},
		{with(right, "front_rating", "35,5", "front_slope", "120"), nil},
		{with(right, "name", ""), map[string]string{"Name": "Allowed: 1 to 80 characters, each of which can be seen."}},
		{with(right, "tee", long), map[string]string{"Tee": "Allowed: at most 80 characters."}},
		{with(right, "rating", "91"), map[string]string{"Whole.Rating": "Allowed: 20 to 90."}},
		{with(right, "name", "", "tee", long, "rating", "x", "slope", "54", "front_rating", "9", "front_slope", "x", "back_rating", "x", "back_slope", "x"),
			map[string]string{"Name": "Allowed: 1 to 80 characters, each of which can be seen.", "Tee": "Allowed: at most 80 characters.", "Whole.Rating": "Allowed: 20 to 90.", "Whole.Slope": slope,
				"Front.Rating": nine, "Front.Slope": slope, "Back.Rating": nine, "Back.Slope": slope}},
	})
	f := ParseCourseForm(valuesOf(right), golf.Yards, KnownCard{})
	if len(f.Holes) != 1 || f.Holes[0] != (golf.CardHole{Number: 1, Par: 4, Length: 380 * golf.Yard, Index: 7}) || f.Whole.Rating.Value != 71.4 {
		t.Errorf("%+v", f)
	}
}

// A question keeps a course from being saved until it is answered, each or all at
// once; what is refused cannot be answered.
func TestQuestionsOfACourse(t *testing.T) {
	v := valuesOf(aCourse())
	v.Del("anyway")
	if f := ParseCourseForm(v, golf.Yards, KnownCard{}); f.Sound() || len(f.CardSaid) != 1 || f.CardSaid[0].Answer != "holes:1" {
		t.Errorf("%+v", f.CardSaid)
	}
	v["asked"], v["anyway_all"] = []string{"holes:1"}, []string{"1"}
	if f := ParseCourseForm(v, golf.Yards, KnownCard{}); !f.Sound() {
		t.Errorf("%+v", f)
	}
	v.Set("par-1", "9")
	if f := ParseCourseForm(v, golf.Yards, KnownCard{}); f.Sound() {
		t.Error("par 9 is sound")
	}
}

// Pasted text fills the rows when that is asked for, or when they are empty; text
// that is not used is a problem.
func TestPasteIntoACourse(t *testing.T) {
	nineLines := strings.Repeat("4 380\n", 9)
	for _, c := range []struct {
		what                string
		typed               url.Values
		filled, pasteStays  bool
		problems, holesRead int
	}{
		{"fill", url.Values{"paste": {nineLines}, "fill": {"1"}, "holes": {"18"}}, true, false, 0, 9},
		{"empty rows", url.Values{"paste": {nineLines}, "holes": {"18"}}, false, true, 0, 9},
		{"rows that differ", url.Values{"paste": {nineLines}, "holes": {"18"}, "par-1": {"5"}, "length-1": {"480"}}, false, true, 1, 1},
		{"what cannot be read", url.Values{"paste": {"4 380\n4\n"}, "fill": {"1"}, "holes": {"9"}}, true, true, 1, 2},
		{"only spaces", url.Values{"paste": {" \n"}, "fill": {"1"}, "holes": {"9"}}, false, false, 0, 0},
		{"the back nine alone", url.Values{"paste": {"10 4 380 1\n11 4 380 2"}, "fill": {"1"}, "holes": {"18"}, "par-1": {"5"}, "length-1": {"480"}}, true, false, 0, 3},
	} {
		f := ParseCourseForm(c.typed, golf.Yards, KnownCard{})
		if f.Filled() != c.filled || (f.Paste != "") != c.pasteStays || len(f.PasteProblems) != c.problems || len(f.Holes) != c.holesRead {
			t.Errorf("%s: filled %t, text %q, %v, %d holes", c.what, f.Filled(), f.Paste, f.PasteProblems, len(f.Holes))
		}
	}
}

// However much is sent, a field that is shown again stays short.
func TestFieldsOfACourseStayShort(t *testing.T) {
	f := ParseCourseForm(url.Values{"name": {strings.Repeat("é", 5000)}, "par-1": {strings.Repeat("9", 5000)}}, golf.Yards, KnownCard{})
	if len([]rune(f.Name.Text)) != 120 || len(f.Card.Rows[0].Par) != 120 {
		t.Errorf("%d, %d", len(f.Name.Text), len(f.Card.Rows[0].Par))
	}
}
