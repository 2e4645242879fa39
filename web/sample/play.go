package sample

import (
	"net/url"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/web/form"
	"strokeledger/web/paths"
	"strokeledger/web/play"
)

// sixthRows is the picture of a hole of the sample course.
const sixthRows = `bend 260: 10 right
fairway 165: 17 left, 16 right
fairway 230: 15 left, 17 right
fairway 280: 12 left, 14 right
fairway 392: 14 left, 13 right
out 0 to 222, across open to -34
out 222 to 470, across open to -16
trees 120 to 214, across 40 to open
trees 222 to 330, across 31 to open
bunker 222 to 252, across 13 to 27
water 300 to 322, across 20 to open
green 402: 26 wide, 29 deep
bunker 392 to 412, across -24 to -13
bunker 404 to 418, across 13 to 22`

// fourteenthRows is the picture of a par 3.
const fourteenthRows = `water 120 to 150, across open to 12
green 151: 24 wide, 22 deep, turned 20
bunker 150 to 166, across 14 to 24`

var (
	sixth      = golf.CardHole{Number: 6, Par: 4, Length: 417 * golf.Yard, Index: 1}
	fourteenth = golf.CardHole{Number: 14, Par: 3, Length: 162 * golf.Yard, Index: 11}
)

// drawPages are the pages on which holes are drawn.
func drawPages() []Page {
	own := paths.Whose{Player: 1, Own: true}
	page := func(state, flash string, hole golf.CardHole, f form.PictureForm, in play.DrawInput) Page {
		in.Course, in.Name, in.Holes, in.Hole, in.Form, in.Unit, in.Reader, in.Whose = 3, "Harrow Fen, white", []int{6, 14}, hole, f, golf.Yards, 1, own
		shell := signedIn(own.Play())
		shell.Flash = flash
		return Page{"play", "draw", state, play.NewDrawPage(shell, in).View()}
	}
	sent := func(hole golf.CardHole, text string) form.PictureForm {
		v, _ := url.ParseQuery(text) // the texts are below
		return form.ParsePicture(v, hole, golf.Yards).Done()
	}
	kept := func(hole golf.CardHole, rows string) form.PictureForm {
		f := form.NewPictureForm(hole)
		f.Rows = form.TextOf(rows)
		return f
	}
	day := golf.Date{Year: 2026, Month: 9, Day: 14}
	history := []play.Version{{Number: 4, By: 1, Day: day}, {Number: 3, Day: day, Empty: true}, {Number: 2, By: 2, Day: day}, {Number: 1, By: 1, Day: day}}
	return []Page{
		page("empty", "", sixth, form.NewPictureForm(sixth), play.DrawInput{}),
		page("kept", "", sixth, kept(sixth, sixthRows), play.DrawInput{Versions: history}),
		page("short-hole", "", fourteenth, kept(fourteenth, fourteenthRows), play.DrawInput{Versions: history[:1]}),
		page("answered", "Drawn, and not saved yet.", sixth, sent(sixth, "do=draw&bend=left&fairway=30&left=water&left_far=22&right=trees&right_far=28&width=26&depth=29&short=bunker&green_left=bunker&green_right=rough&rows=green+400%3A+20+wide%2C+20+deep"), play.DrawInput{}),
		page("answers-refused", "", sixth, form.ParsePicture(url.Values{"do": {"draw"}, "fairway": {"3"}, "left": {"water"}, "width": {"x"}}, sixth, golf.Yards), play.DrawInput{}),
		page("rows-refused", "", sixth, kept(sixth, sixthRows+"\nbunkr 404 to 418, across 13 to 22\nwater 300 to 280"), play.DrawInput{Judged: true}),
		page("file-refused", "", sixth, form.NewPictureForm(sixth), play.DrawInput{File: `{"version": 2}`, FileSaid: []string{"Version: 2; allowed: 1."}}),
		page("taken-away", "The drawing is taken away.", sixth, form.NewPictureForm(sixth), play.DrawInput{Versions: history[1:]}),
		{"play", "pictures", "full", play.NewPicturesPage(signedIn(own.Play()), play.PicturesInput{Whose: own, Course: 3, Name: "Harrow Fen, white", Holes: []play.PicturedHole{
			{Hole: sixth, File: play.ReadRows(sixth, sixthRows).File()}, {Hole: fourteenth}}}).View()},
		{"play", "pictures", "none", play.NewPicturesPage(signedIn(own.Play()), play.PicturesInput{Whose: own, Course: 3, Name: strings.Repeat("Harrow Fen ", 3), Holes: []play.PicturedHole{{Hole: sixth}}}).View()},
		{"play", "pictures", "no-holes", play.NewPicturesPage(signedIn(own.Play()), play.PicturesInput{Whose: own, Course: 3, Name: "Harrow Fen, white"}).View()},
	}
}

// playPages are the pages of preparing a round.
func playPages() []Page { return drawPages() }
