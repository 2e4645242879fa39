package golfer

import "strokeledger/analysis/golf"

// Conventions of this program, so that every hole ends, on any drawing. On a hole that
// can be played they hardly ever count.
const (
	// MostAgain is how many balls in a row are played from one place. When the last of
	// them too has come to nothing, the next stroke is played from where Dropped says.
	MostAgain = 10

	mostStrokes = 40 // off the green of a hole; then the ball is put on the green
	nearDrop    = 20 // yd from the hole within which a ball is dropped on the green
)

// Dropped is where a golfer plays on who cannot get away from a place: half the way to
// the hole, in the rough, and near the hole on the green.
func Dropped(at, cut Place) (Place, golf.Lie) {
	half := Place{(at.X + cut.X) / 2, (at.Y + cut.Y) / 2}
	if half.away(cut) <= nearDrop {
		return half, golf.Green
	}
	return half, golf.Rough
}

// putOnGreen is the place near the hole on the line from a place.
func putOnGreen(at, cut Place) Place {
	share := min(1, nearDrop/max(at.away(cut), 1))
	return Place{cut.X + share*(at.X-cut.X), cut.Y + share*(at.Y-cut.Y)}
}
