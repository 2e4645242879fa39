package form

import (
	"net/url"
	"testing"
)

func TestPutts(t *testing.T) {
	ask := func(feet, tries, made, left, right string) Putts {
		return ParsePutts(url.Values{"feet": {feet}, "tries": {tries}, "made": {made}, "left": {left}, "right": {right}}, 3, 10)
	}
	if p := ask("6,5", "40", "22", "4", "9"); !p.Sound() || !p.Sides || p.Feet.Value != 6.5 || p.Tries.Value != 40 || p.Made.Value != 22 || p.Left.Value != 4 || p.Right.Value != 9 {
		t.Errorf("%+v", p)
	}
	if p := ask("6", "40", "0", "", ""); !p.Sound() || p.Sides || !p.Asked {
		t.Errorf("%+v", p)
	}
	if p := ParsePutts(url.Values{}, 3, 10); p.Asked || !p.Sound() {
		t.Errorf("nothing asked: %+v", p)
	}
	for _, p := range []Putts{
		ask("2", "40", "22", "", ""), ask("6", "0", "0", "", ""), ask("6", "40", "41", "", ""), ask("6", "40", "", "", ""),
		ask("6", "40", "22", "4", ""), ask("6", "40", "22", "10", "9"), ask("6", "40", "22", "19", "0"), ask("six", "x", "y", "-1", "1"),
	} {
		if p.Sound() {
			t.Errorf("%+v is allowed", p)
		}
	}
}
