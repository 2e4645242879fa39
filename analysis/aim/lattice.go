package aim

import (
	"math"
)

// lattice is a fixed grid of places where a stroke may end, by direction and by
// length from where it is played, with what follows at each. Any mixture of
// normals over it is a pair of weighted sums, so that a place is looked at once
// for all clubs and aims.
//
// What follows jumps at the edges of zones. On a plain grid an edge that runs along
// a row would be counted a whole step wrong, so each column is moved by eighths of
// a step along its lengths, and each row by eighths along its directions: an edge
// is then met at eight places of a step.
type lattice struct {
	start      Point
	heading    float64 // rad clockwise from up, of angle 0
	rows, cols int
	low, long  float64 // yd of the first row, and from one to the next
	left, wide float64 // rad of the first column, and from one to the next

	strokes, again []float64    // by row and column, see ending
	shares         [][9]float32 // likewise

	room []float64 // for weights, used again and again
}

// classes is into how many parts a step is cut; shifted are they in an order in
// which neighbours are far apart.
const classes = 8

var shifted = [classes]float64{0, 4. / 8, 2. / 8, 6. / 8, 1. / 8, 5. / 8, 3. / 8, 7. / 8}

// reachOfPattern is how many spreads a pattern is followed to each side.
const reachOfPattern = 4

// span is a stretch of a lattice: yards, or radians.
type span struct{ low, high, step float64 }

func (s span) count() int { return int(math.Ceil((s.high-s.low)/s.step)) + 1 }

// extent is how far a lattice reaches, and whether it is counted: only then does it
// know where strokes end.
type extent struct {
	lengths, angles span // yd; rad from the heading
	counted         bool
}

// newLattice looks at every place of an extent.
func newLattice(t *terrain, start Point, heading float64, e extent) *lattice {
	lengths, angles := e.lengths, e.angles
	l := &lattice{start: start, heading: heading, rows: lengths.count(), cols: angles.count(),
		low: lengths.low, long: lengths.step, left: angles.low, wide: angles.step}
	n := l.rows * l.cols
	l.strokes, l.again = make([]float64, n), make([]float64, n)
	if e.counted {
		l.shares = make([][9]float32, n)
	}
	sines, cosines := make([]float64, classes*l.cols), make([]float64, classes*l.cols)
	for c := range classes {
		for k := range l.cols {
			sines[c*l.cols+k], cosines[c*l.cols+k] = math.Sincos(heading + l.angle(c, k))
		}
	}
	entries := make([]entry, classes*l.cols)
	for j := range l.rows {
		at, to := j%classes*l.cols, (j%classes+1)*l.cols
		l.look(t, j, sines[at:to], cosines[at:to], entries[at:to])
	}
	return l
}

// look looks at the places of a row, whose directions are given, with what became
// of the ball before in each of them.
func (l *lattice) look(t *terrain, j int, sines, cosines []float64, entries []entry) {
	for k := range l.cols {
		length := l.length(j, k)
		i := j*l.cols + k
		e := t.end(l.start, Point{l.start.X + length*sines[k], l.start.Y + length*cosines[k]}, &entries[k])
		l.strokes[i], l.again[i] = e.strokes, e.again
		if l.shares != nil {
			l.shares[i] = e.shares.packed()
		}
	}
}

// length is the length of row j at column k, and angle the direction of column k at
// a row of class c.
func (l *lattice) length(j, k int) float64 { return l.low + (float64(j)+shifted[k%classes])*l.long }
func (l *lattice) angle(c, k int) float64  { return l.left + (float64(k)+shifted[c])*l.wide }

// ruler is some places at equal steps.
type ruler struct {
	first, step float64
	n           int
}

// along is the ruler of the lengths at columns of a class, and across that of the
// directions at rows of one.
func (l *lattice) along(class int) ruler {
	return ruler{l.low + shifted[class]*l.long, l.long, l.rows}
}

func (l *lattice) across(class int) ruler {
	return ruler{l.left + shifted[class]*l.wide, l.wide, l.cols}
}

