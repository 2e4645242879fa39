package golf

// Category is the part of the game a stroke belongs to. The four are disjoint
// and every stroke has one. The zero value is invalid.
type Category uint8

// The four parts of the game.
const (
	TeeShots  Category = iota + 1 // strokes from the tee of a par 4, 5 or 6
	Approach                      // the rest beyond the boundary, the tee shots of par 3s among them
	ShortGame                     // off the green, at the boundary or nearer
	Putting                       // on the green
)

// Categories lists the four parts in the order in which a hole is played.
var Categories = []Category{TeeShots, Approach, ShortGame, Putting}

var categoryNames = [...]string{"", "tee", "approach", "short game", "putting"}

// String returns the name a golfer reads: "tee", "approach", "short game",
// "putting"; "" for the zero value.
func (c Category) String() string {
	if int(c) < len(categoryNames) {
		return categoryNames[c]
	}
	return ""
}

// The boundary is the distance at which the short game ends: a stroke from
// there or nearer, off the green, is short game. A player starts with the
// standard one and may set it within the two ends.
const (
	StandardBoundary = 50 * Yard
	MinBoundary      = 30 * Yard
	MaxBoundary      = 100 * Yard
)

// CategoryOf returns the part of the game to which a stroke belongs, from its
// lie, its distance to the hole and the par of the hole.
func CategoryOf(lie Lie, d Distance, par int, boundary Distance) Category {
	switch {
	case lie == Green:
		return Putting
	case lie == Tee && par >= 4:
		return TeeShots
	case d <= boundary:
		return ShortGame
	default:
		return Approach
	}
}

// Most returns the part of the game in which a value is largest, the first of
// equals.
func Most(of func(Category) float64) Category {
	most := TeeShots
	for _, c := range Categories {
		if of(c) > of(most) {
			most = c
		}
	}
	return most
}
