package shotsfile

import (
	"bytes"
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

func TestWriterRefuses(t *testing.T) {
	for name, r := range map[string]golf.Round{
		"no name":    {},
		"a space":    {ID: "r "},
		"a line end": {ID: "r", Course: "a\nb"},
	} {
		if err := NewWriter(&bytes.Buffer{}).Write(r); err == nil {
			t.Errorf("%s was written", name)
		}
	}
}
