package statement

import (
	"fmt"
	"math"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/words"
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

func nines(q RoundInput) []Nine {
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

func newNine(half int, holes []golf.CardHole, accounts map[int]account.Hole, px float64, q RoundInput) Nine {
	n := Nine{Title: [...]string{"The front nine", "The back nine"}[half], Sum: [...]string{"Out", "In"}[half], Unit: words.Unit(q.Units.Far),
		Figure: Columns{pixels(columnZero), pixels(columnZero - px), pixels(columnZero + px)}}
	yards, par, score, lost := 0.0, 0, 0.0, 0.0
	for _, h := range holes {
		c := CardColumn{Number: fmt.Sprint(h.Number), Yards: words.Plain(math.Round(q.Units.Far.In(h.Length))), Par: fmt.Sprint(h.Par), Mark: components.Mark{Class: "no-mark", Said: "not entered"}}
		yards += q.Units.Far.In(h.Length)
		par += h.Par
		if a, entered := accounts[h.Number]; entered {
			text := fmt.Sprintf("%.0f", a.Score)
			if a.PickedUp {
				text = "(" + text + ")"
			}
			c.Mark = components.MarkOf(int(math.Round(a.Score)), h.Par, text)
			c.At, c.Lost, c.Stack = fmt.Sprintf("#h%d", h.Number), words.Signed(a.Lost, 1), stack(a, px)
			score += a.Score
			lost += a.Lost
		}
		n.Holes = append(n.Holes, c)
	}
	n.Yards, n.Par, n.Score, n.Lost = fmt.Sprintf("%.0f", yards), fmt.Sprint(par), words.Plain(score), words.Signed(lost, 1)
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
	classes := map[golf.Category]string{golf.TeeShots: "tee-block", golf.Approach: "approach-block", golf.ShortGame: "short-game-block", golf.Putting: "putting-block"}
	up, down := columnZero-1, columnZero+1
	var all []Block
	sums := byPart(h)
	for _, c := range golf.Categories {
		switch height := math.Abs(sums[c]) * px; {
		case height < .5:
		case sums[c] > 0:
			up -= height
			all = append(all, Block{Class: classes[c], Y: pixels(up), Height: pixels(height)})
		default:
			all = append(all, Block{Class: classes[c] + " won-block", Y: pixels(down), Height: pixels(height)})
			down += height
		}
	}
	return all
}

func pixels(x float64) string { return fmt.Sprintf("%.1f", x) }
