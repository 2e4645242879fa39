package statement

import (
	"fmt"
	"math"
	"slices"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// HoleLine is a hole in the list of all, with what it opens to.
type HoleLine struct {
	ID      string // of the hole on the page
	Number  string
	Par     string
	Length  string // with its unit
	Mark    components.Mark
	Bar     figures.CostBar
	Lost    string     // strokes, signed, one decimal
	Balance string     // strokes lost so far, signed, one decimal
	Carried string     // that balance at the turn; empty elsewhere
	Heading string     // number, par and length
	Change  string     // address that edits the hole; empty for a coach
	Clubs   string     // address that adds clubs and notes to its shots
	Shots   []HoleShot // none when only the score is known
	Sum     string     // what the shots lost together, signed, two decimals; empty without shots
	Shared  string     // why the line is not that sum rounded to a tenth; usually empty
	Working string     // how its loss comes about
	Total   string     // the strokes taken, in words
	Alone   bool       // only its score is known
	Open    bool       // shown open: it cost a stroke or more, and its shots are not told as a double; for a coach, who writes about them, then too
	Write   *NoteForm  // where somebody writes about the hole; nil when nobody would read it
	Notes   []HoleNote // on the hole
}

// HoleShot is a shot of a hole.
type HoleShot struct {
	figures.ShotRow
	Write string // address that writes about the shot; empty when nobody would read it
}

// voucher is that of what the shot lost.
func (s HoleShot) voucher() figures.Voucher {
	return figures.Voucher{Name: "shot " + s.Number, Working: s.Working}
}

// voucher is that of what the hole lost.
func (h HoleLine) voucher() figures.Voucher {
	return figures.Voucher{Name: "hole " + h.Number, Working: h.Working}
}

// holeLines are the holes entered, shot by shot.
func holeLines(in RoundInput, amounts holeAmounts) []HoleLine {
	doubles := map[int]account.Double{}
	for _, d := range in.Account.Doubles {
		doubles[d.Hole] = d
	}
	var all []HoleLine
	order := byNumber(in.Account.Holes)
	for at, i := range order {
		h := in.Account.Holes[i]
		o := newHoleLine(in, i, amounts)
		if in.Coached {
			o.Write = newHoleForm(in, i, doubles[h.Number].Root)
			o.Open = o.Open || o.Write.Open
		}
		for k := range h.Shots {
			row := HoleShot{ShotRow: figures.NewShotRow(figures.ShotInput{Units: in.Units, Hole: in.Round.Holes[i], Worth: h, Number: k + 1, Double: doubles[h.Number], Of: in.Of})}
			if in.Coached {
				row.Write = in.Whose.Write(in.ID, h.Number, k+1)
			}
			o.Shots = append(o.Shots, row)
		}
		if at+1 < len(order) && half(h.Number) == 0 && half(in.Account.Holes[order[at+1]].Number) == 1 {
			o.Carried = o.Balance
		}
		all = append(all, o)
	}
	return all
}

// newHoleLine is the i-th hole entered, without its shots.
func newHoleLine(in RoundInput, i int, amounts holeAmounts) HoleLine {
	h, played := in.Account.Holes[i], in.Round.Holes[i]
	length, lost := words.Distance(golf.Tee, played.Length(), in.Units), amounts.lost[h.Number]
	o := HoleLine{ID: fmt.Sprintf("h%d", h.Number), Number: fmt.Sprint(h.Number), Par: fmt.Sprint(h.Par), Length: length, Mark: scoreOf(h), Bar: figures.HoleCost(lost),
		Lost: words.Signed(lost, 1), Balance: words.Signed(amounts.balance[h.Number], 1), Heading: fmt.Sprintf("Hole %d, par %d, %s", h.Number, h.Par, length),
		Clubs: paths.Shots(in.ID, h.Number), Alone: !h.Detailed, Open: h.Lost >= 1 && (in.Of != "" || !told(in, h.Number)), Total: holeTotal(played, h), Working: holeWorking(h), Notes: notesOn(in, h.Number)}
	exact := figures.ScoreLost(h)
	if len(h.Shots) > 0 {
		exact = figures.WorkingOf(h.Shots...).Lost()
		o.Sum = words.Signed(exact, 2)
	}
	o.Shared = figures.SharedOut(exact, lost)
	if in.Of == "" {
		o.Change = paths.Hole(in.ID, h.Number)
	}
	return o
}

// told reports whether the shots of a hole stand on the page as the story of a
// double.
func told(in RoundInput, hole int) bool {
	return slices.ContainsFunc(in.Account.Doubles, func(d account.Double) bool { return d.Hole == hole && d.Kind != account.Unknown })
}

// holeWorking shows how the loss of a hole comes about.
func holeWorking(h account.Hole) string {
	if len(h.Shots) > 0 {
		w := figures.OfHole(h.Shots)
		if more := roundedUp(h); more != 0 {
			w += fmt.Sprintf("; counting %d for it: %s", h.Whole, words.Signed(figures.WorkingOf(h.Shots...).Lost()+more, 2))
		}
		return w
	}
	return figures.OfScore(h)
}

// holeTotal says how many strokes the hole took, and how it ended.
func holeTotal(played golf.Hole, h account.Hole) string {
	switch {
	case !h.Detailed:
		return fmt.Sprintf("A score of %d, without shots", played.ScoreOnly)
	case h.PickedUp:
		return fmt.Sprintf("Picked up after %s; counts as %d", words.Plural(played.Strokes(), "stroke", "strokes"), h.Whole)
	default:
		return fmt.Sprintf("Holed in %d", played.Strokes())
	}
}

// doubles fills in the stories of the doubles, and what compounding cost.
func (s *RoundPage) doubles(in RoundInput) {
	compounding, followed := 0.0, 0
	for _, d := range in.Account.Doubles {
		compounding += d.Compounding
		if d.Compounding > 0 {
			followed += len(d.Chain) - 1
		}
		s.Doubles = append(s.Doubles, figures.NewDoubleStory(figures.StoryInput{Round: in.Round, Account: in.Account, Target: in.Target, Units: in.Units, Of: in.Of}, d))
	}
	if compounding > 0 {
		s.Verdict = fmt.Sprintf("One mistake led to the next, and the %s cost %s. %s.",
			words.OneOrMany(followed, "second one", "later ones"), words.Signed(compounding, 2), advice(in))
		s.Without = words.Plain(math.Round(in.Account.Score - compounding))
	}
	if followed == 1 { // the verdict says it
		for i := range s.Doubles {
			s.Doubles[i].Note = ""
		}
	}
	s.missed(in)
}

// MissedPutt is a putt of 6 ft or less that was missed on the way to a double.
type MissedPutt struct {
	Hole   string
	At     string // place of the putt on the page
	Length string
	Lost   string // strokes, signed, two decimals
	Keeps  string // strokes that it keeps when holed, which the golfer compared with needs from there beyond one
}

// fewMissed is how many missed putts are said in a sentence; more are a table.
const fewMissed = 2

// missed fills in the short putts missed on the way to a double.
func (s *RoundPage) missed(in RoundInput) {
	for _, d := range in.Account.Doubles {
		i := slices.IndexFunc(in.Round.Holes, func(h golf.Hole) bool { return h.Number == d.Hole })
		for _, shot := range d.Missed {
			worth := in.Account.Holes[i].Shots[shot-1]
			s.Missed = append(s.Missed, MissedPutt{fmt.Sprintf("Hole %d", d.Hole), paths.Shot(d.Hole, shot),
				words.Distance(golf.Green, in.Round.Holes[i].Shots[shot-1].Distance, in.Units), words.Signed(figures.WorkingOf(worth).Lost(), 2), fmt.Sprintf("%.2f", worth.Expected-1)})
		}
	}
	if len(s.Missed) <= fewMissed {
		s.MissedFew, s.Missed = s.Missed, nil
	}
}

// Trouble links to a round's doubles, and to the shots where they began.
type Trouble struct {
	Doubles []components.Link // by the number of the hole
	Roots   []components.Link // by hole and shot; a double without a root has none
}

// manyDoubles is how many doubles a player needs links to walk through; a coach
// has them for any.
const manyDoubles = 4

func trouble(in RoundInput) Trouble {
	var t Trouble
	if in.Of == "" && len(in.Account.Doubles) < manyDoubles {
		return t
	}
	for _, d := range in.Account.Doubles {
		t.Doubles = append(t.Doubles, components.Link{Name: fmt.Sprint(d.Hole), At: fmt.Sprintf("#h%d", d.Hole)})
		if d.Root > 0 {
			t.Roots = append(t.Roots, components.Link{Name: fmt.Sprintf("hole %d, shot %d", d.Hole, d.Root), At: paths.Shot(d.Hole, d.Root)})
		}
	}
	return t
}
