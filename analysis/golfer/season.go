package golfer

import (
	"fmt"
	"math"

	"strokeledger/analysis/golf"
)

// Season is a run of rounds by a golfer of known strengths and weaknesses: a
// planted truth, for tests to find and for a demonstration to show.
type Season struct {
	Player string // name, as are course and tee
	Course string
	Tee    string
	Card   []golf.CardHole // holes of every round
	Levels Levels          // what is planted
	First  golf.Date       // day of the first round
	Days   int             // from one round to the next
	Rounds int             // how many
	Seed   uint64          // the same seed plays the same season
}

// Play plays the season and writes the rounds down as a golfer would: whole
// yards off the green and whole feet on it, never less than one.
func (s Season) Play(p *Parameters) ([]golf.Round, error) {
	player, err := NewPlayer(p, s.Levels, s.Card, golf.StandardBoundary)
	if err != nil {
		return nil, err
	}
	rounds := make([]golf.Round, s.Rounds)
	for i := range rounds {
		date := s.First.AddDays(i * s.Days)
		rounds[i] = golf.Round{ID: fmt.Sprintf("%s-%d", date, i+1), Date: date, Player: s.Player, Course: s.Course, Tee: s.Tee,
			Holes: writtenDown(player.Play(s.Seed, uint64(i)))}
	}
	return rounds, nil
}

// writtenDown rounds the distances of holes as a golfer does.
func writtenDown(holes []golf.Hole) []golf.Hole {
	for _, h := range holes {
		for i := range h.Shots[1:] {
			shot := &h.Shots[i+1]
			if shot.Lie == golf.Tee {
				continue // played again from the card's distance
			}
			unit := shot.Lie.Unit()
			shot.Distance = unit.Of(math.Max(math.Round(unit.In(shot.Distance)), 1))
		}
	}
	return holes
}
