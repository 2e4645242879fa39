package entry

import (
	"fmt"
	"strconv"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// ShotsPage is where more is said of the shots of a hole than its line says:
// the club, where each finished against its target, and a word.
type ShotsPage struct {
	layout.Page
	Heading string
	Save    string
	Version string
	Back    string // address of the statement
	Rows    []NoteRow
	Wrong   components.Summary
	None    string // why there is no shot; empty when there are
	Clubs   []string
}

// NoteRow is one shot.
type NoteRow struct {
	Number, Lie, From string
	Club, Miss, Word  components.Field
	Misses            []components.Choice
}

// ShotField is the id of a field of a shot, which names it among what is wrong.
func ShotField(field string, shot int) string { return fmt.Sprintf("%s-%d", field, shot) }

// misses are what a shot may have done, as they are offered.
var misses = []golf.Miss{
	{}, {Side: golf.Left}, {Side: golf.Right}, {Depth: golf.Short}, {Depth: golf.Long},
	{Side: golf.Left, Depth: golf.Short}, {Side: golf.Right, Depth: golf.Short}, {Side: golf.Left, Depth: golf.Long}, {Side: golf.Right, Depth: golf.Long},
}

// NewShotsPage makes the page.
func NewShotsPage(page layout.Page, id golf.RoundID, h golf.Hole, version int, units form.Units, clubs []string, problems map[string]string) ShotsPage {
	page.Title, page.Here = fmt.Sprintf("The shots of hole %d", h.Number), paths.Rounds
	n := ShotsPage{Page: page, Heading: fmt.Sprintf("Hole %d, shot by shot", h.Number), Save: paths.Shots(id, h.Number), Version: strconv.Itoa(version),
		Back: paths.Round(id) + fmt.Sprintf("#h%d", h.Number), Clubs: clubs}
	for i, s := range h.Played() {
		number := strconv.Itoa(i + 1)
		field := func(name, label, value string) components.Field {
			id := ShotField(name, i+1)
			n.Wrong.Add(id, fmt.Sprintf("%s of shot %s", label, number), problems[id])
			return components.Field{Name: name, ID: id, Label: label, Value: value, Problem: problems[id]}
		}
		row := NoteRow{Number: number, Lie: s.Lie.String(), From: words.Capital(s.Lie.String()) + " " + words.Distance(s.Lie, s.Distance, units),
			Club: field("club", "Club", s.Club), Miss: field("miss", "Finished", ""), Word: field("word", "A word", s.Word)}
		row.Club.List = "clubs"
		for _, m := range misses {
			name := m.String()
			if name == "" {
				name = "at its target, or not noted"
			}
			row.Misses = append(row.Misses, components.Choice{Value: m.String(), Name: name, Chosen: m == s.Miss})
		}
		n.Rows = append(n.Rows, row)
	}
	if len(n.Rows) == 0 {
		n.None = "This hole was entered by its score: there is no shot to say more of."
	}
	return n
}
