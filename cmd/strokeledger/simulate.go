package main

import (
	"encoding/json"
	"flag"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/forecast"
	"strokeledger/analysis/golfer"
)

// simulate plays many rounds as a golfer of one level, or of one level for each part
// of the game, and prints the results.
func simulate(args []string, s streams) error {
	plan, asJSON, err := readPlan(args, s)
	if err != nil {
		return err
	}
	o, err := forecast.Simulate(plan)
	if err != nil {
		return err
	}
	if asJSON {
		return json.NewEncoder(s.out).Encode(outcomeJSON(o))
	}
	return printOutcome(s.out, plan, o)
}

// readPlan reads what to play from flags.
func readPlan(args []string, s streams) (plan forecast.Plan, asJSON bool, err error) {
	flags := flag.NewFlagSet("simulate", flag.ContinueOnError)
	flags.Float64Var(&plan.Level, "level", 0, "level of the golfer, and the score they are chasing, "+levelRange())
	flags.IntVar(&plan.Rounds, "rounds", 20000, "how many rounds to play, 1 to 10000000")
	flags.Uint64Var(&plan.Seed, "seed", 1, "seed of the random numbers; the same seed plays the same rounds")
	holes := flags.String("holes", "", "CSV file of holes (hole,par,length_yd); without it, the reference course: par 72, 6,500 yd")
	var parts golfer.Levels
	flags.Float64Var(&parts.Tee, "tee", 0, "level of the tee shots, if it differs from --level")
	flags.Float64Var(&parts.Approach, "approach", 0, "level of the approach, likewise")
	flags.Float64Var(&parts.ShortGame, "short-game", 0, "level of the short game, likewise")
	flags.Float64Var(&parts.Putting, "putting", 0, "level of the putting, likewise")
	flags.BoolVar(&asJSON, "json", false, "print JSON")
	rest, err := parse(flags, args, s, "--level S [--rounds N] [--seed K] [--holes FILE] [--tee S1 --approach S2 --short-game S3 --putting S4] [--json]")
	switch {
	case err != nil:
		return plan, asJSON, err
	case len(rest) > 0:
		return plan, asJSON, usagef("unexpected argument %q", rest[0])
	case !given(flags, "level"):
		return plan, asJSON, usagef("give --level S, %s", levelRange())
	}
	plan.Levels = partLevels(flags, plan.Level, parts)
	if err := checkPlan(plan); err != nil {
		return plan, asJSON, err
	}
	plan.Card = expect.ReferenceCourse()
	if *holes != "" {
		plan.Card, err = readHoles(*holes)
	}
	return plan, asJSON, err
}

// checkPlan refuses levels and numbers of rounds that are out of range.
func checkPlan(plan forecast.Plan) error {
	if plan.Rounds < 1 || plan.Rounds > 1e7 {
		return usagef("--rounds %d; allowed: 1 to 10000000", plan.Rounds)
	}
	for _, l := range []float64{plan.Level, plan.Levels.Tee, plan.Levels.Approach, plan.Levels.ShortGame, plan.Levels.Putting} {
		if !(l >= expect.MinLevel && l <= expect.MaxLevel) {
			return usagef("level %g; allowed: %s", l, levelRange())
		}
	}
	return nil
}

// partLevels gives every part of the game the level, unless it has its own.
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
