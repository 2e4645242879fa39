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

// RoundRow is one round in a list of rounds. Its amounts are strokes, signed, with
// one decimal; they are empty while no hole is entered.
type RoundRow struct {
	At        string // address of its statement
	Date      string // the day, as 2 May 2026
	Course    string // course and tees
	Score     string // a whole number, or not entered
	Target    string // strokes over 18 holes
	Lost      string // over the target, on the holes played
	Tee       string // lost off the tee
	Approach  string // lost on the approach
	ShortGame string // lost in the short game
	Putting   string // lost putting
	Double    string // how many doubles
	Worst     string // the part of the game that cost most, with its amount
	Open      string // how many holes are still to be entered; empty for none
	New       bool   // saved since the coach last looked
}

// ListedRound is what a row is made of.
type ListedRound struct {
	ID      golf.RoundID    // leads to its statement
	Round   golf.Round      // the holes entered
	Card    int             // holes on the card
	Target  float64         // strokes over 18 holes
	Account account.Account // of the holes entered; zero when there are none
	New     bool            // saved since the coach last looked
}

// worstPart names the part of the game that cost most, with its amount as printed.
func worstPart(parts []float64) string {
	cost := func(c golf.Category) float64 { return parts[c-golf.TeeShots] }
	worst := golf.Most(cost)
	if cost(worst) < .05 {
		return "nothing"
	}
	return fmt.Sprintf("%s %s", worst, words.Signed(cost(worst), 1))
}

// Row writes the round as the list prints it; its parts add up as printed.
func (l ListedRound) Row(whose paths.Whose) RoundRow {
	a := l.Account
	r := RoundRow{At: whose.Round(l.ID), New: l.New, Date: l.Round.Date.Time().Format("2 Jan 2006"), Course: words.Joined(l.Round.Course, l.Round.Tee), Target: words.Plain(l.Target)}
	if left := l.Card - len(l.Round.Holes); left > 0 {
		r.Open = words.Plural(left, "hole", "holes") + " to go"
	}
	if len(l.Round.Holes) == 0 {
		r.Score = "not entered"
		return r
	}
	r.Score = fmt.Sprintf("%.0f", math.Round(a.Score))
	// rounded as on the statement, so that its amounts and these are the same
	target := math.Round((a.Expected-a.Lost.Course)*10) / 10
	total := math.Round(a.Score*10)/10 - target
	parts := stat.RoundedTo([]float64{a.Lost.Tee, a.Lost.Approach, a.Lost.ShortGame, a.Lost.Putting, a.Lost.Undetailed + a.Lost.Course}, .1, total)
	r.Tee, r.Approach, r.ShortGame, r.Putting = words.Signed(parts[0], 1), words.Signed(parts[1], 1), words.Signed(parts[2], 1), words.Signed(parts[3], 1)
	r.Lost, r.Double = words.Signed(total, 1), fmt.Sprint(len(a.Doubles))
	r.Worst = worstPart(parts[:len(golf.Categories)])
	return r
}
