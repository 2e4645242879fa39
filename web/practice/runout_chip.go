package practice

import (
	"fmt"
	"math"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/runout"
	"strokeledger/web/components"
	"strokeledger/web/words"
)

// ChipTable is what every club of the book would do with a chip.
type ChipTable struct {
	Caption string
	Axis    *components.Drawing // over the pictures
	Rows    []ChipRow
	By      string // who plays it
}

// ChipRow is what a club would do.
type ChipRow struct {
	Club    string
	Best    bool
	Cannot  string // why it is not possible; the rest is empty then
	Picture *components.Drawing
	Land    string
	Paces   string
	Runs    string
	Ends    string
	Strokes string
	Doubt   string // that the book says little about this; empty otherwise
}

// answer is the table, nil when nothing was asked or the book has no answer.
func (in RunOutInput) answer() *ChipTable {
	chip, a := in.Chip.Ahead(), in.RunOut.Chip
	if chip == nil || len(a.Choices) == 0 {
		return nil
	}
	t := &ChipTable{Caption: fmt.Sprintf("%s, from the %s to a %s green, %s. Best first.", in.chipWords(*chip), chip.Lie, chip.Speed, onGround(chip.Slope)), By: in.by()}
	plane := newGround(*chip, a.Choices)
	t.Axis = plane.axis(in)
	for i, c := range a.Choices {
		row := ChipRow{Club: c.Club, Best: i == 0 && c.Possible}
		if !c.Possible {
			row.Cannot = in.cannot(*chip, c)
		} else {
			row.Land, row.Paces, row.Runs, row.Strokes = in.length(c.Land), paces(c.Land), in.length(c.Run), fmt.Sprintf("%.2f", c.Strokes)
			row.Ends = fmt.Sprintf("%s to %s", in.plain(math.Round(c.Ends.Low)), in.length(math.Round(c.Ends.High)))
			row.Picture = plane.shot(in, c)
			row.Doubt = doubt(c)
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// doubt says why the book says little about a choice.
func doubt(c runout.Choice) string {
	switch {
	case !c.Tried:
		return "no trial near that carry"
	case c.Trials < fewTrials:
		return "from " + words.SpelledPlural(c.Trials, "trial", "trials") + " only"
	default:
		return ""
	}
}

// fewTrials is the fewest trials of a club that say how its run-out spreads.
const fewTrials = 3

func onGround(s golf.GreenSlope) string {
	if s == golf.LevelGround {
		return "level"
	}
	return s.String() + " from where it lands"
}

// by says who plays the chip.
func (in RunOutInput) by() string {
	a := in.RunOut.Chip
	if !a.Known {
		return fmt.Sprintf("Played by a golfer who averages %s, the target, until there are rounds enough to know the level.", words.Plain(a.Putting))
	}
	whose := "your"
	if !in.Whose.Own {
		whose = in.Name + "’s"
	}
	return fmt.Sprintf("Played with %s short game of today, %s, and putted with %s putting, %s.", whose, words.A(math.Round(a.ShortGame)), whose, words.A(math.Round(a.Putting)))
}

// cannot says why a club is no good for a chip.
func (in RunOutInput) cannot(chip golf.ChipAhead, c runout.Choice) string {
	if c.Land <= 0 {
		return "runs past the hole wherever it lands"
	}
	edge := chip.Distance.Yards() - chip.Green.Yards()
	return fmt.Sprintf("would have to land at %s; the green begins at %s, and %s of it are needed", in.length(c.Land), in.length(edge), in.length(runout.RoomToLand))
}

// ground is the plane on which chips are drawn: yards across.
type ground struct {
	edge, hole, end float64
}

// Where the plane stands in its picture.
const (
	groundLeft, groundWidth = 12, 316
	groundLine, groundHigh  = 26, 48
)

func newGround(chip golf.ChipAhead, all []runout.Choice) ground {
	g := ground{edge: chip.Distance.Yards() - chip.Green.Yards(), hole: chip.Distance.Yards()}
	g.end = g.hole + 2
	for _, c := range all {
		g.end = max(g.end, c.Ends.High+1)
	}
	return g
}

func (g ground) at(yd float64) float64 {
	return groundLeft + groundWidth*min(max(yd/g.end, 0), 1)
}

// axis are lengths over the pictures; those too near the hole's are left out.
func (g ground) axis(in RunOutInput) *components.Drawing {
	d := &components.Drawing{Class: "chip-axis", Width: groundLeft*2 + groundWidth, Height: 15}
	d.DrawWords("", groundLeft, 11, "middle", "ball")
	step := 5.0
	for g.end/step > 6 {
		step *= 2
	}
	unit := golf.Distance(1) * golf.Yard
	if in.Units.Far == golf.Metres {
		unit = golf.Metre
	}
	for n := step; n*unit.Yards() < g.end; n += step {
		if x := g.at(n * unit.Yards()); math.Abs(x-g.at(g.hole)) > 26 && x > groundLeft+26 {
			d.DrawWords("", x, 11, "middle", words.Plain(n))
		}
	}
	d.DrawWords("zero-tick", g.at(g.hole), 11, "middle", in.plain(g.hole))
	return d
}

// shot is the picture of a chip: a bow for the carry, dots for the run, a tick where
// it lands, a pale bar where eight balls in ten end.
func (g ground) shot(in RunOutInput, c runout.Choice) *components.Drawing {
	d := &components.Drawing{Class: "chip-drawing", Width: groundLeft*2 + groundWidth, Height: groundHigh,
		Label: fmt.Sprintf("Carries %s, runs %s; eight balls in ten end between %s and %s.", in.length(c.Land), in.length(c.Run), in.plain(math.Round(c.Ends.Low)), in.length(math.Round(c.Ends.High)))}
	land, hole := g.at(c.Land), g.at(g.hole)
	if g.edge > 0 {
		d.DrawHatch("rough-hatching", groundLeft, groundLine, g.at(g.edge)-groundLeft, 7)
	}
	d.DrawLine("chip-ground", groundLeft, groundLine, groundLeft+groundWidth, groundLine)
	d.DrawLine("chip-ends", g.at(c.Ends.Low), groundLine-3, g.at(c.Ends.High), groundLine-3)
	d.DrawPath("chip-flag", fmt.Sprintf("M%.1f %dv-20l9 3.5l-9 3.5", hole, groundLine))
	d.DrawPath("chip-carry", fmt.Sprintf("M%d %dQ%.1f %.1f %.1f %d", groundLeft, groundLine, (groundLeft+land)/2, groundLine-(land-groundLeft)*.22, land, groundLine))
	d.DrawLine("chip-run", land, groundLine-3, hole, groundLine-3)
	d.DrawLine("chip-landing", land, groundLine, land, groundLine+8)
	d.DrawWords("chip-words", land, groundHigh-3, "middle", in.plain(c.Land))
	return d
}
