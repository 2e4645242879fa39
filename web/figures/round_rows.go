package figures

import (
	"fmt"
	"math"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// RoundRow is one round of the list.
type RoundRow struct {
	At, Date, Course, Score, Target                 string
	Tee, Approach, ShortGame, Putting, Lost, Double string
	Worst                                           string // the part that cost most, in words
	Open                                            string // how many holes are missing
	New                                             bool   // since a coach last looked
}

// ListedRound is what a row is made of.
type ListedRound struct {
	ID      golf.RoundID
	Round   golf.Round
	Card    int // holes on the card
	Target  float64
	Account account.Account
	New     bool // since a coach last looked
}

// worstPart says which part cost most, with what it cost as printed.
func worstPart(parts []float64) string {
	cost := func(c golf.Category) float64 { return parts[c-golf.TeeShots] }
	worst := golf.Most(cost)
	if cost(worst) < .05 {
		return "no part lost"
	}
	return fmt.Sprintf("%s %s", worst, words.Signed(cost(worst), 1))
}

// Row writes the round as the list prints it; its parts add up as printed.
func (l ListedRound) Row(whose paths.Whose) RoundRow {
	a := l.Account
	r := RoundRow{At: whose.Round(l.ID), New: l.New, Date: l.Round.Date.Time().Format("2 Jan 2006"), Course: words.Joined(l.Round.Course, l.Round.Tee), Target: words.Plain(l.Target)}
	if left := l.Card - len(l.Round.Holes); left > 0 {
		r.Open = words.Plural(left, "hole", "holes") + " open"
	}
	if len(l.Round.Holes) == 0 {
		r.Score = "not entered"
		return r
	}
	r.Score = fmt.Sprintf("%.0f", math.Round(a.Score))
	// as the statement prints them, so that a row adds up where nothing is
	// undetailed
	target := math.Round((a.Expected-a.Lost.Course)*10) / 10
	total := math.Round(a.Score*10)/10 - target
	parts := stat.RoundedTo([]float64{a.Lost.Tee, a.Lost.Approach, a.Lost.ShortGame, a.Lost.Putting, a.Lost.Undetailed + a.Lost.Course}, .1, total)
	r.Tee, r.Approach, r.ShortGame, r.Putting = words.Signed(parts[0], 1), words.Signed(parts[1], 1), words.Signed(parts[2], 1), words.Signed(parts[3], 1)
	r.Lost, r.Double = words.Signed(total, 1), fmt.Sprint(len(a.Doubles))
	r.Worst = worstPart(parts[:len(golf.Categories)])
	return r
}
