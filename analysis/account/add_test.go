package account

import (
	"reflect"
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
)

// A field added later must be added up too, so every one is tried.
func TestAddMissesNoField(t *testing.T) {
	var counts, twice Counts
	for v, i := reflect.ValueOf(&counts).Elem(), 0; i < v.NumField(); i++ {
		v.Field(i).SetInt(int64(i + 1))
		reflect.ValueOf(&twice).Elem().Field(i).SetInt(int64(2 * (i + 1)))
	}
	counts.Add(counts)
	if diff := cmp.Diff(twice, counts); diff != "" {
		t.Error(diff)
	}
	var split, double Split
	for v, i := reflect.ValueOf(&split).Elem(), 0; i < v.NumField(); i++ {
		v.Field(i).SetFloat(float64(i + 1))
		reflect.ValueOf(&double).Elem().Field(i).SetFloat(float64(2 * (i + 1)))
	}
	split.Add(split)
	if diff := cmp.Diff(double, split); diff != "" {
		t.Error(diff)
	}
}

func TestKindsAreNamed(t *testing.T) {
	seen := map[string]bool{"": true}
	for _, k := range Kinds {
		if seen[k.String()] {
			t.Errorf("kind %d is named %q", k, k)
		}
		seen[k.String()] = true
	}
	if Kind(0).String() != "" || Kind(99).String() != "" {
		t.Error("an invalid kind has a name")
	}
}

// Each part of the game has a line of its own in a split.
func TestSplitByPart(t *testing.T) {
	s := Split{Tee: 1, Approach: 2, ShortGame: 3, Putting: 4}
	for i, c := range golf.Categories {
		if s.Of(c) != float64(i+1) {
			t.Errorf("%s: %g", c, s.Of(c))
		}
	}
}
