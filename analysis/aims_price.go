package analysis

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"strokeledger/analysis/aim"
	"strokeledger/analysis/golf"
)

// OtherAim is a club and an aim that somebody thinks better than the plan's. On a par 3
// it has no club, and is an aim by the flag.
type OtherAim struct {
	Club       string
	Side, Long float64 // yd right of the middle, or of the flag; and beyond the flag
}

// TakenAim is a club and an aim with what they cost the player.
type TakenAim struct {
	Club string // as the plan names it; empty on a par 3
	Aim  aim.Aim
}

// Price answers "what does this aim cost me?", for the same golfer, clubs and pattern as
// Aim. A club that is none of those is golf.ErrNotFound.
func (e *Engine) Price(in AimInput, of OtherAim) (TakenAim, error) {
	if !(math.Abs(of.Side) <= golf.MaxAimSide && math.Abs(of.Long) <= golf.MaxAimLong) {
		return TakenAim{}, fmt.Errorf("an aim %g yd to the side and %g long; allowed: up to %d and %d", of.Side, of.Long, golf.MaxAimSide, golf.MaxAimLong)
	}
	h, err := aim.NewHole(&e.golfer, in.As.player(), in.Picture, in.Picture.Green.Middle())
	if err != nil {
		return TakenAim{}, err
	}
	if in.Picture.Par == golf.MinPar {
		return TakenAim{Aim: h.FlagAim(golf.Tee, aim.Point{}, in.Pattern, of.Side, of.Long)}, nil
	}
	clubs := shaped(in.Clubs, h, 0)
	i := slices.IndexFunc(clubs, func(c aim.Club) bool { return strings.EqualFold(c.Name, of.Club) })
	if i < 0 {
		return TakenAim{}, golf.ErrNotFound
	}
	return TakenAim{clubs[i].Name, h.TeeAim(clubs, i, of.Side)}, nil
}

// Taking answers "what is the plan of this hole when the player takes another aim?". It
// stands in place of the best, and on a par 4 or longer the shot at the green, with its
// safe sides, is the one from where that tee shot ends.
func (e *Engine) Taking(plan HolePlan, in AimInput, taken TakenAim) (HolePlan, error) {
	plan.Taken = &taken
	if in.Picture.Par == golf.MinPar {
		return plan, nil
	}
	h, err := aim.NewHole(&e.golfer, in.As.player(), in.Picture, in.Picture.Green.Middle())
	if err != nil {
		return HolePlan{}, err
	}
	plan.Approach = approachFrom(h, taken.Aim.Ends)
	return plan, nil
}
