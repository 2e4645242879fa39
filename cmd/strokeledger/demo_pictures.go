package main

import (
	_ "embed"
	"fmt"
	"strconv"
	"strings"

	"strokeledger/analysis/aim"
	"strokeledger/analysis/golf"
)

// The rows of every hole of Harrow Fen, each after a line with its number.
//
//go:embed pictures/harrow-fen.txt
var harrowFenRows string

// demoPictures are the holes of Harrow Fen as they are drawn, by number.
func demoPictures() (map[int]aim.Picture, error) { return picturesOf(harrowFen, harrowFenRows) }

// picturesOf reads the rows of several holes of a card.
func picturesOf(card []golf.CardHole, text string) (map[int]aim.Picture, error) {
	all := map[int]aim.Picture{}
	for i, part := range strings.Split("\n"+text, "\nhole ") {
		if i == 0 {
			continue
		}
		head, rows, _ := strings.Cut(part, "\n")
		number, err := strconv.Atoi(head)
		if err != nil || number < 1 || number > len(card) {
			return nil, fmt.Errorf("hole %q; allowed: 1 to %d", head, len(card))
		}
		h := card[number-1]
		picture, faults := aim.ParseRows(h.Par, h.Length.Yards(), rows)
		if faults != nil {
			return nil, fmt.Errorf("hole %d: %w", number, faults)
		}
		all[number] = picture
	}
	return all, nil
}
