package analysis

import (
	"errors"
	"io"
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
)

// roster works out the rows of players whose summaries are at hand.
func roster(e *Engine, players []Player) ([]RosterRow, error) {
	bare := slices.Clone(players)
	for i := range bare {
		bare[i].Rounds = slices.Clone(bare[i].Rounds)
		for k := range bare[i].Rounds {
			bare[i].Rounds[k].Summary = nil
		}
	}
	return e.Roster(bare, func(places []int) ([]Player, error) {
		all := make([]Player, len(places))
		for i, at := range places {
			all[i] = players[at]
		}
		return all, nil
	})
}

func TestRosterFromNoneToMany(t *testing.T) {
	many := played(t, 84, 20)
	open := append(played(t, 84, 1), openRound())
	rows, err := roster(engine, []Player{{Target: 79}, {79, summarized(t, open)}, {79, summarized(t, many[:4])}, {79, summarized(t, many)}})
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []struct {
		holes  int
		last   golf.Date
		rounds int
		thin   golf.Thin
	}{
		{0, golf.Date{}, 0, golf.Thin{Of: golf.ThinLevel, Need: 5}},
		{18, open[0].Round.Date, 1, golf.Thin{Of: golf.ThinLevel, Have: 1, Need: 5}},
		{18, many[3].Round.Date, 4, golf.Thin{Of: golf.ThinLevel, Have: 4, Need: 5}},
		{18, many[19].Round.Date, 10, golf.Thin{}},
	} {
		got := rows[i]
		if got.Holes != want.holes || got.Last != want.last || got.Form.Rounds != want.rounds || got.Form.Now[golf.Putting].Thin() != want.thin {
			t.Errorf("row %d: %d holes on %s, form of %d rounds, %+v", i, got.Holes, got.Last, got.Form.Rounds, got.Form.Now[golf.Putting].Thin())
		}
	}
	if _, err := roster(engine, []Player{{79, []Summarized{{Summary: []byte{1}}}}}); err == nil {
		t.Error("a summary of one byte was read")
	}
	if _, err := engine.Roster([]Player{{80.5, nil}}, func([]int) ([]Player, error) { return nil, io.ErrClosedPipe }); !errors.Is(err, io.ErrClosedPipe) {
		t.Errorf("summaries that cannot be read: %v", err)
	}
	if rows, err := roster(engine, nil); err != nil || len(rows) != 0 {
		t.Errorf("of nobody: %v, %v", rows, err)
	}
}

// One change has one word: roster, report and months say the same of the same
// rounds, with nines and a hole known by its score among them.
func TestOneChangeHasOneWord(t *testing.T) {
	said := map[compare.Word]int{}
	for seed := range 12 {
		history := append(played(t, 82+float64(seed), 10), played(t, 84, 10)...)
		for i := range history {
			history[i].ID, history[i].Round.Date = golf.RoundID(i+1), golf.Date{Year: 2026, Month: 5, Day: 1}.AddDays(i)
		}
		history[4+seed/2].Round.Holes = history[4+seed/2].Round.Holes[:9]
		alone := &history[19].Round.Holes[3]
		alone.ScoreOnly, alone.Shots = 6, alone.Shots[:1]
		rows, err := roster(engine, []Player{{79, summarized(t, history)}})
		if err != nil {
			t.Fatal(err)
		}
		report, err := engine.Report(ReportInput{History: history, Span: UsualReport(), Target: 79, Boundary: golf.StandardBoundary})
		if err != nil {
			t.Fatal(err)
		}
		months, err := engine.Months(MonthsInput{History: history, Choice: golf.Comparison{Spans: []golf.Span{{From: history[0].Round.Date, To: history[9].Round.Date}, {From: history[10].Round.Date, To: history[19].Round.Date}}}, Target: 79, Boundary: golf.StandardBoundary})
		if err != nil {
			t.Fatal(err)
		}
		inReport := report.Form()
		for k, c := range rows[0].Form.Changes {
			said[c.Word]++
			if other := months.Now().Cells[k].Change; c.Word == 0 || other.Word != c.Word || inReport.Changes[k] != report.Now().Cells[k].Change || inReport.Changes[k].Word != c.Word || math.Abs(other.Mean-c.Mean) > 1e-4 {
				t.Errorf("player %d, row %d: roster %+v, months %+v, report %+v", seed, k, c, other, inReport.Changes[k])
			}
		}
	}
	if said[compare.Clear] == 0 || said[compare.Leaning] == 0 || said[compare.Chance] == 0 {
		t.Errorf("not every word was said: %v", said)
	}
}

