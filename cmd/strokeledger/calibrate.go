package main

import (
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"time"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golfer"
)

// Where the results of a calibration are in the source tree.
const (
	parameterFile   = "analysis/golfer/parameters.json"
	refitFile       = "analysis/golfer/refit.json"
	uncertaintyFile = "analysis/golfer/uncertainty.csv"
	resultFile      = "analysis/golfer/calibration.md"
	levelFile       = "analysis/expect/levels.bin"
)

// calibrate fits the golfer's parameters to the published figures and writes
// the files that the next build embeds.
func calibrate(args []string, s streams) error {
	flags := flag.NewFlagSet("calibrate", flag.ContinueOnError)
	check := flags.Bool("check", false, "start 20 % off in two ways and check that both end at the committed expected strokes; writes nothing")
	show := flags.Bool("show", false, "show how close the committed parameters come to the published figures; writes nothing")
	into := flags.String("into", ".", "root of the source tree to write to")
	rest, err := parse(flags, args, s, "[--check | --show] [--into DIR]")
	switch {
	case err != nil:
		return err
	case len(rest) > 0:
		return usagef("unexpected argument %q", rest[0])
	case *check && *show:
		return usagef("give one of --check and --show")
	case *show:
		_, err := io.WriteString(s.out, golfer.Report(golfer.Committed().Results(), golfer.CommittedUncertainty()))
		return err
	case *check:
		return checkCalibration(s)
	default:
		return writeCalibration(*into, s)
	}
}

func writeCalibration(root string, s streams) error {
	if _, err := os.Stat(filepath.Join(root, parameterFile)); err != nil {
		return fmt.Errorf("%s is not the root of the source tree: %w", root, err)
	}
	line := newProgress(s.err)
	defer line.end()
	p := golfer.Start().Calibrate(line.calibration)
	files, err := calibrated(p, line)
	if err != nil {
		return err
	}
	line.end()
	for name, data := range files {
		if err := os.WriteFile(filepath.Join(root, name), data, 0o644); err != nil {
			return err
		}
	}
	_, err = s.out.Write(files[resultFile])
	return err
}

// calibrated are the files that follow from parameters: the levels, how sure they
// are, with the refit that checks it, and what is reached of the figures.
func calibrated(p golfer.Parameters, line *progress) (map[string][]byte, error) {
	levels, err := p.SolveLevels(func(done, of int) { line.update("solving levels: %d of %d", done, of) })
	if err != nil {
		return nil, err
	}
	refit := p.Refit(golfer.RefitSeed, line.calibration)
	table, err := p.Uncertainty(refit, func(done, of int) { line.update("how sure it is: %d of %d", done, of) })
	if err != nil {
		return nil, err
	}
	return map[string][]byte{
		parameterFile: p.Format(), levelFile: expect.Encode(levels), refitFile: refit.Format(),
		uncertaintyFile: []byte(golfer.FormatUncertainty(table)), resultFile: []byte(golfer.Report(p.Results(), table)),
	}, nil
}

// checkTolerance is how far expected strokes may be from the committed ones, as a share of
// their spread, after a calibration that began 20 % off.
const checkTolerance = .5

// checkCalibration begins 20 % off in two ways, every other number up and the rest
// down and then the reverse, and asks for the committed expected strokes.
func checkCalibration(s streams) error {
	line := newProgress(s.err)
	defer line.end()
	far := 0.0
	for _, share := range []float64{.2, -.2} {
		p := golfer.Committed().Disturbed(share).Calibrate(line.calibration)
		line.end()
		apart := p.SpreadsApart(golfer.Committed())
		fmt.Fprintf(s.out, "begun with the first number %+.0f %%: objective %.2f, expected strokes %.2f of their spread off\n", 100*share, p.Objective(), apart)
		for _, d := range p.Differences(golfer.Committed()) {
			fmt.Fprintf(s.out, "%-32s %+.3f %%\n", d.Name, 100*d.Share)
		}
		far = max(far, apart)
	}
	if far > checkTolerance {
		return fmt.Errorf("expected strokes ended %.2f of their spread off; allowed: %.2f", far, checkTolerance)
	}
	return nil
}

// progress is a line on a terminal that says how far the work is.
type progress struct {
	to    io.Writer
	on    bool
	began time.Time
	last  time.Time
	wrote bool
}

func newProgress(to io.Writer) *progress {
	return &progress{to: to, on: onTerminal(to), began: time.Now()}
}

// update rewrites the line, at most a few times a second.
func (p *progress) update(format string, args ...any) {
	if now := time.Now(); p.on && now.Sub(p.last) > time.Second/5 {
		p.last, p.wrote = now, true
		fmt.Fprintf(p.to, "\r\x1b[K%s (%s)", fmt.Sprintf(format, args...), now.Sub(p.began).Round(time.Second))
	}
}

func (p *progress) calibration(c golfer.Progress) {
	p.update("step %d, objective %.3f: derivative %d of %d", c.Step, c.Objective, c.Done, c.Of)
}

// end clears the line.
func (p *progress) end() {
	if p.wrote {
		fmt.Fprint(p.to, "\r\x1b[K")
		p.wrote = false
	}
}
