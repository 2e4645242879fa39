package expect

import "strokeledger/analysis/golf"

// apart is the least that two lies differ by where one must cost more.
const apart = 1e-6

// puttApart is the same for a putt under a shot from the fairway; it is wider
// since the two are read between different nodes.
const puttApart = .01

// putInOrder takes out what is left of disorder: expected strokes never fall
// with distance or with level, fairway costs less than rough and bunker, both
// less than recovery, and a putt less than a shot from the fairway, which is
// what limits putts so long that nobody measured them. Each step takes the
// larger or the smaller of two functions that never fall, so that none undoes
// another.
func putInOrder(levels []Table) {
	for k := range levels {
		t := &levels[k]
		rising(t.Feet[:])
		for _, lie := range golf.Lies[:golf.Recovery] {
			rising(t.Row(lie)[:])
		}
		if k > 0 {
			noLess(t, &levels[k-1])
		}
		fairway, rough, bunker, recovery := t.Row(golf.Fairway), t.Row(golf.Rough), t.Row(golf.Bunker), t.Row(golf.Recovery)
		for i := range fairway {
			rough[i] = max(rough[i], fairway[i]+apart)
			bunker[i] = max(bunker[i], fairway[i]+apart)
			recovery[i] = max(recovery[i], rough[i]+apart, bunker[i]+apart)
		}
		for i := range t.Feet {
			t.Feet[i] = min(t.Feet[i], t.At(golf.Fairway, golf.Feet.Of(FootNode(i)))-puttApart)
		}
	}
}

func rising(row []float64) {
	for i := 1; i < len(row); i++ {
		row[i] = max(row[i], row[i-1])
	}
}

func noLess(t, lower *Table) {
	for l := range t.Yards {
		for i := range t.Yards[l] {
			t.Yards[l][i] = max(t.Yards[l][i], lower.Yards[l][i])
		}
	}
	for i := range t.Feet {
		t.Feet[i] = max(t.Feet[i], lower.Feet[i])
	}
}

// tourTable is the published table at every node, and outside the table the
// family's shape at skill 0, moved to meet it.
func tourTable(family *Table) Table {
	var t Table
	for _, lie := range golf.Lies[:golf.Recovery] {
		p := Published(lie)
		follow(t.Row(lie)[:], family.Row(lie)[:], YardNode, p, lie)
	}
	follow(t.Feet[:], family.Feet[:], FootNode, Published(golf.Green), golf.Green)
	return t
}

func follow(row, shape []float64, at func(int) float64, p Points, lie golf.Lie) {
	low, high := p.Distance[0], p.Distance[len(p.Distance)-1]
	if lie == golf.Green {
		low = 0
	}
	first, last := 0, len(row)-1
	for i := range row {
		if at(i) <= low {
			first = i
		}
		if at(i) <= high {
			last = i
		}
		row[i] = Tabulated(lie, at(i))
	}
	for i := range row {
		if edge := min(max(i, first), last); edge != i {
			row[i] = row[edge] + shape[i] - shape[edge]
		}
	}
}
