package play

import (
	"fmt"
	"math"
	"strings"

	"strokeledger/analysis/aim"
	"strokeledger/web/components"
	"strokeledger/web/words"
)

// ApproachView is the shot at the green.
type ApproachView struct {
	Lede   string
	From   string
	Map    Map
	Flags  []components.Link // nine places, back row first
	Sides  []SideRow
	Shares []ShareRow
	Short  string // how many of a hundred balls end on the short side
}

// SideRow is what a miss on a side costs.
type SideRow struct{ Name, Cost string }

// FlagKey is a place of the flag as an address has it.
func FlagKey(place aim.FlagPlace) string { return place.Row + "-" + place.Side }

// FlagAt is where the hole is cut at a place of an address; nil for the middle and for
// what is no place.
func FlagAt(p aim.Picture, key string) *aim.Flag {
	for _, place := range aim.FlagPlaces {
		if FlagKey(place) == key && p.Green.Drawn() {
			flag := p.Green.At(place)
			return &flag
		}
	}
	return nil
}

// approachLede is the sentence of a shot at the green.
func approachLede(m measure, a aim.Approach) string {
	if !matters(saved(a.Flag.Cost, a.Best.Cost)) {
		return fmt.Sprintf("The aim hardly matters here: at the flag costs %s strokes, and no aim saves %s or more.", strokes(a.Flag.Cost), strokes(aim.MattersFrom))
	}
	return fmt.Sprintf("Aim %s: %s strokes. At the flag: %s.", m.ofFlag(a.Best), strokes(a.Best.Cost), strokes(a.Flag.Cost))
}

func newApproachView(m measure, in HoleInput, a aim.Approach) *ApproachView {
	v := &ApproachView{Lede: approachLede(m, a), Shares: shareRows(a.Best.Shares, a.Flag.Shares), Flags: flagLinks(in)}
	v.From = fmt.Sprintf("From %s, %s.", m.distance(a.From.Length), strings.ToLower(words.Capital(a.From.Lie.String())))
	best, flag := a.Best.Shares.ShortSided, a.Flag.Shares.ShortSided
	if max(best, flag) >= .005 {
		v.Short = fmt.Sprintf("Short-sided %s in 100, against %.0f when aiming at the flag.", words.Plural(int(math.Round(100*best)), "time", "times"), math.Round(100*flag))
	}
	if len(a.Safe) > 0 {
		v.Short += " Safe: " + sides(a.Safe) + "."
	}
	v.Short = strings.TrimSpace(v.Short + " " + in.safeTaken())
	for _, s := range a.Misses {
		v.Sides = append(v.Sides, SideRow{capital(s.Side.String()), strokes(s.Strokes)})
	}
	if in.Picture.Green.Drawn() {
		v.Map = newGreenMap(in, a)
	}
	return v
}

// flagLinks are the nine places of the flag, as the player sees them: the back row
// first.
func flagLinks(in HoleInput) []components.Link {
	var all []components.Link
	for _, row := range []string{"back", "middle", "front"} {
		for _, side := range []string{"left", "middle", "right"} {
			key := row + "-" + side
			name := capital(row + " " + side)
			if row == "middle" && side == "middle" {
				name = "Middle"
			}
			here := key == in.Flag || in.Flag == "" && key == "middle-middle"
			all = append(all, components.Link{Name: name, At: in.Whose.HolePlan(in.Course, in.Hole.Number, key), Here: here})
		}
	}
	return all
}

// greenAround is how much country is shown around a green, in yards.
const greenAround = 22

// newGreenMap draws the green with its surroundings and the two aims.
func newGreenMap(in HoleInput, a aim.Approach) Map {
	d := NewMap("green-map", fmt.Sprintf("The green of hole %d from above, with the aim and the flag. Half of the well-struck balls end inside the inner ring, nine in ten inside the outer.", in.Hole.Number), in.Picture)
	m := in.Picture.Map()
	low, high := aim.Point{X: math.Inf(1), Y: math.Inf(1)}, aim.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, p := range m.GreenOutline() {
		low, high = aim.Point{X: min(low.X, p.X), Y: min(low.Y, p.Y)}, aim.Point{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
	}
	d.ViewBox = fmt.Sprintf("%s %s %s %s", tenth(low.X-greenAround), tenth(-high.Y-greenAround), tenth(high.X-low.X+2*greenAround), tenth(high.Y-low.Y+2*greenAround))
	d.Small, d.Ticks, d.Says, d.Centre, d.Tee = true, nil, nil, "", ""
	flag := a.Flag.Target
	d.Pin = fmt.Sprintf("M%s %sv-5l3 1.2-3 1.2", tenth(flag.X), tenth(-flag.Y))
	d.Patterns = []Rings{ringsOf(straightClass(false), a.From.Place, a.Flag, 1.5), ringsOf(straightClass(true), a.From.Place, a.Best, 1.5)}
	return d
}
