package golfer

import (
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
)

// ShortPutt is the longest putt that Style.ShortPutts is about.
const ShortPutt = 6 * golf.Foot

// Style is what a player does otherwise than the golfer of his levels. The zero
// value changes nothing.
type Style struct {
	LongerTee  float64       // yd that tee shots of a par 4 or longer go farther
	TeeShare   float64       // share of their length that they are hit; 0 stands for 1
	ShortPutts float64       // level at which putts of 6 ft and less are played; 0 for that of the putting
	Drawn      map[int]Drawn // by number of the hole: holes that are played on a drawing

	// ByHole gives each hole its own random numbers, so that rounds of two styles with the
	// same seed and number differ only where the styles do.
	ByHole bool
}

// In returns the player with a style. It fails on a level out of range.
func (p *Player) In(s Style) (*Player, error) {
	styled := *p
	styled.style = s
	if s.ShortPutts != 0 {
		t, err := expect.SkillOf(s.ShortPutts)
		if err != nil {
			return nil, err
		}
		styled.shortPutts = t + recentre(p.card, t)
	}
	return &styled, nil
}

// mostHoles is more than the numbers of holes.
const mostHoles = 32

// reseed gives a hole its own random numbers, where it has them.
func (p *Player) reseed(r *roundInPlay, seed, number uint64, hole int) {
	if p.style.ByHole {
		r.source.Seed(seed^holeStream, number*mostHoles+uint64(hole))
	}
}

// holeStream keeps the numbers of holes apart from those of rounds.
const holeStream = 0x9e3779b97f4a7c15

// dress changes the skills of a round by the player's style.
func (r *roundInPlay) dress(form float64) {
	style := r.player.style
	if style.LongerTee != 0 || style.TeeShare != 0 {
		tee := *r.skills[golf.TeeShots]
		if style.TeeShare != 0 {
			tee.reach[golf.Tee] *= style.TeeShare
		}
		tee.reach[golf.Tee] += style.LongerTee
		r.skills[golf.TeeShots] = &tee
	}
	if style.ShortPutts != 0 {
		r.shortPutts = r.player.parameters.at(r.player.shortPutts + form)
	}
}
