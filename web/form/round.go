package form

import (
	"fmt"
	"net/url"
	"slices"
	"strings"

	"strokeledger/analysis/golf"
)

// Part is the part of a course that is played.
type Part string

// The parts of a course.
const (
	AllHoles  Part = ""
	FrontNine Part = "front"
	BackNine  Part = "back"
)

// String is the part as a form writes it.
func (p Part) String() string { return string(p) }

// has reports whether a hole belongs to the part.
func (p Part) has(number int) bool {
	return p == AllHoles || (p == BackNine) == (number > golf.MaxHole/2)
}

// RoundStart is the form that begins a round, on a course with a card or on one
// whose card is filled in while it is played.
type RoundStart struct {
	Course     Course      // the one chosen
	Date       Day         // on which it is played
	Conditions Text        // weather and greens
	First      Whole       // hole to begin with; 0 and 1 are the first of the part
	Part       Field[Part] // all holes or one nine

	Fresh    bool  // on a course that has no card yet
	NewName  Text  // of that course
	NewTee   Text  // its set of tees; may be empty
	NewHoles Whole // how many it has
}

// ParseRoundStart reads the form that begins a round. ChooseHoles reads what
// depends on the card.
func ParseRoundStart(v url.Values) RoundStart {
	s := RoundStart{Date: ParseDay(v.Get("date")), Conditions: conditions(v.Get("conditions")), Fresh: v.Has("new_course"),
		First: optional(v.Get("first_hole"), parseHoleNumber),
		Part:  ParseChoice(v.Get("part"), "Choose all holes, the front nine or the back nine.", AllHoles, FrontNine, BackNine)}
	if !s.Fresh {
		s.Course = ParseCourse(v.Get("course"))
		return s
	}
	s.Course = Course{Text: strings.TrimSpace(v.Get("course"))}
	s.NewName, s.NewTee = ParseName(v.Get("new_course"), golf.MaxName), ParseText(v.Get("new_tee"), golf.MaxName)
	s.NewHoles = ParseWhole(v.Get("new_holes"), 1, MostHoles)
	return s
}

// Sound reports whether nothing is wrong with the form.
func (s RoundStart) Sound() bool {
	return sound(s.Course, s.Date, s.Conditions, s.First, s.Part, s.NewName, s.NewTee, s.NewHoles)
}

// ChooseHoles returns the holes of a card that are played and the number of the
// one to begin with, and notes what is wrong with the choice.
func (s *RoundStart) ChooseHoles(card []golf.CardHole) (holes []golf.CardHole, first int) {
	for _, h := range card {
		if s.Part.Value.has(h.Number) {
			holes = append(holes, h)
		}
	}
	if len(holes) == 0 {
		if len(card) > 0 {
			s.Part.Problem = "The course has no such holes."
		}
		return nil, 0
	}
	first = s.First.Value
	switch there := slices.ContainsFunc(holes, func(h golf.CardHole) bool { return h.Number == first }); {
	case first < 2:
		first = holes[0].Number
	case !there:
		s.First.Problem = fmt.Sprintf("Allowed: %d to %d.", holes[0].Number, holes[len(holes)-1].Number)
	}
	return holes, first
}

// RoundDetails are the day, course, target and card of a saved round, to be
// corrected.
type RoundDetails struct {
	Day         Day        // on which it was played
	Course, Tee Text       // their names
	Take        Course     // another course to take over, 0 for none
	Target      Number     // strokes over 18 holes
	Par18       Whole      // of the whole course
	First       Whole      // hole
	Conditions  Text       // weather and greens
	Holes       []HoleCard // the card, in the order of the holes
}

// KnownRound is a round as it was saved, whose details are typed anew.
type KnownRound struct {
	First int             // hole
	Holes []golf.CardHole // its card
}

func (k KnownRound) has(number int) bool {
	return slices.ContainsFunc(k.Holes, func(h golf.CardHole) bool { return h.Number == number })
}

// TakenCourse is a course that a round takes over, in the place of what is typed.
type TakenCourse struct {
	Name, Tee string          // of the course, and of its set of tees
	Holes     []golf.CardHole // whose length is known
}

// ParseTake reads which course a round takes over; 0 for none.
func ParseTake(v url.Values) Course { return optional(v.Get("take"), ParseCourse) }

// ParseRoundDetails reads the details of a round; unit is that of a length
// without one, and taken is nil when no course is taken over.
func ParseRoundDetails(v url.Values, kept KnownRound, taken *TakenCourse, unit golf.Unit) RoundDetails {
	d := RoundDetails{
		Day:        ParseDay(v.Get("day")),
		Course:     ParseName(v.Get("course"), golf.MaxName),
		Tee:        ParseText(v.Get("tee"), golf.MaxName),
		Take:       ParseTake(v),
		Target:     ParseTarget(v.Get("target")),
		Par18:      ParseWhole(v.Get("par18"), golf.MinPar18, golf.MaxPar18),
		First:      parseHoleNumber(v.Get("first_hole")),
		Conditions: conditions(v.Get("conditions")),
	}
	if d.First.Sound() && d.First.Value != kept.First && !kept.has(d.First.Value) {
		d.First.Problem = "The round has no such hole."
	}
	for _, h := range kept.Holes {
		d.Holes = append(d.Holes, parseHoleCard(v, h, unit))
	}
	if taken != nil {
		d.takeOver(*taken)
	}
	d.checkIndexes()
	return d
}

// takeOver puts a course in the place of what was typed.
func (d *RoundDetails) takeOver(c TakenCourse) {
	d.Course, d.Tee = d.Course.becomes(c.Name), d.Tee.becomes(c.Tee)
	if len(c.Holes) == MostHoles {
		par := 0
		for _, h := range c.Holes {
			par += h.Par
		}
		d.Par18 = d.Par18.becomes(par)
	}
	there := false
	for i, h := range d.Holes {
		k := slices.IndexFunc(c.Holes, func(of golf.CardHole) bool { return of.Number == h.Number })
		if k < 0 {
			continue
		}
		there = true
		d.Holes[i] = HoleCard{h.Number, h.Par.becomes(c.Holes[k].Par), h.Length.becomes(c.Holes[k].Length), h.Index.becomes(c.Holes[k].Index)}
	}
	if !there {
		d.Take.Problem = "It has none of the holes of this round."
	}
}

// checkIndexes finds stroke indexes that two holes have.
func (d *RoundDetails) checkIndexes() {
	first := map[int]int{}
	for i, h := range d.Holes {
		index := h.Index.Value
		if before, twice := first[index]; twice && index > 0 {
			d.Holes[i].Index.Problem = fmt.Sprintf("Hole %d has it too.", before)
		} else {
			first[index] = h.Number
		}
	}
}

// Sound reports whether nothing is wrong with the form.
func (d RoundDetails) Sound() bool {
	return sound(d.Day, d.Course, d.Tee, d.Take, d.Target, d.Par18, d.First, d.Conditions) &&
		!slices.ContainsFunc(d.Holes, func(h HoleCard) bool { return !h.Sound() })
}

// Card is the card of the holes.
func (d RoundDetails) Card() []golf.CardHole {
	var card []golf.CardHole
	for _, h := range d.Holes {
		card = append(card, h.Hole())
	}
	return card
}
