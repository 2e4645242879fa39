package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"strconv"
	"strings"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
)

// expectStrokes prints how many strokes a golfer is expected to take from a lie, at
// one or several distances.
func expectStrokes(args []string, s streams) error {
	flags := flag.NewFlagSet("expect", flag.ContinueOnError)
	level := flags.Float64("level", 0, "level of the golfer, "+levelRange())
	baseline := flags.String("baseline", "", "tour: the published tour table")
	lieName := flags.String("lie", "", "where the ball lies: tee, fairway, rough, bunker, recovery or green")
	distances := flags.String("distance", "", "distance to the hole, or several with commas between them; in yards off the green, in feet on it")
	green := flags.Float64("green-to-work-with", 0, "yards of green between the ball and the hole, for shots of 30 yd or less from off the green")
	asJSON := flags.Bool("json", false, "print JSON")
	rest, err := parse(flags, args, s, "(--level S | --baseline tour) --lie L --distance D[,D...] [--green-to-work-with G] [--json]")
	if err != nil {
		return err
	}
	if len(rest) > 0 {
		return usagef("unexpected argument %q", rest[0])
	}
	b, err := chosenGolfer(flags, *level, *baseline)
	if err != nil {
		return err
	}
	shots, err := askedShots(*lieName, *distances, *green, given(flags, "green-to-work-with"))
	if err != nil {
		return err
	}
	if *asJSON {
		return json.NewEncoder(s.out).Encode(expectedJSON(b, shots))
	}
	for _, shot := range shots {
		unit := shot.Lie.Unit()
		fmt.Fprintf(s.out, "%-8s  %6s %s  %.3f\n", shot.Lie, plain(unit.In(shot.Distance)), unit, b.Shot(shot))
	}
	return nil
}

// chosenGolfer reads --level and --baseline, of which one must be given.
func chosenGolfer(flags *flag.FlagSet, level float64, baseline string) (*expect.Baseline, error) {
	switch {
	case given(flags, "level") == given(flags, "baseline"):
		return nil, usagef("give one of --level S and --baseline tour")
	case given(flags, "baseline"):
		if baseline != "tour" {
			return nil, usagef("--baseline %q; allowed: tour", baseline)
		}
		return expect.Tour(), nil
	default:
		b, err := expect.Level(level)
		if err != nil {
			return nil, usagef("--%v", err)
		}
		return b, nil
	}
}

// askedShots reads the lie and the distances into shots that are legal.
func askedShots(lieName, distances string, green float64, greenKnown bool) ([]golf.Shot, error) {
	lie, err := golf.ParseLie(lieName)
	if err != nil {
		return nil, usagef("--lie: %v", err)
	}
	var shots []golf.Shot
	for text := range strings.SplitSeq(distances, ",") {
		x, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
		if err != nil || math.IsNaN(x) {
			return nil, usagef("--distance: %q is not a number; allowed: distances with commas between them", text)
		}
		shot := golf.Shot{Lie: lie, Distance: lie.Unit().Of(x), GreenToWork: golf.Yards.Of(green), GreenKnown: greenKnown}
		if problems := shot.Check(); problems != nil {
			return nil, usagef("%s %s: %v", lie, strings.TrimSpace(text), problems[0])
		}
		shots = append(shots, shot)
	}
	return shots, nil
}

type expectedShot struct {
	Lie      string  `json:"lie"`
	Distance float64 `json:"distance"`
	Unit     string  `json:"unit"`
	Strokes  float64 `json:"strokes"`
}

type expectedResult struct {
	Version  int            `json:"version"`
	Level    any            `json:"level"` // a number, or "tour"
	Expected []expectedShot `json:"expected"`
}

func expectedJSON(b *expect.Baseline, shots []golf.Shot) expectedResult {
	result := expectedResult{Version: 1, Level: "tour"}
	if b.Kind() == expect.KindLevel {
		result.Level = b.Level()
	}
	for _, shot := range shots {
		unit := shot.Lie.Unit()
		result.Expected = append(result.Expected, expectedShot{shot.Lie.String(), unit.In(shot.Distance), unit.String(), b.Shot(shot)})
	}
	return result
}

// levelRange says which levels are allowed: 68 to 110.
func levelRange() string { return fmt.Sprintf("%g to %g", expect.MinLevel, expect.MaxLevel) }

// plain writes a number with as many decimals as it has.
func plain(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }
