package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"slices"
	"strconv"

	"strokeledger/analysis"
	"strokeledger/analysis/forecast"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/shotsfile"
)

// chance says how likely a target is on a course, from the rounds of a shots file.
func chance(args []string, s streams) error {
	flags := flag.NewFlagSet("chance", flag.ContinueOnError)
	course := flags.String("course", "", "CSV file of the holes of the course (hole,par,length_yd)")
	target := flags.Float64("target", analysis.StandardTarget, "the score that is chased, "+levelRange())
	rounds := flags.Int("rounds", analysis.ChanceRounds, "how many rounds to play, 1000 to 1000000")
	seed := flags.Uint64("seed", 1, "seed of the random numbers; the same seed plays the same rounds")
	asJSON := flags.Bool("json", false, "print JSON")
	rest, err := parse(flags, args, s, "FILE --course HOLES.csv [--target S] [--rounds N] [--seed K] [--json]   (- for standard input)")
	switch {
	case err != nil:
		return err
	case len(rest) != 1:
		return usagef("give one shots file, or - for standard input")
	case *course == "":
		return usagef("give --course HOLES.csv")
	case *rounds < 1000 || *rounds > 1e6:
		return usagef("--rounds %d; allowed: 1000 to 1000000", *rounds)
	case !(*target >= golf.MinTarget && *target <= golf.MaxTarget):
		return usagef("--target %g; allowed: %s", *target, levelRange())
	}
	in := analysis.ChanceInput{Target: *target, Rounds: *rounds, Seed: *seed}
	if in.Card, err = readHoles(*course); err != nil {
		return err
	}
	if len(in.Card) == 18 {
		in.Par18 = parOf(in.Card)
	}
	file, closeIn, err := open(rest[0], s.in)
	if err != nil {
		return err
	}
	defer closeIn()
	if in.History, err = historyOf(file); err != nil {
		return err
	}
	c, err := analysis.NewEngine().Chance(in)
	if err != nil {
		return err
	}
	if *asJSON {
		return json.NewEncoder(s.out).Encode(chanceJSON(c, *target))
	}
	printChance(s.out, c, *target)
	return nil
}

func parOf(card []golf.CardHole) int {
	par := 0
	for _, h := range card {
		par += h.Par
	}
	return par
}

// historyOf reads the rounds of a shots file in the order of their days.
func historyOf(in io.Reader) ([]golf.Played, error) {
	var history []golf.Played
	for r, err := range shotsfile.NewReader(in, shotsfile.Limits{}).Rounds() {
		if err != nil {
			return nil, err
		}
		history = append(history, golf.Played{Round: r})
	}
	slices.SortStableFunc(history, func(a, b golf.Played) int { return a.Round.Date.Compare(b.Round.Date) })
	return history, nil
}

// writtenChance is what the command prints as JSON.
type writtenChance struct {
	Version   int                `json:"version"`
	Target    float64            `json:"target"`
	Played    int                `json:"played"` // rounds that it stands on; 0 where the target's golfer was played
	Chance    float64            `json:"chance"`
	Low       *float64           `json:"low"` // of 95 %; null where there are too few rounds
	High      *float64           `json:"high"`
	Mean      float64            `json:"mean"`
	SD        float64            `json:"sd"`
	NoDoubles float64            `json:"no_doubles"`
	Scores    map[string]float64 `json:"scores"`
	WhatIf    []writtenWhatIf    `json:"what_if"`
	Takes     *writtenTakes      `json:"takes"` // null where it comes in one of two as it is, or no single part is enough
}

type writtenWhatIf struct {
	Name    string  `json:"name"`
	Strokes float64 `json:"strokes"`
	Chance  float64 `json:"chance"`
}

type writtenTakes struct {
	Part    string  `json:"part"`
	Level   float64 `json:"level"`
	Strokes float64 `json:"strokes"`
	Chance  float64 `json:"chance"`
}

func chanceJSON(c analysis.Chance, target float64) writtenChance {
	w := writtenChance{Version: 1, Target: target, Played: c.Played, Chance: c.Chance, Mean: c.Mean, SD: c.SD,
		NoDoubles: c.NoDoubles, Scores: map[string]float64{}}
	if c.Played > 0 {
		w.Low, w.High = &c.Interval.Low, &c.Interval.High
	}
	for score, share := range c.Scores {
		w.Scores[strconv.Itoa(score)] = share
	}
	for _, x := range append(slices.Clone(c.WhatIf), c.Pairs...) {
		w.WhatIf = append(w.WhatIf, writtenWhatIf{whatIfName(x, target), x.Strokes, x.Chance})
	}
	if t := c.Takes; t.Known {
		w.Takes = &writtenTakes{t.Part.String(), t.Level, t.Strokes, t.Chance}
	}
	return w
}

// whatIfName says what is changed: "putting at 79", "putting at 79 and 15 yards longer".
func whatIfName(w analysis.WhatIf, target float64) string {
	name := func(c analysis.Change) string {
		if c.Part() != 0 || c == forecast.ShortPutts {
			return fmt.Sprintf("%s at %s", c, plain(target))
		}
		return c.String()
	}
	if w.Second == 0 {
		return name(w.Change)
	}
	return name(w.Change) + " and " + name(w.Second)
}

// printChance prints the chance as people read it.
func printChance(to io.Writer, c analysis.Chance, target float64) {
	if c.Thin.Any() {
		fmt.Fprintf(to, "There are %d rounds; from %d on the player is known. Until then this is the golfer of the target.\n\n", c.Thin.Have, c.Thin.Need)
	}
	fmt.Fprintf(to, "%s or better: %.0f rounds of 100.", plain(target), 100*c.Chance)
	if c.Interval.Low < c.Interval.High {
		fmt.Fprintf(to, " It may be between %.0f and %.0f.", 100*c.Interval.Low, 100*c.Interval.High)
	}
	fmt.Fprintf(to, "\naverage %.1f, a round without a double: %.0f of 100\n\nscore or better   of 100\n", c.Mean, 100*c.NoDoubles)
	for score := range 150 {
		if share := c.AtOrBetter(score); c.Scores[score] > 0 && share >= .005 && share < .995 {
			fmt.Fprintf(to, "%15d   %6.0f\n", score, 100*share)
		}
	}
	fmt.Fprintf(to, "\nwhat if                                             strokes   of 100\n")
	for _, x := range append(slices.Clone(c.WhatIf), c.Pairs...) {
		fmt.Fprintf(to, "%-50s  %+7.1f  %7.0f\n", whatIfName(x, target), x.Strokes, 100*x.Chance)
	}
	switch t := c.Takes; {
	case t.Already:
		fmt.Fprintln(to, "\nIt comes in one round of two as it is.")
	case t.Known:
		fmt.Fprintf(to, "\nOne in two takes the %s at %s: %+.1f strokes, %.0f of 100.\n", t.Part, plain(t.Level), t.Strokes, 100*t.Chance)
	default:
		fmt.Fprintln(to, "\nNo single part of the game makes it one in two.")
	}
}
