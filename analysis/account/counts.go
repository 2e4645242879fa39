package account

import "strokeledger/analysis/golf"

// Counts are the plain numbers of a round, or of many.
type Counts struct {
	Holes                        int // with their strokes known
	Fairways, FairwayChances     int // a chance on every par 4 or more whose tee shot was played
	Greens, GreenChances         int // in par - 2 strokes or fewer
	Putts, ThreePutts            int // strokes from the green; greens that took three or more
	UpAndDowns, UpAndDownChances int // holed in two from off the green within the boundary
	Penalties                    int // strokes
	Doubles                      int // and their kinds:
	Compound, Single             int
	Separate, Leak, Unknown      int
}

// Add adds other to c.
func (c *Counts) Add(other Counts) {
	c.Holes += other.Holes
	c.Fairways += other.Fairways
	c.FairwayChances += other.FairwayChances
	c.Greens += other.Greens
	c.GreenChances += other.GreenChances
	c.Putts += other.Putts
	c.ThreePutts += other.ThreePutts
	c.UpAndDowns += other.UpAndDowns
	c.UpAndDownChances += other.UpAndDownChances
	c.Penalties += other.Penalties
	c.Doubles += other.Doubles
	c.Compound += other.Compound
	c.Single += other.Single
	c.Separate += other.Separate
	c.Leak += other.Leak
	c.Unknown += other.Unknown
}

// Double counts a double of a kind.
func (c *Counts) Double(k Kind) {
	c.Doubles++
	switch k {
	case Compound:
		c.Compound++
	case Single:
		c.Single++
	case Separate:
		c.Separate++
	case Leak:
		c.Leak++
	default:
		c.Unknown++
	}
}

// Hole counts one hole but for its doubles; one known by its score alone counts in nothing here.
func (c *Counts) Hole(h golf.Hole, boundary golf.Distance) {
	played := h.Played()
	if !h.Detailed() || len(played) == 0 {
		return
	}
	c.Holes++
	c.fairway(h)
	c.green(h)
	c.putts(played)
	c.upAndDown(h, boundary)
}

// putts counts putts and penalties of the shots played on a hole.
func (c *Counts) putts(played []golf.Shot) {
	putts := 0
	for _, s := range played {
		c.Penalties += s.Penalty
		if s.Lie == golf.Green {
			putts++
		}
	}
	c.Putts += putts
	if putts >= 3 {
		c.ThreePutts++
	}
}

// fairway counts a fairway that was hit: the tee shot cost no penalty, and the
// next shot is from fairway or green, or there is none.
func (c *Counts) fairway(h golf.Hole) {
	if h.Par < 4 {
		return
	}
	c.FairwayChances++
	if h.Shots[0].Penalty > 0 {
		return // dropped there or played again
	}
	if len(h.Shots) == 1 || h.Shots[1].Lie == golf.Fairway || h.Shots[1].Lie == golf.Green {
		c.Fairways++
	}
}

// green counts a green that was hit: the ball on it, or in the hole, in par - 2
// strokes or fewer.
func (c *Counts) green(h golf.Hole) {
	c.GreenChances++
	strokes := 0
	for i, s := range h.Shots {
		if s.Lie == golf.Green {
			break
		}
		strokes += 1 + s.Penalty
		if i == len(h.Shots)-1 && h.PickedUp {
			return // it lay off the green when it was lifted
		}
	}
	if strokes <= h.Par-2 {
		c.Greens++
	}
}

// upAndDown counts the first stroke of a hole from off the green within the
// boundary as a chance. It is taken when the ball is in after two strokes or
// fewer from there, penalties counted.
func (c *Counts) upAndDown(h golf.Hole, boundary golf.Distance) {
	played := h.Played()
	for i, s := range played {
		if golf.CategoryOf(s.Lie, s.Distance, h.Par, boundary) != golf.ShortGame {
			continue
		}
		c.UpAndDownChances++
		strokes := 0
		for _, s := range played[i:] {
			strokes += 1 + s.Penalty
		}
		if strokes <= 2 && !h.PickedUp {
			c.UpAndDowns++
		}
		return
	}
}
