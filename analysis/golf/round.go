package golf

import "strconv"

// Round is one player's round, with as many holes as were played.
type Round struct {
	ID     string // any text that no other round of the player has
	Date   Date
	Player string // may be empty
	Course string // may be empty
	Tee    string // the tees played from, may be empty
	Holes  []Hole // in playing order
}

// Par returns the par of the holes played.
func (r Round) Par() int {
	par := 0
	for _, h := range r.Holes {
		par += h.Par
	}
	return par
}

// TargetOf returns the target of the holes played when the target of 18 holes
// is target. par18 is the par of the whole course; 0 takes it as 72.
func (r Round) TargetOf(target float64, par18 int) float64 {
	return TargetOver(r.Card(), target, par18)
}

// TargetOver returns the target of the holes of a card when the target of 18
// holes is target: par of those holes + (target - par of the 18) * n / 18.
// par18 is the par of the whole course; 0 takes it as 72.
func TargetOver(card []CardHole, target float64, par18 int) float64 {
	if par18 == 0 {
		par18 = StandardPar
	}
	par := 0
	for _, h := range card {
		par += h.Par
	}
	return float64(par) + (target-float64(par18))*float64(len(card))/holesInFullGame
}

// CardHole is a hole as a scorecard prints it.
type CardHole struct {
	Number int
	Par    int
	Length Distance
	Index  int // stroke index, 1 to 18; 0 where it is not known
}

// Card returns the holes of the round as its scorecard has them.
func (r Round) Card() []CardHole {
	card := make([]CardHole, len(r.Holes))
	for i, h := range r.Holes {
		card[i] = CardHole{Number: h.Number, Par: h.Par, Length: h.Length()}
	}
	return card
}

// Check returns everything about the round that is not allowed: its date, the
// numbers of its holes, and each hole's own problems.
func (r Round) Check() Problems {
	var ps Problems
	if r.Date.IsZero() {
		ps = append(ps, Problem{Field: "date", What: "no day of play", Allowed: "YYYY-MM-DD"})
	}
	if len(r.Holes) == 0 {
		ps = append(ps, Problem{Field: "hole", What: "no hole", Allowed: "1 to 18 holes"})
	}
	seen := make(map[int]bool, len(r.Holes))
	for _, h := range r.Holes {
		if seen[h.Number] {
			ps = append(ps, Problem{Hole: h.Number, Field: "hole", What: "hole comes again",
				Read: strconv.Itoa(h.Number), Allowed: "each hole once"})
		}
		seen[h.Number] = true
		ps = append(ps, h.Check()...)
	}
	return ps
}
