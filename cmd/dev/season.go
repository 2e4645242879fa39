package main

import (
	"bytes"
	"os"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/shotsfile"
)

const seasonFile = "testdata/shots/season.csv"

// harrowFen is the white tees of an invented course: par 72, 6,310 yd.
var harrowFen = card(
	[...]int{4, 4, 3, 5, 4, 4, 3, 4, 5, 4, 4, 3, 5, 4, 4, 3, 5, 4},
	[...]int{384, 402, 158, 498, 361, 417, 182, 338, 521, 396, 352, 171, 489, 408, 375, 149, 507, 402},
)

func card(pars, yards [18]int) []golf.CardHole {
	holes := make([]golf.CardHole, len(pars))
	for i := range holes {
		holes[i] = golf.CardHole{Number: i + 1, Par: pars[i], Length: golf.Distance(yards[i]) * golf.Yard}
	}
	return holes
}

// season is a summer of an invented golfer who putts as an 86, plays the
// approach as a 90 and the rest as an 82.
func season() ([]byte, error) {
	parameters := golfer.Committed()
	rounds, err := golfer.Season{
		Player: "Ines Varga", Course: "Harrow Fen", Tee: "white", Card: harrowFen,
		Levels: golfer.Levels{Tee: 82, Approach: 90, ShortGame: 82, Putting: 86},
		First:  golf.Date{Year: 2026, Month: 4, Day: 4}, Days: 5, Rounds: 36, Seed: 2026,
	}.Play(&parameters)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	w := shotsfile.NewWriter(&b)
	for _, r := range rounds {
		if err := w.Write(r); err != nil {
			return nil, err
		}
	}
	if err := w.Flush(); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

func writeSeason() error {
	data, err := season()
	if err != nil {
		return err
	}
	return os.WriteFile(seasonFile, data, 0o644)
}
