package entry

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/words"
)

var metric = form.Units{Far: golf.Metres, Green: golf.Metres}

// Lengths are written as they were typed; what comes from another unit has no
// decimals on long shots; sums are whole numbers.
func TestLengthsInWords(t *testing.T) {
	for _, c := range []struct {
		d     golf.Distance
		units form.Units
		want  string
	}{
		{golf.Metres.Of(347.5), metric, "347.5 m"}, {golf.Metres.Of(333), metric, "333 m"}, {412 * golf.Yard, metric, "377 m"}, {golf.Metres.Of(376.04), metric, "376 m"},
		{20 * golf.Yard, metric, "18.3 m"}, {150 * golf.Yard, form.StandardUnits, "150 yd"}, {golf.Metres.Of(140), form.StandardUnits, "153 yd"},
	} {
		if got := words.Distance(golf.Tee, c.d, c.units); got != c.want {
			t.Errorf("%s, want %s", got, c.want)
		}
	}
	for d, want := range map[golf.Distance]string{golf.Metres.Of(6000.3): "6,000 m", golf.Metres.Of(999.4): "999 m", golf.Metres.Of(1234567): "1,234,567 m", 0: "0 m"} {
		if got := words.TotalLength(d, metric); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
}

func TestCoursesPage(t *testing.T) {
	all := []ListedCourse{
		{ID: 1, Name: "Harrow Fen", Tee: "white", Holes: 18, Size: 18, Par: 72, Length: 6510 * golf.Yard, Mine: true, Times: 100},
		{ID: 2, Name: "Quarry Hill", Holes: 6, Size: 18, Par: 24, Length: 2000 * golf.Yard, Times: 2},
	}
	p := NewCoursesPage(layout.Page{}, all, form.StandardUnits)
	if p.Lede != "Two courses, Harrow Fen 100 times." {
		t.Error(p.Lede)
	}
	want := []CourseRow{
		{At: "/courses/1", Name: "Harrow Fen", Said: "white, yours", Holes: "18", Par: "72", Length: "6,510 yd", Times: "100"},
		{At: "/courses/2", Name: "Quarry Hill", Holes: "6 of 18 holes so far", Times: "2"},
	}
	if diff := cmp.Diff(want, p.Rows); diff != "" {
		t.Error(diff)
	}
	if p := NewCoursesPage(layout.Page{}, nil, form.StandardUnits); p.Lede != "No courses yet. Add yours once: the par and length of each hole." {
		t.Error(p.Lede)
	}
	for i, want := range []string{"Harrow Fen, white, 18 holes, par 72", "Quarry Hill, 6 of 18 holes so far"} {
		if got := CourseChoice(all[i], false).Name; got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
}

// The reader decides what the page of a course offers.
func TestCoursePageReaders(t *testing.T) {
	seen := CourseInput{ID: 3, Name: "Fen", Size: 2, Holes: []golf.CardHole{{Number: 1, Par: 4, Length: 380 * golf.Yard, Index: 2}}, Others: []components.Choice{{Value: "4"}},
		OtherCard: []OtherCard{{7, time.Date(2026, 5, 2, 0, 0, 0, 0, time.UTC), 1}, {8, time.Date(2026, 5, 3, 0, 0, 0, 0, time.UTC), 2}}}
	stranger := NewCoursePage(layout.Page{}, seen, form.StandardUnits)
	if stranger.Editor != nil || stranger.Remove != "" || stranger.Merge != "" || stranger.Lede != "1 of 2 holes so far." {
		t.Errorf("%+v", stranger)
	}
	want := CardOffer{Heading: "Use this card in 2 rounds?", At: "/courses/3/use-card", Rounds: []OfferedRound{
		{"7", "/rounds/7", "2 May 2026: 1 hole differs"}, {"8", "/rounds/8", "3 May 2026: 2 holes differ"}}}
	if diff := cmp.Diff(want, stranger.Offer); diff != "" {
		t.Error(diff)
	}
	seen.Mine = true
	if mine := NewCoursePage(layout.Page{}, seen, form.StandardUnits); mine.Editor == nil || mine.Remove == "" || mine.Merge != "" {
		t.Errorf("%+v", mine)
	}
	seen.Mine, seen.Steward = false, true
	if steward := NewCoursePage(layout.Page{}, seen, form.StandardUnits); steward.Editor != nil || steward.Remove == "" || steward.Merge == "" {
		t.Errorf("%+v", steward)
	}
}

func TestCoursePage(t *testing.T) {
	card := []golf.CardHole{{Number: 1, Par: 4, Length: 384 * golf.Yard, Index: 2}, {Number: 2, Par: 3, Length: 158 * golf.Yard}}
	rated := form.CourseForm{Whole: form.Ratings{Rating: form.NumberOf(70.8), Slope: form.NumberOf(121)}, Back: form.Ratings{Slope: form.NumberOf(118)}}
	for name, c := range map[string]struct {
		in    CourseInput
		lede  string
		rows  []CourseHole
		facts []components.Fact
	}{
		"no holes": {CourseInput{Size: 18}, "0 of 18 holes so far.", nil, nil},
		"one hole": {CourseInput{Size: 1, Holes: card[:1]}, "1 hole, par 4, 384 yd.", []CourseHole{{"1", "4", "384 yd", "2"}}, nil},
		"two holes, rated": {CourseInput{Size: 2, Holes: card, Kept: rated}, "2 holes, par 7, 542 yd.", []CourseHole{{"1", "4", "384 yd", "2"}, {"2", "3", "158 yd", ""}},
			[]components.Fact{{Name: "Course rating", Value: "70.8"}, {Name: "Slope rating", Value: "121"}, {Name: "Slope of the back nine", Value: "118"}}},
	} {
		c.in.ID, c.in.Name, c.in.Tee = 3, "Harrow Fen", "white"
		page := NewCoursePage(layout.Page{}, c.in, form.StandardUnits)
		if page.Heading != "Harrow Fen, white" || page.Title != page.Heading || page.Lede != c.lede {
			t.Errorf("%s: %q, %q", name, page.Heading, page.Lede)
		}
		if diff := cmp.Diff(c.rows, page.Rows); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
		if diff := cmp.Diff(c.facts, page.Facts); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
		if page.Begin != "/rounds/new?course=3" || page.Tees != "/courses/new?from=3" || page.Offer.Heading != "" {
			t.Errorf("%s: %q, %q, %+v", name, page.Begin, page.Tees, page.Offer)
		}
	}
}

// A merge that failed says why, and asks again which course is the same.
func TestCoursePageMerge(t *testing.T) {
	in := CourseInput{ID: 3, Name: "Fen", Size: 9, Steward: true, MergeSaid: "Choose another course.", Others: []components.Choice{{Value: "4", Name: "The Fen"}}}
	page := NewCoursePage(layout.Page{}, in, form.StandardUnits)
	if diff := cmp.Diff([]components.Choice{{Name: "Choose a course"}, {Value: "4", Name: "The Fen"}}, page.Others); diff != "" {
		t.Error(diff)
	}
	want := components.Summary{Heading: "The courses were not merged.", Links: []components.SummaryLink{{At: "#same", Text: "This is the same course as: Choose another course."}}}
	if diff := cmp.Diff(want, page.MergeWrong); diff != "" {
		t.Error(diff)
	}
	in.Others = nil
	if page := NewCoursePage(layout.Page{}, in, form.StandardUnits); page.Merge != "" {
		t.Error("merges into nothing")
	}
}
