package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/practice"
	"strokeledger/analysis/shotsfile"
	"strokeledger/web/form"
	"strokeledger/web/words"
)

// plan says what to practise, from the rounds of a shots file.
func plan(args []string, s streams) error {
	flags := flag.NewFlagSet("plan", flag.ContinueOnError)
	target := flags.Float64("target", analysis.StandardTarget, "the score that is chased, "+levelRange())
	minutes := flags.Int("minutes", 180, fmt.Sprintf("minutes a week, %d to %d in whole fives", practice.MinMinutes, practice.MaxMinutes))
	asJSON := flags.Bool("json", false, "print JSON")
	rest, err := parse(flags, args, s, "[--target S] [--minutes M] [--json] FILE   (- for standard input)")
	switch {
	case err != nil:
		return err
	case len(rest) != 1:
		return usagef("give one shots file, or - for standard input")
	case *minutes < practice.MinMinutes || *minutes > practice.MaxMinutes || *minutes%5 != 0:
		return usagef("--minutes %d; allowed: %d to %d in whole fives", *minutes, practice.MinMinutes, practice.MaxMinutes)
	case !(*target >= golf.MinTarget && *target <= golf.MaxTarget):
		return usagef("--target %g; allowed: %s", *target, levelRange())
	}
	in, closeIn, err := open(rest[0], s.in)
	if err != nil {
		return err
	}
	defer closeIn()
	game, candidates, err := planOf(in, *target, *minutes)
	if err != nil {
		return err
	}
	if *asJSON {
		return json.NewEncoder(s.out).Encode(planJSON(game, candidates))
	}
	printPlan(s.out, game, candidates)
	return nil
}

// planOf reads rounds and works out what to practise.
func planOf(in io.Reader, target float64, minutes int) (practice.Game, []practice.Candidate, error) {
	var rounds []golf.Round
	for r, err := range shotsfile.NewReader(in, shotsfile.Limits{}).Rounds() {
		if err != nil {
			return practice.Game{}, nil, err
		}
		rounds = append(rounds, r)
	}
	game, err := practice.Committed().Look(rounds, target)
	if err != nil {
		return game, nil, err
	}
	candidates, err := game.Candidates(golfer.Committed(), minutes)
	return game, candidates, err
}

func printPlan(out io.Writer, g practice.Game, all []practice.Candidate) {
	fmt.Fprintf(out, "%s: %.1f over %g for 18 holes.\n", words.Plural(g.Rounds, "round", "rounds"), g.Level-g.Target, g.Target)
	if g.Rounds < practice.MinRounds {
		fmt.Fprintf(out, "Fewer than %s say little: play, note the distances, and do a drill as a test.\n", words.Plural(practice.MinRounds, "round", "rounds"))
	}
	for i, c := range all {
		fmt.Fprintf(out, "%d  %s: %.1f to win back (%.1f to %.1f)%s\n", i+1, candidateName(c), c.WinBack, c.Interval.Low, c.Interval.High, sureness(c))
		fmt.Fprintf(out, "   %s, %d minutes a week", c.Drill.Name, c.Minutes)
		if c.Mark.Pass > 0 {
			fmt.Fprintf(out, "; mark %d of %d", c.Mark.Pass, c.Mark.Tries)
		}
		fmt.Fprintln(out)
	}
	fmt.Fprintln(out, "Warm up, stop on pain and see a professional, and leave the course and the range in lightning.")
}

// candidateName names what a candidate is about, with its dearest band.
func candidateName(c practice.Candidate) string {
	if c.Kind != practice.OfPart {
		return c.Kind.String()
	}
	return c.Part.String() + ", above all " + strings.ToLower(words.Band(c.Band, form.StandardUnits))
}

// sureness says how sure it is that a part is weaker than the rest of the game. What
// cuts across the parts is not compared with them.
func sureness(c practice.Candidate) string {
	if c.Kind != practice.OfPart {
		return ", counted in its parts too"
	}
	return ", " + c.Sure.String()
}

type candidateJSON struct {
	Part    string  `json:"part"`
	Band    string  `json:"band"` // empty for what cuts across the parts
	WinBack float64 `json:"win_back"`
	Low     float64 `json:"low"`
	High    float64 `json:"high"`
	Sure    string  `json:"sure"`
	Drill   string  `json:"drill"`
	Mark    int     `json:"mark"` // 0 for a drill without one
	Tries   int     `json:"tries"`
	Minutes int     `json:"minutes"`
	Again   int     `json:"measure_again_after_rounds"` // 0 where rounds alone will not show it
}

type planResult struct {
	Version    int             `json:"version"`
	Rounds     int             `json:"rounds"`
	Target     float64         `json:"target"`
	Level      float64         `json:"level"`
	Candidates []candidateJSON `json:"candidates"`
}

func planJSON(g practice.Game, all []practice.Candidate) planResult {
	out := planResult{Version: 1, Rounds: g.Rounds, Target: g.Target, Level: g.Level}
	for _, c := range all {
		j := candidateJSON{Part: c.Kind.String(), WinBack: c.WinBack, Low: c.Interval.Low, High: c.Interval.High, Sure: c.Sure.String(),
			Drill: c.Drill.Key, Mark: c.Mark.Pass, Tries: c.Mark.Tries, Minutes: c.Minutes, Again: c.Again}
		if c.Kind == practice.OfPart {
			j.Part, j.Band = c.Part.String(), words.Band(c.Band, form.StandardUnits)
		}
		out.Candidates = append(out.Candidates, j)
	}
	return out
}