// normal are the weights of a normal at the places of a ruler, adding up to 1: those
// from a place on that is within reach. They are written into room, which may be nil.
func (r ruler) normal(room []float64, mean, sd float64) (from int, weights []float64) {
	from = max(int(math.Ceil((mean-reachOfPattern*sd-r.first)/r.step)), 0)
	to := min(int(math.Floor((mean+reachOfPattern*sd-r.first)/r.step)), r.n-1)
	if from > to {
		return 0, nil
	}
	if weights = room; cap(weights) < to-from+1 {
		weights = make([]float64, r.n)
	}
	weights = weights[:to-from+1]
	// Equal steps make each weight the last times a factor that itself shrinks by one.
	z, h := (r.first+float64(from)*r.step-mean)/sd, r.step/sd
	w, factor, shrink := math.Exp(-z*z/2), math.Exp(-z*h-h*h/2), math.Exp(-h*h)
	sum := 0.0
	for i := range weights {
		weights[i] = w
		sum += w
		w *= factor
		factor *= shrink
	}
	for i := range weights {
		weights[i] /= sum
	}
	return from, weights
}

// part is one way to strike the ball: a share, a normal of lengths in yards and
// one of directions in radians.
type part struct{ share, mean, sd, angle float64 }

// folded is a lattice whose lengths are summed up, by the class of the row and by
// column.
type folded struct {
	strokes, again [classes][]float64
	angle          float64 // rad of spread of what was folded
}

// fold sums up over the lengths of some parts that spread alike in direction.
func (l *lattice) fold(parts []part) folded {
	f := folded{angle: parts[0].angle}
	for c := range classes {
		f.strokes[c], f.again[c] = make([]float64, l.cols), make([]float64, l.cols)
	}
	for _, w := range l.lengths(parts) {
		for j := w.from; j < w.to; j++ {
			strokes, again := f.strokes[j%classes], f.again[j%classes]
			row := j * l.cols
			at := w.at(j)
			ends, once := l.strokes[row:row+l.cols], l.again[row:row+l.cols]
			strokes, again = strokes[:len(ends)], again[:len(ends)]
			once = once[:len(ends)]
			for k, e := range ends {
				x := at[k%classes]
				strokes[k] += x * e
				again[k] += x * once[k]
			}
		}
	}
	return f
}

// weights are those of a part's lengths, by row and class of the column.
type weights struct {
	from, to int
	rows     [][classes]float64
}

func (w weights) at(j int) *[classes]float64 { return &w.rows[j-w.from] }

// lengths are the weights of parts with their shares.
func (l *lattice) lengths(parts []part) []weights {
	var all []weights
	for _, p := range parts {
		if p.share == 0 {
			continue
		}
		w := weights{from: l.rows}
		var from [classes]int
		var row [classes][]float64
		for c := range classes {
			from[c], row[c] = l.along(c).normal(nil, p.mean, p.sd)
			w.from, w.to = min(w.from, from[c]), max(w.to, from[c]+len(row[c]))
		}
		w.rows = make([][classes]float64, max(w.to-w.from, 0))
		for c := range classes {
			for i, x := range row[c] {
				w.rows[from[c]+i-w.from][c] = x * p.share
			}
		}
		all = append(all, w)
	}
	return all
}

// turned sums up over the directions too, about one of them.
func (l *lattice) turned(f *folded, direction float64) (strokes, again float64) {
	for c := range classes {
		from, row := l.across(c).normal(l.room, direction, f.angle)
		l.room = row
		s, a := f.strokes[c][from:], f.again[c][from:]
		for i, w := range row {
			strokes += w * s[i]
			again += w * a[i]
		}
	}
	return strokes, again
}

// shared adds up where the strokes of some parts about a direction end.
func (l *lattice) shared(parts []part, direction float64) Shares {
	var sums [9]float64
	var from [classes]int
	var across [classes][]float64
	for c := range classes {
		from[c], across[c] = l.across(c).normal(nil, direction, parts[0].angle)
	}
	for _, w := range l.lengths(parts) {
		for j := w.from; j < w.to; j++ {
			c := j % classes
			at := w.at(j)
			for i, x := range across[c] {
				k := from[c] + i
				x *= at[k%classes]
				for n, share := range &l.shares[j*l.cols+k] {
					sums[n] += x * float64(share)
				}
			}
		}
	}
	return unpacked(sums)
}
