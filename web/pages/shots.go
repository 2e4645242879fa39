package pages

import (
	"fmt"
	"strconv"

	"strokeledger/analysis/golf"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// ShotNotes is where more is said of the shots of a hole than its line says:
// the club, where each finished against its target, and a word.
type ShotNotes struct {
	layout.Page
	Heading string
	Save    string
	Version string
	Back    string // address of the statement
	Rows    []NoteRow
	Problem string
	Clubs   []string
}

// NoteRow is one shot.
type NoteRow struct {
	Number, Lie, From string
	Club, Word        string
	Misses            []Choice
}

// misses are what a shot may have done, as they are offered.
var misses = []golf.Miss{
	{}, {Side: golf.Left}, {Side: golf.Right}, {Depth: golf.Short}, {Depth: golf.Long},
	{Side: golf.Left, Depth: golf.Short}, {Side: golf.Right, Depth: golf.Short}, {Side: golf.Left, Depth: golf.Long}, {Side: golf.Right, Depth: golf.Long},
}

// NewShotNotes makes the page.
func NewShotNotes(page layout.Page, id golf.RoundID, h golf.Hole, version int, units form.Units, clubs []string, problem string) ShotNotes {
	page.Title, page.Here = fmt.Sprintf("The shots of hole %d", h.Number), paths.Rounds
	n := ShotNotes{Page: page, Heading: fmt.Sprintf("Hole %d, shot by shot", h.Number), Save: paths.Shots(id, h.Number), Version: strconv.Itoa(version),
		Back: paths.Round(id) + fmt.Sprintf("#h%d", h.Number), Problem: problem, Clubs: clubs}
	for i, s := range h.Played() {
		row := NoteRow{Number: strconv.Itoa(i + 1), Lie: s.Lie.String(), From: capital(s.Lie.String()) + " " + far(s.Lie, s.Distance, units), Club: s.Club, Word: s.Word}
		for _, m := range misses {
			name := m.String()
			if name == "" {
				name = "at its target, or not noted"
			}
			row.Misses = append(row.Misses, Choice{m.String(), name, m == s.Miss})
		}
		n.Rows = append(n.Rows, row)
	}
	return n
}
