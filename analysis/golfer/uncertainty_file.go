package golfer

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	"strokeledger/analysis/golf"
)

//go:embed uncertainty.csv
var uncertaintyCSV string

var committedUncertainty = sync.OnceValue(func() []Uncertain {
	table, err := ParseUncertainty(uncertaintyCSV)
	if err != nil {
		panic("golfer: the committed table of uncertainty: " + err.Error())
	}
	return table
})

// UncertaintyAt returns how sure expected strokes are at a level and place of the
// committed table, and whether it has them. Distances are in yards off the green
// and in feet on it.
func UncertaintyAt(level float64, lie golf.Lie, far float64) (Uncertain, bool) {
	for _, u := range committedUncertainty() {
		if u.Level == level && u.Lie == lie && u.Far == far {
			return u, true
		}
	}
	return Uncertain{}, false
}

// CommittedUncertainty returns the table of uncertainty in the repository, as the
// calibration command last wrote it.
func CommittedUncertainty() []Uncertain { return slices.Clone(committedUncertainty()) }

// CommittedRefit returns the parameters of the refit in the repository.
func CommittedRefit() (Parameters, error) { return ParseParameters(refitJSON) }

//go:embed refit.json
var refitJSON []byte

var uncertaintyHeader = []string{"level", "lie", "distance", "unit", "strokes", "sd", "refit", "refit_by_delta_method"}

// FormatUncertainty writes the table as CSV.
func FormatUncertainty(table []Uncertain) string {
	var b strings.Builder
	b.WriteString(strings.Join(uncertaintyHeader, ",") + "\n")
	for _, u := range table {
		fmt.Fprintf(&b, "%g,%s,%g,%s,%.4f,%.4f,%.4f,%.4f\n", u.Level, u.Lie, u.Far, u.Lie.Unit(), u.Strokes, u.SD, u.Refit, u.Linear)
	}
	return b.String()
}

// ParseUncertainty reads a table as FormatUncertainty writes it.
func ParseUncertainty(data string) ([]Uncertain, error) {
	rows, err := csv.NewReader(strings.NewReader(data)).ReadAll()
	if err != nil {
		return nil, err
	}
	var all []Uncertain
	for i, row := range rows[min(1, len(rows)):] {
		if len(row) != len(uncertaintyHeader) {
			return nil, fmt.Errorf("row %d: %d columns, want %d", i+2, len(row), len(uncertaintyHeader))
		}
		lie, err := golf.ParseLie(row[1])
		if err != nil {
			return nil, fmt.Errorf("row %d: %w", i+2, err)
		}
		u := Uncertain{Lie: lie}
		for column, to := range map[int]*float64{0: &u.Level, 2: &u.Far, 4: &u.Strokes, 5: &u.SD, 6: &u.Refit, 7: &u.Linear} {
			if *to, err = strconv.ParseFloat(row[column], 64); err != nil {
				return nil, fmt.Errorf("row %d: %w", i+2, err)
			}
		}
		all = append(all, u)
	}
	return all, nil
}
