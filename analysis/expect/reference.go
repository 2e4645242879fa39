package expect

import "strokeledger/analysis/golf"

// The reference course that defines what a level is: par 72 of 6,500 yd.
var (
	referencePars  = [...]int{4, 4, 3, 5, 4, 4, 3, 4, 5, 4, 4, 3, 5, 4, 4, 3, 5, 4}
	referenceYards = [...]float64{380, 405, 165, 520, 390, 350, 190, 425, 500, 370, 400, 155, 535, 410, 360, 180, 505, 395}
)

const (
	referenceLength = 6500.0 // yd in all
	referenceDrawn  = 6635.0 // yd that the holes above add up to
)

// ReferenceCourse returns the course on which level s takes exactly s strokes:
// 18 holes, par 72, 6,500 yd, an invented one.
func ReferenceCourse() []golf.CardHole { return ScaledCourse(referenceLength) }

// ScaledCourse returns the reference course stretched to a length in yards.
func ScaledCourse(yards float64) []golf.CardHole {
	card := make([]golf.CardHole, len(referencePars))
	for i := range card {
		card[i] = golf.CardHole{Number: i + 1, Par: referencePars[i],
			Length: golf.Distance(referenceYards[i]*yards/referenceDrawn) * golf.Yard}
	}
	return card
}
