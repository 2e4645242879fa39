package main

import (
	"encoding/csv"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"os"
	"slices"
	"strconv"
	"strings"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/forecast"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// simulate plays many rounds by a golfer of one level, or of a level for each
// part of the game, and prints what they came to.
func simulate(args []string, s streams) error {
	flags := flag.NewFlagSet("simulate", flag.ContinueOnError)
	level := flags.Float64("level", 0, "level of the golfer and the score that is chased, 68 to 110")
	rounds := flags.Int("rounds", 20000, "how many rounds to play, 1 to 10000000")
	seed := flags.Uint64("seed", 1, "the same seed plays the same rounds")
	holes := flags.String("holes", "", "CSV file of holes (hole,par,length_yd); without it the reference course, par 72 of 6,500 yd")
	var parts golfer.Levels
	flags.Float64Var(&parts.Tee, "tee", 0, "level of the tee shots, where it is another")
	flags.Float64Var(&parts.Approach, "approach", 0, "level of the approach")
	flags.Float64Var(&parts.ShortGame, "short-game", 0, "level of the short game")
	flags.Float64Var(&parts.Putting, "putting", 0, "level of the putting")
	asJSON := flags.Bool("json", false, "print JSON")
	rest, err := parse(flags, args, s, "--level S [--rounds N] [--seed K] [--holes FILE] [--tee S1 --approach S2 --short-game S3 --putting S4] [--json]")
	switch {
	case err != nil:
		return err
	case len(rest) > 0:
		return usagef("unexpected argument %q", rest[0])
	case !given(flags, "level"):
		return usagef("give --level S, 68 to 110")
	case *rounds < 1 || *rounds > 1e7:
		return usagef("--rounds %d; allowed: 1 to 10000000", *rounds)
	}
	plan := forecast.Plan{Level: *level, Levels: partLevels(flags, *level, parts), Card: expect.ReferenceCourse(), Rounds: *rounds, Seed: *seed}
	for _, l := range []float64{plan.Level, plan.Levels.Tee, plan.Levels.Approach, plan.Levels.ShortGame, plan.Levels.Putting} {
		if !(l >= expect.MinLevel && l <= expect.MaxLevel) {
			return usagef("level %g; allowed: %g to %g", l, expect.MinLevel, expect.MaxLevel)
		}
	}
	if *holes != "" {
		if plan.Card, err = readHoles(*holes); err != nil {
			return err
		}
	}
	o, err := forecast.Simulate(plan)
	if err != nil {
		return err
	}
	if *asJSON {
		return json.NewEncoder(s.out).Encode(outcomeJSON(o))
	}
	return printOutcome(s.out, plan, o)
}

// partLevels gives every part of the game the level unless it has its own.
func partLevels(flags *flag.FlagSet, level float64, parts golfer.Levels) golfer.Levels {
	all := golfer.Even(level)
	for name, to := range map[string]struct{ to, from *float64 }{
		"tee": {&all.Tee, &parts.Tee}, "approach": {&all.Approach, &parts.Approach},
		"short-game": {&all.ShortGame, &parts.ShortGame}, "putting": {&all.Putting, &parts.Putting},
	} {
		if given(flags, name) {
			*to.to = *to.from
		}
	}
	return all
}

// readHoles reads a card of 1 to 18 holes from a CSV file with the columns
// hole, par and length_yd, in any order.
func readHoles(name string) ([]golf.CardHole, error) {
	file, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	rows := csv.NewReader(file)
	head, err := rows.Read()
	if err != nil {
		return nil, fmt.Errorf("%s: no header row; allowed: hole,par,length_yd", name)
	}
	var at [3]int
	for i, column := range []string{"hole", "par", "length_yd"} {
		at[i] = slices.IndexFunc(head, func(s string) bool {
			return strings.EqualFold(strings.TrimSpace(strings.TrimPrefix(s, "\ufeff")), column)
		})
		if at[i] < 0 {
			return nil, fmt.Errorf("%s: no column %s; allowed: hole,par,length_yd", name, column)
		}
	}
	var card []golf.CardHole
	for {
		row, err := rows.Read()
		if err == io.EOF {
			return card, checkCard(name, card)
		}
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		line, _ := rows.FieldPos(0)
		h, err := readHole(row[at[0]], row[at[1]], row[at[2]])
		if err != nil {
			return nil, fmt.Errorf("%s: line %d: %w", name, line, err)
		}
		card = append(card, h)
	}
}

func readHole(number, par, length string) (h golf.CardHole, err error) {
	if h.Number, err = strconv.Atoi(strings.TrimSpace(number)); err != nil {
		return h, fmt.Errorf("hole %q; allowed: 1 to 18", number)
	}
	if h.Par, err = strconv.Atoi(strings.TrimSpace(par)); err != nil {
		return h, fmt.Errorf("par %q; allowed: 3 to 6", par)
	}
	yards, err := strconv.ParseFloat(strings.TrimSpace(length), 64)
	if err != nil {
		return h, fmt.Errorf("length_yd %q; allowed: over 0, at most 700", length)
	}
	h.Length = golf.Yards.Of(yards)
	tee := golf.Hole{Number: h.Number, Par: h.Par, Shots: []golf.Shot{{Lie: golf.Tee, Distance: h.Length}}}
	return h, tee.Check().Err()
}

func checkCard(name string, card []golf.CardHole) error {
	if len(card) == 0 || len(card) > 18 {
		return fmt.Errorf("%s: %d holes; allowed: 1 to 18", name, len(card))
	}
	seen := map[int]bool{}
	for _, h := range card {
		if seen[h.Number] {
			return fmt.Errorf("%s: hole %d comes again; allowed: each hole once", name, h.Number)
		}
		seen[h.Number] = true
	}
	return nil
}
