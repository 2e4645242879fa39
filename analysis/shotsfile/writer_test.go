package shotsfile

import (
	"bytes"
	"encoding/csv"
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golf/golftest"
)

func TestWhatIsWrittenComesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rounds := rapid.SliceOfNDistinct(golftest.Rounds(), 1, 4, func(r golf.Round) string { return r.ID }).Draw(t, "rounds")
		for _, r := range rounds {
			golftest.Legal(t, r)
		}
		var b bytes.Buffer
		w := NewWriter(&b)
		for _, r := range rounds {
			if err := w.Write(r); err != nil {
				t.Fatal(err)
			}
		}
		if err := w.Flush(); err != nil {
			t.Fatal(err)
		}
		got, _, err := readAll(b.String(), Limits{})
		if err != nil {
			t.Fatalf("%v\n%s", err, b.String())
		}
		if diff := cmp.Diff(rounds, got); diff != "" {
			t.Fatal(diff)
		}
	})
}

func TestFormulasAreMadeHarmless(t *testing.T) {
	r := golf.Round{ID: "=1+1", Date: golf.Date{Year: 2026, Month: 5, Day: 2}, Course: "'tis", Holes: []golf.Hole{
		{Number: 1, Par: 3, Shots: []golf.Shot{{Lie: golf.Tee, Distance: 150 * golf.Metre, Unit: golf.Metres, Club: "@7"}}}}}
	var b strings.Builder
	w := NewWriter(&b)
	if err := errors.Join(w.Write(r), w.Flush()); err != nil {
		t.Fatal(err)
	}
	want := strings.Join(columnNames[:], ",") + "\n'=1+1,2026-05-02,,''tis,,1,3,1,tee,150,m,,,,,,'@7,\n"
	if diff := cmp.Diff(want, b.String()); diff != "" {
		t.Error(diff)
	}
}

// What an account holds from before a rule is written all the same, and can be
// read again.
func TestWhateverIsGivenIsWrittenAndRead(t *testing.T) {
	shot := golf.Shot{Lie: golf.Tee, Distance: 150 * golf.Yard, Club: " 7i\ufeff"}
	day := golf.Date{Year: 2026, Month: 5, Day: 2}
	var b strings.Builder
	w := NewWriter(&b)
	for _, id := range []string{"r ", "r", "", "\u200b", "r (2)", strings.Repeat("=;", golf.MaxText)} {
		r := golf.Round{ID: id, Date: day, Course: "a\nb\x00\xff", Tee: " white\t", Holes: []golf.Hole{{Number: 1, Par: 3, Shots: []golf.Shot{shot}}}}
		if err := w.Write(r); err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Flush(); err != nil {
		t.Fatal(err)
	}
	got, _, err := readAll(b.String(), Limits{})
	if err != nil {
		t.Fatalf("%v\n%s", err, b.String())
	}
	var names []string
	for _, r := range got {
		names = append(names, r.ID)
		if r.Course != "a b?" || r.Tee != "white" || r.Holes[0].Shots[0].Club != "7i" {
			t.Errorf("%+v", r)
		}
	}
	want := []string{"r", "r (2)", "2026-05-02", "2026-05-02 (2)", "r (2) (2)", strings.Repeat("=;", golf.MaxText/2)}
	if diff := cmp.Diff(want, names); diff != "" {
		t.Error(diff)
	}
}

// A spreadsheet runs nothing in a file, whichever separator it takes.
func TestNoCellIsRun(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := golf.Cleaned(rapid.StringMatching(`[ab"';,=+|＝＋－＠@ -]{0,12}`).Draw(t, "text"), golf.MaxText)
		r := golf.Round{ID: "r", Date: golf.Date{Year: 2026, Month: 5, Day: 2}, Course: text, Holes: []golf.Hole{{Number: 1, Par: 3, Shots: []golf.Shot{{Lie: golf.Tee, Distance: 150 * golf.Yard, Club: text}}}}}
		var b strings.Builder
		w := NewWriter(&b)
		if err := errors.Join(w.Write(r), w.Flush()); err != nil {
			t.Fatal(err)
		}
		got, _, err := readAll(b.String(), Limits{})
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff([]golf.Round{r}, got); diff != "" {
			t.Fatal(diff)
		}
		_, row, _ := strings.Cut(strings.TrimSpace(b.String()), "\n")
		cells, err := csv.NewReader(strings.NewReader(row)).Read()
		if err != nil {
			t.Fatal(err)
		}
		for _, cell := range append(cells, strings.Split(row, ";")...) {
			if cell = strings.TrimLeft(cell, ` "`); cell != "" && strings.ContainsAny(cell[:1], "=+-@|") || strings.HasPrefix(cell, "＝") {
				t.Fatalf("%q is run, of %s", cell, row)
			}
		}
	})
}
