package components

import (
	"strings"
	"testing"

	"github.com/a-h/templ"
	"github.com/google/go-cmp/cmp"

	"strokeledger/web/chart"
	"strokeledger/web/form"
)

func rendered(t *testing.T, c templ.Component) string {
	t.Helper()
	var html strings.Builder
	if err := c.Render(t.Context(), &html); err != nil {
		t.Fatal(err)
	}
	return html.String()
}

// What describes a field has the id that the field names: the problem, or else
// the hint, or nothing.
func TestFieldsAreDescribed(t *testing.T) {
	for _, c := range []struct {
		name          string
		hint, problem string
		want          string
	}{
		{"neither", "", "", ""},
		{"a hint", "At most 80 letters.", "", "lesson_day-hint"},
		{"a problem", "", "Not a day.", "lesson_day-wrong"},
		{"a problem takes the place of the hint", "At most 80 letters.", "Not a day.", "lesson_day-wrong"},
	} {
		field := Field{Name: "day", ID: "lesson_day", Label: "Day", Hint: c.hint, Problem: c.problem}
		area := Area{Name: "day", ID: "lesson_day", Label: "Day", Hint: c.hint, Problem: c.problem}
		for kind, html := range map[string]string{
			"input": rendered(t, Input(field)), "choice": rendered(t, Selection(field, nil)), "area": rendered(t, TextArea(area)),
		} {
			described, marked := strings.Contains(html, `aria-describedby="`+c.want+`"`), strings.Contains(html, ` id="`+c.want+`"`)
			if wanted := c.want != ""; described != wanted || marked != wanted {
				t.Errorf("%s, %s: %s", c.name, kind, html)
			}
			if invalid := strings.Contains(html, `aria-invalid="true"`); invalid != (c.problem != "") {
				t.Errorf("%s, %s: %s", c.name, kind, html)
			}
		}
		if field.Described() != c.want || area.Described() != c.want {
			t.Errorf("%s: %q, %q", c.name, field.Described(), area.Described())
		}
	}
}

func TestInputs(t *testing.T) {
	for _, c := range []struct {
		name  string
		field Field
		want  string
	}{
		{"text unless it is of another type", Field{Name: "tee"}, `id="tee" name="tee" type="text"`},
		{"another type", Field{Name: "day", Type: "date"}, `type="date"`},
		{"what was typed", Field{Name: "tee", Value: `"white"`}, `value="&#34;white&#34;"`},
		{"keyboard of digits", Field{Name: "par", Mode: "numeric"}, `inputmode="numeric"`},
		{"what the browser fills in", Field{Name: "email", Complete: "email"}, `autocomplete="email"`},
		{"a list of its own, not the browser's", Field{Name: "course", List: "courses"}, `list="courses" autocomplete="off"`},
	} {
		if html := rendered(t, Input(c.field)); !strings.Contains(html, c.want) {
			t.Errorf("%s: %s", c.name, html)
		}
	}
	// The headings of a table label its cells for the eye only.
	cell := rendered(t, Cell(Field{Name: "par-7", Label: "Par of hole 7", Mode: "numeric", Problem: "Allowed: 3 to 6."}))
	for _, want := range []string{`aria-label="Par of hole 7"`, `inputmode="numeric"`, `aria-describedby="par-7-wrong"`, `id="par-7-wrong">Allowed: 3 to 6.`} {
		if !strings.Contains(cell, want) {
			t.Errorf("%s is not in %s", want, cell)
		}
	}
}

// A problem with radio buttons leads to the first of them; every one has an id of
// its own.
func TestRadios(t *testing.T) {
	all := []Choice{{Value: "all", Name: "18 holes"}, {Value: "front", Name: "Front nine", Chosen: true}}
	for _, c := range []struct {
		radios Radios
		ids    [2]string
	}{
		{Radios{Name: "part", Label: "Holes", All: all, Problem: "Choose one."}, [2]string{"part", "part-2"}},
		{Radios{Name: "part", ID: "new_part", Label: "Holes", All: all, Problem: "Choose one."}, [2]string{"new_part", "new_part-2"}},
	} {
		html := rendered(t, c.radios.View())
		for i, id := range c.ids {
			if !strings.Contains(html, `id="`+id+`" name="part" value="`+all[i].Value+`"`) {
				t.Errorf("%s is not in %s", id, html)
			}
		}
		if strings.Count(html, " checked") != 1 || !strings.Contains(html, `value="front" checked`) || !strings.Contains(html, `id="`+c.ids[0]+`-wrong"`) {
			t.Errorf("%s", html)
		}
		var s Summary
		c.radios.AddTo(&s)
		if diff := cmp.Diff([]SummaryLink{{"#" + c.ids[0], "Holes: Choose one."}}, s.Links); diff != "" {
			t.Error(diff)
		}
	}
}

