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

// ShotsPage adds what the line of a hole leaves out: the clubs, where each shot
// finished relative to its target, and short notes.
type ShotsPage struct {
	layout.Page
	Heading string             // “Hole 5: clubs and notes”
	Save    string             // address that saves
	Version string             // of the saved hole, so that nothing is saved to other shots
	Back    string             // address of the hole on the statement
	Rows    []NoteRow          // the shots, in order; empty for a hole entered as a score only
	Wrong   components.Summary // problems of the last save, one a field
	None    string             // why there are no shots; empty when there are some
	Clubs   []string           // names suggested for a club, from the settings; may be empty
}

// NoteRow holds the fields of one shot.
type NoteRow struct {
	Number string              // 1 for the tee shot
	Lie    string              // lie of the symbol: “rough”
	From   string              // lie and distance: “Rough 165 yd”
	Club   components.Field    // suggested from Clubs
	Miss   components.Field    // where the shot finished, chosen from Misses
	Word   components.Field    // the player's note
	Misses []components.Choice // the possible misses, the saved one chosen
}

// ShotsInput is what the page of a hole's shots is made of.
type ShotsInput struct {
	Round   golf.RoundID
	Hole    golf.Hole
	Version int              // of the saved hole
	Units   form.Units       // the player's
	Clubs   []string         // the player's, may be empty
	Details form.ShotDetails // stored, or as typed
}

// staleShots is said at the first shot of a form for other shots.
const staleShots = "The shots of this hole have changed since you opened the page. Check them and enter this again."

// misses are the choices of where a shot finished; the first is none.
var misses = []golf.Miss{
	{}, {Side: golf.Left}, {Side: golf.Right}, {Depth: golf.Short}, {Depth: golf.Long},
	{Side: golf.Left, Depth: golf.Short}, {Side: golf.Right, Depth: golf.Short}, {Side: golf.Left, Depth: golf.Long}, {Side: golf.Right, Depth: golf.Long},
}

// NewShotsPage makes the page.
func NewShotsPage(page layout.Page, in ShotsInput) ShotsPage {
	number := in.Hole.Number
	page.Title, page.Here = fmt.Sprintf("Clubs and notes for hole %d", number), paths.Rounds
	p := ShotsPage{Page: page, Heading: fmt.Sprintf("Hole %d: clubs and notes", number), Save: paths.Shots(in.Round, number), Version: strconv.Itoa(in.Version),
		Back: paths.Round(in.Round) + fmt.Sprintf("#h%d", number), Clubs: in.Clubs}
	for i, s := range in.Hole.Played() {
		d := in.Details.Shots[i]
		if in.Details.Stale && i == 0 {
			d.Club.Problem = staleShots
		}
		row := noteRow(i+1, d)
		row.Lie, row.From = s.Lie.String(), words.Capital(s.Lie.String())+" "+words.Distance(s.Lie, s.Distance, in.Units)
		for _, f := range []components.Field{row.Club, row.Miss, row.Word} {
			p.Wrong.Add(f.ID, fmt.Sprintf("%s of shot %s", f.Label, row.Number), f.Problem)
		}
		p.Rows = append(p.Rows, row)
	}
	if len(p.Rows) == 0 {
		p.None = "This hole was entered as a score only, so it has no shots."
	}
	return p
}

// noteRow makes the fields of a shot, counted from 1.
func noteRow(number int, d form.ShotDetail) NoteRow {
	field := func(name, label string) components.Field {
		return components.Field{Name: name, ID: fmt.Sprintf("%s-%d", name, number), Label: label}
	}
	row := NoteRow{Number: strconv.Itoa(number),
		Club: components.Filled(field("club", "Club"), d.Club), Miss: field("miss", "Finished"), Word: components.Filled(field("word", "Note"), d.Word)}
	row.Club.List, row.Miss.Problem = "clubs", d.Miss.Problem
	for _, m := range misses {
		name := m.String()
		if name == "" {
			name = "on target, or not recorded"
		}
		row.Misses = append(row.Misses, components.Choice{Value: m.String(), Name: name, Chosen: m == d.Miss.Value})
	}
	return row
}
