package entry

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/shotsfile"
	"strokeledger/web/components"
	"strokeledger/web/layout"
)

func TestImportPage(t *testing.T) {
	page := NewImportPage(layout.Page{}, "", nil)
	if page.Title != "Import rounds" || page.Script != "sending.js" || page.Confirm != "" {
		t.Errorf("%+v", page)
	}
	if page.Lede != "Import rounds from a shots file or an account file. You see what is in it before anything is saved." {
		t.Error(page.Lede)
	}
	if page.Faults != nil || page.More != "" || page.Wrong.Heading != "" {
		t.Errorf("problems before a file: %+v", page)
	}
}

// A file that is refused comes back with its faults, and the page leads to them.
func TestImportPageOfARefusedFile(t *testing.T) {
	fault := shotsfile.Fault{Line: 3, Column: "lie", What: "unknown lie", Read: "sand", Allowed: "bunker"}
	for name, c := range map[string]struct {
		problem string
		faults  *shotsfile.Faults
		want    []string
		wrong   string
		more    string
	}{
		"a file that is none": {"the file is empty.", nil, []string{"The file is empty."}, "1 thing to fix, listed below", ""},
		"one fault": {"", &shotsfile.Faults{List: []shotsfile.Fault{fault}},
			[]string{`line 3, column lie: unknown lie, read "sand", allowed: bunker`}, "1 thing to fix, listed below", ""},
		"too many to list": {"", &shotsfile.Faults{List: []shotsfile.Fault{fault, {Line: 4, What: "no par", Allowed: "3 to 6"}}, More: 12},
			[]string{`line 3, column lie: unknown lie, read "sand", allowed: bunker`, "line 4: no par, allowed: 3 to 6"}, "2 things to fix, listed below", "And 12 more."},
	} {
		page := NewImportPage(layout.Page{}, c.problem, c.faults)
		if diff := cmp.Diff(c.want, page.Faults); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
		want := components.Summary{Heading: "The file was not imported.", Links: []components.SummaryLink{{At: "#file", Text: c.wrong}}}
		if diff := cmp.Diff(want, page.Wrong); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
		if page.More != c.more || page.Lede != "Fix the problems listed below and upload the file again." {
			t.Errorf("%s: %q, %q", name, page.More, page.Lede)
		}
	}
}

// previewed is a file with a round for each of there.
func previewed(settings *SettingsInput, there ...There) ImportPage {
	in := PreviewInput{Settings: settings}
	for _, th := range there {
		in.Add("a round", golf.Round{Date: golf.Date{Year: 2026, Month: 5, Day: 2}, Course: "Harrow Fen"}, 0, th)
	}
	return NewPreviewPage(layout.Page{}, in)
}

// What the player already has decides which buttons there are.
func TestPreviewPageButtons(t *testing.T) {
	settings := &SettingsInput{Name: "Robin", Far: "m", Green: "ft", Target: 84.5}
	withBook := NewPreviewPage(layout.Page{}, PreviewInput{Settings: settings, Own: OwnInput{Trials: 12}})
	if want := "It also has 12 trials of the run-out book. What you have already is not imported twice."; withBook.Own != want {
		t.Errorf("%q", withBook.Own)
	}
	for name, c := range map[string]struct {
		page          ImportPage
		skip, replace string
	}{
		"one round":           {previewed(nil, ThereNot), "Import 1 round", ""},
		"all new":             {previewed(nil, ThereNot, ThereNot), "Import 2 rounds", ""},
		"some new":            {previewed(nil, ThereNot, ThereSame), "Import 1 new round", ""},
		"some different":      {previewed(settings, ThereNot, ThereNot, ThereOther), "Import 2 new rounds", "Import all and replace 1"},
		"only different":      {previewed(settings, ThereOther, ThereOther), "", "Import all and replace 2"},
		"nothing new":         {previewed(nil, ThereSame), "", ""},
		"only settings":       {previewed(settings, ThereSame), "Import the settings if ticked", ""},
		"no rounds, settings": {previewed(settings), "Import the settings if ticked", ""},
		"no rounds, a book":   {withBook, "Import the rest", ""},
	} {
		if c.page.Skip != c.skip || c.page.Replace != c.replace || c.page.Confirm != "/import/confirm" {
			t.Errorf("%s: %q, %q, %q", name, c.page.Skip, c.page.Replace, c.page.Confirm)
		}
	}
}

func TestPreviewPageSaysWhatIsThere(t *testing.T) {
	for name, c := range map[string]struct {
		page ImportPage
		want []string
	}{
		"nothing":  {previewed(nil, ThereNot), nil},
		"one same": {previewed(nil, ThereSame), []string{"You already have 1 round just as in the file. It stays as before."}},
		"one of each": {previewed(nil, ThereSame, ThereOther), []string{
			"You already have 1 round just as in the file. It stays as before.",
			"You already have 1 round under the same name, but different. If you replace it, you can undo that for 30 days."}},
		"two different": {previewed(nil, ThereOther, ThereOther), []string{
			"You already have 2 rounds under the same name, but different. If you replace them, you can undo that for 30 days."}},
	} {
		if diff := cmp.Diff(c.want, c.page.There); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

func TestPreviewPageRows(t *testing.T) {
	round := golf.Round{Date: golf.Date{Year: 2026, Month: 5, Day: 2}, Course: "Harrow Fen", Tee: "white", Holes: []golf.Hole{{Number: 1, Par: 4, ScoreOnly: 5}, {Number: 2, Par: 3, ScoreOnly: 4}}}
	lifted := golf.Round{Date: golf.Date{Year: 2026, Month: 5, Day: 9}, Course: "Quarry Hill",
		Holes: []golf.Hole{{Number: 1, Par: 4, PickedUp: true, Shots: []golf.Shot{teeShot, putt, putt}}}}
	in := PreviewInput{Unknown: []string{"wind", "mood"}}
	in.Add("May medal", round, 9, ThereNot)
	in.Add("Evening", lifted, 3, ThereOther)
	page := NewPreviewPage(layout.Page{}, in)
	want := []ImportRow{
		{Date: "2 May 2026", Name: "May medal", Course: "Harrow Fen, white", Holes: "2", Score: "9", There: "no"},
		{Date: "9 May 2026", Name: "Evening", Course: "Quarry Hill", Holes: "1", Score: "(3)", There: "yes, but different"},
	}
	if diff := cmp.Diff(want, page.Rows); diff != "" {
		t.Error(diff)
	}
	if page.Lede != "The file has 2 rounds. Nothing is saved yet." || page.Unknown != "Ignored, because these columns are unknown: wind, mood." {
		t.Errorf("%q, %q", page.Lede, page.Unknown)
	}
}

func TestPreviewPageSettings(t *testing.T) {
	for want, settings := range map[string]*SettingsInput{
		"": nil,
		"Import its settings too: name Robin, target 84.5, distances in metres, on the green in feet": {Name: "Robin", Far: "m", Green: "ft", Target: 84.5},
		"Import its settings too: name Kim, target 79, distances in metres, clubs d 3w 7i pw":         {Name: "Kim", Far: "m", Green: "m", Target: 79, Clubs: "d 3w 7i pw"},
	} {
		if page := previewed(settings, ThereNot); page.Settings != want {
			t.Errorf("%q, want %q", page.Settings, want)
		}
	}
}
