package sample

import (
	"net/url"
	"strconv"
	"time"

	"strokeledger/analysis"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/entry"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

// courseValues is the form of Harrow Fen with some fields changed: names and
// values in turn.
func courseValues(changed ...string) url.Values {
	v := url.Values{"name": {"Harrow Fen"}, "tee": {"white"}, "rating": {"70.8"}, "slope": {"121"}, "holes": {"9"}}
	for _, h := range harrowFen {
		v.Set(form.HoleField(form.FieldPar, h.Number), strconv.Itoa(h.Par))
		v.Set(form.HoleField(form.FieldLength, h.Number), form.WriteLength(h.Length, golf.Yards))
		v.Set(form.HoleField(form.FieldIndex, h.Number), strconv.Itoa(h.Index))
	}
	for i := 0; i+1 < len(changed); i += 2 {
		v.Set(changed[i], changed[i+1])
	}
	return v
}

// courseForm is the form of Harrow Fen as it is read, with some fields changed.
func courseForm(changed ...string) form.CourseForm {
	return form.ParseCourseForm(courseValues(changed...), golf.Yards, form.KnownCard{})
}

func addCoursePages() []Page {
	add := func(state string, typed form.CourseForm, like entry.LikeCourse) Page {
		return Page{"entry", "add-course", state, entry.NewAddCoursePage(signedIn(paths.Courses), typed, like, form.StandardUnits).View()}
	}
	like := entry.LikeCourse{ID: 1, Name: "Harrow Fen, white", Card: form.WriteCard(9, harrowFen, golf.Yards)}
	copied := like.Card
	for i := range copied.Rows {
		copied.Rows[i].Length = ""
	}
	return []Page{
		add("empty", form.CourseForm{Card: form.Card{Holes: form.MostHoles}}, entry.LikeCourse{}),
		add("other-tees", form.CourseForm{Name: form.TextOf("Harrow Fen"), Card: copied}, like),
		add("refused", courseForm("slope", "300", "back_slope", "20", "par-2", "9", "length-4", "x", "index-9", "1", "holes", "0"), entry.LikeCourse{}),
		add("asked", courseForm("length-3", "12"), entry.LikeCourse{}),
		add("pasted", courseForm("fill", "yes", "paste", "4 384 7\n4 300 1 7\n"), entry.LikeCourse{}),
	}
}

func coursePages() []Page {
	course := entry.CourseInput{ID: 1, Name: "Harrow Fen", Tee: "white", Size: 9, Holes: harrowFen, Kept: courseForm(), Form: courseForm()}
	page := func(state string, in entry.CourseInput) Page {
		return Page{"entry", "course", state, entry.NewCoursePage(signedIn(paths.Courses), in, form.StandardUnits).View()}
	}
	mine, offered, steward, unmerged, begun := course, course, course, course, course
	mine.Mine, offered.Mine, steward.Steward, unmerged.Steward = true, true, true, true
	offered.OtherCard = []entry.OtherCard{{ID: 7, Day: time.Date(2026, 5, 2, 0, 0, 0, 0, time.UTC), Holes: 1}, {ID: 8, Day: time.Date(2026, 5, 9, 0, 0, 0, 0, time.UTC), Holes: 3}}
	steward.Others = []components.Choice{{Value: "2", Name: "Harrow Fen, White, 9 holes, par 36"}}
	unmerged.Others, unmerged.MergeSaid = steward.Others, "Choose another course."
	begun.Size, begun.Holes, begun.Kept = 18, nil, form.CourseForm{}
	played := course
	played.Size, played.Holes, played.Target, played.Strip = 18, expect.ReferenceCourse(), 79, playedStrip()
	return []Page{page("mine", mine), page("other-cards", offered), page("anyone", course), page("steward", steward), page("not-merged", unmerged), page("no-holes", begun), page("played", played)}
}

// playedStrip is the hole that costs most over a season of rounds.
func playedStrip() analysis.Strip {
	in := analysis.StripInput{Card: expect.ReferenceCourse(), Par18: golf.StandardPar, Target: 79, Boundary: golf.StandardBoundary}
	for _, l := range listedRounds() {
		in.History = append(in.History, golf.Played{ID: l.ID, Round: l.Round, Target: l.Target})
	}
	return analysis.NewStrip(in)
}

func beginPages() []Page {
	courses := []components.Choice{{Value: "1", Name: "Harrow Fen, white, 9 holes, par 36", Chosen: true}, {Value: "2", Name: "Quarry Hill, 6 of 18 holes so far"}}
	open := []entry.OpenRound{entry.NewOpenRound(7, golf.Date{Year: 2026, Month: 5, Day: 2}, "Harrow Fen", 6, 4), entry.NewOpenRound(6, golf.Date{Year: 2026, Month: 4, Day: 25}, "Quarry Hill", 18, 1)}
	page := func(state string, typed form.RoundStart, courses []components.Choice, open []entry.OpenRound) Page {
		return Page{"entry", "begin", state, entry.NewBeginPage(signedIn(paths.NewRound), typed, courses, open).View()}
	}
	start := form.RoundStart{Date: form.DayOf(golf.Date{Year: 2026, Month: 5, Day: 9}), First: form.WholeOf(1), NewHoles: form.WholeOf(form.MostHoles)}
	return []Page{
		page("no-courses", start, nil, nil),
		page("full", start, courses, open),
		page("refused", form.ParseRoundStart(url.Values{"date": {"9 May"}, "first_hole": {"20"}, "part": {"middle"}}), courses, nil),
		page("new-course-refused", form.ParseRoundStart(url.Values{"date": {"9 May"}, "new_course": {""}, "new_holes": {"40"}}), courses, nil),
	}
}

func detailsPages() []Page {
	kept := form.RoundDetails{Day: form.DayOf(golf.Date{Year: 2026, Month: 5, Day: 2}), Course: form.TextOf("Harrow Fen"), Tee: form.TextOf("white"), Target: form.NumberOf(79),
		Par18: form.WholeOf(72), First: form.WholeOf(1), Conditions: form.TextOf("Dry and windy, fast greens")}
	for _, h := range harrowFen {
		kept.Holes = append(kept.Holes, form.HoleCardOf(h, golf.Yards))
	}
	refused := form.ParseRoundDetails(url.Values{"day": {"2 May"}, "target": {"60"}, "first_hole": {"17"}}, form.KnownRound{First: 1, Holes: harrowFen}, nil, golf.Yards)
	others := []components.Choice{{Value: "2", Name: "Quarry Hill, 6 of 18 holes so far"}}
	page := func(state string, in form.RoundDetails) Page {
		return Page{"entry", "details", state, entry.NewDetailsPage(signedIn(paths.Rounds), 7, in, others, golf.Yards).View()}
	}
	return []Page{page("full", kept), page("refused", refused)}
}
