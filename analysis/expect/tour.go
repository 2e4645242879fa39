package expect

import (
	"embed"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
)

// The published tables. Off the green: M. Broadie, Assessing Golfer
// Performance on the PGA TOUR, Interfaces 42(2), 2012, table 9 of the preprint
// of April 2011 (two independent copies, equal cell for cell). On the
// green: the PGA TOUR's putting baseline of 2010 by foot, from public copies;
// the value at 31 ft repeated that of 32 ft in each of them and stands here
// interpolated.
//
//go:embed published/*.csv
var published embed.FS

// Points are one lie's published values: distances in yards off the green and
// in feet on it, and mean strokes to hole out.
type Points struct{ Distance, Strokes []float64 }

// Published returns the published tour table of a lie as printed. It is not
// monotone everywhere: from the tee 120 yd costs more than 140.
func Published(lie golf.Lie) Points { return readTables().points[lie] }

// Tabulated reads the published table between its points: made never
// decreasing in distance with the least possible change, then by
// shape-preserving cubic interpolation. Outside the table it stays at the nearest value. The distance
// is in the table's unit: yards off the green, feet on it.
func Tabulated(lie golf.Lie, distance float64) float64 {
	return readTables().curves[lie].At(distance)
}

type tourTables struct {
	points [golf.Green + 1]Points
	curves [golf.Green + 1]stat.Curve
}

func loadTables() *tourTables {
	t := new(tourTables)
	for i, lie := range golf.Lies[:golf.Recovery] {
		t.points[lie] = readColumn("published/tour_strokes.csv", i+1)
	}
	t.points[golf.Green] = readColumn("published/tour_putts.csv", 1)
	for _, lie := range golf.Lies {
		x, y := t.points[lie].Distance, neverFalling(t.points[lie].Strokes)
		if lie == golf.Green {
			x, y = append([]float64{0}, x...), append([]float64{1}, y...)
		}
		t.curves[lie] = mustCurve(x, y)
	}
	return t
}

// neverFalling is the nearest values that never fall, by the largest change:
// midway between the largest value so far and the smallest still to come. The
// largest change anywhere is .03, since recovery falls from 3.84 at 80 yd to
// 3.78 at 120.
func neverFalling(values []float64) []float64 {
	out := make([]float64, len(values))
	for i := range values {
		out[i] = (slices.Max(values[:i+1]) + slices.Min(values[i:])) / 2
	}
	return out
}

func mustCurve(x, y []float64) stat.Curve {
	c, err := stat.NewCurve(x, y)
	if err != nil {
		panic("expect: " + err.Error())
	}
	return c
}

// readColumn reads one column of an embedded table; empty cells are left out.
func readColumn(name string, column int) Points {
	file, err := published.Open(name)
	if err != nil {
		panic("expect: " + err.Error())
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		panic("expect: " + err.Error())
	}
	var p Points
	for _, row := range rows[1:] {
		if row[column] == "" {
			continue
		}
		p.Distance = append(p.Distance, mustNumber(name, row[0]))
		p.Strokes = append(p.Strokes, mustNumber(name, row[column]))
	}
	return p
}

func mustNumber(name, s string) float64 {
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		panic(fmt.Sprintf("expect: %s: %v", name, err))
	}
	return x
}
