package practice

import (
	"bytes"
	"math"
	"os"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// The committed table is what the committed golfer's strokes come to, at whole levels
// to the last decimal and between them nearly.
func TestCommittedChances(t *testing.T) {
	of := golfer.Committed()
	if *update {
		file, err := writeChances(of)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile("chances.csv", file, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	for _, d := range marked() {
		levels, ok := tabled(d, &of)
		if !ok {
			t.Fatalf("%s is not in the table", d.Key)
		}
		for level, apart := range map[float64]float64{golf.MinTarget: .6e-7, 79: .6e-7, 90: .6e-7, golf.MaxTarget: .6e-7, 72.5: .001, 84.3: .001} {
			want, err := d.solve(&of, level)
			if err != nil {
				t.Fatal(err)
			}
			for j, got := range levels.At(level) {
				if math.Abs(got-want[j]) > apart {
					t.Errorf("%s, station %d at %g: %.8f, the table has %.8f; go test -update writes it", d.Key, j, level, want[j], got)
				}
			}
		}
	}
}

// The table is of one golfer and of the places where drills are usually played.
func TestWhatTheTableIsNotOf(t *testing.T) {
	of := golfer.Committed()
	d, err := Find("start-line")
	if err != nil {
		t.Fatal(err)
	}
	if moved, err := d.At(6); err != nil {
		t.Fatal(err)
	} else if _, ok := tabled(moved, &of); ok {
		t.Error("a drill that is played from elsewhere is read from the table")
	}
	other := of
	other[0].Base *= 1.01
	if _, ok := tabled(d, &other); ok {
		t.Error("another golfer is read from the table")
	}
	for name, file := range map[string][]byte{"cut": committedChances[:len(committedChances)/2], "longer": append(bytes.Clone(committedChances), committedChances...), "another drill": bytes.Replace(committedChances, []byte("lag,"), []byte("log,"), 1)} {
		if _, err := readChances(file); err == nil {
			t.Errorf("%s: read", name)
		}
	}
}
