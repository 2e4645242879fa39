package form

import (
	"net/url"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
)

func TestShotDetails(t *testing.T) {
	played := []golf.Shot{{Lie: golf.Tee, Distance: golf.Yards.Of(158), Club: "8i", Word: "wind"}, {Lie: golf.Green, Distance: golf.Feet.Of(24)}}
	club := "Allowed: at most 40 characters, without spaces or slashes."
	right := url.Values{"club": {" 7i ", ""}, "miss": {"short-left", ""}, "word": {"pulled it", ""}}
	d := ParseShotDetails(right, played)
	want := ShotDetails{Shots: []ShotDetail{
		{TextOf("7i"), Field[golf.Miss]{Text: "short-left", Value: golf.Miss{Side: golf.Left, Depth: golf.Short}}, TextOf("pulled it")}, {}}}
	if diff := cmp.Diff(want, d); diff != "" || !d.Sound() {
		t.Errorf("sound %t: %s", d.Sound(), diff)
	}
	d.AddTo(played)
	if played[0].Club != "7i" || played[0].Miss.String() != "short-left" || played[0].Word != "pulled it" || played[1] != (golf.Shot{Lie: golf.Green, Distance: golf.Feet.Of(24)}) {
		t.Errorf("%+v", played)
	}
	if diff := cmp.Diff(want, ShotDetailsOf(played)); diff != "" {
		t.Error(diff)
	}
	for _, c := range []struct {
		field, text string
		wrong       map[string]string
	}{
		{"club", "7 iron", map[string]string{"Shots.Club": club}},
		{"club", "7/8", map[string]string{"Shots.Club": club}},
		{"club", strings.Repeat("a", golf.MaxClub), nil},
		{"club", strings.Repeat("a", golf.MaxClub+1), map[string]string{"Shots.Club": club}},
		{"club", "7\u200bi", map[string]string{"Shots.Club": club}},
		{"miss", "up", map[string]string{"Shots.Miss": `Unknown miss "up"; allowed: left, right, short, long, or a side and a depth joined with a hyphen.`}},
		{"word", strings.Repeat("a", golf.MaxWord+1), map[string]string{"Shots.Word": "Allowed: at most 200 characters, in one line."}},
		{"word", "a\nb", map[string]string{"Shots.Word": "Allowed: at most 200 characters, in one line."}},
	} {
		v := url.Values{"club": {"", ""}, "miss": {"", ""}, "word": {"", ""}}
		v[c.field][1] = c.text
		d := ParseShotDetails(v, played)
		if diff := cmp.Diff(c.wrong, problemsOf(d)); diff != "" || d.Sound() != (c.wrong == nil) {
			t.Errorf("%s %q: sound %t: %s", c.field, c.text, d.Sound(), diff)
		}
		if got := map[string]string{"club": d.Shots[1].Club.Text, "miss": d.Shots[1].Miss.Text, "word": d.Shots[1].Word.Text}[c.field]; got != c.text {
			t.Errorf("%s %q is shown again as %q", c.field, c.text, got)
		}
	}
}

// A form for other shots than the hole has now changes none, and shows those of
// now.
func TestShotDetailsOfOtherShots(t *testing.T) {
	played := []golf.Shot{{Lie: golf.Tee, Distance: golf.Yards.Of(158), Club: "8i"}}
	for _, v := range []url.Values{nil, {"club": {"d"}}, {"club": {"d", "p"}, "miss": {"", ""}, "word": {"", ""}}} {
		if d := ParseShotDetails(v, played); d.Sound() || !d.Stale || len(d.Shots) != 1 || d.Shots[0].Club.Text != "8i" {
			t.Errorf("%v: %+v", v, d)
		}
	}
	if d := ParseShotDetails(nil, nil); d.Sound() || len(d.Shots) != 0 {
		t.Errorf("%+v", d)
	}
}
