package analysis

import (
	"testing"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

var engine = NewEngine()

// played is a history of a golfer of a level: a round every third day from 1
// April 2026.
func played(t testing.TB, level float64, rounds int) []golf.Played {
	t.Helper()
	p := golfer.Committed()
	all, err := golfer.Season{Course: "Harrow Fen", Card: expect.ReferenceCourse(), Levels: golfer.Even(level), First: golf.Date{Year: 2026, Month: 4, Day: 1},
		Days: 3, Rounds: rounds, Seed: 7}.Play(&p)
	if err != nil {
		t.Fatal(err)
	}
	history := make([]golf.Played, len(all))
	for i, r := range all {
		history[i] = golf.Played{ID: golf.RoundID(i + 1), Round: r, Target: 79, Par18: 72}
	}
	return history
}

// summarized sums a history up as it is kept, the latest first.
func summarized(t testing.TB, history []golf.Played) []Summarized {
	t.Helper()
	all := make([]Summarized, len(history))
	for i, h := range history {
		data, err := engine.Summary(h, h.Target, golf.StandardBoundary)
		if err != nil {
			t.Fatal(err)
		}
		all[len(history)-1-i] = Summarized{h.ID, h.Round.Date, data, DigestOf(data)}
	}
	return all
}

// openRound is a round that was begun and of which no hole was entered.
func openRound() golf.Played {
	return golf.Played{ID: 99, Round: golf.Round{Date: golf.Date{Year: 2026, Month: 12, Day: 1}}, Target: 79}
}
