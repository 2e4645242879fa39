package form

import (
	"fmt"
	"net/url"
	"strings"

	"strokeledger/analysis/golf"
)

// Trials are balls for the run-out book, all of one club from one lie to one kind of
// green.
type Trials struct {
	Entered string // names the page on which they were entered
	Club    Text
	Lie     Field[golf.Lie]
	Speed   Field[golf.GreenSpeed]
	Unit    Field[golf.TrialUnit]
	Day     Day
	Pairs   Field[[]golf.Trial] // carry and total of each ball; the trials are whole once the form is sound
}

// mostPairs is how many balls a line may have.
const mostPairs = 50

// ParseTrials reads balls for the run-out book.
func ParseTrials(v url.Values) Trials {
	t := Trials{Entered: golf.Cleaned(v.Get("entered"), golf.MaxText), Day: ParseDay(v.Get("day")),
		Club:  ParseName(strings.Join(strings.Fields(v.Get("club")), " "), golf.MaxClub),
		Lie:   ParseChoice(v.Get("lie"), "Choose fairway or rough.", golf.TrialLies...),
		Speed: ParseChoice(v.Get("green"), "Choose slow, medium or fast.", golf.GreenSpeeds...),
		Unit:  ParseChoice(v.Get("unit"), "Choose yards, paces or metres.", golf.TrialUnits...)}
	t.Pairs = parsePairs(v.Get("pairs"), t.Unit.Value)
	for i := range t.Pairs.Value {
		ball := &t.Pairs.Value[i]
		ball.Club, ball.Lie, ball.Speed, ball.Unit = t.Club.Value, t.Lie.Value, t.Speed.Value, t.Unit.Value
	}
	return t
}

// Sound reports whether nothing is wrong with the form.
func (t Trials) Sound() bool { return sound(t.Club, t.Lie, t.Speed, t.Unit, t.Day, t.Pairs) }

// parsePairs reads carries and totals: two numbers a ball, with a comma between
// balls. What is wrong is said by the place of the ball.
func parsePairs(text string, unit golf.TrialUnit) Field[[]golf.Trial] {
	f := Field[[]golf.Trial]{Text: strings.TrimSpace(text)}
	parts := strings.FieldsFunc(f.Text, func(r rune) bool { return r == ',' || r == ';' || r == '\n' })
	switch {
	case strings.TrimSpace(strings.Join(parts, "")) == "":
		f.Problem = "Needed: carry and total of each ball, as in 12 21, 13 23."
		return f
	case len(f.Text) > golf.MaxLine || len(parts) > mostPairs:
		f.Problem = fmt.Sprintf("Allowed: at most %d balls a line.", mostPairs)
		return f
	}
	var faults []string
	for i, part := range parts {
		ball, fault := parsePair(part, unit)
		if fault != "" {
			faults = append(faults, fmt.Sprintf("Ball %d, “%s”: %s.", i+1, strings.TrimSpace(part), fault))
		}
		f.Value = append(f.Value, ball)
	}
	if len(faults) > 0 {
		f.Problem, f.Value = strings.Join(faults, " "), nil
	}
	return f
}

// parsePair reads the carry and the total of a ball.
func parsePair(text string, unit golf.TrialUnit) (t golf.Trial, fault string) {
	const shape = "two numbers are needed, carry and total, as in 12 21; write a decimal with a point"
	numbers := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" \t\r-–/:", r) })
	if len(numbers) != 2 {
		return t, shape
	}
	for i, to := range []*float64{&t.Carry, &t.Total} {
		_, behind := leadingNumber(numbers[i])
		x, err := parseNumber(numbers[i])
		if err != nil || behind != "" {
			return t, shape
		}
		*to = x
	}
	if t.Unit = unit; unit == 0 {
		t.Unit = golf.TrialYards // its own field says what is wrong with it
	}
	return t, t.Allowed()
}

// WritePairs writes balls as ParseTrials reads them.
func WritePairs(all []golf.Trial) string {
	var pairs []string
	for _, t := range all {
		pairs = append(pairs, WriteNumber(t.Carry)+" "+WriteNumber(t.Total))
	}
	return strings.Join(pairs, ", ")
}

// Chip is a chip that is to be played now. The fields are empty until one is asked
// for.
type Chip struct {
	Asked    bool
	Distance Number // from the ball to the hole
	Green    Number // of it from the edge of the green
	Lie      Field[golf.Lie]
	Speed    Field[golf.GreenSpeed]
	Slope    Field[golf.GreenSlope]
	unit     golf.Unit
}

// ParseChip reads a chip to be played; unit is that of its lengths.
func ParseChip(v url.Values, unit golf.Unit) Chip {
	if !v.Has("distance") {
		return Chip{}
	}
	most := unit.In(golf.MaxChipAhead)
	c := Chip{Asked: true, unit: unit, Distance: ParseNumber(v.Get("distance"), 0, most),
		Lie:   ParseChoice(v.Get("lie"), "Choose fairway or rough.", golf.TrialLies...),
		Speed: ParseChoice(v.Get("speed"), "Choose slow, medium or fast.", golf.GreenSpeeds...),
		Slope: ParseChoice(v.Get("slope"), "Choose uphill, level or downhill.", golf.GreenSlopes...)}
	if c.Distance.Sound() && c.Distance.Value <= 0 || !c.Distance.Sound() {
		c.Distance = refused[float64](c.Distance.Text, fmt.Sprintf("Allowed: over 0, at most %.0f %s.", most, unit))
	}
	if c.Distance.Sound() {
		most = c.Distance.Value
	}
	c.Green = ParseNumber(v.Get("edge"), 0, most)
	if !c.Green.Sound() || c.Green.Value <= 0 || c.Green.Value >= most {
		c.Green = refused[float64](c.Green.Text, "Allowed: over 0, less than the distance to the hole.")
	}
	return c
}

// Sound reports whether nothing is wrong with the form.
func (c Chip) Sound() bool { return sound(c.Distance, c.Green, c.Lie, c.Speed, c.Slope) }

// Ahead is the chip, nil when none was asked for or something is wrong with it.
func (c Chip) Ahead() *golf.ChipAhead {
	if !c.Asked || !c.Sound() {
		return nil
	}
	return &golf.ChipAhead{Lie: c.Lie.Value, Distance: c.unit.Of(c.Distance.Value), Green: c.unit.Of(c.Green.Value), Speed: c.Speed.Value, Slope: c.Slope.Value}
}
