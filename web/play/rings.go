package play

import (
	"fmt"
	"math"

	"strokeledger/analysis/aim"
)

// half and most are how many spreads hold half of the well-struck balls and nine in ten
// of them: sqrt(-2 ln(1-p)) of a normal distribution in the plane.
var half, most = math.Sqrt(-2 * math.Log(.5)), math.Sqrt(-2 * math.Log(.1))

// ringsOf draws where the well-struck balls of an aim end, played from a place.
func ringsOf(class string, from aim.Point, a aim.Aim, cross float64) Rings {
	turned := math.Atan2(a.Target.X-from.X, a.Target.Y-from.Y) * 180 / math.Pi
	r := Rings{Class: class, Line: path([]aim.Point{from, a.Target}, false), X: tenth(a.Ends.X), Y: tenth(-a.Ends.Y)}
	r.Turned = fmt.Sprintf("rotate(%s %s %s)", tenth(turned), r.X, r.Y)
	r.Half = [2]string{tenth(half * a.SideSD), tenth(half * a.LongSD)}
	r.Most = [2]string{tenth(most * a.SideSD), tenth(most * a.LongSD)}
	x, y := tenth(a.Target.X-cross), tenth(-a.Target.Y)
	r.Cross = fmt.Sprintf("M%s %sh%sM%s %sv%s", x, y, tenth(2*cross), tenth(a.Target.X), tenth(-a.Target.Y-cross), tenth(2*cross))
	return r
}
