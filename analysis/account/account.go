package account

import (
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
)

// Terms say how a round is judged.
type Terms struct {
	Lens     *expect.Baseline // what each shot is charged against
	Course   float64          // what the course itself costs, see expect.ForTarget
	Fixed    *expect.Baseline // who judges errors, chains and doubles
	Boundary golf.Distance    // where the short game ends
}

// Account is what a round came to. Losses are in strokes; positive is lost,
// negative won back.
type Account struct {
	Holes    []Hole   // in the order of the round
	Score    float64  // not always whole: a picked-up hole has strokes still to come
	Expected float64  // what the lens takes over the holes
	Lost     Split    // Score less Expected, and the course, by part of the game
	Doubles  []Double // in the order of the round; empty without one
	Counts   Counts
}

// PickedUp lists the holes that were picked up.
func (a *Account) PickedUp() []int {
	var all []int
	for _, h := range a.Holes {
		if h.PickedUp {
			all = append(all, h.Number)
		}
	}
	return all
}

// Split is a loss by part of the game, with the two lines that belong to none.
type Split struct {
	Tee, Approach, ShortGame, Putting float64 // strokes
	Undetailed                        float64 // holes known by their score alone
	Course                            float64 // what no level reaches on this course
	PickedUp                          float64 // what rounding picked-up holes changed; 0 unless InWholeStrokes
	Total                             float64 // the sum of the others
}

// Worst returns the part of the game that lost most, the first of equals.
func (s *Split) Worst() golf.Category { return golf.Most(s.Of) }

// Of returns the loss of one part of the game.
func (s *Split) Of(c golf.Category) float64 { return *s.line(c) }

// line is where the loss of a part of the game stands.
func (s *Split) line(c golf.Category) *float64 {
	switch c {
	case golf.TeeShots:
		return &s.Tee
	case golf.Approach:
		return &s.Approach
	case golf.ShortGame:
		return &s.ShortGame
	default:
		return &s.Putting
	}
}

// Add adds another round's split.
func (s *Split) Add(other Split) {
	s.Tee += other.Tee
	s.Approach += other.Approach
	s.ShortGame += other.ShortGame
	s.Putting += other.Putting
	s.Undetailed += other.Undetailed
	s.Course += other.Course
	s.PickedUp += other.PickedUp
	s.Total += other.Total
}

// Hole is the account of one hole.
type Hole struct {
	Number, Par int     // as in the round
	Score       float64 // with the strokes still to come when it was picked up
	Whole       int     // the same as pages count it: rounded
	Lost        float64 // Score less what the lens takes from its tee
	Shots       []Shot  // of the shots played; none when only the score is known
	PickedUp    bool    // the ball was lifted before it was in
	Detailed    bool    // the strokes are known, and not the score alone
}

// Shot is the account of one shot that was played.
type Shot struct {
	Expected float64 // strokes to hole out from where it was played
	After    float64 // the same from where it left the ball, 0 when holed
	Lost     float64 // strokes it cost, penalties included, and After, less Expected
	Band     Band
	Error    bool // it, or the putts of its green together, lost half a stroke or more
	Trouble  bool // it was played from trouble
}

// Of works out the account of a legal round.
func Of(r golf.Round, t Terms) Account {
	a := Account{Holes: make([]Hole, len(r.Holes))}
	n := 0
	for _, h := range r.Holes {
		n += len(h.Shots)
	}
	shots, fixed := make([]Shot, n), make([]float64, n)
	for i, h := range r.Holes {
		played := len(h.Played())
		hole := Hole{Number: h.Number, Par: h.Par, PickedUp: h.PickedUp, Whole: wholeScore(h, t.Fixed), Detailed: h.Detailed(), Shots: shots[:played:played]}
		a.hole(&hole, h, fixed[:played], t)
		a.Holes[i] = hole
		shots, fixed = shots[played:], fixed[played:]
	}
	a.Lost.Course = t.Course
	a.Lost.Total = a.Lost.Tee + a.Lost.Approach + a.Lost.ShortGame + a.Lost.Putting + a.Lost.Undetailed + a.Lost.Course
	return a
}

// hole charges the shots of a hole and judges it. fixed is room for what the
// shots lost to the fixed golfer.
func (a *Account) hole(to *Hole, h golf.Hole, fixed []float64, t Terms) {
	tee := t.Lens.Shot(h.Shots[0])
	a.Expected += tee
	if !h.Detailed() {
		to.Score = float64(h.ScoreOnly)
		to.Lost = to.Score - tee
		a.Lost.Undetailed += to.Lost
	} else {
		to.Score = float64(h.Strokes()) + charge(to.Shots, h, t)
		againstFixed(fixed, h, t.Fixed)
		for _, s := range to.Shots {
			to.Lost += s.Lost
			*a.Lost.line(s.Band.Category) += s.Lost
		}
	}
	a.Score += to.Score
	a.judge(to, h, fixed, t)
	a.Counts.Hole(h, t.Boundary)
}

// charge fills in the shots and returns the strokes that were still to come.
func charge(to []Shot, h golf.Hole, t Terms) (toCome float64) {
	if h.PickedUp {
		toCome = t.Lens.Shot(h.Shots[len(to)])
	}
	after := toCome
	for i := len(to) - 1; i >= 0; i-- {
		s := h.Shots[i]
		before := t.Lens.Shot(s)
		to[i] = Shot{
			Expected: before, After: after, Lost: 1 + float64(s.Penalty) + after - before,
			Band:    BandOf(s.Lie, s.Distance, h.Par, t.Boundary),
			Trouble: h.FromTrouble(i),
		}
		after = before
	}
	return toCome
}

// againstFixed works out what each shot lost to the fixed golfer.
func againstFixed(lost []float64, h golf.Hole, fixed *expect.Baseline) {
	after := 0.0
	if h.PickedUp {
		after = fixed.Shot(h.Shots[len(lost)])
	}
	for i := len(lost) - 1; i >= 0; i-- {
		before := fixed.Shot(h.Shots[i])
		lost[i] = 1 + float64(h.Shots[i].Penalty) + after - before
		after = before
	}
}
