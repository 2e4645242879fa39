package shotsfile

import (
	"slices"
	"strings"
)

// column is a column of the file by its place in the written order.
type column int

const (
	colRound column = iota // names a round; its rows stand together
	colDate                // YYYY-MM-DD, as in every row of the round
	colPlayer
	colCourse
	colTee
	colHole
	colPar
	colShot // place on its hole, from 1
	colLie
	colDistance // to the hole before the shot
	colUnit     // of the distance; empty for that of the lie
	colPenalty  // strokes added by this one
	colShortSided
	colGreen // yards between the edge and the hole; empty where it is not known
	colPickedUp
	colScoreOnly // strokes of a hole whose shots are not known
	colClub
	colMiss
	columnCount
)

// columnNames are the names in the header, in lower case.
var columnNames = [columnCount]string{
	"round", "date", "player", "course", "tee", "hole", "par", "shot", "lie", "distance", "unit", "penalty",
	"short_sided", "green_to_work_with", "picked_up", "score_only", "club", "miss",
}

// requiredColumns are those without which a row says nothing.
var requiredColumns = []column{colRound, colDate, colHole, colPar, colShot, colLie, colDistance}

// String is the name of the column in the header.
func (c column) String() string { return columnNames[c] }

// places says in which cell of a row each column stands, -1 where it is absent.
type places [columnCount]int

// readHeader finds the columns, and reports those that are unknown, missing or
// there twice.
func readHeader(cells []string, faults *Faults) (at places, unknown []string) {
	for i := range at {
		at[i] = -1
	}
	for i, cell := range cells {
		name := strings.TrimSpace(cell)
		switch c := columnOf(name); {
		case c < 0 && name != "" && !slices.Contains(unknown, name):
			unknown = append(unknown, strings.ToValidUTF8(name, "?"))
		case c >= 0 && at[c] >= 0:
			faults.add(1, columnNames[c], "column comes again", name, "each column once")
		case c >= 0:
			at[c] = i
		}
	}
	for _, c := range requiredColumns {
		if at[c] < 0 {
			faults.add(1, c.String(), "column is missing", "", "columns "+joined(requiredColumns))
		}
	}
	return at, unknown
}

// columnOf is the column of a name in any case of letters, -1 for none.
func columnOf(name string) int {
	return slices.IndexFunc(columnNames[:], func(known string) bool { return strings.EqualFold(known, name) })
}

// joined lists columns for people.
func joined(columns []column) string {
	var names []string
	for _, c := range columns {
		names = append(names, c.String())
	}
	return strings.Join(names, ", ")
}