// A form that came back shows what was typed; the choices of a page are not
// changed by it.
func TestFilledFields(t *testing.T) {
	typed := form.Number{Text: "eighty", Problem: "Allowed: 68 to 110."}
	if diff := cmp.Diff(Field{Name: "target", Label: "Target", Value: "eighty", Problem: "Allowed: 68 to 110."}, Filled(Field{Name: "target", Label: "Target"}, typed)); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff(Area{Name: "body", Value: "Aim left."}, FilledArea(Area{Name: "body"}, form.TextOf("Aim left."))); diff != "" {
		t.Error(diff)
	}
	offered := Radios{Name: "part", All: []Choice{{Value: "all", Chosen: true}, {Value: "front"}}}
	got := Picked(offered, form.Text{Text: "front", Problem: "Choose one."})
	if got.All[0].Chosen || !got.All[1].Chosen || got.Problem != "Choose one." || !offered.All[0].Chosen {
		t.Errorf("%+v from %+v", got, offered)
	}
}

func TestMarks(t *testing.T) {
	for _, c := range []struct {
		score, par int
		want       Mark
	}{
		{1, 3, Mark{"under-par-mark", "?", "under par"}},
		{3, 4, Mark{"under-par-mark", "?", "under par"}},
		{4, 4, Mark{"", "?", "par"}},
		{5, 4, Mark{"bogey-mark", "?", "bogey"}},
		{6, 4, Mark{"double-mark", "?", "double bogey or worse"}},
		{11, 4, Mark{"double-mark", "?", "double bogey or worse"}},
	} {
		if got := MarkOf(c.score, c.par, "?"); got != c.want {
			t.Errorf("%d on a par %d: %+v", c.score, c.par, got)
		}
	}
	if html := rendered(t, ScoreMark(Mark{Class: "no-mark", Text: "·"})); strings.Contains(html, "visually-hidden") {
		t.Errorf("a mark without a meaning says one: %s", html)
	}
}

// Zero has its own figure and line; the other ticks are a grid.
func TestAxis(t *testing.T) {
	got := NewAxis(chart.Scale{Low: -1, High: 3, Step: 1}, func(float64) string { return "n" })
	want := Axis{Zero: "25%", Grid: []string{"0%", "50%", "75%", "100%"},
		Ticks: []Tick{{X: "0%", Text: "n"}, {"25%", "0", "zero-tick"}, {X: "50%", Text: "n"}, {X: "75%", Text: "n"}, {X: "100%", Text: "n"}}}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// Strokes lost and won differ in more than where the bar begins, and nothing is
// drawn of an empty bar.
func TestBars(t *testing.T) {
	scale := chart.Scale{Low: -2, High: 8, Step: 2}
	axis := NewAxis(scale, func(float64) string { return "" })
	for _, c := range []struct {
		name  string
		value float64
		thin  bool
		want  string
	}{
		{"lost", 3, false, `<rect class="lost-mark" x="20%" y="-7" width="30%" height="14">`},
		{"won", -1, false, `<rect class="won-mark" x="10%" y="-7" width="10%" height="14">`},
		{"a band", 3, true, `<rect class="lost-mark" x="20%" y="-4" width="30%" height="8">`},
		{"none", 0, false, ""},
	} {
		for kind, html := range map[string]string{
			"bar": rendered(t, BarRow(axis, scale.Bar(c.value), c.thin)), "bar with an interval": rendered(t, WhiskerBar(axis, scale.Bar(c.value), chart.Whisker{}, c.thin)),
		} {
			if c.want == "" && strings.Contains(html, "<rect") || !strings.Contains(html, c.want) || strings.Contains(html, "<g") {
				t.Errorf("%s, %s: %s", c.name, kind, html)
			}
		}
	}
	html := rendered(t, WhiskerBar(axis, scale.Bar(3), scale.Whisker(3, 1, 20), false))
	if ends := strings.Count(html, `y1="-4" y2="4"`); !strings.Contains(html, `<g class="whisker">`) || !strings.Contains(html, `<g class="inner-whisker">`) || ends != 2 {
		t.Errorf("%d ends: %s", ends, html)
	}
}

func TestLinksMarkWhereThePageIs(t *testing.T) {
	html := rendered(t, Links([]Link{{Name: "May", At: "/months?span=2026-05", Here: true}, {Name: "June", At: "/months?span=2026-06"}}))
	if html != `<a href="/months?span=2026-05" aria-current="true">May</a><a href="/months?span=2026-06">June</a>` {
		t.Error(html)
	}
}
