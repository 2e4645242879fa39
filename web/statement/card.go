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
	Score   string     // of the holes entered
	Lost    string     // on the holes entered, signed, one decimal
	Balance string     // after its last hole entered; as of Lost, with the nine before it
	Last    string     // the number of that hole
	Carried string     // that balance, where the other nine goes on from it; empty otherwise
	Parts   []NinePart // what each part of the game lost on it; together they are Lost
	Heights Heights
}

// NinePart is what a part of the game lost on a nine.
type NinePart struct {
	Name   string
	Class  string // colour of the part
	Amount string // strokes, signed, one decimal
}

// CardColumn is one hole of a card.
type CardColumn struct {
	Number  string
	At      string // place of the hole on the page; empty when not entered
	Length  string // a whole number
	Par     string
	Mark    components.Mark // its score
	Lost    string          // signed, one decimal; empty when not entered
	Balance string          // strokes lost so far, signed, one decimal; empty when not entered
	Next    string          // number of the hole whose balance goes on from it; empty for none
	Stack   []Block         // what each part of the game lost or won back
	Net     string          // where the sum of the hole stands, pixels from the top; empty where it is not to be drawn
	Cuts    []string        // where its stack leaves the picture, pixels from the top
}

// Heights are places that all pictures of all cards share, in pixels from the top.
type Heights struct {
	Zero     string // nothing lost
	One, Two string // one stroke and two lost
	MinusOne string // one stroke won back
}

// Block is one part of the game in the picture of a hole.
type Block struct {
	Class  string // colour of the part, and won-block where strokes were won back
	Y      string // its top, pixels
	Height string // pixels
}

// The picture of a hole is 124 px high, 24 px a stroke on every card: from three
// strokes lost to two won back.
const (
	cardHeight = 124.0
	cardZero   = 74.0
	cardStroke = 24.0
)

// nines is the card; lines are the printed lines of the account, by name.
func nines(in RoundInput, amounts holeAmounts, lines map[string]float64) []Nine {
	accounts := map[int]account.Hole{}
	for _, h := range in.Account.Holes {
		accounts[h.Number] = h
	}
	parts := partAmounts(in, lines, amounts)
	var all []Nine
	for side := range 2 {
		var holes []golf.CardHole
		for _, h := range in.Card {
			if half(h.Number) == side {
				holes = append(holes, h)
			}
		}
		if len(holes) > 0 {
			n := newNine(side, holes, accounts, amounts, in)
			n.Parts = nineParts(parts[side])
			all = append(all, n)
		}
	}
	if len(all) == 2 && all[1].Balance != "" {
		all[0].Carried = all[0].Balance
	}
	goOn(all)
	return all
}

// goOn names for each hole entered the one whose balance goes on from it.
func goOn(all []Nine) {
	var before *CardColumn
	for i := range all {
		for k := range all[i].Holes {
			if c := &all[i].Holes[k]; c.Balance != "" {
				if before != nil {
					before.Next = c.Number
				}
				before = c
			}
		}
	}
}

func newNine(side int, holes []golf.CardHole, accounts map[int]account.Hole, amounts holeAmounts, in RoundInput) Nine {
	n := Nine{Title: [...]string{"The front nine", "The back nine"}[side], Sum: [...]string{"Out", "In"}[side], Unit: words.Unit(in.Units.Far),
		Heights: Heights{pixels(cardZero), pixels(cardZero - cardStroke), pixels(cardZero - 2*cardStroke), pixels(cardZero + cardStroke)}}
	yards, par, score, lost, lifted := 0.0, 0, 0.0, 0.0, false
	for _, h := range holes {
		c := CardColumn{Number: fmt.Sprint(h.Number), Length: words.Plain(math.Round(in.Units.Far.In(h.Length))), Par: fmt.Sprint(h.Par), Mark: components.Mark{Class: "no-mark", Said: "not entered"}}
		yards += math.Round(in.Units.Far.In(h.Length)) // as printed
		par += h.Par
		if a, entered := accounts[h.Number]; entered {
			c.enter(a, amounts)
			score, lifted = score+a.Score, lifted || a.PickedUp
			lost += amounts.lost[h.Number]
			n.Balance, n.Last = c.Balance, c.Number
		}
		n.Holes = append(n.Holes, c)
	}
	n.Length, n.Par, n.Score, n.Lost = fmt.Sprintf("%.0f", yards), fmt.Sprint(par), words.Score(score, lifted), words.Signed(lost, 1)
	return n
}

// enter fills in what is known of a hole that was played.
func (c *CardColumn) enter(a account.Hole, amounts holeAmounts) {
	c.Mark = scoreOf(a)
	c.At = fmt.Sprintf("#h%d", a.Number)
	c.Lost, c.Balance = words.Signed(amounts.lost[a.Number], 1), words.Signed(amounts.balance[a.Number], 1)
	c.Stack, c.Cuts = stack(a)
	if y := cardZero - a.Lost*cardStroke; y >= 0 && y <= cardHeight && a.Detailed {
		c.Net = pixels(y)
	}
}

// scoreOf marks the score of a hole, in brackets when it was picked up.
func scoreOf(a account.Hole) components.Mark {
	return components.MarkOf(a.Whole, a.Par, words.Score(float64(a.Whole), a.PickedUp))
}

// partClasses are the colours of the lines in stacks.
var partClasses = map[string]string{"Tee": "tee-block", "Approach": "approach-block", "Short game": "short-game-block", "Putting": "putting-block"}

// nineParts lists the parts that lost or won back anything on a nine.
func nineParts(amounts map[string]float64) []NinePart {
	var all []NinePart
	for _, name := range lineNames {
		if math.Abs(amounts[name]) > .01 {
			class := partClasses[name]
			if amounts[name] < 0 && class != "" {
				class += " won-block"
			}
			all = append(all, NinePart{name, class, words.Signed(amounts[name], 1)})
		}
	}
	return all
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
// What leaves the picture is cut.
func stack(h account.Hole) (all []Block, cuts []string) {
	up, down := cardZero-1, cardZero+1
	sums := byPart(h)
	for _, c := range golf.Categories {
		class, height := partClasses[partName(c)], math.Abs(sums[c])*cardStroke
		switch {
		case height < .5:
		case sums[c] > 0:
			top := max(up-height, 0)
			if up > top {
				all = append(all, Block{Class: class, Y: pixels(top), Height: pixels(up - top)})
			}
			if up-height < 0 && len(cuts) == 0 {
				cuts = append(cuts, pixels(8))
			}
			up = top
		default:
			end := min(down+height, cardHeight)
			if end > down {
				all = append(all, Block{Class: class + " won-block", Y: pixels(down), Height: pixels(end - down)})
			}
			down += height
		}
	}
	if down > cardHeight {
		cuts = append(cuts, pixels(cardHeight-8))
	}
	return all, cuts
}

func pixels(x float64) string { return fmt.Sprintf("%.1f", x) }
