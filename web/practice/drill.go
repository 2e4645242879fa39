package practice

import (
	"fmt"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/practice"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// DrillPage is how a drill is done and what to reach in it.
type DrillPage struct {
	layout.Page
	Name     string
	Place    string // the part of the game that it serves
	Lede     string // the mark
	Chances  string // how often it is passed; empty for a drill without a mark
	SetUp    []string
	Drawing  *components.Drawing // of the set-up; nil for a drill without one
	Boxes    *PencilBoxes
	More     components.Link // the page that says more about what is practised; empty for most
	Counts   string          // when a try counts; empty for a drill without a mark
	Writes   string          // what to write down
	Target   string          // over the shares of the target's golfer
	Today    string          // over the player's; empty when not known
	Stations []StationRow
	Cautions []string
	Others   []components.Link
	Plan     string       // address of the plan
	Log      string       // address of the log
	Form     *SessionForm // nil for a coach
	Result   *ResultPart  // of the session that was just saved or is the latest; nil without one
	Carry    *CarryPart   // beside the course; nil with too few sessions
	Sessions []SessionRow // the latest first
	Moves    bool         // the drill can be moved, so sessions say from where
}

// StationRow is a place of a drill with what to expect there.
type StationRow struct {
	From   string
	Target string // share of tries that count for the target's golfer
	Today  string // the player's; empty when not known
}

// DrillInput is what the page of a drill is made of.
type DrillInput struct {
	Whose  paths.Whose
	Name   string // the player's
	Target float64
	Units  form.Units
	Day    golf.Date // where the player is
	Shown  int64     // the session to show; 0 for the latest
	Form   *SessionInput
	Carry  analysis.Carry
	analysis.DrillFor
}

// written says what to write down.
var written = map[practice.Written]string{
	practice.Sides: "how many counted, and for each miss: left, right, short or long",
	practice.Tally: "how many counted at each place",
	practice.Run:   "how many counted, and the longest run without a miss",
	practice.Notes: "what you saw",
}

// NewDrillPage makes the page.
func NewDrillPage(page layout.Page, in DrillInput) DrillPage {
	page.Title, page.Here = in.DrillFor.Name, layout.Here(in.Whose, in.Whose.Lessons())
	page.Foot = "Marks come from the golfer who averages the target, by an exact step of the same model that prices every shot."
	d := DrillPage{Page: page, Name: in.DrillFor.Name, SetUp: in.steps(), Writes: "Write down " + written[in.Written] + ".", Plan: in.Whose.Plan(), Log: in.Whose.Log(), Lede: in.lede()}
	if !in.Own {
		d.Place = words.Capital(in.Part.String()) + "."
	}
	if !in.Whose.Own {
		d.Place += " " + in.Name + "."
	}
	if !in.NoMark {
		plan := PlanInput{Whose: in.Whose, Name: in.Name, Target: in.Target}
		d.Counts = "A try counts when " + in.Counts + "."
		d.Chances = plan.chances(in.Mark, in.Today())
		d.Target = words.Capital(words.A(in.Target))
		if in.Known {
			d.Today = "You today"
			if !in.Whose.Own {
				d.Today = in.Name + " today"
			}
		}
	}
	for i, s := range in.Stations {
		if i > 0 && s.Lie == in.Stations[i-1].Lie && s.Distance == in.Stations[i-1].Distance {
			continue // eight times the same place
		}
		row := StationRow{From: placeOf(in.Drill, s.Station, in.Units), Target: words.Percent(s.Of)}
		if in.Known {
			row.Today = words.Percent(s.OfToday)
		}
		d.Stations = append(d.Stations, row)
	}
	if in.Swing {
		d.Cautions = cautions
	}
	d.Drawing, d.Boxes, d.More = setUp(in.Drill), in.boxes(d.Stations), in.more()
	d.results(in)
	d.Others = drillLinks(in.Whose, in.Key)
	return d
}

// steps say how the drill is set up.
func (in DrillInput) steps() []string {
	var all []string
	for _, line := range in.SetUp {
		if line != "" {
			all = append(all, line)
		}
	}
	return all
}

// drillLinks lead to every drill of the house but one.
func drillLinks(whose paths.Whose, but string) []components.Link {
	var all []components.Link
	for _, o := range practice.Drills() {
		if o.Key != but {
			all = append(all, components.Link{At: whose.Drill(o.Key), Name: o.Name})
		}
	}
	return all
}

// results fills in the form and what came of the drill.
func (d *DrillPage) results(in DrillInput) {
	d.Moves, d.Sessions, d.Carry = in.MaxFeet > 0, in.sessionRows(), newCarry(in)
	if in.Form != nil {
		d.Form = newSessionForm(in.DrillFor, *in.Form, in.Units, in.Day)
		d.BodyClass, d.Script = "drill-page", "drill.js"
	}
	for i, r := range in.Results {
		if r.ID == in.Shown || in.Shown == 0 && i == len(in.Results)-1 {
			d.Result = newResult(in, r, in.Results[:i])
		}
	}
}

// more leads to the page that says more about what a drill practises.
func (in DrillInput) more() components.Link {
	switch in.Key {
	case "start-line":
		return components.Link{Name: "Start line in degrees", At: in.Whose.StartLine()}
	case "chip-fairway", "chip-rough", "short-side":
		return components.Link{Name: "Run-out book", At: in.Whose.RunOut()}
	default:
		return components.Link{}
	}
}

// Today is the level of the player in the drill's part of the game.
func (in DrillInput) Today() float64 { return in.DrillFor.Today }

// lede says what to reach.
func (in DrillInput) lede() string {
	if in.Own && in.Mark.Pass > 0 {
		return fmt.Sprintf("Mark: %s, set by its author. This drill has no model, so it shows no level.", markWords(in.Mark))
	}
	if in.Own {
		return "A drill of a player or coach, without a mark. It has no model, so it shows no level."
	}
	if in.NoMark {
		return "No mark: its results cannot tell levels apart. What you see is what counts."
	}
	return fmt.Sprintf("Pass mark: %s.", markWords(in.Mark))
}
