package golfer

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
)

// grid is how finely a golfer is solved: the distances of the states and the
// nodes over which a stroke is spread. The one that counts is standard; finer
// ones measure its error.
//
// Along the line a stroke is spread over equally spaced nodes with normal
// weights: expected strokes have a cone at the hole and an edge at the green,
// where Gauss-Hermite nodes do ten times worse. Sideways, where the only corner
// is the line itself, each side has Gauss-Legendre nodes. The number of nodes
// never depends on skill: an adaptive number would make expected strokes jump.
type grid struct {
	density     int // parts into which each step of the stored grid is cut
	yards, feet int // nodes of a lie off the green, and of the green

	angles  rule // of direction, to one side; the other is its mirror
	lengths rule // of the length of a well-struck ball
	mishits rule // of the length of a badly struck one
	putts   int  // nodes of a missed putt's angle, and of each stretch of its length

	greenOrder, courseOrder []int // states by ascending distance
}

// standard is the grid on which every number of this program is solved.
var standard = newGrid(1)

// quick has about half as many nodes as the standard grid in every direction in
// which a stroke is spread, and the same states: calibrations are done on it, since
// they need the family thousands of times. A test holds its error.
var quick = newQuick()

func newQuick() *grid {
	g := newGrid(1)
	g.angles, g.lengths, g.mishits, g.putts = truncated(0, reachOfNodes, 6), wholeNormal(24), wholeNormal(10), 8
	return g
}

// newGrid makes a grid with n times as many nodes in every direction as the
// standard one.
func newGrid(n int) *grid {
	g := &grid{
		density: n,
		yards:   (expect.YardNodes-1)*n + 1,
		feet:    (expect.FootNodes-1)*n + 1,
		angles:  truncated(0, reachOfNodes, 12*n), lengths: wholeNormal(48 * n), mishits: wholeNormal(16 * n),
		putts: 12 * n,
	}
	for i := range g.feet {
		g.greenOrder = append(g.greenOrder, g.state(golf.Green, i))
	}
	for i := range g.yards {
		for _, lie := range []golf.Lie{golf.Fairway, golf.Rough, golf.Bunker, golf.Recovery, golf.Tee} {
			g.courseOrder = append(g.courseOrder, g.state(lie, i))
		}
	}
	return g
}

// A state is a lie and a distance node, numbered through: the five lies off
// the green first, then the green.
func (g *grid) state(lie golf.Lie, node int) int {
	return int(lie-golf.Tee)*g.yards + node
}

// states is how many states there are: the five lies off the green at every yard
// node, and the green at every foot node.
func (g *grid) states() int { return 5*g.yards + g.feet }

// place returns what state i is: its lie and its distance.
func (g *grid) place(i int) From {
	lie := golf.Tee + golf.Lie(min(i/g.yards, int(golf.Green-golf.Tee)))
	node := i - g.state(lie, 0)
	if lie == golf.Green {
		return From{lie, golf.Feet.Of(g.node(expect.FootNode, node))}
	}
	return From{lie, golf.Yards.Of(g.node(expect.YardNode, node))}
}

// node is the distance of node i, in the unit of the stored grid, whose nodes are
// cut into as many parts as the density says.
func (g *grid) node(stored func(int) float64, i int) float64 {
	k, part := i/g.density, i%g.density
	at := stored(k)
	if part == 0 {
		return at
	}
	return at + (stored(k+1)-at)*float64(part)/float64(g.density)
}

// locate returns the state below a distance and the share of the way to the
// next.
func (g *grid) locate(lie golf.Lie, far float64) (state int, share float64) {
	node, w := 0, 0.0
	if lie == golf.Green {
		node, w = expect.LocateFeet(far)
	} else {
		node, w = expect.LocateYards(far)
	}
	if g.density > 1 {
		w *= float64(g.density)
		part := min(int(w), g.density-1)
		node, w = node*g.density+part, w-float64(part)
	}
	return g.state(lie, node), w
}

// From is a place to play from.
type From struct {
	Lie      golf.Lie
	Distance golf.Distance // to the hole
}

// reachOfNodes is how many spreads a stroke is followed to each side; one in ten
// thousand goes beyond.
const reachOfNodes = 3.9

// rule is a set of nodes, in spreads, with weights that add up to 1.
type rule struct {
	z []float64 // where a node is, in spreads from the middle
	w []float64 // its share
}

// wholeNormal covers a normal with n equally spaced nodes.
func wholeNormal(n int) rule {
	r := rule{make([]float64, n), make([]float64, n)}
	for i := range n {
		r.z[i], r.w[i] = reachOfNodes*(2*float64(i)/float64(n-1)-1), 1
	}
	return r.normal()
}

// truncated covers the part of a normal between lo and hi with n Gauss-Legendre
// nodes, whatever mass lies there. It is for parts on which the integrand has
// no corner: one side of the line to the hole, a stretch between two edges.
func truncated(lo, hi float64, n int) rule {
	r := rule{make([]float64, n), make([]float64, n)}
	quad.Legendre{}.FixedLocations(r.z, r.w, lo, hi)
	return r.normal()
}

// normal multiplies the weights by the density of a standard normal and makes
// them add up to 1. Far out in a tail the density itself would be lost to rounding,
// so that it is taken against the greatest among the nodes.
func (r rule) normal() rule {
	nearest := math.Inf(1)
	for _, z := range r.z {
		nearest = min(nearest, z*z)
	}
	sum := 0.0
	for i, z := range r.z {
		r.w[i] *= math.Exp((nearest - z*z) / 2)
		sum += r.w[i]
	}
	for i := range r.w {
		r.w[i] /= sum
	}
	return r
}
