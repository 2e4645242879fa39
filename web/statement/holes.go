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
	ID      string
	Heading string
	Change  string // address at which it is entered
	Say     string // address at which more is said of its shots
	Shots   []figures.ShotRow
	Before  string
	Lost    string
	Total   string // strokes in words
	Alone   bool   // known by its score alone
	Open    bool   // shown opened: a hole that cost a stroke or more
	Write   []components.Link
	Notes   []components.Link // what is written about the hole
}

func openHoles(q RoundInput) []OpenHole {
	doubles := map[int]account.Double{}
	for _, d := range q.Account.Doubles {
		doubles[d.Hole] = d
	}
	var all []OpenHole
	for i, h := range q.Account.Holes {
		played := q.Round.Holes[i]
		o := OpenHole{ID: fmt.Sprintf("h%d", h.Number), Change: paths.Hole(q.ID, h.Number), Say: paths.Shots(q.ID, h.Number), Alone: !h.Detailed,
			Heading: fmt.Sprintf("Hole %d, par %d, %s", h.Number, h.Par, words.Distance(golf.Tee, played.Length(), q.Units)), Lost: words.Signed(h.Lost, 2), Open: h.Lost >= 1,
			Before: fmt.Sprintf("%.2f", h.Score-h.Lost), Total: holeTotal(played, h)}
		if q.Of != "" {
			o.Change = ""
		}
		o.Notes = notesOn(q, h.Number)
		if q.Coached {
			o.Write = []components.Link{{Name: "this hole", At: q.Whose.Write(q.ID, fmt.Sprint(h.Number))}}
			for k := range h.Shots {
				o.Write = append(o.Write, components.Link{Name: fmt.Sprintf("shot %d", k+1), At: q.Whose.Write(q.ID, fmt.Sprintf("%d.%d", h.Number, k+1))})
			}
		}
		for k, s := range h.Shots {
			o.Shots = append(o.Shots, figures.NewShotRow(q.Units, h.Number, k, played.Shots[k], s, doubles[h.Number]))
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
		return fmt.Sprintf("Picked up after %s, counts as %.2f", words.Plural(played.Strokes(), "stroke", "strokes"), h.Score)
	default:
		return fmt.Sprintf("Holed in %d", played.Strokes())
	}
}

func (s *RoundPage) doubles(q RoundInput) {
	compounding := 0.0
	for _, d := range q.Account.Doubles {
		compounding += d.Compounding
		s.Doubles = append(s.Doubles, figures.NewDoubleStory(figures.StoryInput{Round: q.Round, Account: q.Account, Target: q.Target, Units: q.Units}, d))
	}
	if compounding > 0 {
		s.Verdict = fmt.Sprintf("One mistake led to the next, and the second ones cost %s. A plain shot back into play after the first keeps such a hole to a bogey.", words.Signed(compounding, 2))
		s.Without = words.Plain(math.Round(q.Account.Score - compounding))
	}
}

// MissedPutt is a putt of 6 ft or less that was missed on the way to a double.
type MissedPutt struct{ Hole, At, Length, Lost string }

func missedPutts(q RoundInput) []MissedPutt {
	var all []MissedPutt
	for _, d := range q.Account.Doubles {
		i := slices.IndexFunc(q.Round.Holes, func(h golf.Hole) bool { return h.Number == d.Hole })
		for _, shot := range d.Missed {
			all = append(all, MissedPutt{fmt.Sprintf("Hole %d", d.Hole), paths.Shot(d.Hole, shot),
				words.Distance(golf.Green, q.Round.Holes[i].Shots[shot-1].Distance, q.Units), words.Signed(q.Account.Holes[i].Shots[shot-1].Lost, 2)})
		}
	}
	return all
}

// Trouble leads along a round's doubles, and to the shots where they began.
type Trouble struct{ Doubles, Roots []components.Link }

func trouble(q RoundInput) Trouble {
	var t Trouble
	for _, d := range q.Account.Doubles {
		t.Doubles = append(t.Doubles, components.Link{Name: fmt.Sprint(d.Hole), At: fmt.Sprintf("#h%d", d.Hole)})
		if d.Root > 0 {
			t.Roots = append(t.Roots, components.Link{Name: fmt.Sprintf("hole %d, shot %d", d.Hole, d.Root), At: paths.Shot(d.Hole, d.Root)})
		}
	}
	return t
}
