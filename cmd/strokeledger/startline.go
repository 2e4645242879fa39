package main

import (
	"encoding/json"
	"flag"
	"fmt"

	"strokeledger/analysis/golfer"
	"strokeledger/analysis/startline"
)

// startLine says how straight a player starts putts, from tries of one length.
func startLine(args []string, s streams) error {
	tries, level, asJSON, err := readTries(args, s)
	if err != nil {
		return err
	}
	of := golfer.Committed()
	striker, err := of.Striker(level)
	if err != nil {
		return usagef("--%v", err)
	}
	r := startline.NewModel(striker.Putter(), tries.Feet).Read(tries)
	if asJSON {
		return json.NewEncoder(s.out).Encode(startLineJSON(r))
	}
	fmt.Fprintf(s.out, "Spread of the start line: %.2f°, 95 %% sure between %.2f° and %.2f°.\n", r.Spread, r.Interval.Low, r.Interval.High)
	fmt.Fprintf(s.out, "A golfer of level %g: %.2f°. The hole takes %.2f° to either side.\n", level, r.Level, r.Window)
	if r.Bias != nil {
		fmt.Fprintf(s.out, "Bias: %.2f°, between %.2f° and %.2f°; left is negative.\n", r.Bias.Mean, r.Bias.Interval.Low, r.Bias.Interval.High)
	}
	return nil
}

func readTries(args []string, s streams) (t startline.Tries, level float64, asJSON bool, err error) {
	flags := flag.NewFlagSet("startline", flag.ContinueOnError)
	flags.Float64Var(&t.Feet, "feet", 0, fmt.Sprintf("how long the putts were, %d to %d ft", startline.MinFeet, startline.MaxFeet))
	flags.IntVar(&t.Of, "tries", 0, "how many were putted")
	flags.IntVar(&t.Made, "made", 0, "how many were holed")
	flags.IntVar(&t.Left, "left", 0, "how many missed on the left")
	flags.IntVar(&t.Right, "right", 0, "how many missed on the right; the rest missed short or long")
	flags.Float64Var(&level, "level", 85, "level of the player's putting, "+levelRange())
	flags.BoolVar(&asJSON, "json", false, "print JSON")
	rest, err := parse(flags, args, s, "--feet X --tries N --made M [--left L --right R] [--level S] [--json]")
	switch {
	case err != nil:
		return t, level, asJSON, err
	case len(rest) > 0:
		return t, level, asJSON, usagef("unexpected argument %q", rest[0])
	case !given(flags, "feet") || !given(flags, "tries") || !given(flags, "made"):
		return t, level, asJSON, usagef("give --feet X, --tries N and --made M")
	case given(flags, "left") != given(flags, "right"):
		return t, level, asJSON, usagef("give --left and --right together, or neither")
	}
	if t.Sides = given(flags, "left"); t.Sides {
		t.Short = t.Of - t.Made - t.Left - t.Right // whether short or long says nothing about the line
	}
	if problems := t.Check(); problems != nil {
		return t, level, asJSON, usagef("--%v", problems[0])
	}
	return t, level, asJSON, nil
}

type startLineResult struct {
	Version  int      `json:"version"`
	Spread   float64  `json:"spread_deg"`
	Low      float64  `json:"low"`
	High     float64  `json:"high"`
	Bias     *float64 `json:"bias_deg"`
	BiasLow  *float64 `json:"bias_low"`
	BiasHigh *float64 `json:"bias_high"`
	Level    float64  `json:"level_deg"`
	Window   float64  `json:"window_deg"`
}

func startLineJSON(r startline.Reading) startLineResult {
	out := startLineResult{Version: 1, Spread: r.Spread, Low: r.Interval.Low, High: r.Interval.High, Level: r.Level, Window: r.Window}
	if r.Bias != nil {
		out.Bias, out.BiasLow, out.BiasHigh = &r.Bias.Mean, &r.Bias.Interval.Low, &r.Bias.Interval.High
	}
	return out
}
