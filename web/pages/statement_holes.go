package pages

import (
	"fmt"
	"math"
	"slices"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/chart"
	"strokeledger/web/components"
	"strokeledger/web/paths"
)

// Nine is half a card, with a column a hole.
type Nine struct {
	Title  string // for who cannot see it
	Sum    string // Out or In
	Unit   string // of the lengths
	Holes  []CardColumn
	Yards  string
	Par    string
	Score  string
	Lost   string
	Figure Columns
}

// CardColumn is one hole of a card.
type CardColumn struct {
	Number string
	At     string // address of the hole below, empty when not entered
	Yards  string
	Par    string
	Mark   components.Mark
	Lost   string
	Stack  []Block
}

// Columns are the places shared by the pictures of a card, in pixels.
type Columns struct{ Zero, One, MinusOne string }

// Block is one part of a hole's losses, stacked outward from the axis.
type Block struct{ Class, Y, Height string }

// The picture of a hole is 130 px high, with the axis where both ends fit.
const (
	columnHeight = 130.0
	columnZero   = 80.0
	columnReach  = 70.0 // px above the axis
)

func nines(q Asked) []Nine {
	accounts := map[int]account.Hole{}
	most := 1.0
	for _, h := range q.Account.Holes {
		accounts[h.Number] = h
		lost, won := 0.0, 0.0
		for _, x := range byPart(h) {
			lost, won = lost+max(x, 0), won+max(-x, 0)
		}
		most = max(most, lost, won*columnReach/(columnHeight-columnZero-10))
	}
	px := min(44, columnReach/most)
	var all []Nine
	for half := range 2 {
		var holes []golf.CardHole
		for _, h := range q.Card {
			if (h.Number > 9) == (half == 1) {
				holes = append(holes, h)
			}
		}
		if len(holes) > 0 {
			all = append(all, newNine(half, holes, accounts, px, q))
		}
	}
	return all
}

func newNine(half int, holes []golf.CardHole, accounts map[int]account.Hole, px float64, q Asked) Nine {
	n := Nine{Title: [...]string{"The front nine", "The back nine"}[half], Sum: [...]string{"Out", "In"}[half], Unit: unitWord(q.Units.Far),
		Figure: Columns{pixels(columnZero), pixels(columnZero - px), pixels(columnZero + px)}}
	yards, par, score, lost := 0.0, 0, 0.0, 0.0
	for _, h := range holes {
		c := CardColumn{Number: fmt.Sprint(h.Number), Yards: plain(math.Round(q.Units.Far.In(h.Length))), Par: fmt.Sprint(h.Par), Mark: components.Mark{Class: "none", Said: "not entered"}}
		yards += q.Units.Far.In(h.Length)
		par += h.Par
		if a, entered := accounts[h.Number]; entered {
			text := fmt.Sprintf("%.0f", a.Score)
			if a.PickedUp {
				text = "(" + text + ")"
			}
			c.Mark = components.MarkOf(int(math.Round(a.Score)), h.Par, text)
			c.At, c.Lost, c.Stack = fmt.Sprintf("#h%d", h.Number), signed(a.Lost, 1), stack(a, px)
			score += a.Score
			lost += a.Lost
		}
		n.Holes = append(n.Holes, c)
	}
	n.Yards, n.Par, n.Score, n.Lost = fmt.Sprintf("%.0f", yards), fmt.Sprint(par), plain(score), signed(lost, 1)
	return n
}

func byPart(h account.Hole) [golf.Putting + 1]float64 {
	var sums [golf.Putting + 1]float64
	for _, s := range h.Shots {
		sums[s.Band.Category] += s.Lost
	}
	return sums
}

// stack lays the parts of a hole outward from the axis: lost up, won back down.
func stack(h account.Hole, px float64) []Block {
	classes := map[golf.Category]string{golf.TeeShots: "c-tee", golf.Approach: "c-approach", golf.ShortGame: "c-short", golf.Putting: "c-putting"}
	up, down := columnZero-1, columnZero+1
	var all []Block
	sums := byPart(h)
	for _, c := range golf.Categories {
		switch height := math.Abs(sums[c]) * px; {
		case height < .5:
		case sums[c] > 0:
			up -= height
			all = append(all, Block{classes[c], pixels(up), pixels(height)})
		default:
			all = append(all, Block{classes[c] + " w", pixels(down), pixels(height)})
			down += height
		}
	}
	return all
}

func pixels(x float64) string { return fmt.Sprintf("%.1f", x) }

// OpenHole is a hole with every shot.
type OpenHole struct {
	ID      string
	Heading string
	Change  string // address at which it is entered
	Shots   []ShotRow
	Before  string
	Lost    string
	Total   string // strokes in words
	Alone   bool   // known by its score alone
	Open    bool   // shown opened: a hole that cost a stroke or more
}

// ShotRow is one shot of a hole.
type ShotRow struct {
	ID      string
	Number  string
	Lie     string
	From    string
	Club    string
	CountAs string
	Before  string
	After   string
	Lost    string
	Tag     string // root, linked, error or trouble
	Root    bool
}

