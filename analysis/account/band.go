package account

import "strokeledger/analysis/golf"

// Band is a part of a category: tee shots by par, short game by lie and
// distance, the rest by distance. Distances are (Low, High]; High is 0 where
// there is no upper end. Bands may be compared and used as map keys.
type Band struct {
	Category  golf.Category
	Par       int      // of tee shots
	Lie       golf.Lie // of the short game
	Low, High golf.Distance
}

// The cuts between bands. The boundary, where the short game ends, is one more.
var (
	approachCuts = []golf.Distance{50 * golf.Yard, 100 * golf.Yard, 150 * golf.Yard, 200 * golf.Yard}
	shortCuts    = []golf.Distance{10 * golf.Yard, 20 * golf.Yard, 50 * golf.Yard}
	puttCuts     = []golf.Distance{3 * golf.Foot, 6 * golf.Foot, 10 * golf.Foot, 20 * golf.Foot, 40 * golf.Foot}
	shortLies    = []golf.Lie{golf.Tee, golf.Fairway, golf.Rough, golf.Bunker, golf.Recovery}
)

// BandOf returns the band of a stroke, from its lie, its distance to the hole,
// the par of the hole and the boundary of the short game.
func BandOf(lie golf.Lie, d golf.Distance, par int, boundary golf.Distance) Band {
	b := Band{Category: golf.CategoryOf(lie, d, par, boundary)}
	switch b.Category {
	case golf.TeeShots:
		b.Par = par
	case golf.Putting:
		b.Low, b.High = between(puttCuts, d, 0, 0)
	case golf.ShortGame:
		b.Lie = lie
		b.Low, b.High = between(shortCuts, d, 0, boundary)
	default:
		b.Low, b.High = between(approachCuts, d, boundary, 0)
	}
	return b
}

// between finds the cuts around d. Cuts outside (least, most) do not count, and
// these two are cuts themselves; 0 for none.
func between(cuts []golf.Distance, d, least, most golf.Distance) (low, high golf.Distance) {
	low = least
	for _, cut := range cuts {
		switch {
		case cut <= least || most > 0 && cut >= most:
		case cut < d:
			low = cut
		default:
			return low, cut
		}
	}
	return low, most
}

// Bands lists every band in the order in which a player reads them: tee,
// approach, short game, putting, each from near to far.
func Bands(boundary golf.Distance) []Band {
	var all []Band
	for par := 4; par <= 6; par++ {
		all = append(all, Band{Category: golf.TeeShots, Par: par})
	}
	add := func(lie golf.Lie, ends []golf.Distance) {
		for _, d := range ends {
			all = append(all, BandOf(lie, d, 3, boundary))
		}
	}
	add(golf.Fairway, ends(approachCuts, boundary, golf.MaxDistance))
	for _, lie := range shortLies {
		add(lie, ends(shortCuts, 0, boundary))
	}
	add(golf.Green, ends(puttCuts, 0, golf.MaxPutt))
	return all
}

// ends lists the upper ends of the bands into which cuts divide the distances
// from low to high.
func ends(cuts []golf.Distance, low, high golf.Distance) []golf.Distance {
	var all []golf.Distance
	for _, cut := range cuts {
		if cut > low && cut < high {
			all = append(all, cut)
		}
	}
	return append(all, high)
}
