package form

import (
	"fmt"
	"net/url"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
)

// DrillAsk says what is written down of a session of a drill.
type DrillAsk struct {
	Keys     []golf.Outcome // what may become of a try, where tries are written down in order
	Stations int            // how many places have a count, where counts are; 0 where only words are
	MinFeet  float64        // of a drill that can be moved
	MaxFeet  float64        // 0 for a drill that cannot
	Today    golf.Date      // the last day that is allowed
}

// Session is what came of a drill, as it was typed.
type Session struct {
	Entered string // names the session, made by its page; empty when the page sent none that is allowed
	Day     Day
	Feet    Number            // from where; zero for a drill that cannot be moved
	Tries   Field[golf.Tries] // in order
	Each    Whole             // how many balls were played from each place
	Counts  []Whole           // how many counted, by place
	Minutes Whole             // 0 when not written down
	Note    Text
	Nothing string // that nothing was written down yet; empty when something was
}

var enteredName = regexp.MustCompile(`^[A-Za-z0-9-]{8,64}$`)

// CountName is the name of the field with the count of a place, counted from 0.
func CountName(station int) string { return "count-" + strconv.Itoa(station) }

// ParseSession reads a session of a drill.
func ParseSession(v url.Values, ask DrillAsk) Session {
	s := Session{
		Day:     ParseDay(v.Get("day")),
		Minutes: optional(v.Get("minutes"), func(t string) Whole { return ParseWhole(t, 0, golf.MaxMinutes) }),
		Note:    practice(v.Get("note")),
	}
	if name := v.Get("entered"); enteredName.MatchString(name) {
		s.Entered = name
	}
	if s.Day.Sound() && s.Day.Value.Compare(ask.Today) > 0 {
		s.Day.Problem = "This day is still to come."
	}
	if ask.MaxFeet > 0 {
		s.Feet = ParseNumber(v.Get("feet"), ask.MinFeet, ask.MaxFeet)
	}
	switch {
	case ask.Keys != nil:
		s.tries(v.Get("tries"), ask)
	case ask.Stations > 0:
		s.counts(v, ask)
	case s.Note.Text == "":
		s.Note.Problem = "Say what you saw, in up to 200 characters."
	}
	return s
}

// tries reads tries in order.
func (s *Session) tries(text string, ask DrillAsk) {
	all, err := golf.ParseTries(text)
	s.Tries = Field[golf.Tries]{Text: strings.TrimSpace(text), Value: all}
	switch {
	case err != nil:
		s.Tries = refused[golf.Tries](text, sentence(err))
	case slices.ContainsFunc(all, func(o golf.Outcome) bool { return !slices.Contains(ask.Keys, o) }):
		s.Tries = refused[golf.Tries](text, "Not a try of this drill. Use the keys.")
	case len(all) == 0:
		s.Nothing = "No try is written down yet."
	}
}

// counts reads how many counted at each place.
func (s *Session) counts(v url.Values, ask DrillAsk) {
	most := golf.MaxTries / ask.Stations
	s.Each = ParseWhole(v.Get("each"), 1, most)
	if s.Each.Sound() {
		most = s.Each.Value
	}
	empty := true
	for i := range ask.Stations {
		text := v.Get(CountName(i))
		count := optional(text, func(t string) Whole { return ParseWhole(t, 0, most) })
		if empty = empty && count.Text == ""; count.Text == "" {
			count.Problem = "How many counted? 0 is a number too."
		}
		s.Counts = append(s.Counts, count)
	}
	if !empty {
		return
	}
	s.Nothing = "Nothing is counted yet."
	for i := range s.Counts {
		s.Counts[i].Problem = ""
	}
}

// Sound reports whether nothing is wrong with the form.
func (s Session) Sound() bool {
	ok := s.Nothing == "" && sound(s.Day, s.Feet, s.Tries, s.Each, s.Minutes, s.Note)
	for _, c := range s.Counts {
		ok = ok && c.Sound()
	}
	return ok
}

// AsTyped is the session without what is wrong with it: a key was pressed, and it is
// not being saved yet.
func (s Session) AsTyped() Session {
	s.Nothing, s.Day.Problem, s.Feet.Problem, s.Tries.Problem, s.Each.Problem, s.Minutes.Problem, s.Note.Problem = "", "", "", "", "", "", ""
	s.Counts = slices.Clone(s.Counts)
	for i := range s.Counts {
		s.Counts[i].Problem = ""
	}
	return s
}

// Pressed is the session after a key: the letter of an outcome adds a try, undo takes
// the last one back, more-0 and less-0 change the count of the first place. Any other
// key leaves it as it is.
func (s Session) Pressed(key string) Session {
	s = s.AsTyped()
	switch name, place, _ := strings.Cut(key, "-"); {
	case key == "undo":
		s.Tries = triesOf(s.Tries.Value[:max(len(s.Tries.Value)-1, 0)])
	case name == "more" || name == "less":
		s.step(name, place)
	default:
		if more, err := golf.ParseTries(key); err == nil && len(more) == 1 && len(s.Tries.Value) < golf.MaxTries {
			s.Tries = triesOf(append(slices.Clone(s.Tries.Value), more...))
		}
	}
	return s
}

// step changes the count of a place by one, from none to all of its balls.
func (s *Session) step(name, place string) {
	i, err := strconv.Atoi(place)
	if err != nil || i < 0 || i >= len(s.Counts) {
		return
	}
	n := s.Counts[i].Value + 1
	if name == "less" {
		n -= 2
	}
	n = min(max(n, 0), max(s.Each.Value, 0))
	s.Counts[i] = Whole{Text: strconv.Itoa(n), Value: n}
}

func triesOf(t golf.Tries) Field[golf.Tries] { return Field[golf.Tries]{Text: t.String(), Value: t} }

// Counted is how many counted at each place, and of how many.
func (s Session) Counted(ask DrillAsk) (counted, tried []int) {
	if ask.Keys != nil {
		return s.Tries.Value.By(max(ask.Stations, 1))
	}
	for _, c := range s.Counts {
		counted, tried = append(counted, c.Value), append(tried, s.Each.Value)
	}
	return counted, tried
}

// Query is the session as an address holds it, so that it is not lost when it has to
// be entered after signing in.
func (s Session) Query() url.Values {
	v := url.Values{}
	for name, text := range map[string]string{"entered": s.Entered, "day": s.Day.Text, "feet": s.Feet.Text, "tries": s.Tries.Text, "each": s.Each.Text, "minutes": s.Minutes.Text, "note": s.Note.Text} {
		if text != "" {
			v.Set(name, text)
		}
	}
	for i, c := range s.Counts {
		if c.Text != "" {
			v.Set(CountName(i), c.Text)
		}
	}
	return v
}

// SessionOf is the form of a session that is kept.
func SessionOf(day golf.Date, feet float64, tries golf.Tries, counted, tried []int, minutes int, note string) Session {
	s := Session{Day: DayOf(day), Tries: triesOf(tries), Note: TextOf(note)}
	if feet > 0 {
		s.Feet = NumberOf(feet)
	}
	if minutes > 0 {
		s.Minutes = WholeOf(minutes)
	}
	for i, n := range counted {
		s.Counts, s.Each = append(s.Counts, Whole{Text: fmt.Sprint(n), Value: n}), WholeOf(max(s.Each.Value, tried[i]))
	}
	return s
}
