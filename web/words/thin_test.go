package words

import (
	"testing"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
)

func TestThinNumbersSayWhatIsMissing(t *testing.T) {
	for _, c := range []struct {
		note golf.Thin
		want string
	}{
		{golf.Thin{}, ""},
		{golf.Enough(golf.ThinLevel, 1, 5), "four more rounds until a level is shown"},
		{golf.Enough(golf.ThinLevel, 4, 5), "one more round until a level is shown"},
		{golf.Enough(golf.ThinChange, 2, 3), "it takes three rounds in each to say how sure that is"},
		{golf.Enough(golf.ThinSpread, 1, 2), "one more round until it can be said how far scores spread"},
		{golf.Enough(golf.ThinInterval, 0, 2), "two more rounds until an interval is shown"},
		{golf.Enough(golf.ThinTrend, 3, 5), "two more rounds until the mean of the last eight is drawn"},
		{golf.Enough(golf.ThinIndex, 0, 3), "three more scores on a rated course make an estimate"},
		{golf.Enough(golf.ThinIndex, 2, 3), "one more score on a rated course makes an estimate"},
	} {
		if got := Thin(c.note); got != c.want {
			t.Errorf("%+v: %q, want %q", c.note, got, c.want)
		}
	}
}

func TestCertainty(t *testing.T) {
	for word, want := range map[compare.Word]string{0: "", compare.Clear: "clear", compare.Leaning: "leaning", compare.Chance: "could be chance"} {
		if got := Certainty(word); got != want {
			t.Errorf("%d: %q, want %q", word, got, want)
		}
	}
}
