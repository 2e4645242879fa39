package entry

import (
	"fmt"
	"strconv"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/shotsfile"
	"strokeledger/web/components"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// ImportPage is where a file is given, looked at and taken in.
type ImportPage struct {
	layout.Page
	Lede     string
	Faults   []string
	Wrong    components.Summary
	More     string
	Rows     []ImportRow
	Unknown  string
	There    []string // how many rounds are there already, and what becomes of them
	Skip     string   // the button that takes in what is new, empty for none
	Replace  string   // the button that replaces too, empty for none
	Settings string   // what the settings of the file are, empty for none
	Confirm  string
}

// ImportRow is one round of the file.
type ImportRow struct{ Date, Name, Course, Holes, Score, There string }

// There says what a player has of the name of a file's round.
type There uint8

// The zero value is that there is none.
const (
	ThereNot   There = iota
	ThereSame        // the same round
	ThereOther       // another one, which it can replace
)

func (t There) word() string {
	return [...]string{"new", "there already, the same", "there already, another"}[t]
}

// PreviewInput is what a file holds.
type PreviewInput struct {
	Rows     []ImportRow
	Settings *SettingsInput // nil for none
	Unknown  []string       // columns that are passed over
	count    [ThereOther + 1]int
}

// SettingsInput are the settings in a file.
type SettingsInput struct {
	Name, Far, Green string
	Target           float64
	Clubs            string
}

// Add adds a round with the holes that were played.
func (f *PreviewInput) Add(name string, r golf.Round, there There) {
	row := ImportRow{Date: r.Date.Time().Format("2 Jan 2006"), Name: words.Excerpt(name), Course: words.Joined(r.Course, r.Tee), Holes: fmt.Sprint(len(r.Holes)), There: there.word()}
	score := 0
	for _, h := range r.Holes {
		score += h.Strokes()
		if h.PickedUp {
			row.Score = " and a ball picked up"
		}
	}
	row.Score = fmt.Sprint(score) + row.Score
	f.Rows = append(f.Rows, row)
	f.count[there]++
}

const importTitle = "Import rounds"

// NewImportPage makes the page that asks for a file, with what was wrong with the
// last one.
func NewImportPage(page layout.Page, problem string, faults *shotsfile.Faults) ImportPage {
	page.Title, page.Here, page.Script = importTitle, paths.Rounds, "sending.js"
	p := ImportPage{Page: page, Lede: "Import rounds from a shots file, or from the file of an account. You see what it holds before anything is kept."}
	if problem != "" {
		p.Faults = []string{words.Capital(problem)}
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
		p.Wrong.Add("file", "", words.Plural(len(p.Faults), "thing", "things")+" to put right, listed below")
		p.Wrong = p.Wrong.Saying("The file was not imported.")
		p.Lede = "The file was refused whole, and nothing of it was kept. Correct what is listed below, and send it again."
	}
	return p
}

// NewPreviewPage makes the page that shows what a file holds.
func NewPreviewPage(page layout.Page, f PreviewInput) ImportPage {
	page.Title, page.Here = importTitle, paths.Rounds
	p := ImportPage{Page: page, Confirm: paths.ImportConfirm, Rows: f.Rows, Lede: fmt.Sprintf("The file holds %s. Nothing is kept yet.", words.Plural(len(f.Rows), "round", "rounds"))}
	fresh, same, other := f.count[ThereNot], f.count[ThereSame], f.count[ThereOther]
	if same > 0 {
		p.There = append(p.There, words.Capital(words.Plural(same, "round is", "rounds are"))+" there already and the same. They stay as they are.")
	}
	if other > 0 {
		p.There = append(p.There, words.Capital(words.Plural(other, "round of that name is", "rounds of those names are"))+" there already and not the same. What you replace can be brought back for 30 days.")
		p.Replace = fmt.Sprintf("Import all, and replace %d", other)
	}
	switch {
	case fresh > 0 && fresh < len(f.Rows):
		p.Skip = fmt.Sprintf("Import the %d new", fresh)
	case fresh > 0:
		p.Skip = "Import them"
	case f.Settings != nil && other == 0:
		p.Skip = "Import the settings, if ticked"
	}
	if c := f.Settings; c != nil {
		units := map[string]string{"yd": "yards", "m": "metres", "ft": "feet"}
		p.Settings = fmt.Sprintf("Take over its settings too: the name %s, target %s, %s and %s on the green", c.Name, strconv.FormatFloat(c.Target, 'f', -1, 64), units[c.Far], units[c.Green])
		if c.Clubs != "" {
			p.Settings += ", clubs " + c.Clubs
		}
	}
	if len(f.Unknown) > 0 {
		p.Unknown = "Left out, since the columns are not known: " + words.Joined(f.Unknown...) + "."
	}
	return p
}