func openHoles(q Asked) []OpenHole {
	doubles := map[int]account.Double{}
	for _, d := range q.Account.Doubles {
		doubles[d.Hole] = d
	}
	var all []OpenHole
	for i, h := range q.Account.Holes {
		played := q.Round.Holes[i]
		o := OpenHole{ID: fmt.Sprintf("h%d", h.Number), Change: paths.Hole(q.ID, h.Number), Alone: !h.Detailed,
			Heading: fmt.Sprintf("Hole %d, par %d, %s", h.Number, h.Par, far(golf.Tee, played.Length(), q.Units)), Lost: signed(h.Lost, 2), Open: h.Lost >= 1,
			Before: fmt.Sprintf("%.2f", h.Score-h.Lost), Total: holeTotal(played, h)}
		for k, s := range h.Shots {
			o.Shots = append(o.Shots, shotRow(q, h.Number, k, played.Shots[k], s, doubles[h.Number]))
		}
		all = append(all, o)
	}
	return all
}

func holeTotal(played golf.Hole, h account.Hole) string {
	switch {
	case !h.Detailed:
		return fmt.Sprintf("A score of %d, and no more is known", played.ScoreOnly)
	case h.PickedUp:
		return fmt.Sprintf("Picked up after %s, counts as %.2f", plural(played.Strokes(), "stroke", "strokes"), h.Score)
	default:
		return fmt.Sprintf("Holed in %d", played.Strokes())
	}
}

func shotRow(q Asked, hole, k int, shot golf.Shot, s account.Shot, d account.Double) ShotRow {
	r := ShotRow{ID: fmt.Sprintf("h%d-%d", hole, k+1), Number: fmt.Sprint(k + 1), Lie: shot.Lie.String(), Club: shot.Club,
		From:    fmt.Sprintf("%s %s", capital(shot.Lie.String()), far(shot.Lie, shot.Distance, q.Units)),
		CountAs: capital(s.Band.Category.String()), Before: fmt.Sprintf("%.2f", s.Expected), After: fmt.Sprintf("%.2f", s.After), Lost: signed(s.Lost, 2)}
	if s.After == 0 {
		r.After = "holed"
	}
	if shot.About {
		r.From = "About " + r.From
	}
	switch {
	case shot.GreenKnown:
		r.From += fmt.Sprintf(", %s of green", far(golf.Tee, shot.GreenToWork, q.Units))
	case shot.ShortSided:
		r.From += ", short-sided"
	}
	if shot.Penalty > 0 {
		r.From += ", " + plural(shot.Penalty, "penalty", "penalties")
	}
	switch {
	case d.Root == k+1:
		r.Tag, r.Root = "root", true
	case slices.Contains(d.Chain, k+1):
		r.Tag = "linked"
	case s.Error:
		r.Tag = "error"
	}
	return r
}

// DoubleStory tells how one double came about.
type DoubleStory struct {
	Heading string
	Kind    string
	At      string
	Steps   []Step
	Sums    []Sum
}

// Step is one shot of the story.
type Step struct {
	Number, Lie, From, Cost, Tag, Did string
	Error, Root, Linked               bool
}

// Sum is one figure under a story.
type Sum struct{ Amount, Name string }

func (s *Statement) doubles(q Asked) {
	compounding := 0.0
	for _, d := range q.Account.Doubles {
		compounding += d.Compounding
		s.Doubles = append(s.Doubles, story(q, d))
	}
	if compounding > 0 {
		s.Verdict = fmt.Sprintf("One mistake led to the next, and the second ones cost %s. A plain shot back into play after the first keeps such a hole to a bogey.", signed(compounding, 2))
		s.Without = plain(math.Round(q.Account.Score - compounding))
	}
}

func story(q Asked, d account.Double) DoubleStory {
	st := DoubleStory{Heading: fmt.Sprintf("Hole %d, par %d: %s", d.Hole, d.Par, spelled(d.Score)), Kind: d.Kind.String(), At: fmt.Sprintf("#h%d", d.Hole)}
	i := slices.IndexFunc(q.Round.Holes, func(h golf.Hole) bool { return h.Number == d.Hole })
	hole, played := q.Account.Holes[i], q.Round.Holes[i]
	for k, s := range hole.Shots {
		row := shotRow(q, d.Hole, k, played.Shots[k], s, d)
		step := Step{Number: row.Number, Lie: row.Lie, From: row.From, Cost: row.Lost, Tag: row.Tag, Error: s.Error, Root: row.Root, Did: joined(row.Club, played.Shots[k].Miss.String())}
		if row.Tag == "linked" {
			step.Tag = "linked error"
		}
		if at := slices.Index(d.Chain, k+1); at >= 0 && at < len(d.Chain)-1 && d.Chain[at+1] == k+2 {
			step.Linked = true
		}
		st.Steps = append(st.Steps, step)
	}
	if d.Compounding > 0 {
		st.Sums = append(st.Sums, Sum{signed(d.Compounding, 2), "compounding, judged by the " + plain(q.Target) + " golfer"})
	}
	if d.Kind != account.Unknown {
		st.Sums = append(st.Sums, Sum{signed(d.Lost, 2), "hole"})
	}
	return st
}

// MissedPutt is a putt of 6 ft or less that was missed on the way to a double.
type MissedPutt struct{ Hole, At, Length, Lost string }

func missedPutts(q Asked) []MissedPutt {
	var all []MissedPutt
	for _, d := range q.Account.Doubles {
		i := slices.IndexFunc(q.Round.Holes, func(h golf.Hole) bool { return h.Number == d.Hole })
		for _, shot := range d.Missed {
			all = append(all, MissedPutt{fmt.Sprintf("Hole %d", d.Hole), paths.Shot(d.Hole, shot),
				far(golf.Green, q.Round.Holes[i].Shots[shot-1].Distance, q.Units), signed(q.Account.Holes[i].Shots[shot-1].Lost, 2)})
		}
	}
	return all
}

// emptyBar is a bar that shows nothing but the axis.
var emptyBar = chart.Bar{Empty: true}
