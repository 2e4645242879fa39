package main

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"strconv"
	"strings"
	"text/tabwriter"

	"strokeledger/analysis/forecast"
	"strokeledger/web/words"
)

type simulated struct {
	Version         int                `json:"version"`
	Rounds          int                `json:"rounds"`
	Mean            float64            `json:"mean"`
	SD              float64            `json:"sd"`
	Scores          map[string]float64 `json:"scores"`
	AtLevelOrBetter float64            `json:"at_level_or_better"`
	Fairways        float64            `json:"fairways"`
	Greens          float64            `json:"greens"`
	Putts           float64            `json:"putts"`
	ThreePutts      float64            `json:"three_putts"`
	UpAndDown       float64            `json:"up_and_down"`
	Doubles         float64            `json:"doubles"`
	CompoundDoubles float64            `json:"compound_doubles"`
}

func outcomeJSON(o forecast.Outcome) simulated {
	scores := make(map[string]float64, len(o.Scores))
	for score, share := range o.Scores {
		scores[strconv.Itoa(score)] = share
	}
	return simulated{1, o.Rounds, o.Mean, o.SD, scores, o.AtLevelOrBetter, o.Fairways, o.Greens, o.Putts,
		o.ThreePutts, o.UpAndDown, o.Doubles, o.CompoundDoubles}
}

// printOutcome writes what the rounds came to for a golfer at a terminal.
func printOutcome(to io.Writer, plan forecast.Plan, o forecast.Outcome) error {
	spread := fmt.Sprintf("two in three within %.1f of it", o.SD)
	if o.Thin.Any() {
		spread = words.Thin(o.Thin)
	}
	fmt.Fprintf(to, "%s: %.1f on average, %s; %g or better in %.0f of 100.\n\n",
		words.Plural(o.Rounds, "round", "rounds"), o.Mean, spread, plan.Level, 100*o.AtLevelOrBetter)
	most := slices.Max(slices.Collect(maps.Values(o.Scores)))
	for _, score := range slices.Sorted(maps.Keys(o.Scores)) {
		if share := o.Scores[score]; share >= .0005 {
			fmt.Fprintf(to, "%5d %5.1f %%  %s\n", score, 100*share, strings.Repeat("=", int(50*share/most+.5)))
		}
	}
	t := tabwriter.NewWriter(to, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(t, "\na round\t\t")
	fmt.Fprintf(t, "fairways hit\t%.0f %%\t\n", 100*o.Fairways)
	for _, line := range []struct {
		name  string
		value float64
	}{{"greens hit", o.Greens}, {"putts", o.Putts}, {"three-putts", o.ThreePutts}} {
		fmt.Fprintf(t, "%s\t%.1f\t\n", line.name, line.value)
	}
	fmt.Fprintf(t, "up and down\t%.0f %%\t\n", 100*o.UpAndDown)
	fmt.Fprintf(t, "doubles or worse\t%.1f\t\n", o.Doubles)
	fmt.Fprintf(t, "of them compound\t%.1f\t\n", o.CompoundDoubles)
	if err := t.Flush(); err != nil {
		return err
	}
	_, err := fmt.Fprintln(to, "\n"+independence)
	return err
}

// independence says what a forecast knows of how one bad shot follows another.
const independence = "A bad shot makes the next one harder only by where it leaves the ball; beyond that and the form of the day, shots do not depend on each other. A player who presses after a mistake makes more doubles than this."
