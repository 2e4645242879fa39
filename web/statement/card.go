package statement

import (
	"fmt"
	"math"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/words"
)

// Nine is half a card, with a column for each hole.
type Nine struct {
	Title   string // for a screen reader
	Sum     string // heads the column of sums: Out or In
	Unit    string // of the lengths
	Holes   []CardColumn
	Length  string // of all its holes, a whole number
	Par     string
	Score   string // of the holes entered
	Lost    string // on the holes entered, signed, one decimal
	Heights Heights
}

// CardColumn is one hole of a card.
type CardColumn struct {
	Number string
	At     string // place of the hole on the page; empty when not entered
	Length string // a whole number
	Par    string
	Mark   components.Mark // its score
	Lost   string          // signed, one decimal; empty when not entered
	Stack  []Block         // what each part of the game lost or won back
}

// Heights are places that all pictures of a nine share, in pixels from the top.
type Heights struct {
	Zero     string // nothing lost
	One      string // one stroke lost
	MinusOne string // one stroke won back
}

// Block is one part of the game in the picture of a hole.
type Block struct {
	Class  string // colour of the part, and w where strokes were won back
	Y      string // its top, pixels
	Height string // pixels
}

// The picture of a hole is 130 px high. Its axis leaves more room above, where
// strokes are lost.
const (
	columnHeight = 130.0
	columnZero   = 80.0
	columnReach  = 70.0 // px above the axis
)

// nines is the card, drawn to one scale.
func nines(in RoundInput) []Nine {
	accounts := map[int]account.Hole{}
	most := 1.0
	for _, h := range in.Account.Holes {
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
		for _, h := range in.Card {
			if (h.Number > 9) == (half == 1) {
				holes = append(holes, h)
			}
		}
		if len(holes) > 0 {
			all = append(all, newNine(half, holes, accounts, px, in))
		}
	}
	return all
}

func newNine(half int, holes []golf.CardHole, accounts map[int]account.Hole, px float64, in RoundInput) Nine {
	n := Nine{Title: [...]string{"The front nine", "The back nine"}[half], Sum: [...]string{"Out", "In"}[half], Unit: words.Unit(in.Units.Far),
		Heights: Heights{pixels(columnZero), pixels(columnZero - px), pixels(columnZero + px)}}
	yards, par, score, lost := 0.0, 0, 0.0, 0.0
	for _, h := range holes {
		c := CardColumn{Number: fmt.Sprint(h.Number), Length: words.Plain(math.Round(in.Units.Far.In(h.Length))), Par: fmt.Sprint(h.Par), Mark: components.Mark{Class: "no-mark", Said: "not entered"}}
		yards += in.Units.Far.In(h.Length)
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
	n.Length, n.Par, n.Score, n.Lost = fmt.Sprintf("%.0f", yards), fmt.Sprint(par), words.Plain(score), words.Signed(lost, 1)
	return n
}

// byPart is what each part of the game lost on a hole.
func byPart(h account.Hole) [golf.Putting + 1]float64 {
	var sums [golf.Putting + 1]float64
	for _, s := range h.Shots {
		sums[s.Band.Category] += s.Lost
	}
	return sums
}

// stack piles the parts of a hole outward from the axis: lost up, won back down.
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
