package aim

import (
	"fmt"
	"math"
	"strings"
)

// Rows as they should be, for faults.
const (
	bendRow    = "bend 260: 10 right"
	fairwayRow = "fairway 170: 18 left, 15 right"
	zoneRow    = "water 180 to 260, across -40 to -15"
	greenRow   = "green 419: 26 wide, 26 deep, turned 10"
)

// nothingElse refuses words that are left over.
func nothingElse(words []string, example string) error {
	if len(words) == 0 {
		return nil
	}
	return fmt.Errorf("%q is too much; such as: %s", shortened(strings.Join(words, " ")), example)
}

func parseBend(words []string) (Bend, error) {
	x, rest, err := parseNumbers(words, []string{"", ""}, bendRow)
	if err != nil {
		return Bend{}, err
	}
	b := Bend{x[0], x[1]}
	if len(rest) > 0 && (rest[0] == "left" || rest[0] == "right") {
		if b.Degrees < 0 {
			return Bend{}, fmt.Errorf("a turn of %s %s; such as: %s", plain(b.Degrees), rest[0], bendRow)
		}
		if rest[0] == "left" {
			b.Degrees = 0 - b.Degrees
		}
		rest = rest[1:]
	}
	return b, nothingElse(rest, bendRow)
}

func parseWidth(words []string) (Width, error) {
	x, rest, err := parseNumbers(words, []string{"", "left", "right"}, fairwayRow)
	if err != nil {
		return Width{}, err
	}
	return Width{x[0], x[1], x[2]}, nothingElse(rest, fairwayRow)
}

func parseGreen(words []string) (Green, error) {
	x, rest, err := parseNumbers(words, []string{"", "wide", "deep"}, greenRow)
	if err != nil {
		return Green{}, err
	}
	g := Green{Front: x[0], Width: x[1], Depth: x[2]}
	if !g.Drawn() {
		return g, fmt.Errorf("a green without width and depth; such as: %s", greenRow)
	}
	if len(rest) > 1 && rest[0] == "turned" {
		if g.Turn, err = parseNumber(rest[1]); err != nil {
			return g, fmt.Errorf("%w; such as: %s", err, greenRow)
		}
		rest = rest[2:]
	}
	return g, nothingElse(rest, greenRow)
}

func parseZone(kind Kind, words []string) (Zone, error) {
	z := Zone{kind, math.Inf(-1), math.Inf(1), math.Inf(-1), math.Inf(1)}
	rest, err := parseStretch(words, &z.From, &z.To)
	if err != nil {
		return z, err
	}
	if len(rest) > 0 && rest[0] == "across" {
		if rest, err = parseStretch(rest[1:], &z.Left, &z.Right); err != nil {
			return z, err
		}
	}
	return z, nothingElse(rest, zoneRow)
}

// parseStretch reads "180 to 260"; either end may be open.
func parseStretch(words []string, from, to *float64) ([]string, error) {
	if len(words) < 3 || words[1] != "to" {
		return nil, fmt.Errorf("no stretch from one number to another; such as: %s", zoneRow)
	}
	for i, end := range []*float64{from, to} {
		if word := words[2*i]; word != open {
			x, err := parseNumber(word)
			if err != nil {
				return nil, fmt.Errorf("%w; allowed: a number or %s", err, open)
			}
			*end = x
		}
	}
	return words[3:], nil
}

// Rows writes the rows of a picture as ParseRows reads them, a line each. Par and
// length are the card's and not among them.
func (p Picture) Rows() string {
	var b strings.Builder
	for _, x := range p.Bends {
		side, degrees := "right", x.Degrees
		if degrees < 0 {
			side, degrees = "left", -degrees
		}
		fmt.Fprintf(&b, "bend %s: %s %s\n", plain(x.At), plain(degrees), side)
	}
	for _, w := range p.Fairway {
		fmt.Fprintf(&b, "fairway %s: %s left, %s right\n", plain(w.At), plain(w.Left), plain(w.Right))
	}
	for _, z := range p.Zones {
		fmt.Fprintf(&b, "%s\n", z)
	}
	if g := p.Green; g.Drawn() {
		fmt.Fprintf(&b, "green %s: %s wide, %s deep", plain(g.Front), plain(g.Width), plain(g.Depth))
		if g.Turn != 0 {
			fmt.Fprintf(&b, ", turned %s", plain(g.Turn))
		}
		b.WriteString("\n")
	}
	return b.String()
}

// String writes the zone as its row.
func (z Zone) String() string {
	row := fmt.Sprintf("%s %s to %s", z.Kind, openOr(z.From), openOr(z.To))
	if math.IsInf(z.Left, -1) && math.IsInf(z.Right, 1) {
		return row
	}
	return fmt.Sprintf("%s, across %s to %s", row, openOr(z.Left), openOr(z.Right))
}

// openOr is an end of a zone as its row has it.
func openOr(x float64) string {
	if math.IsInf(x, 0) {
		return open
	}
	return plain(x)
}
