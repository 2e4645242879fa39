package expect

import "strokeledger/analysis/golf"

// The grid: expected strokes are stored at these distances and read linearly
// between them. Reading every level with the same two weights keeps the order
// of levels, lies and distances exact, and makes a sum over a course linear
// between two stored levels. The steps are fine enough that a straight line
// between nodes is within .0006 of a smooth curve anywhere.
type span struct {
	from, step float64
	nodes      int // how many steps of this width
}

var (
	yardSpans = []span{{1, 0.25, 12}, {4, 0.5, 12}, {10, 1, 30}, {40, 2, 40}, {120, 4, 50}, {320, 5, 76}}
	footSpans = []span{{0, 0.25, 40}, {10, 0.5, 20}, {20, 1, 80}, {100, 2, 25}, {150, 5, 30}}
)

// The number of nodes off the green, from 1 to 700 yd, and on it, from 0 to
// 300 ft.
const (
	YardNodes = 12 + 12 + 30 + 40 + 50 + 76 + 1
	FootNodes = 40 + 20 + 80 + 25 + 30 + 1
)

// YardNode returns the distance in yards of node i of a lie off the green.
func YardNode(i int) float64 { return node(yardSpans, i) }

// FootNode returns the distance in feet of node i of the green.
func FootNode(i int) float64 { return node(footSpans, i) }

func node(spans []span, i int) float64 {
	for _, s := range spans {
		if i < s.nodes {
			return s.from + float64(i)*s.step
		}
		i -= s.nodes
	}
	last := spans[len(spans)-1]
	return last.from + float64(last.nodes+i)*last.step
}

// LocateYards returns the node below a distance in yards and how far the
// distance lies towards the next, 0 to 1. Below 1 yd it stays at the first
// node; beyond 700 yd the share passes 1, so that reading goes on with the
// last slope.
func LocateYards(yd float64) (node int, share float64) {
	switch {
	case yd <= 1:
		return 0, 0
	case yd < 4:
		return within((yd-1)*4, 0, 11)
	case yd < 10:
		return within((yd-4)*2, 12, 11)
	case yd < 40:
		return within(yd-10, 24, 29)
	case yd < 120:
		return within((yd-40)/2, 54, 39)
	case yd < 320:
		return within((yd-120)/4, 94, 49)
	default:
		return within((yd-320)/5, 144, 75)
	}
}

// LocateFeet does for the green what LocateYards does off it; its first node
// is at 0 ft and its last at 300 ft.
func LocateFeet(ft float64) (node int, share float64) {
	switch {
	case ft <= 0:
		return 0, 0
	case ft < 10:
		return within(ft*4, 0, 39)
	case ft < 20:
		return within((ft-10)*2, 40, 19)
	case ft < 100:
		return within(ft-20, 60, 79)
	case ft < 150:
		return within((ft-100)/2, 140, 24)
	default:
		return within((ft-150)/5, 165, 29)
	}
}

func within(x float64, first, most int) (int, float64) {
	i := min(int(x), most)
	return first + i, x - float64(i)
}

// Table holds expected strokes at the nodes of the grid, for every lie.
type Table struct {
	Yards [5][YardNodes]float64 // by lie, golf.Tee first
	Feet  [FootNodes]float64    // the green
}

// Row returns the nodes of a lie off the green; they may be written to.
func (t *Table) Row(lie golf.Lie) *[YardNodes]float64 { return &t.Yards[lie-golf.Tee] }

// At reads the table: expected strokes from a lie at a distance straight to
// the hole.
func (t *Table) At(lie golf.Lie, d golf.Distance) float64 {
	if lie == golf.Green {
		i, w := LocateFeet(d.Feet())
		return t.Feet[i] + w*(t.Feet[i+1]-t.Feet[i])
	}
	i, w := LocateYards(d.Yards())
	row := &t.Yards[lie-golf.Tee]
	return row[i] + w*(row[i+1]-row[i])
}
