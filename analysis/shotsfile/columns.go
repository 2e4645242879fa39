package shotsfile

import (
	"slices"
	"strings"
)

// column is a column of the file by its place in the written order.
type column int

const (
	colRound column = iota
	colDate
	colPlayer
	colCourse
	colTee
	colHole
	colPar
	colShot
	colLie
	colDistance
	colUnit
	colPenalty
	colShortSided
	colGreen
	colPickedUp
	colScoreOnly
	colClub
	colMiss
	columnCount
)

var columnNames = [columnCount]string{
	"round", "date", "player", "course", "tee", "hole", "par", "shot", "lie", "distance", "unit", "penalty",
	"short_sided", "green_to_work_with", "picked_up", "score_only", "club", "miss",
}

var requiredColumns = []column{colRound, colDate, colHole, colPar, colShot, colLie, colDistance}

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
		c := slices.IndexFunc(columnNames[:], func(known string) bool { return strings.EqualFold(known, name) })
		switch {
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

func joined(columns []column) string {
	var names []string
	for _, c := range columns {
		names = append(names, c.String())
	}
	return strings.Join(names, ", ")
}
