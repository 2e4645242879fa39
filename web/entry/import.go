package entry

import (
	"fmt"
	"slices"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/shotsfile"
	"strokeledger/web/components"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// ImportPage asks for a file, or shows what is in one before it is imported.
type ImportPage struct {
	layout.Page
	Lede     string
	Faults   []string           // what is wrong with the last file, one a line; empty for nothing
	Wrong    components.Summary // leads to Faults
	More     string             // how many faults are not listed: “And 12 more.”; empty for none
	Rows     []ImportRow        // the rounds of the file, in its order; empty while asking for one
	Unknown  string             // the columns that are ignored; empty for none
	There    []string           // sentences about rounds that the player already has; empty for none
	Own      string             // what else the file has; empty for nothing
	Skip     string             // button that imports only what is new; empty if nothing is
	Replace  string             // button that also replaces rounds that differ; empty if none do
	Settings string             // the settings of the file, which can be imported too; empty for none
	Confirm  string             // address that imports; empty while asking for a file
}

// ImportRow is one round of the file.
type ImportRow struct {
	Date   string // “2 May 2026”
	Name   string // in the file, shortened
	Course string // name and tees
	Holes  string // how many were played
	Score  string // strokes: “90”, “90, with a pick-up”
	There  string // whether the player already has it: “no”
}

// There is what the player has under the name of a round in the file.
type There uint8

// The zero value is nothing.
const (
	ThereNot   There = iota
	ThereSame        // the same round
	ThereOther       // a different round, which the one in the file can replace
)

func (t There) word() string { return [...]string{"no", "yes", "yes, but different"}[t] }

// PreviewInput is what is in a file.
type PreviewInput struct {
	Rows     []ImportRow
	Settings *SettingsInput      // nil for none
	Own      OwnInput            // what else there is
	Unknown  []string            // columns that are ignored
	count    [ThereOther + 1]int // rounds by what the player has
}

// SettingsInput are the settings in an account file.
type SettingsInput struct {
	Name   string  // the player's
	Far    string  // unit off the green: yd or m
	Green  string  // unit on the green: ft or m
	Target float64 // score over 18 holes
	Clubs  string  // names with spaces between; may be empty
	Zone   string  // name of a time zone; empty for the server's
	Bag    int     // clubs for the tee, with their lengths
}

// OwnInput counts what a file has besides rounds and settings.
type OwnInput struct {
	Drawings int // versions of drawn holes
	Courses  int // that they are of
	Ranges   int // sessions on the range
	Plans    int // of practice
	Trials   int // of the run-out book
}

// Add adds a round with the holes that were played; score is in whole strokes.
func (in *PreviewInput) Add(name string, r golf.Round, score float64, there There) {
	row := ImportRow{Date: words.ShortDay(r.Date), Name: words.Excerpt(name), Course: words.Joined(r.Course, r.Tee), Holes: fmt.Sprint(len(r.Holes)), There: there.word()}
	row.Score = words.Score(score, slices.ContainsFunc(r.Holes, func(h golf.Hole) bool { return h.PickedUp }))
	in.Rows = append(in.Rows, row)
	in.count[there]++
}

const importTitle = "Import rounds"

// NewImportPage makes the page that asks for a file. problem and faults are what
// was wrong with the last one, empty and nil for nothing.
func NewImportPage(page layout.Page, problem string, faults *shotsfile.Faults) ImportPage {
	page.Title, page.Here, page.Script, page.Explained = importTitle, paths.Rounds, "sending.js", "file"
	p := ImportPage{Page: page, Lede: "Import rounds from a shots file or an account file. You see what is in it before anything is saved."}
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
		p.Wrong.Add("file", "", words.Plural(len(p.Faults), "thing", "things")+" to fix, listed below")
		p.Wrong = p.Wrong.Saying("The file was not imported.")
		p.Lede = "Fix the problems listed below and upload the file again."
	}
	return p
}

// NewPreviewPage makes the page that shows what is in a file.
func NewPreviewPage(page layout.Page, in PreviewInput) ImportPage {
	page.Title, page.Here, page.Explained = importTitle, paths.Rounds, "file"
	p := ImportPage{Page: page, Confirm: paths.ImportConfirm, Rows: in.Rows, Lede: fmt.Sprintf("The file has %s. Nothing is saved yet.", words.Plural(len(in.Rows), "round", "rounds"))}
	fresh, same, other := in.count[ThereNot], in.count[ThereSame], in.count[ThereOther]
	if same > 0 {
		p.There = append(p.There, fmt.Sprintf("You already have %s just as in the file. %s as before.", words.Plural(same, "round", "rounds"), words.OneOrMany(same, "It stays", "They stay")))
	}
	if other > 0 {
		p.There = append(p.There, fmt.Sprintf("You already have %s under the same name, but different. If you replace %s, you can undo that for 30 days.",
			words.Plural(other, "round", "rounds"), words.OneOrMany(other, "it", "them")))
		p.Replace = fmt.Sprintf("Import all and replace %d", other)
	}
	p.Own = in.Own.said()
	switch {
	case fresh > 0 && fresh < len(in.Rows):
		p.Skip = "Import " + words.Plural(fresh, "new round", "new rounds")
	case fresh > 0:
		p.Skip = "Import " + words.Plural(fresh, "round", "rounds")
	case p.Own != "":
		p.Skip = "Import the rest"
	case in.Settings != nil && other == 0:
		p.Skip = "Import the settings if ticked"
	}
	p.Settings = in.Settings.said()
	if len(in.Unknown) > 0 {
		p.Unknown = "Ignored, because these columns are unknown: " + words.Joined(in.Unknown...) + "."
	}
	return p
}

// said offers the settings, empty for none.
func (s *SettingsInput) said() string {
	if s == nil {
		return ""
	}
	units := map[string]string{"yd": "yards", "m": "metres", "ft": "feet"}
	text := fmt.Sprintf("Import its settings too: name %s, target %s, distances in %s", s.Name, words.Plain(s.Target), units[s.Far])
	if s.Green != s.Far {
		text += ", on the green in " + units[s.Green]
	}
	if s.Clubs != "" {
		text += ", clubs " + s.Clubs
	}
	if s.Bag > 0 {
		text += ", a bag with " + words.Plural(s.Bag, "club", "clubs") + " for the tee"
	}
	if s.Zone != "" {
		text += ", time zone " + s.Zone
	}
	return text
}

// said says what else there is, empty for nothing.
func (o OwnInput) said() string {
	var all []string
	if o.Drawings > 0 {
		all = append(all, fmt.Sprintf("%s on %s", words.Plural(o.Drawings, "drawing", "drawings"), words.Plural(o.Courses, "course", "courses")))
	}
	if o.Ranges > 0 {
		all = append(all, words.Plural(o.Ranges, "session on the range", "sessions on the range"))
	}
	if o.Plans > 0 {
		all = append(all, words.Plural(o.Plans, "plan of practice", "plans of practice"))
	}
	if o.Trials > 0 {
		all = append(all, words.Plural(o.Trials, "trial", "trials")+" of the run-out book")
	}
	if len(all) == 0 {
		return ""
	}
	text := fmt.Sprintf("It also has %s. What you have already is not imported twice.", words.List(all))
	if o.Drawings > 0 {
		text += " A course that is not here is added with its card, and a hole that somebody has drawn here keeps that drawing."
	}
	return text
}
