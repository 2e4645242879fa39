package handlers

import (
	"encoding/json"
	"testing"
	"time"

	"strokeledger/analysis/accountfile"
)

// The file of an account has no more drawings of a course than it may: the latest, and
// of no hole first that its drawing was taken away.
func TestTheLatestDrawingsAreKept(t *testing.T) {
	picture := func(hole, minute int, text string) accountfile.Drawing {
		return accountfile.Drawing{Hole: hole, At: time.Date(2026, 5, 2, 0, minute, 0, 0, time.UTC), Picture: json.RawMessage(text)}
	}
	all := []accountfile.Drawing{picture(1, 0, "{}"), picture(1, 1, "null"), picture(1, 900, "{}")}
	for i := range accountfile.MaxDrawings - 2 {
		all = append(all, picture(2, 2+i, "{}"))
	}
	if got := latestDrawings(all[1:]); len(got) != accountfile.MaxDrawings {
		t.Errorf("%d of as many as there may be", len(got))
	}
	got := latestDrawings(all)
	if len(got) != accountfile.MaxDrawings-1 || got[0].At.Hour() != 15 {
		t.Errorf("%d drawings, the first of %s", len(got), got[0].At)
	}
}
