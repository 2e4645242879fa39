package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"math"
	"os"
	"strconv"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/aim"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
)

// aimAt prints where to aim on a hole, from its picture.
func aimAt(args []string, s streams) error {
	flags := flag.NewFlagSet("aim", flag.ContinueOnError)
	level := flags.Float64("level", 0, "level of the golfer, "+levelRange())
	holeAt := flags.String("hole-at", "", "where the hole is cut: yards on from the front edge, yards right of the middle (left is negative), such as 8,-5; without it, the middle")
	from := flags.String("from", "", "where an approach is played from, such as fairway,150: lie, and yards to the hole on the centre line")
	bias := flags.Float64("bias", 0, "yards right of the aim that your ball ends on average; left is negative")
	asJSON := flags.Bool("json", false, "print JSON")
	rest, err := parse(flags, args, s, "PICTURE.json --level S [--hole-at ON,SIDE] [--from LIE,DISTANCE] [--bias YD] [--json]")
	switch {
	case err != nil:
		return err
	case len(rest) != 1:
		return usagef("give one picture of a hole, or - for standard input")
	case !given(flags, "level") || !(*level >= expect.MinLevel && *level <= expect.MaxLevel):
		return usagef("give --level S, %s", levelRange())
	case !(math.Abs(*bias) <= mostBias):
		return usagef("--bias %g; allowed: -%d to %d", *bias, mostBias, mostBias)
	}
	in := analysis.AimInput{As: analysis.TargetsGolfer(*level), Shape: *bias}
	if in.Flag, err = readFlag(*holeAt); err != nil {
		return err
	}
	if in.From, err = readFrom(*from); err != nil {
		return err
	}
	if in.Picture, err = readPicture(rest[0], s); err != nil {
		return err
	}
	advice, err := analysis.NewEngine().Aim(in)
	if err != nil {
		return err
	}
	if *asJSON {
		return json.NewEncoder(s.out).Encode(aimsJSON(advice))
	}
	return printAdvice(s.out, advice)
}

// mostBias is the most that a bias may be, in yards. Wider than any ball bends.
const mostBias = 60

// readPicture reads the picture of a hole from a file, or from standard input.
func readPicture(name string, s streams) (aim.Picture, error) {
	in := s.in
	if name != "-" {
		file, err := os.Open(name)
		if err != nil {
			return aim.Picture{}, err
		}
		defer file.Close()
		in = file
	}
	data, err := io.ReadAll(io.LimitReader(in, aim.MaxBytes+1))
	if err != nil {
		return aim.Picture{}, err
	}
	return aim.Read(data)
}

// readFlag reads where the hole is cut.
func readFlag(text string) (*aim.Flag, error) {
	if text == "" {
		return nil, nil
	}
	x, err := numbersIn(text, 2)
	if err != nil {
		return nil, usagef("--hole-at %q; allowed: two numbers with a comma between them", text)
	}
	return &aim.Flag{On: x[0], Side: x[1]}, nil
}

// readFrom reads where an approach is played from.
func readFrom(text string) (*analysis.AimFrom, error) {
	if text == "" {
		return nil, nil
	}
	name, far, _ := strings.Cut(text, ",")
	lie, err := golf.ParseLie(strings.TrimSpace(name))
	if err != nil {
		return nil, usagef("--from: %v", err)
	}
	x, err := numbersIn(far, 1)
	if err != nil || lie == golf.Green || !(x[0] > golf.MaxShortSided.Yards() && x[0] <= golf.MaxDistance.Yards()) {
		return nil, usagef("--from %q; allowed: a lie off the green, a comma, and more than %g to %g yards",
			text, golf.MaxShortSided.Yards(), golf.MaxDistance.Yards())
	}
	return &analysis.AimFrom{Lie: lie, Distance: golf.Yards.Of(x[0])}, nil
}

// numbersIn reads so many finite numbers with commas between them.
func numbersIn(text string, n int) ([]float64, error) {
	parts := strings.Split(text, ",")
	if len(parts) != n {
		return nil, fmt.Errorf("%d numbers", len(parts))
	}
	all := make([]float64, n)
	for i, p := range parts {
		x, err := strconv.ParseFloat(strings.TrimSpace(p), 64)
		if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
			return nil, fmt.Errorf("%q is not a number", p)
		}
		all[i] = x
	}
	return all, nil
}
