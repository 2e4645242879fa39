package golfer

import (
	"math"
	"math/rand/v2"

	"strokeledger/analysis/golf"
)

// PlayOnce plays one shot from off the green with random numbers: where it ends, and
// how many yards from the hole; on the green at 0 when holed.
func PlayOnce(s Striker, rng *rand.Rand, lie golf.Lie, yd float64) (golf.Lie, float64) {
	b := ends(s, rng, lie, yd)
	return b.lie, b.far
}

// PuttOnce putts once with random numbers: how many feet are left, 0 when holed.
func PuttOnce(s Striker, rng *rand.Rand, ft float64) float64 {
	b := ball{golf.Green, ft}
	if (&roundInPlay{rng: rng}).putt(s.skills, &b) {
		return 0
	}
	return b.far
}

// HolesInTwo plays a shot and another with random numbers.
func HolesInTwo(s Striker, rng *rand.Rand, lie golf.Lie, yd float64) bool {
	return holesInTwo(s, rng, lie, yd)
}

// DriveOnce plays a full drive with random numbers: how far off the line it ends, how
// far along it, and how far a sound drive goes, in yards.
func DriveOnce(s Striker, rng *rand.Rand) (side, along, sound float64) {
	f := s.skills.flight(golf.Tee, longHole, 0)
	k := f.pick(rng.Float64())
	sin, cos := math.Sincos(rng.NormFloat64() * k.angle)
	length := k.mean + rng.NormFloat64()*k.sd
	return length * sin, length * cos, s.skills.reach[golf.Tee]
}
