package main

import (
	"fmt"
	"io"
	"math"

	"strokeledger/analysis/aim"
)

// writtenAims is what the command prints as JSON.
type writtenAims struct {
	Version int          `json:"version"`
	Aims    []writtenAim `json:"aims"`
}

// writtenAim is the best aim with a club beside the straight one, or that of an
// approach, which has no club, beside the flag.
type writtenAim struct {
	Club     string        `json:"club,omitempty"`
	AimYd    float64       `json:"aim_yd"`            // right of the middle or of the flag
	LongYd   *float64      `json:"long_yd,omitempty"` // beyond the flag; of an approach
	Cost     float64       `json:"cost"`
	Straight float64       `json:"straight_cost"`
	Shares   writtenShares `json:"shares"`
	ByMiddle writtenShares `json:"straight_shares"`
}

type writtenShares struct {
	Green      float64 `json:"green"`
	Fairway    float64 `json:"fairway"`
	Rough      float64 `json:"rough"`
	Bunker     float64 `json:"bunker"`
	Trees      float64 `json:"trees"`
	Water      float64 `json:"water"`
	Out        float64 `json:"out"`
	Penalty    float64 `json:"penalty"`     // where nothing is drawn
	ShortSided float64 `json:"short_sided"` // counted in the others too
}

// aimsJSON turns advice into what is printed.
func aimsJSON(a aim.Advice) writtenAims {
	w := writtenAims{Version: 1}
	for _, shot := range a.Clubs {
		w.Aims = append(w.Aims, writtenAim{Club: shot.Club.Name, AimYd: shot.Best.Side, Cost: shot.Best.Cost,
			Straight: shot.Straight.Cost, Shares: writtenShares(shot.Best.Shares), ByMiddle: writtenShares(shot.Straight.Shares)})
	}
	if p := a.Approach; p != nil {
		w.Aims = append(w.Aims, writtenAim{AimYd: p.Best.Side, LongYd: &p.Best.Long, Cost: p.Best.Cost,
			Straight: p.Flag.Cost, Shares: writtenShares(p.Best.Shares), ByMiddle: writtenShares(p.Flag.Shares)})
	}
	return w
}

// printAdvice prints advice as people read it.
func printAdvice(to io.Writer, a aim.Advice) error {
	if p := a.Approach; p != nil {
		fmt.Fprintf(to, "Aim %s: %.2f. At the flag %.2f.%s\n\n", byFlag(p.Best), p.Best.Cost, p.Flag.Cost, unlessItMatters(p.Saved()))
		return printShares(to, "flag", p.Best.Shares, p.Flag.Shares)
	}
	best, straight := a.Best(), a.Straight()
	fmt.Fprintf(to, "%s, aim %s: %.2f. %s down the middle %.2f.%s\n\n", best.Club.Name, byMiddle(best.Best.Side),
		best.Best.Cost, straight.Club.Name, straight.Straight.Cost, unlessItMatters(a.Saved()))
	fmt.Fprintln(to, "club           yards  best aim                   costs  straight")
	for _, shot := range a.Clubs {
		fmt.Fprintf(to, "%-13s  %5.0f  %-25s  %5.2f  %8.2f\n", shot.Club.Name, shot.Club.Length, byMiddle(shot.Best.Side),
			shot.Best.Cost, shot.Straight.Cost)
	}
	fmt.Fprintln(to)
	return printShares(to, "straight", best.Best.Shares, straight.Straight.Shares)
}

// unlessItMatters says that an aim does not matter, where it does not.
func unlessItMatters(saved float64) string {
	if saved >= aim.MattersFrom {
		return ""
	}
	return " It does not matter."
}

// byMiddle says where an aim is from the middle.
func byMiddle(side float64) string {
	if math.Round(side) == 0 {
		return "down the middle"
	}
	return sideways(side) + " of the middle"
}

// byFlag says where an aim is from the flag.
func byFlag(a aim.Aim) string {
	side, long := math.Round(a.Side), math.Round(a.Long)
	depth := fmt.Sprintf("%.0f yd long", long)
	if long < 0 {
		depth = fmt.Sprintf("%.0f yd short", -long)
	}
	switch {
	case side == 0 && long == 0:
		return "at the flag"
	case side == 0:
		return depth + " of the flag"
	case long == 0:
		return sideways(side) + " of the flag"
	default:
		return sideways(side) + " of the flag and " + depth
	}
}

func sideways(side float64) string {
	if side < 0 {
		return fmt.Sprintf("%.0f yd left", -side)
	}
	return fmt.Sprintf("%.0f yd right", side)
}

// printShares prints where the balls of two aims end, of 100.
func printShares(to io.Writer, other string, best, than aim.Shares) error {
	fmt.Fprintf(to, "of 100 balls  best  %s\n", other)
	for _, row := range []struct {
		name string
		a, b float64
	}{{"green", best.Green, than.Green}, {"fairway", best.Fairway, than.Fairway}, {"rough", best.Rough, than.Rough},
		{"bunker", best.Bunker, than.Bunker}, {"trees", best.Trees, than.Trees}, {"water", best.Water, than.Water},
		{"out of bounds", best.Out, than.Out}, {"penalty", best.Penalty, than.Penalty}, {"short-sided", best.ShortSided, than.ShortSided}} {
		if row.a > 0 || row.b > 0 {
			fmt.Fprintf(to, "%-13s  %4.1f  %*.1f\n", row.name, 100*row.a, len(other), 100*row.b)
		}
	}
	return nil
}
