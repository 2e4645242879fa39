package pages

import (
	"fmt"
	"math"
	"slices"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/paths"
)

// OpenHole is a hole with every shot.
type OpenHole struct {
	ID      string
	Heading string
	Change  string // address at which it is entered
	Say     string // address at which more is said of its shots
	Shots   []ShotRow
	Before  string
	Lost    string
	Total   string // strokes in words
	Alone   bool   // known by its score alone
	Open    bool   // shown opened: a hole that cost a stroke or more
	Write   []Preset
	Notes   []Preset // what is written about the hole
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
		o := OpenHole{ID: fmt.Sprintf("h%d", h.Number), Change: paths.Hole(q.ID, h.Number), Say: paths.Shots(q.ID, h.Number), Alone: !h.Detailed,
			Heading: fmt.Sprintf("Hole %d, par %d, %s", h.Number, h.Par, far(golf.Tee, played.Length(), q.Units)), Lost: signed(h.Lost, 2), Open: h.Lost >= 1,
			Before: fmt.Sprintf("%.2f", h.Score-h.Lost), Total: holeTotal(played, h)}
		if q.Of != "" {
			o.Change = ""
		}
		o.Notes = notesOn(q, h.Number)
		if q.Coached {
			o.Write = []Preset{{Name: "this hole", At: q.Whose.Write(q.ID, fmt.Sprint(h.Number))}}
			for k := range h.Shots {
				o.Write = append(o.Write, Preset{Name: fmt.Sprintf("shot %d", k+1), At: q.Whose.Write(q.ID, fmt.Sprintf("%d.%d", h.Number, k+1))})
			}
		}
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
		step := Step{Number: row.Number, Lie: row.Lie, From: row.From, Cost: row.Lost, Tag: row.Tag, Error: s.Error, Root: row.Root, Did: joined(row.Club, played.Shots[k].Miss.String(), played.Shots[k].Word)}
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

// notesOn leads to what is written about a hole.
func notesOn(q Asked, hole int) []Preset {
	var all []Preset
	for _, n := range q.Notes {
		if n.Hole == hole {
			who := n.Author
			if n.Mine {
				who = "you"
			}
			all = append(all, Preset{Name: fmt.Sprintf("%s on %s", who, notePlace(n)), At: "#" + noteID(n.ID)})
		}
	}
	return all
}

// Trouble leads along a round's doubles, and to the shots where they began.
type Trouble struct{ Doubles, Roots []Preset }

func trouble(q Asked) Trouble {
	var t Trouble
	for _, d := range q.Account.Doubles {
		t.Doubles = append(t.Doubles, Preset{Name: fmt.Sprint(d.Hole), At: fmt.Sprintf("#h%d", d.Hole)})
		if d.Root > 0 {
			t.Roots = append(t.Roots, Preset{Name: fmt.Sprintf("hole %d, shot %d", d.Hole, d.Root), At: paths.Shot(d.Hole, d.Root)})
		}
	}
	return t
}
