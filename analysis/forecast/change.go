package forecast

import (
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// Change is something that a player may change. The zero value is none.
type Change uint8

// The changes. Those of a part of the game and of short putts are there only where
// the player is not as good as the golfer of the ask's level, which is the target's
// unless another was asked for.
const (
	TeeShotsAsTarget  Change = iota + 1 // tee shots of that golfer
	ApproachAsTarget                    // its approaches
	ShortGameAsTarget                   // its short game
	PuttingAsTarget                     // its putting
	ShortPutts                          // putts of 6 ft and in as that golfer holes them
	NoCompounding                       // no second error after trouble: each score less what its own chains cost
	Longer                              // 15 yd longer off the tee
	PlansAims                           // the plan's aims; only where holes have pictures and they are played straight
	OneClubLess                         // one club less off the tee of every par 4 or longer
)

// Changes lists all of them, in the order in which they are tried.
var Changes = []Change{TeeShotsAsTarget, ApproachAsTarget, ShortGameAsTarget, PuttingAsTarget, ShortPutts, NoCompounding,
	Longer, PlansAims, OneClubLess}

var changeNames = [...]string{"", "tee shots", "approach", "short game", "putting", "short putts", "no compounding",
	"15 yards longer", "the plan's aims", "one club less off the tee"}

// String returns a short name, and "" for the zero value.
func (c Change) String() string {
	if int(c) < len(changeNames) {
		return changeNames[c]
	}
	return ""
}

// Part is the part of the game that a change is about, 0 for the others.
func (c Change) Part() golf.Category {
	if c >= TeeShotsAsTarget && c <= PuttingAsTarget {
		return golf.Category(c)
	}
	return 0
}

// longerBy is how much longer a longer tee shot is, and lessClub what share of the
// driver's length a fairway wood has. Common practice.
const (
	longerBy = 15 // yd
	lessClub = .92
)

// open reports whether a change can be made.
func (g *game) open(c Change) bool {
	switch c {
	case ShortPutts:
		return g.ask.Levels.Putting > g.ask.as()
	case PlansAims:
		return len(g.ask.Planned) > 0 && !g.ask.UsePlan
	}
	if part := c.Part(); part != 0 {
		return *levelOf(&g.ask.Levels, part) > g.ask.as()
	}
	return c != 0
}

// with is a setup with a change.
func (g *game) with(s setup, c Change) setup {
	switch c {
	case ShortPutts:
		s.style.ShortPutts = g.ask.as()
	case NoCompounding:
		s.noCompounding = true
	case Longer:
		s.style.LongerTee += longerBy
	case PlansAims:
		s.style.Drawn = g.ask.Planned
	case OneClubLess:
		s.style.TeeShare = lessClub
	default:
		*levelOf(&s.levels, c.Part()) = g.ask.as()
	}
	return s
}

// levelOf is the level of a part of the game.
func levelOf(l *golfer.Levels, c golf.Category) *float64 {
	return map[golf.Category]*float64{golf.TeeShots: &l.Tee, golf.Approach: &l.Approach,
		golf.ShortGame: &l.ShortGame, golf.Putting: &l.Putting}[c]
}

// pairsOf is how many of the most helpful changes are tried two by two.
const pairsOf = 3

// whatIfRounds is the most rounds that are played for a change: they are the same
// rounds as those that it is compared with, so that fewer are enough.
const whatIfRounds = 10000

// try plays the rounds with some changes.
func (g *game) try(c *Chance, base *field, changes ...Change) (WhatIf, error) {
	s := g.now()
	for _, change := range changes {
		s = g.with(s, change)
	}
	w, err := g.compare(c, base, s)
	w.Change = changes[0]
	if len(changes) > 1 {
		w.Second = changes[1]
	}
	return w, err
}

// compare plays the rounds of a setup beside the same rounds as they are.
func (g *game) compare(c *Chance, base *field, s setup) (WhatIf, error) {
	n := min(len(base.rounds), whatIfRounds)
	f, err := g.play(s, n, s.noCompounding)
	if err != nil {
		return WhatIf{}, err
	}
	same := base.first(n)
	chance := c.Chance + f.chance(c.Target) - same.chance(c.Target)
	return WhatIf{Strokes: f.mean() - same.mean(), Chance: min(max(chance, 0), 1)}, nil
}

// whatIfs tries every change, and pairs of them.
func (g *game) whatIfs(c *Chance, base *field) error {
	for _, change := range Changes {
		if !g.open(change) {
			continue
		}
		w, err := g.try(c, base, change)
		if err != nil {
			return err
		}
		c.WhatIf = append(c.WhatIf, w)
	}
	byHelp(c.WhatIf)
	for _, pair := range g.pairs(c.WhatIf) {
		w, err := g.try(c, base, pair[0], pair[1])
		if err != nil {
			return err
		}
		c.Pairs = append(c.Pairs, w)
	}
	byHelp(c.Pairs)
	return nil
}

// pairs are those of the most helpful changes, and those asked for.
func (g *game) pairs(singles []WhatIf) [][2]Change {
	var all [][2]Change
	for i := range min(pairsOf, len(singles)) {
		for k := range i {
			all = append(all, [2]Change{singles[k].Change, singles[i].Change})
		}
	}
	for _, pair := range g.ask.Also {
		if pair[0] != pair[1] && g.open(pair[0]) && g.open(pair[1]) {
			all = append(all, pair)
		}
	}
	return all
}
