package golf

import (
	"slices"
	"strings"
	"testing"
)

func TestTriesComeBackAsWritten(t *testing.T) {
	tries, err := ParseTries("mml rxsgm")
	if err != nil || tries.String() != "mmlrxsgm" || tries.Count(TryMade) != 3 || tries.Count(TryLong) != 1 || tries.LongestRun() != 2 {
		t.Errorf("%v %v", tries, err)
	}
	for _, o := range Outcomes {
		if again, err := ParseTries(o.Letter()); err != nil || !slices.Equal(again, Tries{o}) || o.String() == "" {
			t.Errorf("%v: %v %v", o, again, err)
		}
	}
	for _, wrong := range []string{"mmq", "M", "é", strings.Repeat("m", MaxTries+1)} {
		if _, err := ParseTries(wrong); err == nil {
			t.Errorf("%.10s is read", wrong)
		}
	}
	if none, err := ParseTries(" "); err != nil || len(none) != 0 || none.LongestRun() != 0 {
		t.Errorf("%v %v", none, err)
	}
}

// Stations are played in turn, so the first has one more when the set is not full.
func TestTriesByStation(t *testing.T) {
	tries, err := ParseTries("mlmmx")
	if err != nil {
		t.Fatal(err)
	}
	counted, tried := tries.By(3)
	if !slices.Equal(counted, []int{2, 0, 1}) || !slices.Equal(tried, []int{2, 2, 1}) {
		t.Errorf("%v of %v", counted, tried)
	}
}
