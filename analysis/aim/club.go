package aim

// Club is a club with what is known of it.
type Club struct {
	Name    string
	Length  float64 // yd that a well-struck ball goes
	Own     bool    // the length is the player's own, not that of the level
	Pattern Pattern
}

// The clubs that are thought of on a tee, as shares of the driver's length. Common
// practice; there is no published source.
var teeClubs = []struct {
	name  string
	share float64
}{{"driver", 1}, {"fairway wood", .92}, {"hybrid", .86}, {"long iron", .8}}