func TestSquadFromNobodyToMany(t *testing.T) {
	if s, err := engine.Squad(nil, 0); err != nil || s.Played != 0 || s.Most != 0 {
		t.Errorf("of nobody: %+v, %v", s, err)
	}
	weak, strong := summarized(t, played(t, 95, 12)), summarized(t, played(t, 72, 12))
	s, err := engine.Squad([]Player{{79, weak}, {79, nil}, {95, strong}, {79, summarized(t, []golf.Played{openRound()})}}, 0)
	if err != nil {
		t.Fatal(err)
	}
	if s.Played != 2 || s.Rounds != 24 {
		t.Errorf("%d played %d rounds", s.Played, s.Rounds)
	}
	if s.Rows[0].Worst == 0 || s.Rows[1].Worst != 0 || s.Rows[2].Worst != 0 || s.Rows[3].Worst != 0 {
		t.Errorf("worst: %v %v %v %v", s.Rows[0].Worst, s.Rows[1].Worst, s.Rows[2].Worst, s.Rows[3].Worst)
	}
	parts := 0.0
	for _, c := range golf.Categories {
		if mean := (s.Rows[0].Lost.Cells[c].Mean + s.Rows[2].Lost.Cells[c].Mean) / 2; math.Abs(s.Together[c]-mean) > 1e-9 {
			t.Errorf("together in %s %.3f, want %.3f", c, s.Together[c], mean)
		}
		if s.Together[c] > s.Together[s.Most] {
			t.Errorf("most in %s, yet %s costs more", s.Most, c)
		}
		parts += s.Together[c]
	}
	if math.Abs(parts-s.Together[0]) > 1e-6 {
		t.Errorf("the parts are %.4f, everything %.4f", parts, s.Together[0])
	}
	if _, err := engine.Squad([]Player{{79, []Summarized{{}}}}, 0); err == nil {
		t.Error("an empty summary was read")
	}
}

// A row is worked out once for the same rounds and target, by whoever asks, and anew
// for others.
func TestRosterRowsAreWorkedOutOnce(t *testing.T) {
	e, all := NewEngine(), played(t, 84, 20)
	players := []Player{{79, summarized(t, all)}, {79, summarized(t, all[:12])}, {84, summarized(t, all)}, {79, nil}}
	first, err := roster(e, players)
	if err != nil || e.rows.worked != 4 {
		t.Fatalf("%d rows were worked out: %v", e.rows.worked, err)
	}
	again, err := roster(e, players)
	if diff := cmp.Diff(first, again, cmp.AllowUnexported(compare.Form{})); diff != "" || err != nil || e.rows.worked != 4 {
		t.Errorf("%d rows were worked out, %v: %s", e.rows.worked, err, diff)
	}
	changed := slices.Clone(all)
	changed[19].Round = played(t, 95, 1)[0].Round
	changed[19].Round.Date = all[19].Round.Date
	other, err := roster(e, []Player{{79, summarized(t, changed)}})
	if err != nil || e.rows.worked != 5 || other[0].Score == first[0].Score {
		t.Errorf("%d rows were worked out after a round changed: %v", e.rows.worked, err)
	}
	moved := summarized(t, all)
	moved[0].Day = moved[0].Day.AddDays(1)
	if other, err := roster(e, []Player{{79, moved}}); err != nil || other[0].Last == first[0].Last {
		t.Errorf("a round on another day is on %s, %v", other[0].Last, err)
	}
	for i := range mostRows {
		e.rows.keep(rowKey{byte(i), byte(i >> 8)}, RosterRow{})
	}
	if n := len(e.rows.known); n > mostRows {
		t.Errorf("%d rows are kept", n)
	}
}
