package coach

import (
	"math"
	"strconv"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/shotsfile"
)

// RosterTable is a coach's pupils as a table for a file: what their latest rounds come
// to, and what they are to practise first.
func RosterTable(in RosterInput) [][]string {
	table := [][]string{append(append([]string{"pupil", "target", "shared_from", "groups", "archived", "last_round", "last_holes", "last_strokes", "form_rounds"}, lostHeads()...), "practice_due", "practice")}
	for _, p := range in.Pupils {
		row := []string{plainCell(p.Name), decimal(p.Target), dayCell(p.Since), plainCell(strings.Join(p.Groups, ", ")), strconv.FormatBool(p.Archived), dayCell(p.Last), "", "", strconv.Itoa(p.Form.Rounds)}
		if p.Holes > 0 {
			row[6], row[7] = strconv.Itoa(p.Holes), decimal(p.Score)
		}
		for _, c := range allAndParts {
			lost := ""
			if p.Form.Rounds > 0 {
				lost = decimal(p.Form.Lost[c])
			}
			row = append(row, lost)
		}
		due := ""
		if p.DueWhat != "" {
			due = dayCell(p.Due)
		}
		table = append(table, append(row, due, plainCell(p.DueWhat)))
	}
	return table
}

// SquadTable is what pupils lost, side by side, as a table for a file: a row for each
// part of the game of each pupil.
func SquadTable(in SquadInput) [][]string {
	table := [][]string{{"pupil", "target", "rounds", "from", "part", "lost_per_18", "low_95", "high_95"}}
	for i, m := range in.Members {
		row := in.Squad.Rows[i]
		if row.Lost.Rounds == 0 {
			continue
		}
		for _, c := range allAndParts {
			cell, low, high := row.Lost.Cells[c], "", ""
			if cell.HasInterval() {
				low, high = decimal(cell.Interval.Low), decimal(cell.Interval.High)
			}
			table = append(table, []string{plainCell(m.Name), decimal(m.Target), strconv.Itoa(row.Lost.Rounds), dayCell(row.First), partCell(c), decimal(cell.Mean), low, high})
		}
	}
	return table
}

// SpanTable is the rounds of a span as a table for a file: the score, the target of the
// holes that were entered, and what was lost by part of the game and band to the golfer
// of the player's target, on the holes whose strokes are known.
func SpanTable(s analysis.SpanRounds) [][]string {
	heads := []string{"day", "course", "holes", "score", "picked_up", "target", "target_of_holes", "holes_known"}
	for _, row := range s.Rows {
		heads = append(heads, "lost_"+strings.NewReplacer(" ", "_", "-", "_to_").Replace(row.String()))
	}
	table := [][]string{heads}
	for _, r := range s.Rounds {
		row := []string{dayCell(r.Round.Date), plainCell(r.Round.Course), strconv.Itoa(len(r.Round.Holes)), strconv.Itoa(r.Account.Whole()), strconv.Itoa(len(r.Account.PickedUp())),
			decimal(r.Target), decimal(golf.TargetOver(r.Round.Card(), r.Target, r.Par18)), decimal(r.Holes)}
		for k := range s.Rows {
			lost := ""
			if r.Holes > 0 {
				lost = decimal(math.Round(r.Lost(k)*1e6) / 1e6)
			}
			row = append(row, lost)
		}
		table = append(table, row)
	}
	return table
}

// allAndParts are everything, which is 0, and the parts of the game.
var allAndParts = append([]golf.Category{0}, golf.Categories[:]...)

// partCell names a part of the game, or everything.
func partCell(c golf.Category) string {
	if c == 0 {
		return "all"
	}
	return c.String()
}

func lostHeads() []string {
	var heads []string
	for _, c := range allAndParts {
		heads = append(heads, "lost_"+strings.ReplaceAll(partCell(c), " ", "_"))
	}
	return heads
}

func dayCell(d golf.Date) string {
	if d.IsZero() {
		return ""
	}
	return d.String()
}

func decimal(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// plainCell is a text that somebody else typed, as a spreadsheet shows it and does not
// run it, as in every file that is written.
func plainCell(text string) string { return shotsfile.Harmless(strings.TrimSpace(text)) }
