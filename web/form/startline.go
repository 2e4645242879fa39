package form

import (
	"net/url"
	"strings"

	"strokeledger/analysis/golf"
)

// Putts are straight putts of one length that are read without being stored.
type Putts struct {
	Asked bool
	Feet  Number // ft
	Tries Whole
	Made  Whole
	Left  Whole // missed on that side; with Right empty for putts whose sides were not noted
	Right Whole
	Sides bool // the sides were noted
}

// ParsePutts reads putts of feet from low to high.
func ParsePutts(v url.Values, low, high float64) Putts {
	if !v.Has("tries") {
		return Putts{}
	}
	p := Putts{Asked: true, Feet: ParseNumber(v.Get("feet"), low, high), Tries: ParseWhole(v.Get("tries"), 1, golf.MaxTries)}
	most := golf.MaxTries
	if p.Tries.Sound() {
		most = p.Tries.Value
	}
	p.Made = ParseWhole(v.Get("made"), 0, most)
	left, right := strings.TrimSpace(v.Get("left")), strings.TrimSpace(v.Get("right"))
	p.Left, p.Right = Whole{Text: left}, Whole{Text: right}
	if p.Sides = left != "" || right != ""; p.Sides {
		missed := most
		if p.Made.Sound() {
			missed -= p.Made.Value
		}
		p.Left, p.Right = ParseWhole(left, 0, missed), ParseWhole(right, 0, missed)
		if sound(p.Left, p.Right) && p.Left.Value+p.Right.Value > missed {
			p.Right = refused[int](right, "More than were missed: left and right together are at most "+WriteNumber(float64(missed))+".")
		}
	}
	return p
}

// Sound reports whether nothing is wrong with the form.
func (p Putts) Sound() bool { return sound(p.Feet, p.Tries, p.Made, p.Left, p.Right) }
