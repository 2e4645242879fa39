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

// OpenHole is a hole with every shot.
type OpenHole struct {
	ID      string // of the hole on the page
	Heading string // number, par and length
	Change  string // address that edits the hole; empty for a coach
	Clubs   string // address that adds clubs and notes to its shots
	Shots   []figures.ShotRow
	Before  string            // strokes expected from the tee, two decimals
	Lost    string            // on the hole, signed, two decimals
	Total   string            // the strokes taken, in words
	Alone   bool              // only its score is known
	Open    bool              // shown open: it cost a stroke or more
	Write   []components.Link // to write about the hole or a shot; none when nobody would read it
	Notes   []components.Link // to the notes on the hole
}

// openHoles are the holes entered, shot by shot.
func openHoles(in RoundInput) []OpenHole {
	doubles := map[int]account.Double{}
	for _, d := range in.Account.Doubles {
		doubles[d.Hole] = d
	}
	var all []OpenHole
	for i, h := range in.Account.Holes {
		played := in.Round.Holes[i]
		o := OpenHole{ID: fmt.Sprintf("h%d", h.Number), Change: paths.Hole(in.ID, h.Number), Clubs: paths.Shots(in.ID, h.Number), Alone: !h.Detailed,
			Heading: fmt.Sprintf("Hole %d, par %d, %s", h.Number, h.Par, words.Distance(golf.Tee, played.Length(), in.Units)), Lost: words.Signed(h.Lost, 2), Open: h.Lost >= 1,
			Before: fmt.Sprintf("%.2f", h.Score-h.Lost), Total: holeTotal(played, h)}
		if in.Of != "" {
			o.Change = ""
		}
		o.Notes = notesOn(in, h.Number)
		if in.Coached {
			o.Write = []components.Link{{Name: "this hole", At: in.Whose.Write(in.ID, fmt.Sprint(h.Number))}}
			for k := range h.Shots {
				o.Write = append(o.Write, components.Link{Name: fmt.Sprintf("shot %d", k+1), At: in.Whose.Write(in.ID, fmt.Sprintf("%d.%d", h.Number, k+1))})
			}
		}
		for k, s := range h.Shots {
			o.Shots = append(o.Shots, figures.NewShotRow(figures.ShotInput{Units: in.Units, Hole: h.Number, Number: k + 1, Shot: played.Shots[k], Worth: s, Double: doubles[h.Number]}))
		}
		all = append(all, o)
	}
	return all
}

// holeTotal says how many strokes the hole took, and how it ended.
func holeTotal(played golf.Hole, h account.Hole) string {
	switch {
	case !h.Detailed:
		return fmt.Sprintf("A score of %d, without shots", played.ScoreOnly)
	case h.PickedUp:
		return fmt.Sprintf("Picked up after %s; counts as %.2f", words.Plural(played.Strokes(), "stroke", "strokes"), h.Score)
	default:
		return fmt.Sprintf("Holed in %d", played.Strokes())
	}
}

// doubles fills in the stories of the doubles, and what compounding cost.
func (s *RoundPage) doubles(in RoundInput) {
	compounding := 0.0
	for _, d := range in.Account.Doubles {
		compounding += d.Compounding
		s.Doubles = append(s.Doubles, figures.NewDoubleStory(figures.StoryInput{Round: in.Round, Account: in.Account, Target: in.Target, Units: in.Units}, d))
	}
	if compounding > 0 {
		s.Verdict = fmt.Sprintf("Errors that followed another error cost %s. After the first one, a safe shot back into play would often have saved a bogey.", words.Signed(compounding, 2))
		s.Without = words.Plain(math.Round(in.Account.Score - compounding))
	}
}

// MissedPutt is a putt of 6 ft or less that was missed on the way to a double.
type MissedPutt struct {
	Hole   string
	At     string // place of the putt on the page
	Length string
	Lost   string // strokes, signed, two decimals
}

func missedPutts(in RoundInput) []MissedPutt {
	var all []MissedPutt
	for _, d := range in.Account.Doubles {
		i := slices.IndexFunc(in.Round.Holes, func(h golf.Hole) bool { return h.Number == d.Hole })
		for _, shot := range d.Missed {
			all = append(all, MissedPutt{fmt.Sprintf("Hole %d", d.Hole), paths.Shot(d.Hole, shot),
				words.Distance(golf.Green, in.Round.Holes[i].Shots[shot-1].Distance, in.Units), words.Signed(in.Account.Holes[i].Shots[shot-1].Lost, 2)})
		}
	}
	return all
}

// Trouble links to a round's doubles, and to the shots where they began.
type Trouble struct {
	Doubles []components.Link // by the number of the hole
	Roots   []components.Link // by hole and shot; a double without a root has none
}

func trouble(in RoundInput) Trouble {
	var t Trouble
	for _, d := range in.Account.Doubles {
		t.Doubles = append(t.Doubles, components.Link{Name: fmt.Sprint(d.Hole), At: fmt.Sprintf("#h%d", d.Hole)})
		if d.Root > 0 {
			t.Roots = append(t.Roots, components.Link{Name: fmt.Sprintf("hole %d, shot %d", d.Hole, d.Root), At: paths.Shot(d.Hole, d.Root)})
		}
	}
	return t
}
