package coach

import (
	"net/url"
	"testing"

	"strokeledger/web/form"
	"strokeledger/web/paths"
)

// The part shows lessons to come, and those of late that nobody wrote up; only the player
// and the coach of a lesson change it, and only before it is over.
func TestArrangedPart(t *testing.T) {
	at := 17*60 + 5
	all := []ArrangedLesson{{ID: 1, CoachID: 2, Coach: "Ines", Day: today.AddDays(-3)}, {ID: 2, CoachID: 2, Coach: "Ines", Day: today.AddDays(-2), Written: true},
		{ID: 3, CoachID: 2, Coach: "Ines", Day: today, Starts: &at, Place: "The range", Aim: "Start line", Agreed: "- forty putts"}, {ID: 4, CoachID: 3, Coach: "Tam", Day: today.AddDays(9)}, {ID: 5, Coach: "Gone", Day: today.AddDays(9)}}
	pages, own := paths.Whose{Player: 7}, paths.Whose{Player: 7, Own: true}
	type sees struct{ when, with, write, file, change, cancel string }
	read := func(in ArrangedInput) (got []sees) {
		in.Today, in.Lessons = today, all
		for _, c := range NewArrangedPart(in).Cards {
			got = append(got, sees{c.When, c.With, c.Write, c.File, c.Change.At, c.Change.Cancel + c.Off})
		}
		return got
	}
	write, file := "/players/7/lessons#lesson", func(n string) string { return "/players/7/lessons/" + n + "/lesson.ics" }
	change, cancel := func(n string) string { return "/players/7/lessons/" + n }, func(n string) string { return "/players/7/lessons/" + n + "/remove" }
	for name, c := range map[string]struct {
		in   ArrangedInput
		want []sees
	}{
		"the coach": {ArrangedInput{Whose: pages, Me: 2}, []sees{{"Friday 28 August 2026", "with Ines", write, "", "", cancel("1")}, {"Monday 31 August 2026, 17:05", "with Ines", write, file("3"), change("3"), cancel("3")},
			{"Wednesday 9 September 2026", "with Tam", "", file("4"), "", ""}, {"Wednesday 9 September 2026", "with Gone", "", file("5"), "", ""}}},
		"the player": {ArrangedInput{Whose: own, Me: 7}, []sees{{"Friday 28 August 2026", "with Ines", write, "", "", cancel("1")}, {"Monday 31 August 2026, 17:05", "with Ines", write, file("3"), change("3"), cancel("3")},
			{"Wednesday 9 September 2026", "with Tam", "", file("4"), change("4"), cancel("4")}, {"Wednesday 9 September 2026", "with Gone", "", file("5"), change("5"), cancel("5")}}},
	} {
		got := read(c.in)
		if len(got) != len(c.want) {
			t.Errorf("%s: %+v", name, got)
			continue
		}
		for i, want := range c.want {
			if got[i] != want {
				t.Errorf("%s: %+v, want %+v", name, got[i], want)
			}
		}
	}
	if p := NewArrangedPart(ArrangedInput{Whose: own, Me: 7, Today: today}); p.Shown() || p.Empty != "No lesson is arranged." {
		t.Errorf("without a coach: %+v", p)
	}
}

// The player with one coach has nothing to choose, with two the choice; a coach arranges
// in the own name. A form that came back is the one that was sent.
func TestArrangeForm(t *testing.T) {
	own := paths.Whose{Player: 7, Own: true}
	of := func(in ArrangedInput) ArrangeForm {
		in.Today = today
		return NewArrangedPart(in).Arrange
	}
	ines, tam := LessonCoach{2, "Ines"}, LessonCoach{3, "Tam"}
	if f := of(ArrangedInput{Whose: own, Me: 7, Coaches: []LessonCoach{ines}}); f.At != "/players/7/lessons" || f.Coach != "2" || f.Coaches != nil || f.Open {
		t.Errorf("one coach: %+v", f)
	}
	back := form.ParseArrangedLesson(url.Values{"coach": {"3"}, "day": {"2026-08-30"}, "place": {"The range"}}, today)
	returned := form.Returned{Arranged: &back}
	if f := of(ArrangedInput{Whose: own, Me: 7, Coaches: []LessonCoach{ines, tam}, Returned: returned}); f.Coach != "" || len(f.Coaches) != 2 || f.Coaches[0].Chosen || !f.Coaches[1].Chosen ||
		!f.Open || f.Day.Problem != "This day has passed." || f.Place.Value != "The range" || len(f.Wrong.Links) != 1 || f.Wrong.Links[0].At != "#next_day" {
		t.Errorf("two coaches: %+v", f)
	}
	if f := of(ArrangedInput{Whose: paths.Whose{Player: 7}, Me: 2}); f.At != "/players/7/lessons" || f.Coach != "" || f.Coaches != nil {
		t.Errorf("a coach: %+v", f)
	}
	returned.Of = 4
	p := NewArrangedPart(ArrangedInput{Whose: own, Me: 7, Today: today, Coaches: []LessonCoach{ines}, Returned: returned, Lessons: []ArrangedLesson{{ID: 4, CoachID: 2, Day: today.AddDays(1)}, {ID: 5, CoachID: 2, Day: today.AddDays(1)}}})
	if a, b := p.Cards[0].Change, p.Cards[1].Change; p.Arrange.Open || b.Open || !a.Open || a.Wrong.Links[0].At != "#next_day-4" || a.Coach != "" || b.Day.Value != "2026-09-01" {
		t.Errorf("%+v, %+v", a, b)
	}
}

func TestLessonNews(t *testing.T) {
	at := 9*60 + 5
	for want, l := range map[string]ArrangedLesson{
		"Lesson with Ines today.":                                    {Day: today},
		"Lesson with Ines tomorrow at 09:05.":                        {Day: today.AddDays(1), Starts: &at},
		"Lesson with Ines on Thursday at 09:05, the range: The grip": {Day: today.AddDays(3), Starts: &at, Place: "the range", Aim: "The grip"},
		"Lesson with Ines on 20 Sep: The grip":                       {Day: today.AddDays(20), Aim: "The grip"},
	} {
		l.Coach = "Ines"
		if got := LessonNews(l, today); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
