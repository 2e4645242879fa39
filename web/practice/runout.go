package practice

import (
	"fmt"
	"slices"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/shotsfile"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// RunOutPage is a player's run-out book: today's shot, the book, and the card.
type RunOutPage struct {
	layout.Page
	Heading string
	Place   string // whose it is and how much is in it
	Lede    string
	Ask     ChipForm
	Answer  *ChipTable // nil when nothing was asked, or the book has no answer
	Book    []BookSection
	Add     *TrialForm // nil for a coach
	Card    []CardTable
	CardOf  string // whose card it is, and of when
	Links   []components.Link
}

// ChipForm asks for the chip to be played.
type ChipForm struct {
	At       string
	Wrong    components.Summary
	Distance components.Field
	Green    components.Field
	Lie      components.Field
	Speed    components.Field
	Slope    components.Field

	Lies, Speeds, Slopes []components.Choice
}

// TrialForm takes balls for the book.
type TrialForm struct {
	At      string
	Entered string
	Wrong   components.Summary
	Pairs   components.Field
	Club    components.Field
	Clubs   []string // suggested
	Lie     components.Radios
	Speed   components.Radios
	Unit    components.Radios
	Day     components.Field
}

// BookTrial is a ball of the book.
type BookTrial struct {
	ID  int64
	Day golf.Date
	golf.Trial
}

// RunOutInput is what the page is made of.
type RunOutInput struct {
	Whose   paths.Whose
	Name    string // the player's
	Units   form.Units
	Clubs   []string // of the player's bag
	Today   golf.Date
	Entered string      // names this page in what it sends
	Trials  []BookTrial // in the order in which the book was made
	Chip    form.Chip
	Typed   *form.Trials // the balls that were refused; nil for none
	analysis.RunOut
}

// NewRunOutPage makes the page.
func NewRunOutPage(page layout.Page, in RunOutInput) RunOutPage {
	page.Title, page.Here, page.BodyClass = "Run-out book", layout.Here(in.Whose, in.Whose.Lessons()), "run-out-page"
	page.Foot = "Strokes: on average to hole out from there, this shot and the putts after it. How much less a ball runs uphill and how much more downhill is common practice; no study is behind it. A pace is a yard. Use this for practice and before a round. During a round the Rules may not allow a device to choose a club or a line: ask the committee. The printed card is a written note. Stop if anything hurts, and make sure that nobody is in the line of fire. A short side that was noted without its green is judged on statements by this book: of the clubs with three trials or more from that lie, on whatever green, by the one that runs least to such a hole."
	p := RunOutPage{Page: page, Heading: "Run-out book", Place: in.place(), Lede: in.lede(), Ask: in.ask(), Answer: in.answer()}
	for _, of := range in.Pages {
		p.Book = append(p.Book, in.section(of))
		p.Card = append(p.Card, in.card(of))
	}
	p.CardOf = fmt.Sprintf("%s, %s", in.Name, words.ShortDay(in.Today))
	if in.Whose.Own {
		p.Add = in.add()
	}
	p.Links = []components.Link{{Name: "Practice plan", At: in.Whose.Plan()}, {Name: "Start line", At: in.Whose.StartLine()}}
	if len(in.Trials) > 0 {
		p.Links = append(p.Links, components.Link{Name: "Download the book", At: in.Whose.RunOutFile()})
	}
	return p
}

// place says whose the book is and how much is in it.
func (in RunOutInput) place() string {
	text := ""
	if !in.Whose.Own {
		text = in.Name + ". "
	}
	if len(in.Trials) == 0 {
		return strings.TrimSpace(text)
	}
	last := slices.MaxFunc(in.Trials, func(a, b BookTrial) int { return a.Day.Compare(b.Day) }).Day
	return text + fmt.Sprintf("%s, the last of %s.", words.Plural(len(in.Trials), "trial", "trials"), words.ShortDay(last))
}

// lede says what to do with the chip, or what is in the book.
func (in RunOutInput) lede() string {
	chip := in.Chip.Ahead()
	switch {
	case chip != nil && len(in.RunOut.Chip.Choices) == 0:
		return fmt.Sprintf("The book has no trial from the %s to a %s green yet.", chip.Lie, chip.Speed)
	case chip != nil && !in.RunOut.Chip.Choices[0].Possible:
		return in.chipWords(*chip) + ": no club of the book lands on the green and stops by the hole."
	case chip != nil:
		best := in.RunOut.Chip.Choices[0]
		return fmt.Sprintf("%s: %s, landed at %s. It runs %s.", in.chipWords(*chip), best.Club, in.length(best.Land), in.length(best.Run))
	case len(in.Trials) > 0 && in.Chip.Sound():
		return "How far is the hole, and how much of it is green? The book says which club, and where to land it."
	case len(in.Trials) > 0:
		return "Not worked out yet."
	case in.Whose.Own:
		return "No trials yet. Chip a few balls, and note for each where it landed and where it stopped."
	default:
		return "No trials yet."
	}
}

// chipWords names a chip by its lengths.
func (in RunOutInput) chipWords(c golf.ChipAhead) string {
	return fmt.Sprintf("%s with %s of green", in.length(c.Distance.Yards()), in.length(c.Green.Yards()))
}

// length writes yards in the reader's unit.
func (in RunOutInput) length(yd float64) string {
	return in.plain(yd) + " " + in.Units.Far.String()
}

// plain is the same without the unit.
func (in RunOutInput) plain(yd float64) string {
	return run(in.Units.Far.In(golf.Distance(yd) * golf.Yard))
}

// paces writes yards as whole paces.
func paces(yd float64) string {
	n := int(yd + .5)
	return words.Plural(n, "pace", "paces")
}

// commonest is the page of the book with the most trials; fairway and a medium green
// for an empty book.
func (in RunOutInput) commonest() (lie golf.Lie, speed golf.GreenSpeed) {
	lie, speed, most := golf.Fairway, golf.MediumGreen, 0
	for _, p := range in.Pages {
		n := 0
		for _, c := range p.Clubs {
			n += len(c.Trials)
		}
		if n > most {
			lie, speed, most = p.Lie, p.Speed, n
		}
	}
	return lie, speed
}

// choices are values by their names, one of them chosen.
func choices[T fmt.Stringer](all []T, chosen string) []components.Choice {
	var list []components.Choice
	for _, one := range all {
		list = append(list, components.Choice{Value: one.String(), Name: words.Capital(one.String()), Chosen: one.String() == chosen})
	}
	return list
}

// ask is the form for the chip, as it was typed.
func (in RunOutInput) ask() ChipForm {
	lie, speed := in.commonest()
	c, unit := in.Chip, in.Units.Far.String()
	if !c.Asked {
		c.Lie, c.Speed, c.Slope = form.ChoiceOf(lie), form.ChoiceOf(speed), form.ChoiceOf(golf.LevelGround)
	}
	f := ChipForm{At: in.Whose.RunOut() + "#shot",
		Distance: components.Filled(components.Field{Name: "distance", Label: "To the hole, " + unit, Mode: "decimal"}, c.Distance),
		Green:    components.Filled(components.Field{Name: "edge", Label: "Of it from the edge of the green, " + unit, Mode: "decimal"}, c.Green),
		Lie:      components.Filled(components.Field{Name: "lie", ID: "chip-lie", Label: "Lie"}, c.Lie),
		Speed:    components.Filled(components.Field{Name: "speed", Label: "Green"}, c.Speed),
		Slope:    components.Filled(components.Field{Name: "slope", Label: "Ground"}, c.Slope),
		Lies:     choices(golf.TrialLies, c.Lie.Text), Speeds: choices(golf.GreenSpeeds, c.Speed.Text), Slopes: choices(golf.GreenSlopes, c.Slope.Text)}
	f.Wrong = components.Summed(f.Distance, f.Green, f.Lie, f.Speed, f.Slope).Saying("Not worked out yet.")
	return f
}

// add is the form for balls: as it was typed, or with what was entered last chosen.
func (in RunOutInput) add() *TrialForm {
	typed, lie, speed := in.Typed, golf.Fairway, golf.MediumGreen
	if typed == nil {
		unit, club := golf.TrialYards, ""
		if in.Units.Far == golf.Metres {
			unit = golf.TrialMetres
		}
		if n := len(in.Trials); n > 0 {
			last := in.Trials[n-1]
			lie, speed, unit, club = last.Lie, last.Speed, last.Unit, last.Club
		}
		typed = &form.Trials{Club: form.TextOf(club), Lie: form.ChoiceOf(lie), Speed: form.ChoiceOf(speed), Unit: form.ChoiceOf(unit), Day: form.DayOf(in.Today)}
	}
	list := ""
	if len(in.Clubs) > 0 {
		list = "clubs"
	}
	f := &TrialForm{At: in.Whose.RunOut() + "#add", Entered: in.Entered, Clubs: in.Clubs,
		Pairs: components.Filled(components.Field{Name: "pairs", Label: "Carry and total of each ball, in pairs", Hint: "As in 12 21, 13 23: landed at 12 and stopped at 21, landed at 13 and stopped at 23."}, typed.Pairs),
		Club:  components.Filled(components.Field{Name: "club", Label: "Club", List: list}, typed.Club),
		Lie:   components.Picked(components.Radios{Name: "lie", ID: "trial-lie", Label: "Lie", All: choices(golf.TrialLies, "")}, typed.Lie),
		Speed: components.Picked(components.Radios{Name: "green", Label: "Green", All: choices(golf.GreenSpeeds, "")}, typed.Speed),
		Unit: components.Picked(components.Radios{Name: "unit", Label: "Measured in", All: []components.Choice{{Value: "yd", Name: "Yards"}, {Value: "paces", Name: "Paces of a yard"},
			{Value: "m", Name: "Metres"}}}, typed.Unit),
		Day: components.Filled(components.Field{Name: "day", Label: "Day", Type: "date"}, typed.Day)}
	f.Wrong = components.Summed(f.Pairs, f.Club)
	f.Lie.AddTo(&f.Wrong)
	f.Speed.AddTo(&f.Wrong)
	f.Unit.AddTo(&f.Wrong)
	f.Wrong.Add(f.Day.Key(), f.Day.Label, f.Day.Problem)
	return f
}

// BookFull says that the book takes no more.
var BookFull = fmt.Sprintf("The book is full: it holds at most %s trials. Remove some first.", words.Grouped(golf.MaxTrials))

// FileHead names the columns of the book as a file; the command reads the first four.
var FileHead = []string{"club", "lie", "carry", "total", "green", "day", "carry typed", "total typed", "unit"}

// FileRow is a ball as it stands in that file: lengths in yards, then as they were
// typed.
func FileRow(t BookTrial) []string {
	carry, total := t.Yards()
	return []string{shotsfile.Harmless(t.Club), t.Lie.String(), form.WriteNumber(rounded(carry)), form.WriteNumber(rounded(total)), t.Speed.String(), t.Day.String(),
		form.WriteNumber(t.Carry), form.WriteNumber(t.Total), t.Unit.String()}
}
