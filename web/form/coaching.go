package form

import (
	"fmt"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
)

// ParseSharedFrom reads the first day whose rounds a coach may see. Empty shares
// everything, so a day that was mistyped must be refused.
func ParseSharedFrom(text string) Day {
	day := optional(text, ParseDay)
	return day.saying(strings.TrimSuffix(day.Problem, ".") + ", or leave it empty to share everything.")
}

// Note is what a coach or a player writes: on a round, or on a lesson of a day.
type Note struct {
	Body    Text        // what is written, of several lines
	Private bool        // only its writer can read it
	Spot    Field[Spot] // on a round
	Day     Day         // of a lesson
}

// Spot is what a note on a round is about.
type Spot struct {
	Hole int // 0 for the round as a whole
	Shot int // of that hole, counted from 1; 0 for the hole as a whole
}

// ParseRoundNote reads a note on a round.
func ParseRoundNote(v url.Values) Note {
	n := ParseNote(v)
	n.Spot = optional(v.Get("on"), parseSpot)
	return n
}

// ParseLesson reads a note on a lesson, which is not later than today.
func ParseLesson(v url.Values, today golf.Date) Note {
	n := ParseNote(v)
	if n.Day = ParseDay(v.Get("day")); n.Day.Sound() && n.Day.Value.Compare(today) > 0 {
		n.Day.Problem = "This day is still to come."
	}
	return n
}

// ParseNote reads a note that stays where it is, or a reply to one.
func ParseNote(v url.Values) Note {
	return Note{Body: ParseBody(v.Get("body"), golf.MaxNote), Private: v.Get("private") != ""}
}

// Sound reports whether nothing is wrong with the form.
func (n Note) Sound() bool { return sound(n.Body, n.Spot, n.Day) }

// parseSpot reads a hole, or a hole and a shot as in 7.3.
func parseSpot(text string) Field[Spot] {
	hole, shot, both := strings.Cut(text, ".")
	h, k := ParseWhole(hole, 1, golf.MaxHole), Whole{}
	if both {
		k = ParseWhole(shot, 1, golf.MaxShot)
	}
	if !sound(h, k) {
		return refused[Spot](text, "Choose what the note is about.")
	}
	return Field[Spot]{Text: text, Value: Spot{h.Value, k.Value}}
}

// Assignment is something to practise.
type Assignment struct {
	What     Text            // what to practise
	Amount   Text            // how much or how often; may be empty
	PassMark Text            // the result that passes; may be empty
	Figure   Text            // that it is to move, as an address of the months writes it; may be empty
	Due      Day             // when it is to be done
	Drill    Text            // key of a drill; empty for something else
	SetUp    Text            // how a drill of one's own is set up; may be empty
	Tries    Whole           // of a drill of one's own; 0 for none
	Mark     Whole           // how many of them must count; 0 for none
	Also     []golf.PlayerID // others for whom it is set as well
}

// maxFigure is the most letters of a figure's name.
const maxFigure = 60

// ParseAssignment reads something to practise, by today or a later day.
func ParseAssignment(v url.Values, today golf.Date) Assignment {
	a := Assignment{What: practice(v.Get("what")), Amount: practice(v.Get("amount")), PassMark: practice(v.Get("pass_mark")), Figure: ParseText(v.Get("figure"), maxFigure).saying("Choose a figure of the list."), Due: parseDayFrom(v.Get("due"), today)}
	a.Drill, a.SetUp = practice(v.Get("drill")), practice(v.Get("set_up"))
	a.Tries = optional(v.Get("tries"), func(t string) Whole { return ParseWhole(t, 1, golf.MaxTries) })
	a.Mark = optional(v.Get("mark"), func(t string) Whole { return ParseWhole(t, 1, golf.MaxTries) })
	if a.Tries.Sound() && a.Mark.Sound() && a.Mark.Value > a.Tries.Value {
		a.Mark.Problem = "More than there are tries."
	}
	for _, text := range v["also"] {
		if n, err := strconv.ParseInt(text, 10, 64); err == nil {
			a.Also = append(a.Also, golf.PlayerID(n))
		}
	}
	if a.What.Text == "" && a.Drill.Text == "" {
		a.What.Problem = "Say what to practise."
	}
	return a
}

// Sound reports whether nothing is wrong with the form.
func (a Assignment) Sound() bool {
	return sound(a.What, a.Amount, a.PassMark, a.Figure, a.Due, a.Drill, a.SetUp, a.Tries, a.Mark)
}

func practice(text string) Text {
	return ParseText(text, golf.MaxPractice).saying("Allowed: up to 200 letters, in one line.")
}

// Result is the result of one practice.
type Result struct {
	Day    Day  // of the practice
	Result Text // in the player’s words, one line
	Passed bool // the player says that it reached the pass mark
}

// ParseResult reads the result of one practice.
func ParseResult(v url.Values) Result {
	return Result{Day: ParseDay(v.Get("day")), Passed: v.Get("passed") != "",
		Result: ParseName(v.Get("result"), golf.MaxPractice).saying("Give the result, in up to 200 letters.")}
}

// Sound reports whether nothing is wrong with the form.
func (r Result) Sound() bool { return sound(r.Day, r.Result) }

// Mark is a day to compare before and after.
type Mark struct {
	Day  Day  // the first day after the change
	What Text // what changed, in the player’s words
}

// ParseMark reads a day to compare before and after.
func ParseMark(v url.Values) Mark {
	return Mark{ParseDay(v.Get("day")), ParseName(v.Get("what"), golf.MaxName).saying("Needed: what happened, in at most 80 letters.")}
}

// Sound reports whether nothing is wrong with the form.
func (m Mark) Sound() bool { return sound(m.Day, m.What) }

// Groups are the names of a coach's groups, typed with commas between them.
type Groups = Field[[]string]

// maxGroups is in how many groups of a coach a pupil may be.
const maxGroups = 12

// ParseGroups reads names of groups. Empty is none.
func ParseGroups(text string) Groups {
	f := Groups{Text: strings.TrimSpace(text)}
	for name := range strings.SplitSeq(text, ",") {
		if name = strings.Join(strings.Fields(name), " "); name == "" || slices.Contains(f.Value, name) {
			continue
		}
		if !golf.Sayable(name, golf.MaxName) {
			return refused[[]string](f.Text, fmt.Sprintf("A group has at most %d letters, in one line.", golf.MaxName))
		}
		f.Value = append(f.Value, name)
	}
	if len(f.Value) > maxGroups {
		return refused[[]string](f.Text, fmt.Sprintf("At most %d groups.", maxGroups))
	}
	return f
}

// ParseGroup reads the name of one group.
func ParseGroup(text string) Groups {
	f := ParseGroups(text)
	if f.Sound() && (len(f.Value) != 1 || strings.Contains(text, ",")) {
		return refused[[]string](f.Text, "Give the group one name, without a comma.")
	}
	return f
}

// WriteGroups writes names of groups as ParseGroups reads them.
func WriteGroups(names []string) Groups {
	return Groups{Text: strings.Join(names, ", "), Value: names}
}
