package practice

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"sync"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// Chances of the drills of the house at every whole level from 68 to 110: what
// Drill.solve gives for the committed golfer, which takes too long for a page where a
// try is more than one putt. A row is a station: drill, lie, distance in inches, and
// the chances.
//
//go:embed chances.csv
var committedChances []byte

// chanceDecimals are those of the table.
const chanceDecimals = 7

// tableOf is the table of the drills of the house by key. A table that cannot be read
// was written wrongly, which a test shows.
var tableOf = sync.OnceValue(func() map[string]Levels {
	all, err := readChances(committedChances)
	if err != nil {
		panic("practice: " + err.Error())
	}
	return all
})

// committedGolfer is the golfer that the table is of.
var committedGolfer = sync.OnceValue(golfer.Committed)

// tabled are the chances of a drill as the table has them; not of another golfer, nor
// of a drill that is played from elsewhere.
func tabled(d Drill, of *golfer.Parameters) (Levels, bool) {
	levels, known := tableOf()[d.Key]
	usual, err := Find(d.Key)
	if !known || err != nil || len(usual.Stations) != len(d.Stations) || *of != committedGolfer() {
		return nil, false
	}
	for i, s := range d.Stations {
		if s.Lie != usual.Stations[i].Lie || s.Distance != usual.Stations[i].Distance {
			return nil, false
		}
	}
	return levels, true
}

// writeChances writes the table of the drills with a model.
func writeChances(of golfer.Parameters) ([]byte, error) {
	var file bytes.Buffer
	out := csv.NewWriter(&file)
	for _, d := range drills {
		if d.NoMark {
			continue
		}
		levels, err := d.solveAll(&of)
		if err != nil {
			return nil, err
		}
		for j, s := range d.Stations {
			row := []string{d.Key, s.Lie.String(), strconv.FormatFloat(float64(s.Distance), 'f', -1, 64)}
			for _, c := range levels {
				row = append(row, strconv.FormatFloat(c[j], 'f', chanceDecimals, 64))
			}
			if err := out.Write(row); err != nil {
				return nil, err
			}
		}
	}
	out.Flush()
	return file.Bytes(), out.Error()
}

// readChances reads the table: a row for every station of every drill with a model, in
// the order of the drills.
func readChances(file []byte) (map[string]Levels, error) {
	rows, err := csv.NewReader(bytes.NewReader(file)).ReadAll()
	if err != nil {
		return nil, err
	}
	all := map[string]Levels{}
	for _, d := range drills {
		if d.NoMark {
			continue
		}
		levels := make(Levels, golf.MaxTarget-golf.MinTarget+1)
		for _, s := range d.Stations {
			if len(rows) == 0 || len(rows[0]) != 3+len(levels) || rows[0][0] != d.Key || rows[0][1] != s.Lie.String() || rows[0][2] != strconv.FormatFloat(float64(s.Distance), 'f', -1, 64) {
				return nil, fmt.Errorf("the table of chances is not that of %s; go test -update writes it", d.Key)
			}
			for i := range levels {
				x, err := strconv.ParseFloat(rows[0][3+i], 64)
				if err != nil {
					return nil, err
				}
				levels[i] = append(levels[i], x)
			}
			rows = rows[1:]
		}
		all[d.Key] = levels
	}
	if len(rows) > 0 {
		return nil, fmt.Errorf("the table of chances has %d rows too many", len(rows))
	}
	return all, nil
}
