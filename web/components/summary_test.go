package components

import (
	"slices"
	"testing"
)

func TestSummed(t *testing.T) {
	name, day := Field{Name: "name", Label: "Name", Problem: "Allowed: 1 to 80 characters."}, Field{Name: "day", ID: "lesson_day", Label: "Day", Problem: "Not a day."}
	for _, c := range []struct {
		fields  []Field
		heading string
		links   []SummaryLink
	}{
		{nil, "", nil},
		{[]Field{{Name: "name", Label: "Name"}}, "", nil},
		{[]Field{{Name: "a", Label: "A"}, name}, "Not saved yet: one thing to fix.", []SummaryLink{{"#name", "Name: Allowed: 1 to 80 characters."}}},
		{[]Field{name, day}, "Not saved yet: 2 things to fix.", []SummaryLink{{"#name", "Name: Allowed: 1 to 80 characters."}, {"#lesson_day", "Day: Not a day."}}},
	} {
		if got := Summed(c.fields...); got.Heading != c.heading || !slices.Equal(got.Links, c.links) {
			t.Errorf("%v", got)
		}
	}
	if got := Summed(name).Saying("Not signed in."); got.Heading != "Not signed in." {
		t.Errorf("%v", got)
	}
	if got := Summed().Saying("Not signed in."); got.Heading != "" {
		t.Errorf("nothing is wrong, and it says %q", got.Heading)
	}
}
