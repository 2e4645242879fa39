package play

import (
	"fmt"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// DrawInput is what the page of drawing a hole is made of.
type DrawInput struct {
	Course   golf.CourseID
	Name     string // of the course, with its tees
	Holes    []int  // of the course
	Hole     golf.CardHole
	Form     form.PictureForm
	Judged   bool // the rows were sent, so that faults in them are told at the head
	Unit     golf.Unit
	Versions []Version   // the newest first
	File     string      // the file that was sent, where something is wrong with it
	FileSaid []string    // what
	Whose    paths.Whose // the reader's own pages
}

// Version is a drawing of a hole that was kept.
type Version struct {
	Number int
	By     golf.PlayerID // 0 for an account that is gone
	Day    golf.Date
	Empty  bool // the drawing was removed
}

// DrawPage is where a hole is drawn.
type DrawPage struct {
	layout.Page
	Heading  string
	At       string
	Sub      []components.Link
	Summary  components.Summary
	Save     string // where the form is sent
	Tee      []Asked
	Green    []Asked
	Drive    string // where the tee shot is asked about
	Rows     RowsField
	Drawing  Drawing
	Map      Map
	Unread   string // that something is not drawn; empty when all is
	Before   string
	Undo     bool // rows were replaced
	Saved    bool // there is a drawing
	Download string
	Upload   string
	File     components.Area
	Back     string // where an earlier drawing is restored
	Earlier  []EarlierDrawing
	Now      string // who drew what holds, and when; empty for nobody
	Next     components.Link
	Plan     string
}

// Asked is one answer: a choice, or a number.
type Asked struct {
	components.Field
	Choices []components.Choice // nil for a number
}

// RowsField is the text of the rows.
type RowsField struct {
	Value string
	Said  []string
}

// EarlierDrawing is a drawing that can be looked at and taken back.
type EarlierDrawing struct {
	Version string
	Text    string
	At      string // where its rows are shown; empty for one without any
}

// NewDrawPage makes the page.
func NewDrawPage(page layout.Page, in DrawInput) DrawPage {
	hole := in.Hole
	page.Title = fmt.Sprintf("Draw hole %d", hole.Number)
	page.Here = in.Whose.Play()
	page.Explained = "aims"
	page.Foot = "Any player can draw a hole. The latest drawing is used, and earlier ones are kept. Ground that no row covers is taken to be what a golfer of your level usually meets there."
	p := DrawPage{Page: page, Heading: fmt.Sprintf("Draw hole %d, %s", hole.Number, in.Name), Save: paths.Picture(in.Course, hole.Number),
		At:      fmt.Sprintf("Par %d, %s yd. Rows are in yards; rough figures are good enough.", hole.Par, yards(hole.Length.Yards())),
		Drawing: ReadRows(hole, in.Form.Rows.Text), Before: in.Form.Before, Undo: in.Form.Before != "", Download: paths.PictureFile(in.Course, hole.Number),
		Upload: paths.UploadPicture(in.Course, hole.Number), Back: paths.PictureBack(in.Course, hole.Number)}
	p.Rows = RowsField{Value: printed(in.Form.Rows.Text)}
	p.asked(in)
	p.judged(in)
	p.drawn(in)
	p.versions(in)
	p.File = components.Area{Name: "picture", ID: "picture", Label: "The drawing’s file, as text", Value: in.File, Hint: "Open the file that was downloaded, copy all of it, and paste it here."}
	if len(in.FileSaid) > 0 {
		p.File.Problem = words.Joined(in.FileSaid...)
		p.Summary.Add(p.File.ID, p.File.Label, p.File.Problem)
	}
	p.Next, p.Plan = nextHole(in), in.Whose.HolePlan(in.Course, hole.Number, "")
	p.Sub = subLinks(in.Whose, in.Course, "")
	return p
}

// nextHole leads to the next hole to draw, or from the last to the list.
func nextHole(in DrawInput) components.Link {
	for i, n := range in.Holes {
		if n == in.Hole.Number && i+1 < len(in.Holes) {
			return components.Link{Name: fmt.Sprintf("Draw hole %d", in.Holes[i+1]), At: paths.Picture(in.Course, in.Holes[i+1])}
		}
	}
	return components.Link{Name: "All holes", At: paths.Pictures(in.Course)}
}

// asked makes the six answers about the tee shot and the five about the green.
func (p *DrawPage) asked(in DrawInput) {
	f, unit := in.Form, in.Unit.String()
	far := func(label string) string { return label + ", " + unit }
	number := func(name, label string, from form.Length) Asked {
		return Asked{Field: components.Filled(components.Field{Name: name, Label: far(label), Mode: "decimal"}, from)}
	}
	ground := func(name, label string, from form.Text) Asked {
		a := Asked{Field: components.Filled(components.Field{Name: name, Label: label}, from)}
		for _, g := range form.Grounds {
			a.Choices = append(a.Choices, components.Choice{Value: g.Value, Name: g.Name, Chosen: g.Value == from.Value})
		}
		return a
	}
	if f.HasTeeShot() {
		bend := Asked{Field: components.Filled(components.Field{Name: "bend", Label: "The hole bends"}, f.Bend)}
		for _, b := range form.Bends {
			bend.Choices = append(bend.Choices, components.Choice{Value: b.Value, Name: b.Name, Chosen: b.Value == f.Bend.Value})
		}
		p.Drive = fmt.Sprintf("About %.0f %s from the tee, where drives end.", in.Unit.In(f.Driving()), unit)
		p.Tee = []Asked{bend, number("fairway", "Fairway width", f.Fairway), ground("left", "Left is", f.LeftIs), number("left_far", "Left, from the middle", f.Left),
			ground("right", "Right is", f.RightIs), number("right_far", "Right, from the middle", f.Right)}
	}
	p.Green = []Asked{number("width", "Width", f.Width), number("depth", "Depth", f.Depth), ground("short", "Short is", f.ShortIs),
		ground("green_left", "Left is", f.GreenLeft), ground("green_right", "Right is", f.GreenRight)}
}

// judged says at the head what is wrong.
func (p *DrawPage) judged(in DrawInput) {
	for _, a := range append(append([]Asked(nil), p.Tee...), p.Green...) {
		p.Summary.Add(a.Key(), a.Label, a.Problem)
	}
	if in.Form.Rows.Problem != "" {
		p.Rows.Said = append(p.Rows.Said, in.Form.Rows.Problem)
	}
	if in.Judged {
		p.Rows.Said = append(p.Rows.Said, p.Drawing.Said...)
		for _, r := range p.Drawing.Rows {
			if r.Said != "" {
				p.Rows.Said = append(p.Rows.Said, fmt.Sprintf("Row %d: %s", r.Number, r.Said))
			}
		}
	}
	for _, said := range p.Rows.Said {
		p.Summary.Add("rows", "", said)
	}
}

func (p *DrawPage) drawn(in DrawInput) {
	for _, r := range p.Drawing.Rows {
		if r.Said != "" {
			p.Unread = "Rows with a fault may be missing here."
		}
	}
	title := fmt.Sprintf("Hole %d as drawn so far, from above, the tee at the foot", in.Hole.Number)
	p.Map = NewMap("hole-map", title, p.Drawing.Picture)
}

// versions lists who drew the hole, and when.
func (p *DrawPage) versions(in DrawInput) {
	for i, v := range in.Versions {
		text := DrawnBy(v, in.Whose, "")
		if i == 0 {
			p.Now, p.Saved = text, !v.Empty
			continue
		}
		e := EarlierDrawing{Version: fmt.Sprint(v.Number), Text: text}
		if !v.Empty {
			e.At = paths.PictureVersion(in.Course, in.Hole.Number, v.Number)
		}
		p.Earlier = append(p.Earlier, e)
	}
}

// DrawnBy says who drew a version, on the pages of a player. Names of others are told
// to nobody.
func DrawnBy(v Version, whose paths.Whose, player string) string {
	who := "another player"
	switch {
	case v.By == whose.Player && whose.Own:
		who = "you"
	case v.By == whose.Player:
		who = player
	}
	what := "Drawn by "
	if v.Empty {
		what = "Removed by "
	}
	return what + who + ", " + words.ShortDay(v.Day)
}
