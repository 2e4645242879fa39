package pages

import (
	"fmt"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/shotsfile"
	"strokeledger/web/components"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// Import is where a shots file is given, looked at and taken in.
type Import struct {
	layout.Page
	Lede     string
	Faults   []string
	Wrong    components.Summary
	More     string
	Rows     []ImportRow
	Unknown  string
	There    string // how many rounds are there already, empty when none
	Confirm  string
	Download string
}

// ImportRow is one round of the file.
type ImportRow struct{ Date, Course, Holes, Score, There string }

// NewImport makes the page that asks for a file, with what was wrong with the
// last one.
func NewImport(page layout.Page, problem string, faults *shotsfile.Faults) Import {
	page.Title, page.Here, page.Script = "Take in a shots file", paths.Rounds, "sending.js"
	p := Import{Page: page, Lede: "Take in rounds from a shots file. You see what it holds before anything is kept."}
	if problem != "" {
		p.Faults = []string{problem}
	}
	if faults != nil {
		for _, f := range faults.List {
			p.Faults = append(p.Faults, f.String())
		}
		if faults.More > 0 {
			p.More = fmt.Sprintf("And %d more.", faults.More)
		}
	}
	if len(p.Faults) > 0 {
		p.Wrong.Add("file", "", plural(len(p.Faults), "thing", "things")+" to put right, listed below")
		p.Wrong = p.Wrong.Saying("The file was not taken in.")
		p.Lede = "The file was refused whole, and nothing of it was kept. Mend what stands below, and give it again."
	}
	return p
}

// NewPreview makes the page that shows what a file holds.
func NewPreview(page layout.Page, rounds []golf.Round, there map[string]bool, unknown []string) Import {
	page.Title, page.Here = "Take in a shots file", paths.Rounds
	p := Import{Page: page, Confirm: paths.ImportConfirm, Lede: fmt.Sprintf("The file holds %s. Nothing is kept yet.", plural(len(rounds), "round", "rounds"))}
	known := 0
	for _, r := range rounds {
		row := ImportRow{Date: r.Date.Time().Format("2 Jan 2006"), Course: joined(r.Course, r.Tee), Holes: fmt.Sprint(len(r.Holes))}
		score := 0
		for _, h := range r.Holes {
			score += h.Strokes()
			if h.PickedUp {
				row.Score = " and a ball picked up"
			}
		}
		row.Score = fmt.Sprint(score) + row.Score
		if there[r.ID] {
			row.There = "there already"
			known++
		}
		p.Rows = append(p.Rows, row)
	}
	if known > 0 {
		p.There = capital(plural(known, "round is", "rounds are")) + " there already."
	}
	if len(unknown) > 0 {
		p.Unknown = "Left out, since the columns are not known: " + joined(unknown...) + "."
	}
	return p
}
