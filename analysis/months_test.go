package analysis

import (
	"errors"
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
)

func months(t testing.TB, history []golf.Played, c golf.Comparison) Months {
	t.Helper()
	m, err := engine.Months(MonthsInput{History: history, Choice: c, Target: 79, Boundary: golf.StandardBoundary})
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func TestMonthsFromNoneToMany(t *testing.T) {
	for _, c := range []struct {
		name    string
		history []golf.Played
		columns int
		line    int
		thin    golf.Thin // the line's
		level   golf.Thin // of putting in the last column
	}{
		{"none", nil, 2, 0, golf.Thin{Of: golf.ThinTrend, Need: 5}, golf.Thin{Of: golf.ThinLevel, Need: 5}},
		{"one", played(t, 84, 1), 2, 1, golf.Thin{Of: golf.ThinTrend, Have: 1, Need: 5}, golf.Thin{Of: golf.ThinLevel, Have: 1, Need: 5}},
		{"thin", played(t, 84, 4), 2, 4, golf.Thin{Of: golf.ThinTrend, Have: 4, Need: 5}, golf.Thin{Of: golf.ThinLevel, Have: 4, Need: 5}},
		{"enough", played(t, 84, 5), 2, 5, golf.Thin{}, golf.Thin{}},
		{"many", played(t, 84, 40), 4, 40, golf.Thin{}, golf.Thin{}},
	} {
		m := months(t, c.history, golf.Comparison{})
		last := m.Sheet.Columns[len(m.Sheet.Columns)-1]
		if len(m.Sheet.Columns) != c.columns || len(m.Line) != c.line || m.Thin != c.thin {
			t.Errorf("%s: %d columns, %d on the line, %+v", c.name, len(m.Sheet.Columns), len(m.Line), m.Thin)
		}
		if got := last.PlaysTo[golf.Putting].Thin(); got != c.level {
			t.Errorf("%s: the level of putting: %+v", c.name, got)
		}
		if m.Level != 79 {
			t.Errorf("%s: against %g", c.name, m.Level)
		}
	}
}

func TestMonthsOfAChoice(t *testing.T) {
	history := played(t, 84, 20)
	for i := range 5 {
		history[i].Round.Course = "Ashdown"
	}
	days := []golf.Span{{Last: 5, Before: true}, {Last: 5}}
	for _, c := range []struct {
		name   string
		choice golf.Comparison
		want   golf.Comparison // what holds
		line   int
		listed int
		level  float64
	}{
		{"a course", golf.Comparison{Course: "Ashdown", Spans: days}, golf.Comparison{Course: "Ashdown", Spans: days}, 5, 5, 79},
		{"no such course", golf.Comparison{Course: "Nowhere", Spans: days}, golf.Comparison{Spans: days}, 20, 10, 79},
		{"without two, one of which is not there", golf.Comparison{Spans: days, Without: []golf.RoundID{20, 77}}, golf.Comparison{Spans: days, Without: []golf.RoundID{20}}, 19, 11, 79},
		{"a tour player", golf.Comparison{Spans: days, Versus: golf.VersusTour}, golf.Comparison{Spans: days, Versus: golf.VersusTour}, 20, 10, 0},
		{"a level", golf.Comparison{Spans: days, Versus: golf.VersusLevel(90)}, golf.Comparison{Spans: days, Versus: golf.VersusLevel(90)}, 20, 10, 90},
	} {
		m := months(t, history, c.choice)
		if diff := cmp.Diff(c.want, m.Choice, cmp.AllowUnexported(golf.Versus{}), cmp.Transformer("empty", func(ids []golf.RoundID) []golf.RoundID { return append([]golf.RoundID{}, ids...) })); diff != "" {
			t.Errorf("%s: %s", c.name, diff)
		}
		if len(m.Line) != c.line || len(m.Rounds) != c.listed || m.Level != c.level {
			t.Errorf("%s: %d on the line, %d listed, against %g", c.name, len(m.Line), len(m.Rounds), m.Level)
		}
	}
	m := months(t, history, golf.Comparison{Spans: days, Without: []golf.RoundID{20}})
	if first := m.Rounds[0]; first.ID != 20 || !first.Out || first.Score != 0 {
		t.Errorf("the round left out is listed as %+v", first)
	}
	if diff := cmp.Diff([]string{"Ashdown", "Harrow Fen"}, m.Courses); diff != "" {
		t.Error(diff)
	}
}

func TestMonthsRefuseTargetsOutOfRange(t *testing.T) {
	for _, in := range []MonthsInput{
		{Target: 60, Boundary: golf.StandardBoundary},
		{Target: 79, Boundary: golf.StandardBoundary, Choice: golf.Comparison{Versus: golf.VersusLevel(120)}},
		{Target: 79, Boundary: golf.StandardBoundary, History: []golf.Played{{Target: 60}}},
	} {
		if _, err := engine.Months(in); err == nil {
			t.Errorf("%+v was taken", in)
		}
	}
}

// What is behind a figure is what the figure counts.
func TestBehindIsTheFigure(t *testing.T) {
	m := months(t, played(t, 84, 20), golf.Comparison{})
	last := len(m.Sheet.Columns)
	column := m.Sheet.Columns[last-1]
	for k, row := range m.Sheet.Rows {
		b, err := m.Behind(Figure{Column: last, Row: row.String()})
		if err != nil || len(b.All) != column.Cells[k].Shots || b.Share() || b.Holes() || !b.IsLoss() {
			t.Errorf("%s: %d shots of %d, %v", row, len(b.All), column.Cells[k].Shots, err)
		}
	}
	for k, measure := range compare.Measures {
		b, err := m.Behind(Figure{Column: last, Measure: measure.Name})
		if err != nil || !b.Holes() || b.Share() != measure.Share {
			t.Errorf("%s: %v", measure.Name, err)
		}
		if measure.Share && len(b.All) != column.Measures[k].Shots && measure.Name != "up and down" {
			t.Errorf("%s: %d holes of %d chances", measure.Name, len(b.All), column.Measures[k].Shots)
		}
	}
	b, err := m.Behind(Figure{Column: last, Measure: ShortPutts})
	if err != nil || b.Hits() != column.Short.Made || len(b.All) != column.Short.Tried || !b.Share() {
		t.Errorf("short putts: %d of %d, %v", b.Hits(), len(b.All), err)
	}
	for _, length := range m.Curve {
		b, err := m.Behind(Figure{Putts: length.String()})
		if err != nil || b.Hits() != length.Made || len(b.All) != length.Tried || b.Span != nil || !b.Share() {
			t.Errorf("%s: %d of %d, %v", length, b.Hits(), len(b.All), err)
		}
	}
	for _, none := range []Figure{{}, {Column: last}, {Column: last, Row: "woods"}, {Column: last + 1, Row: "all"}, {Column: last, Measure: "luck"}, {Putts: "7-7"}} {
		if _, err := m.Behind(none); !errors.Is(err, golf.ErrNotFound) {
			t.Errorf("%+v: %v", none, err)
		}
	}
}

func BenchmarkMonths(b *testing.B) {
	history := played(b, 84, 300)
	b.ReportAllocs()
	for b.Loop() {
		months(b, history, golf.Comparison{Spans: []golf.Span{{Last: 10, Before: true}, {Last: 10}}})
	}
}
