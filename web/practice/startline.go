package practice

import (
	"fmt"
	"math"

	"strokeledger/analysis"
	"strokeledger/analysis/startline"
	"strokeledger/web/chart"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// StartLinePage is how straight a player starts putts.
type StartLinePage struct {
	layout.Page
	Heading string
	Place   string // what was read
	Lede    string
	Curve   *components.Drawing // nil where nothing was read
	Key     string              // what its curves are
	Rows    []LineRow
	Lines   []string // the lean, what a tour player does, the mark
	Worth   string   // what the target's spread would be worth; empty where it cannot be told
	Weeks   []LineWeekRow
	Caption string // over the weeks
	Earlier string // that there are more weeks; empty otherwise
	Ask     PuttsForm
	Links   []components.Link
}

// LineRow is a spread beside others.
type LineRow struct{ Of, Tries, Spread, Between, Holed string }

// LineWeekRow is a week of practice.
type LineWeekRow struct {
	Week, Made, Spread, Between, Mark string
	Width, Goal                       string // of the bar, and the place of the mark, percent
}

// PuttsForm asks for putts that are read without being stored.
type PuttsForm struct {
	At     string
	Wrong  components.Summary
	Fields []components.Field
}

// StartLineInput is what the page is made of.
type StartLineInput struct {
	Whose paths.Whose
	Name  string // the player's
	Asked form.Putts
	analysis.StartLine
}

// LeastPuttFeet and MostPuttFeet are the ends of the lengths that can be read.
const (
	LeastPuttFeet = startline.MinFeet
	MostPuttFeet  = startline.MaxFeet
)

// TriesOf are putts as the engine takes them, nil when none were asked about or
// something is wrong with them.
func TriesOf(p form.Putts) *analysis.PuttTries {
	if !p.Asked || !p.Sound() {
		return nil
	}
	t := &analysis.PuttTries{Feet: p.Feet.Value, Of: p.Tries.Value, Made: p.Made.Value, Sides: p.Sides}
	if p.Sides {
		t.Left, t.Right = p.Left.Value, p.Right.Value
		t.Short = t.Of - t.Made - t.Left - t.Right // whether short or long says nothing about the line
	}
	return t
}

// NewStartLinePage makes the page.
func NewStartLinePage(page layout.Page, in StartLineInput) StartLinePage {
	page.Title, page.Here = "Start line", layout.Here(in.Whose, in.Whose.Lessons())
	page.Foot = "Spread: two putts in three start within one spread of the middle. Forty tries leave a high end about twice the low one, so look at the weeks, not at one session. Stop practising if anything hurts. A straight putt needs no reading, so the spread looks better than it would on the course."
	p := StartLinePage{Page: page, Heading: fmt.Sprintf("Start line, %s ft", words.Plain(in.Feet)), Place: in.place(), Lede: in.lede(), Ask: in.ask(), Caption: fmt.Sprintf("By week from %s ft, latest first", words.Plain(in.Feet))}
	if in.Read != nil {
		p.Curve, p.Rows, p.Lines = in.curve(), in.rows(), in.lines()
		p.Key = fmt.Sprintf("Ink: %s. Dashed: %s. The pale strip is what the hole takes, %.1f° to either side.", in.who(), words.A(in.Target), in.Read.Window)
		p.Worth = in.worth()
	}
	for _, w := range in.Weeks {
		p.Weeks = append(p.Weeks, in.week(w))
	}
	if in.OtherLonger {
		p.Earlier = "Earlier weeks are on the page of the drill."
	}
	p.Links = []components.Link{{Name: "The drill", At: in.Whose.Drill("start-line")}, {Name: "Practice plan", At: in.Whose.Plan()}}
	return p
}

// who is the player in a sentence.
func (in StartLineInput) who() string {
	if in.Whose.Own {
		return "you"
	}
	return in.Name
}

// place says what was read.
func (in StartLineInput) place() string {
	text := ""
	if !in.Whose.Own {
		text = in.Name + ". "
	}
	switch {
	case in.Tries.Of == 0:
		return text
	case in.Asked.Asked:
		return text + "Worked out from the figures below, which are not saved."
	}
	text += fmt.Sprintf("%s since %s.", words.Plural(in.Tries.Of, "putt", "putts"), words.ShortDay(in.Since))
	for _, feet := range in.OtherFeet {
		text += fmt.Sprintf(" There are fewer from %s ft.", words.Plain(feet))
	}
	return text
}

// lede says how straight the putts start.
func (in StartLineInput) lede() string {
	r := in.Read
	if r == nil {
		return "No putts of the start line drill in the last eight weeks."
	}
	whose := "Your"
	if !in.Whose.Own {
		whose = in.Name + "’s"
	}
	return fmt.Sprintf("%s putts of %s ft start within %s of straight two times in three; %s’s start within %s.", whose, words.Plain(in.Feet), degrees(r.Spread), words.A(in.Target), degrees(in.Aim.Spread))
}

// rows set the spread beside others.
func (in StartLineInput) rows() []LineRow {
	r := in.Read
	own := LineRow{Of: words.Capital(in.who()), Tries: fmt.Sprint(in.Tries.Of), Spread: degrees(r.Spread), Between: fmt.Sprintf("%.1f to %.1f", r.Interval.Low, r.Interval.High),
		Holed: words.Percent(float64(in.Tries.Made) / float64(in.Tries.Of))}
	return []LineRow{own, {Of: words.Capital(words.A(in.Target)), Spread: degrees(in.Aim.Spread), Holed: words.Percent(in.Aim.Holed)},
		{Of: "A tour player", Spread: degrees(in.Tour.Spread), Holed: words.Percent(in.Tour.Holed)}}
}

// lines are what else there is to say.
func (in StartLineInput) lines() []string {
	r := in.Read
	all := []string{lean(r)}
	if r.Bias == nil {
		all[0] = "Whether they lean to a side is not known: the sides of the misses were not noted."
	}
	of := "today’s putting"
	if !in.Known {
		of = "the target"
	}
	return append(all, fmt.Sprintf("The speed is taken to be that of %s golfer, %s. The mark from there is %s.", words.A(math.Round(in.Level)), of, markWords(in.Mark)))
}

// worth says what the target's spread would be worth.
func (in StartLineInput) worth() string {
	w := in.StartLine.Worth
	whose := "you"
	if !in.Whose.Own {
		whose = in.Name
	}
	switch {
	case w == nil:
		return ""
	case math.Round(w.Strokes*10) <= 0:
		return fmt.Sprintf("There is nothing to win back here: the spread is no wider than %s’s.", words.A(in.Target))
	case w.Interval.Low <= 0:
		return fmt.Sprintf("With %s’s spread, and nothing else changed, %s would win back about %s a round; with so few putts it may also be nothing, or %s.", words.A(in.Target), whose, words.StrokeCount(w.Strokes), words.Plain(w.Interval.High))
	default:
		return fmt.Sprintf("With %s’s spread, and nothing else changed, %s would win back about %s a round, between %s and %s.", words.A(in.Target), whose, words.StrokeCount(w.Strokes), words.Plain(w.Interval.Low), words.Plain(w.Interval.High))
	}
}

// week is a week of practice.
func (in StartLineInput) week(w analysis.LineWeek) LineWeekRow {
	row := LineWeekRow{Week: words.ShortDay(w.Monday), Made: fmt.Sprintf("%d of %d", w.Tries.Made, w.Tries.Of), Spread: degrees(w.Read.Spread), Mark: "too few for a mark",
		Between: fmt.Sprintf("%.1f to %.1f", w.Read.Interval.Low, w.Read.Interval.High), Width: chart.Percent(float64(w.Tries.Made) / float64(w.Tries.Of)), Goal: chart.Percent(in.Aim.Holed)}
	switch {
	case w.Passed:
		row.Mark = "reached"
	case w.Judged:
		row.Mark = "not yet"
	}
	return row
}

// ask is the form for putts that are not stored, as it was typed.
func (in StartLineInput) ask() PuttsForm {
	a := in.Asked
	if !a.Asked {
		a.Feet = form.NumberOf(in.Feet)
	}
	f := PuttsForm{At: in.Whose.StartLine() + "#try", Fields: []components.Field{
		components.Filled(components.Field{Name: "feet", Label: fmt.Sprintf("From, ft (%d to %d)", LeastPuttFeet, MostPuttFeet), Mode: "decimal"}, a.Feet),
		components.Filled(components.Field{Name: "tries", Label: "Tries", Mode: "numeric"}, a.Tries),
		components.Filled(components.Field{Name: "made", Label: "Holed", Mode: "numeric"}, a.Made),
		components.Filled(components.Field{Name: "left", Label: "Missed left", Mode: "numeric"}, a.Left),
		components.Filled(components.Field{Name: "right", Label: "Missed right", Mode: "numeric"}, a.Right)}}
	f.Wrong = components.Summed(f.Fields...).Saying("Not worked out yet.")
	return f
}

// Where the picture of the curves lies: degrees across.
const (
	curveWidth, curveHigh = 340, 104
	curveBase, curveTop   = 84, 20
	mostDegrees           = 4.0
)

func degreeAt(x float64) float64 { return curveWidth/2 + x*(curveWidth/2-10)/mostDegrees }

// curve draws where putts start: ink the player, dashed the target's golfer, a pale
// strip for what falls.
func (in StartLineInput) curve() *components.Drawing {
	r := in.Read
	middle := 0.0
	if r.Bias != nil && r.Bias.Clear() {
		middle = r.Bias.Mean
	}
	d := &components.Drawing{Class: "line-drawing", Width: curveWidth, Height: curveHigh, Label: fmt.Sprintf("Where putts of %s ft start. Spread %s, middle %s. The hole takes %.1f° to either side. %s: spread %s.",
		words.Plain(in.Feet), degrees(r.Spread), sided(middle), r.Window, words.Capital(words.A(in.Target)), degrees(in.Aim.Spread))}
	window := min(r.Window, mostDegrees)
	d.DrawRect("window-strip", degreeAt(-window), curveTop-4, degreeAt(window)-degreeAt(-window), curveBase-curveTop+4)
	narrowest := min(r.Spread, in.Aim.Spread)
	own, aim := bell(middle, r.Spread, narrowest), bell(0, in.Aim.Spread, narrowest)
	d.DrawCurve("line-area", append(append([]float64{}, own...), degreeAt(mostDegrees), curveBase, degreeAt(-mostDegrees), curveBase), true)
	d.DrawCurve("line-own", own, false)
	d.DrawCurve("line-aim", aim, false)
	d.DrawLine("axis-line", degreeAt(-mostDegrees), curveBase, degreeAt(mostDegrees), curveBase)
	for n := -int(mostDegrees); n <= int(mostDegrees); n++ {
		x, class := degreeAt(float64(n)), ""
		if n == 0 {
			class = "zero-tick"
		}
		d.DrawLine("axis-line", x, curveBase, x, curveBase+4)
		d.DrawWords(class, x, curveBase+16, "middle", words.Signed(float64(n), 0)+"°")
	}
	d.DrawWords("", curveWidth/2, 12, "middle", fmt.Sprintf("falls, ±%.1f°", r.Window))
	d.DrawWords("", 12, curveTop+8, "start", "left")
	d.DrawWords("", curveWidth-12, curveTop+8, "end", "right")
	return d
}

// sided writes degrees with their side.
func sided(x float64) string {
	switch {
	case x < 0:
		return degrees(-x) + " left"
	case x > 0:
		return degrees(x) + " right"
	default:
		return "straight"
	}
}

// bell is a normal curve as places of the picture; the narrowest of all fills it.
func bell(middle, spread, narrowest float64) []float64 {
	const step = .1
	var places []float64
	for x := -mostDegrees; x <= mostDegrees+step/2; x += step {
		z := (x - middle) / spread
		places = append(places, degreeAt(x), curveBase-(curveBase-curveTop)*narrowest/spread*math.Exp(-z*z/2))
	}
	return places
}
