package figures

import (
	"strings"
	"testing"

	"strokeledger/analysis/account"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
)

// Bars and intervals end at the ends of the fixed axis: a longer bar is cut, a
// longer interval ends in an arrow.
func TestMonthBar(t *testing.T) {
	cell := func(n int, low, high float64) compare.Cell {
		return compare.Cell{Figure: compare.Figure{Sample: stat.Sample{N: n}}, Interval: stat.Interval{Low: low, High: high}}
	}
	for _, c := range []struct {
		name       string
		printed    float64
		cell       compare.Cell
		cut        bool
		less, more bool
		drawn      float64
	}{
		{"on the axis", 2, cell(5, -1, 4), false, false, false, 2},
		{"one round", 2, cell(1, 0, 0), false, false, false, 2},
		{"too long", 9.5, cell(5, 7, 12), true, false, true, 8},
		{"too much won", -4, cell(5, -6, -2), true, true, false, -3},
		{"wide", 1, cell(2, -9, 9), false, true, true, 1},
	} {
		m := NewMonthBar(c.printed, c.cell)
		if (m.CutAt != "") != c.cut || m.Less != c.less || m.More != c.more || m.Bar != monthScale.Bar(c.drawn) || m.Whisker.Known != c.cell.HasInterval() {
			t.Errorf("%s: %+v", c.name, m)
		}
	}
	var ticks []string
	for _, tick := range MonthAxis().Ticks {
		ticks = append(ticks, tick.Text)
	}
	if got := strings.Join(ticks, " "); got != "−2 0 +2 +4 +6" {
		t.Error(got)
	}
}

func TestPartMonths(t *testing.T) {
	in := spans(8, 0, 3, 8)
	moves(in, changes{change(-1, compare.Leaning), change(0, compare.Chance), change(-1, compare.Leaning), {}, {}})
	holes(lastColumn(in), golf.Approach, 3)
	lastColumn(in).Cells[golf.Approach].Interval = stat.Interval{Low: -.5, High: 2}
	all := NewPartMonths(in)
	if len(all) != 5 || all[4].Name != "All" || !all[4].All || all[4].Moved != "−1.0" || all[4].Word != "leaning" {
		t.Fatalf("%+v", all)
	}
	approach := all[1]
	if approach.Name != "Approach" || approach.Against != "Jun against May" || approach.Moved != "−1.0" || approach.Word != "leaning" || all[0].Word != "" {
		t.Errorf("%+v", approach)
	}
	if m := approach.Months[3]; m.Short != "Jun" || m.Head != "June, 8 rounds" || m.Figure != "+0.5" || m.Interval != "−0.5 to +2.0" || !m.Now || m.Older || !strings.HasSuffix(m.At, "in=4&row=approach") {
		t.Errorf("%+v", m)
	}
	if m := approach.Months[1]; m.Figure != "no rounds" || !m.None || !m.Older || m.At != "" || !m.Bar.Bar.Empty {
		t.Errorf("%+v", m)
	}
	if one := NewPartMonths(spans(8)); one[0].Moved != "" || one[0].Against != "" {
		t.Errorf("%+v", one[0])
	}
}

func TestLevelMonths(t *testing.T) {
	in := spans(8, 3)
	in.Sheet.Columns[0].PlaysTo[golf.Putting] = compare.PlaysTo{Rounds: 8, Level: compare.Level{Value: 86}, Low: compare.Level{Value: 80}, High: compare.Level{Value: 110, Past: compare.Worse}}
	for _, part := range golf.Categories {
		lastColumn(in).PlaysTo[part].Rounds = 3
	}
	putting := NewLevelMonths(in)[3]
	if m := putting.Months[0]; m.Figure != "86" || m.Interval != "80 to above 110" || !m.Reach.Known || m.None {
		t.Errorf("%+v", m)
	}
	if m := putting.Months[1]; m.Figure != "–" || !m.None || m.Reach.Known {
		t.Errorf("%+v", m)
	}
	if got, want := LevelsSaid(in), "putting 86 in March; April: two more rounds until a level is shown"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got, want := LevelsSaid(spans(0, 4)), "April: five more rounds until a level is shown"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got := len(LevelAxis().Ticks); got != 4 {
		t.Errorf("%d ticks", got)
	}
}

func TestBandTable(t *testing.T) {
	in := spans(8, 8)
	band := account.Band{Category: golf.Putting, Low: 3 * golf.Foot, High: 6 * golf.Foot}
	in.Sheet.Rows = append(in.Sheet.Rows, compare.Row{Category: golf.Putting, Band: band})
	for i := range in.Sheet.Columns {
		c := &in.Sheet.Columns[i]
		c.Cells = append(c.Cells, compare.Cell{Figure: compare.Figure{Known: true}})
		c.Cells[golf.Putting].Shots = 30
	}
	lastColumn(in).Cells[5].Shots, lastColumn(in).Cells[5].Change = 9, change(0, compare.Leaning)
	table := NewBandTable(in)
	if len(table.Rows) != 2 || table.Moved != "Apr against Mar" || table.Heads[1] != (SpanHead{Name: "Apr", Rounds: "8 rounds"}) {
		t.Fatalf("%+v", table)
	}
	if r := table.Rows[1]; r.Name != "3 to 6 ft" || !r.Detail || r.Word != "leaning" || r.Moved != "0.0" || !r.Cells[0].None || r.Cells[1].Figure != "0.0" || r.Cells[1].Note != "9 shots" {
		t.Errorf("%+v", r)
	}
	if got := table.BandsSaid(); got != "one group of shots, one clear or leaning" {
		t.Error(got)
	}
}
