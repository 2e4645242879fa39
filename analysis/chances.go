package analysis

import (
	"strokeledger/analysis/aim"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/forecast"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/parallel"
	"strokeledger/analysis/practice"
)

// What the chance of a target is made of, for callers that see only this package.
type (
	Chance = forecast.Chance
	WhatIf = forecast.WhatIf
	Change = forecast.Change
)

// ChanceRounds is how many rounds are played for a chance unless another number is
// asked for.
const ChanceRounds = 20000

// ChanceInput is what the chance of a target is asked for.
type ChanceInput struct {
	History  []golf.Played // all rounds, in the order of their days
	Target   float64       // score of 18 holes, golf.MinTarget to golf.MaxTarget
	Par18    int           // par of the whole course; 0 where it is not known
	Card     []golf.CardHole
	Pictures map[int]aim.Picture // by number of the hole; holes without one are the golfer's own ground
	Clubs    []aim.Club          // for the tee, with their patterns, among which the plan's aims choose; none stands for those of the level
	Planned  bool                // holes with a picture are played with the plan's aims, not straight
	Taken    map[int]OtherAim    // by number of the hole: what stands in the plan in place of the best aim off the tee
	As       float64             // level at which a part of the game is tried, 68 to 110; 0 stands for the target
	Together [][2]Change         // pairs of changes that are asked for
	Only     bool                // no change is tried: much faster
	Rounds   int                 // to play; 0 stands for ChanceRounds
	Seed     uint64
}

// Chance answers "how likely is the target on this course, and what would change
// that?". Rounds are played by the golfer that the latest rounds say; the plan's aims
// are those of the player's own clubs (aim.Hole.Playing), or what the player took in
// place of them. With fewer than five rounds they are played by the target's golfer, and
// the answer has a note.
func (e *Engine) Chance(in ChanceInput) (Chance, error) {
	as, profiles, err := e.playsAs(in.History, in.Target)
	if err != nil {
		return Chance{}, err
	}
	ask := forecast.Ask{
		Target: golf.TargetOver(in.Card, in.Target, in.Par18), Level: in.Target, Levels: as.Levels,
		Card: in.Card, Rounds: in.Rounds, Seed: in.Seed, UsePlan: in.Planned, As: in.As, Also: in.Together, Only: in.Only,
		Lost: e.lostBy(as, profiles, in.History), Gain: gainOf(as), Widens: widensOf(as),
	}
	if ask.Rounds == 0 {
		ask.Rounds = ChanceRounds
	}
	if err := e.draw(&ask, as, in); err != nil {
		return Chance{}, err
	}
	c, err := forecast.Find(ask)
	c.Thin = as.Thin
	return c, err
}

// lostBy is what each round that the levels stand on lost against them.
func (e *Engine) lostBy(as PlaysAs, profiles []compare.Profile, history []golf.Played) []forecast.Lost {
	var all []forecast.Lost
	for i, r := range latestDetailed(history, PlanRounds) {
		if i >= len(profiles) {
			break // too few rounds for levels
		}
		l := forecast.Lost{}
		for _, c := range golf.Categories {
			l.Strokes += e.ladder.Against(profiles[i], c, *levelOf(&as.Levels, c))
		}
		for _, h := range r.Round.Holes {
			if h.Detailed() {
				l.Holes++
			}
		}
		all = append(all, l)
	}
	return all
}

// gainOf is what a part of the game wins from one level to another, by the table of
// what golfers lose, as the golfer of the player's overall level judges.
func gainOf(as PlaysAs) func(c golf.Category, from, to float64) float64 {
	family := practice.Committed()
	return func(c golf.Category, from, to float64) float64 {
		return family.Lost(from, as.Overall, int(c)) - family.Lost(to, as.Overall, int(c))
	}
}

// widensOf is how much wider golfers who are worse spread their scores, by the same
// table.
func widensOf(as PlaysAs) func(worse float64) float64 {
	family := practice.Committed()
	return func(worse float64) float64 {
		return family.Spread(as.Overall+worse, 0) / family.Spread(as.Overall, 0)
	}
}

// draw lays the holes with a picture out as rounds are played on them.
func (e *Engine) draw(ask *forecast.Ask, as PlaysAs, in ChanceInput) (err error) {
	on := DrawnInput{As: as, Card: ask.Card, Pictures: in.Pictures, Clubs: in.Clubs, Taken: in.Taken}
	if ask.Straight, err = e.Drawn(on); err != nil {
		return err
	}
	if on.Planned = true; ask.UsePlan || !ask.Only {
		ask.Planned, err = e.Drawn(on)
	}
	return err
}

// DrawnInput is what holes are laid out with for simulated rounds.
type DrawnInput struct {
	As       PlaysAs
	Card     []golf.CardHole
	Pictures map[int]aim.Picture
	Clubs    []aim.Club       // for the tee; none stands for those of the level
	Planned  bool             // with the plan's aims
	Taken    map[int]OtherAim // by number of the hole: what stands in the plan in place of the best aim off the tee
}

// Drawn are the holes of a card that have a picture with a row, by number, as
// simulated rounds play them: with the plan's aims and what was taken in place of them,
// or the driver down the middle and every approach at the flag. The holes are cut in the
// middle of the greens.
func (e *Engine) Drawn(in DrawnInput) (map[int]golfer.Drawn, error) {
	card := in.Card
	drawn, failed := make([]golfer.Drawn, len(card)), make([]error, len(card))
	parallel.Do(len(card), func(i int) {
		picture, there := in.Pictures[card[i].Number]
		taken, took := in.Taken[card[i].Number]
		if took = took && in.Planned; !there || picture.Bare() && !took {
			return
		}
		h, err := aim.NewHole(&e.golfer, in.As.player(), picture, picture.Green.Middle())
		switch failed[i] = err; {
		case err != nil:
		case took:
			drawn[i] = h.PlayingChosen(in.Clubs, aim.Chosen(taken))
		default:
			drawn[i] = h.Playing(in.Planned, in.Clubs)
		}
	})
	all := map[int]golfer.Drawn{}
	for i, h := range card {
		if failed[i] != nil {
			return nil, failed[i]
		}
		if drawn[i] != nil {
			all[h.Number] = drawn[i]
		}
	}
	return all, nil
}
