package main

import (
	"encoding/csv"
	"fmt"
	"io"
	"os"
	"slices"
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
)

// readHoles reads a card of 1 to 18 holes from a CSV file with the columns
// hole, par and length_yd, in any order.
func readHoles(name string) ([]golf.CardHole, error) {
	var card []golf.CardHole
	err := eachRow(name, func(cells []string) error {
		h, err := readHole(cells[0], cells[1], cells[2])
		card = append(card, h)
		return err
	}, "hole", "par", "length_yd")
	if err != nil {
		return nil, err
	}
	return card, checkCard(name, card)
}

// eachRow reads a CSV file and calls use with the cells of each row, in the order
// in which the columns are named here. Errors name the file and the line.
func eachRow(name string, use func(cells []string) error, columns ...string) error {
	file, err := os.Open(name)
	if err != nil {
		return err
	}
	defer file.Close()
	rows := csv.NewReader(file)
	head, err := rows.Read()
	if err != nil {
		return fmt.Errorf("%s: no header row; allowed: %s", name, strings.Join(columns, ","))
	}
	at, err := findColumns(head, columns...)
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	for {
		row, err := rows.Read()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
		cells := make([]string, len(at))
		for i, column := range at {
			cells[i] = row[column]
		}
		line, _ := rows.FieldPos(0)
		if err := use(cells); err != nil {
			return fmt.Errorf("%s: line %d: %w", name, line, err)
		}
	}
}

// findColumns finds the place of each column in a header.
func findColumns(head []string, columns ...string) ([]int, error) {
	at := make([]int, len(columns))
	for i, column := range columns {
		at[i] = slices.IndexFunc(head, func(s string) bool {
			return strings.EqualFold(strings.TrimSpace(strings.TrimPrefix(s, "\ufeff")), column)
		})
		if at[i] < 0 {
			return nil, fmt.Errorf("no column %s; allowed: %s", column, strings.Join(columns, ","))
		}
	}
	return at, nil
}

// readHole reads the cells of one hole.
func readHole(number, par, length string) (h golf.CardHole, err error) {
	if h.Number, err = strconv.Atoi(strings.TrimSpace(number)); err != nil {
		return h, fmt.Errorf("hole %q; allowed: 1 to 18", number)
	}
	if h.Par, err = strconv.Atoi(strings.TrimSpace(par)); err != nil {
		return h, fmt.Errorf("par %q; allowed: 3 to 6", par)
	}
	yards, err := strconv.ParseFloat(strings.TrimSpace(length), 64)
	if err != nil {
		return h, fmt.Errorf("length_yd %q; allowed: over 0, at most 700", length)
	}
	h.Length = golf.Yards.Of(yards)
	tee := golf.Hole{Number: h.Number, Par: h.Par, Shots: []golf.Shot{{Lie: golf.Tee, Distance: h.Length}}}
	return h, tee.Check().Err()
}

// checkCard refuses a card with no holes, with too many, or with one twice.
func checkCard(name string, card []golf.CardHole) error {
	if len(card) == 0 || len(card) > 18 {
		return fmt.Errorf("%s: %d holes; allowed: 1 to 18", name, len(card))
	}
	seen := map[int]bool{}
	for _, h := range card {
		if seen[h.Number] {
			return fmt.Errorf("%s: hole %d is there twice; allowed: each hole once", name, h.Number)
		}
		seen[h.Number] = true
	}
	return nil
}
