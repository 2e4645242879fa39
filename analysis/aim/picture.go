package aim

import (
	"fmt"
	"strings"
)

// Picture is a hole as somebody drew it: what matters on it, in yards. All of it
// but par and length may be missing. The zero Green is one that is not drawn.
type Picture struct {
	Par     int     // 3 to 6
	Length  float64 // yd on the card, along the line of play to the middle of the green
	Bends   []Bend  // where the centre line turns, nearest the tee first
	Fairway []Width // nearest the tee first; nothing before the first and after the last
	Zones   []Zone  // later ones lie over earlier ones
	Green   Green
}

// Bare reports whether the picture has no row, so that the hole is as the golfer's
// own ground is.
func (p Picture) Bare() bool {
	return len(p.Bends)+len(p.Fairway)+len(p.Zones) == 0 && !p.Green.Drawn()
}

// Bend is where the centre line turns; it is straight between two bends.
type Bend struct {
	At      float64 // yd from the tee along the line
	Degrees float64 // right is positive
}

// Width is how wide the fairway is at a distance; between two of them its edges
// are straight.
type Width struct {
	At          float64 // yd from the tee along the line
	Left, Right float64 // yd from the line to the edge, both positive
}

// Zone is a stretch of ground of one kind. Its ends may be open: minus or plus
// infinity.
type Zone struct {
	Kind     Kind    // one of ZoneKinds
	From, To float64 // yd from the tee along the line
	Left     float64 // yd across the line where it begins, left of it is negative
	Right    float64 // and where it ends
}

// Green is an ellipse whose middle is on the centre line.
type Green struct {
	Front float64 // yd from the tee at which the line reaches its edge
	Width float64 // yd across
	Depth float64 // yd along
	Turn  float64 // degrees by which it is turned, clockwise
}

// Drawn reports whether there is a green.
func (g Green) Drawn() bool { return g != Green{} }

// Kind is what a place is. The zero value is ground that nobody drew.
type Kind uint8

// The kinds of ground. The first five are those of zones.
const (
	Out       Kind = iota + 1 // out of bounds: stroke and distance
	Water                     // a penalty area: a stroke, and a drop
	Trees                     // the next stroke at the green is blocked
	Bunker                    // sand
	Rough                     // open rough
	OnFairway                 // drawn fairway
	OnGreen                   // drawn green
)

// ZoneKinds are the kinds that a zone may have, in the order in which they are
// offered.
var ZoneKinds = []Kind{Out, Water, Trees, Bunker, Rough}

var kindNames = [...]string{"", "out", "water", "trees", "bunker", "rough", "fairway", "green"}

// String returns the kind as rows and files name it, and "" for undrawn ground.
func (k Kind) String() string {
	if int(k) < len(kindNames) {
		return kindNames[k]
	}
	return ""
}

// ParseKind reads the name of a kind of zone in any letter case.
func ParseKind(s string) (Kind, error) {
	for _, k := range ZoneKinds {
		if strings.EqualFold(s, k.String()) {
			return k, nil
		}
	}
	return 0, fmt.Errorf("no kind %q; allowed: out, water, trees, bunker, rough", shortened(s))
}
