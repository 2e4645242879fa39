package play

import (
	"math"
	"net/url"
	"strings"
	"testing"

	"strokeledger/analysis/aim"
	"strokeledger/analysis/golf"
	"strokeledger/web/form"
)

var hole = golf.CardHole{Number: 6, Par: 4, Length: 417 * golf.Yard}

// Whatever is answered makes rows that the engine reads, without a fault.
func TestEveryAnswerMakesSoundRows(t *testing.T) {
	for _, h := range []golf.CardHole{hole, {Number: 1, Par: 3, Length: 95 * golf.Yard}, {Number: 2, Par: 4, Length: 240 * golf.Yard}, {Number: 3, Par: 5, Length: 610 * golf.Yard}} {
		for _, ground := range form.Grounds {
			for _, bend := range form.Bends {
				f := form.ParsePicture(url.Values{"do": {form.DrawPicture}, "bend": {bend.Value}, "fairway": {"31"}, "left": {ground.Value}, "left_far": {"3"}, "right": {ground.Value}, "right_far": {"120"},
					"width": {"26"}, "depth": {"29"}, "short": {ground.Value}, "green_left": {ground.Value}, "green_right": {ground.Value}}, h, golf.Yards)
				d := ReadRows(h, f.Sketch())
				if !f.Sound() || !d.Sound() {
					t.Errorf("%v %s %s: %+v %v", h, ground.Value, bend.Value, d.Rows, d.Said)
				}
				zones := 5
				if ground.Value == "" {
					zones = 0
				} else if h.Par == 3 {
					zones = 3
				}
				if len(d.Picture.Zones) != zones || !d.Picture.Green.Drawn() {
					t.Errorf("%v %s: %d zones: %s", h, ground.Value, len(d.Picture.Zones), f.Sketch())
				}
			}
		}
	}
}

// The words say of every zone what it is and where, as the map shows it: whoever reads
// them can draw the same map. Each number of a row stands in its sentence.
func TestWordsSayWhatTheMapShows(t *testing.T) {
	open := math.Inf(1)
	for _, c := range []struct {
		zone  aim.Zone
		words string
	}{
		{aim.Zone{Kind: aim.Out, From: 0, To: 222, Left: -open, Right: -34}, "Out of bounds, 0 to 222 yd, from 34 yd left outward"},
		{aim.Zone{Kind: aim.Trees, From: 120, To: 214, Left: 40, Right: open}, "Trees, 120 to 214 yd, from 40 yd right outward"},
		{aim.Zone{Kind: aim.Bunker, From: 222, To: 252, Left: 13, Right: 27}, "Bunker, 222 to 252 yd, 13 to 27 yd right"},
		{aim.Zone{Kind: aim.Bunker, From: 392, To: 412, Left: -24, Right: -13}, "Bunker, 392 to 412 yd, 13 to 24 yd left"},
		{aim.Zone{Kind: aim.Water, From: 180, To: 190, Left: -open, Right: open}, "Water, 180 to 190 yd, right across"},
		{aim.Zone{Kind: aim.Water, From: -open, To: 150, Left: -open, Right: 5}, "Water, up to 150 yd, everything left of 5 yd right"},
		{aim.Zone{Kind: aim.Rough, From: 200, To: open, Left: -5, Right: open}, "Open rough, from 200 yd on, everything right of 5 yd left"},
		{aim.Zone{Kind: aim.Rough, From: -open, To: open, Left: -9, Right: 8.5}, "Open rough, all the way, 9 yd left to 8.5 yd right"},
		{aim.Zone{Kind: aim.Rough, From: 1, To: 2, Left: 0, Right: 8}, "Open rough, 1 to 2 yd, 0 to 8 yd right"},
	} {
		if got := zoneWords(c.zone); got != c.words {
			t.Errorf("%+v: %s", c.zone, got)
		}
		p := aim.Picture{Par: 4, Length: 417, Zones: []aim.Zone{c.zone}}
		m := NewMap("m", "t", p)
		if len(m.Zones) != 1 || m.Zones[0].Class != groundClass(c.zone.Kind) || (m.Zones[0].Edge == "edge-out" || m.Zones[0].Edge == "edge-water") != (c.zone.Kind == aim.Out || c.zone.Kind == aim.Water) {
			t.Errorf("%+v: drawn as %+v", c.zone, m.Zones)
		}
		if all := InWords(p); all[len(all)-1] != c.words+"." {
			t.Errorf("%q", all)
		}
	}
}

// A map has a place for each zone, and its words for each that is not named on it.
func TestMap(t *testing.T) {
	d := ReadRows(hole, "bend 260: 10 right\nfairway 165: 17 left, 16 right\nfairway 392: 14 left, 13 right\nout 0 to 222, across open to -34\nwater 300 to 322, across 20 to open\nbunker 404 to 418, across 13 to 22\ngreen 402: 26 wide, 29 deep")
	m := NewMap("m", "Hole 6", d.Picture)
	if !d.Sound() || len(m.Zones) != 3 || m.Fairway == "" || m.Green == "" || len(m.Ticks) != 6 {
		t.Errorf("%+v %+v", d, m)
	}
	said := ""
	for _, s := range m.Says {
		said += s.Text + ";"
	}
	if said != "out of bounds;water;tee, 417 yd;" {
		t.Error(said)
	}
	if words := strings.Join(InWords(d.Picture), " "); words != "Par 4, 417 yd. Bends 10 degrees right at 260 yd. Fairway from 165 to 392 yd: at 165 yd 17 left and 16 right of the middle, at 392 yd 14 left and 13 right of the middle. "+
		"Out of bounds, 0 to 222 yd, from 34 yd left outward. Water, 300 to 322 yd, from 20 yd right outward. Bunker, 404 to 418 yd, 13 to 22 yd right. Green from 402 yd, 26 wide, 29 deep." {
		t.Error(words)
	}
	if empty := NewMap("m", "Hole 6", aim.Picture{Par: 4, Length: 417}); empty.Fairway != "" || empty.Green != "" || empty.Pin == "" {
		t.Errorf("%+v", empty)
	}
}

// A picture that is kept is shown with the card of today, and one that cannot be read
// is none.
func TestPictureOf(t *testing.T) {
	file := ReadRows(hole, "green 402: 26 wide, 29 deep").File()
	longer := golf.CardHole{Number: 6, Par: 5, Length: 430 * golf.Yard}
	if p, drawn := PictureOf(longer, file); !drawn || p.Par != 5 || p.Length != 430 {
		t.Errorf("%+v", p)
	}
	for _, bad := range []string{"", "x", `{"version":1}`} {
		if p, drawn := PictureOf(hole, bad); drawn || p.Par != 4 || p.Length != 417 {
			t.Errorf("%q: %+v", bad, p)
		}
	}
}
