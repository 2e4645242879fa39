package form

import (
	"net/url"
	"strings"
	"testing"

	"strokeledger/analysis/golf"
)

// A proposal is read with its sides, and comes back as it was typed.
func TestHoleAdvice(t *testing.T) {
	clubs := []string{"driver", "hybrid"}
	f := ParseHoleAdvice(url.Values{"note": {"Left is\n  dead."}, "club": {"hybrid"}, "side": {"6"}, "to": {"left"}, "safe": {"short"}}, golf.Yards, clubs)
	if !f.Sound() || f.Note.Value != "Left is dead." || f.SideYards() != -6 || f.LongYards() != 0 || f.Safe.Value != "short" {
		t.Errorf("%+v", f)
	}
	if again := HoleAdviceOf("Left is dead.", "hybrid", "short", -6, 0, golf.Yards); again != f {
		t.Errorf("%+v", again)
	}
	flag := ParseHoleAdvice(url.Values{"club": {AnAim}, "side": {"0"}, "long": {"4 m"}, "way": {"short"}}, golf.Yards, []string{AnAim})
	if !flag.Sound() || flag.SideYards() != 0 || !(flag.LongYards() < -4.3 && flag.LongYards() > -4.5) {
		t.Errorf("%+v", flag)
	}
	for name, v := range map[string]url.Values{
		"another club": {"club": {"spoon"}}, "no side": {"club": {"driver"}, "side": {"6"}}, "no way": {"club": {"driver"}, "long": {"6"}}, "no club": {"side": {"6"}, "to": {"left"}},
		"too far": {"club": {"driver"}, "side": {"61"}, "to": {"left"}}, "too long": {"club": {"driver"}, "long": {"31"}, "way": {"long"}}, "another side": {"club": {"driver"}, "to": {"up"}},
		"no side of a green": {"safe": {"middle"}}, "a long note": {"note": {strings.Repeat("a", golf.MaxHoleNote+1)}}, "what cannot be seen": {"note": {"a\u200b"}},
	} {
		if f := ParseHoleAdvice(v, golf.Yards, clubs); f.Sound() {
			t.Errorf("%s: %+v", name, f)
		}
	}
	if f := ParseHoleAdvice(url.Values{"safe": {"left"}}, golf.Yards, clubs); !f.Sound() {
		t.Errorf("a safe side alone: %+v", f)
	}
	if f := ParseHoleAdvice(url.Values{"safe": {"left"}}, golf.Yards, nil); f.Sound() {
		t.Errorf("a safe side where the hole is not drawn: %+v", f)
	}
}
