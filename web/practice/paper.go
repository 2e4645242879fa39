package practice

import (
	"strokeledger/web/words"
)

// PencilBoxes is a table to fill in by pencil, on paper only.
type PencilBoxes struct {
	Caption string
	Of      string // over the first column
	Rows    []PencilRow
}

// PencilRow is a drill, or a place of one, with what to reach.
type PencilRow struct{ Name, Mark string }

// pencilSessions are the sessions that there is room for.
var pencilSessions = []string{"First", "Second", "Third", "Fourth", "Fifth", "Sixth"}

// boxes are a line for every drill of a plan, each drill once.
func (in PlanInput) boxes() *PencilBoxes {
	b := &PencilBoxes{Caption: "To fill in by pencil: counted of tried, by session", Of: "Drill"}
	known := map[string]bool{}
	for _, c := range in.Candidates {
		if known[c.Drill.Key] {
			continue
		}
		known[c.Drill.Key] = true
		row := PencilRow{Name: c.Drill.Name, Mark: "in words"}
		if c.Mark.Pass > 0 {
			row.Mark = markWords(c.Mark)
		}
		b.Rows = append(b.Rows, row)
	}
	return b
}

// boxes are a line for every place of a drill, and one for all of them.
func (in DrillInput) boxes(rows []StationRow) *PencilBoxes {
	b := &PencilBoxes{Caption: "To fill in by pencil: how many counted, by session", Of: "From"}
	if in.NoMark {
		b.Rows = []PencilRow{{in.DrillFor.Name, "in words"}}
		return b
	}
	if len(rows) > 1 {
		for _, s := range rows {
			b.Rows = append(b.Rows, PencilRow{Name: s.From})
		}
	}
	b.Rows = append(b.Rows, PencilRow{"All " + words.Plural(in.Mark.Tries, "try", "tries"), markWords(in.Mark)})
	return b
}
