package golfer

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
	"sync"
)

// fact is one published figure about amateurs or tour players.
type fact struct {
	value  float64 // in the unit of the file; a share where that is %
	source string  // with how it is known
}

// The published figures about the short game and whole rounds, a row each, with
// how they are known and where they come from.
//
//go:embed published/amateur_facts.csv
var factsCSV string

var facts = sync.OnceValue(func() map[string]fact {
	rows, err := csv.NewReader(strings.NewReader(factsCSV)).ReadAll()
	if err != nil {
		panic("golfer: the published facts: " + err.Error())
	}
	all := map[string]fact{}
	for _, row := range rows[1:] {
		value, err := strconv.ParseFloat(row[2], 64)
		if err != nil {
			continue // a rule, not a number: the target that uses it says it
		}
		if strings.HasPrefix(row[3], "%") {
			value /= 100
		}
		all[row[0]+" "+row[1]] = fact{value, fmt.Sprintf("%s, %s", row[5], row[4])}
	}
	return all
})

// published returns a fact by metric and group.
func published(metric, group string) fact {
	f, known := facts()[metric+" "+group]
	if !known {
		panic(fmt.Sprintf("golfer: no published figure %q of %q", metric, group))
	}
	return f
}
