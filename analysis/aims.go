package analysis

import (
	"fmt"
	"strings"

	"strokeledger/analysis/aim"
	"strokeledger/analysis/golf"
)

// AimInput is what an aim is looked for with.
type AimInput struct {
	Picture aim.Picture // one that Check finds no fault with
	Flag    *aim.Flag   // where the hole is cut; nil for the middle of the green
	As      PlaysAs
	Clubs   []aim.Club  // for the tee of a par 4 or longer; none stands for ClubsOf
	Shape   float64     // yd that the ball is bent on purpose, right positive; laid on every pattern
	From    *AimFrom    // where an approach is played from; nil for the tee
	Pattern aim.Pattern // of an approach
}

// AimFrom is a place to play from.
type AimFrom struct {
	Lie      golf.Lie      // off the green
	Distance golf.Distance // to the hole, more than golf.MaxShortSided
	Across   float64       // yd right of the centre line there
}

// Aim answers "where should I aim?": with each club from the tee of a par 4 or
// longer, and otherwise in the plane about the flag.
func (e *Engine) Aim(in AimInput) (aim.Advice, error) {
	flag := in.Picture.Green.Middle()
	if in.Flag != nil {
		flag = *in.Flag
	}
	h, err := aim.NewHole(&e.golfer, in.As.player(), in.Picture, flag)
	if err != nil {
		return aim.Advice{}, err
	}
	switch {
	case in.From != nil:
		if in.From.Lie == golf.Green || in.From.Distance <= golf.MaxShortSided || in.From.Distance > golf.MaxDistance {
			return aim.Advice{}, fmt.Errorf("from %s, %g yd; allowed: off the green, more than %g to %g yd",
				in.From.Lie, in.From.Distance.Yards(), golf.MaxShortSided.Yards(), golf.MaxDistance.Yards())
		}
		start := h.Short(in.From.Distance.Yards(), in.From.Across)
		return aim.Advice{Approach: h.Approach(in.From.Lie, start, in.Pattern.Shaped(in.Shape))}, nil
	case in.Picture.Par == golf.MinPar:
		return aim.Advice{Approach: h.Approach(golf.Tee, aim.Point{}, in.Pattern.Shaped(in.Shape))}, nil
	}
	return h.TeeShots(shaped(in.Clubs, h, in.Shape)), nil
}

// shaped are the clubs for a tee with a shape laid on; those of the level when there
// are none.
func shaped(clubs []aim.Club, h *aim.Hole, shape float64) []aim.Club {
	if len(clubs) == 0 {
		clubs = h.Clubs()
	}
	all := make([]aim.Club, len(clubs))
	for i, c := range clubs {
		c.Pattern = c.Pattern.Shaped(shape)
		all[i] = c
	}
	return all
}

// player is the golfer as package aim has it.
func (p PlaysAs) player() aim.Player { return aim.Player{Levels: p.Levels, Overall: p.Overall} }

// ClubsOf are the clubs for the tee of a golfer, with the lengths of the level of
// the tee shots.
func (e *Engine) ClubsOf(as PlaysAs) ([]aim.Club, error) {
	s, err := e.golfer.Striker(as.Levels.Tee)
	if err != nil {
		return nil, err
	}
	return aim.TeeClubs(s), nil
}

// PatternInput is what is known of how a player hits a club.
type PatternInput struct {
	As      PlaysAs
	Club    aim.Club      // its name finds the shots of the rounds, its length is that of the pattern
	Tee     bool          // the club is used from a tee, at the level of tee shots; otherwise from the fairway
	Session []aim.Ball    // of the range; fewer than aim.MinBalls say nothing
	History []golf.Played // whose words of misses are read; none where they are not to count
}

// Pattern answers "where do my shots with this club end?".
func (e *Engine) Pattern(in PatternInput) (aim.Pattern, error) {
	level, lie := in.As.Levels.Approach, golf.Fairway
	if in.Tee {
		level, lie = in.As.Levels.Tee, golf.Tee
	}
	s, err := e.golfer.Striker(level)
	if err != nil {
		return aim.Pattern{}, err
	}
	if !(in.Club.Length > 0) {
		return aim.Pattern{}, fmt.Errorf("a club of %g yd; allowed: more than 0", in.Club.Length)
	}
	own := aim.LevelOf(s, lie, in.Club.Length)
	return own.AfterMisses(own.After(in.Session), misses(in)), nil
}

// misses counts how shots with the club ended, in the rounds in which some miss was
// noted: in others no word says nothing.
func misses(in PatternInput) aim.Misses {
	var m aim.Misses
	for _, r := range in.History {
		noted, of := false, aim.Misses{}
		for _, h := range r.Round.Holes {
			for _, s := range h.Played() {
				noted = noted || s.Miss != golf.Miss{}
				if !strings.EqualFold(s.Club, in.Club.Name) || in.Tee != (s.Lie == golf.Tee) {
					continue
				}
				switch s.Miss.Side {
				case golf.Left:
					of.Left++
				case golf.Right:
					of.Right++
				default:
					of.Middle++
				}
			}
		}
		if noted {
			m = aim.Misses{Left: m.Left + of.Left, Middle: m.Middle + of.Middle, Right: m.Right + of.Right}
		}
	}
	return m
}
