package main

import (
	"bufio"
	"flag"
	"fmt"
	"io"
	"iter"
	"os"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/parallel"
	"strokeledger/analysis/shotsfile"
)

// analyse prints the account of every round of a shots file.
func analyse(args []string, s streams) error {
	flags := flag.NewFlagSet("analyse", flag.ContinueOnError)
	target := flags.Float64("target", analysis.StandardTarget, "compare with the golfer who shoots this score on the course played, "+levelRange())
	level := flags.Float64("level", 0, "compare with the golfer of this level on every course, "+levelRange())
	baseline := flags.String("baseline", "", "tour: compare with the published tour table; errors and doubles are still judged by a 79 golfer")
	asJSON := flags.Bool("json", false, "print JSON")
	rest, err := parse(flags, args, s, "[--target S | --level S | --baseline tour] [--json] FILE   (- for standard input)")
	if err != nil {
		return err
	}
	if len(rest) != 1 {
		return usagef("give one shots file, or - for standard input")
	}
	choice, err := chosenComparison(flags, *target, *level, *baseline)
	if err != nil {
		return err
	}
	analyst, err := analysis.NewAnalyst(choice, golf.StandardBoundary)
	if err != nil {
		return usagef("%v", err)
	}
	in, closeIn, err := open(rest[0], s.in)
	if err != nil {
		return err
	}
	defer closeIn()
	var form layout = newStatement(choice)
	if *asJSON {
		form = newJSONLayout(choice)
	}
	return analyseFile(analyst, in, form, s)
}

// chosenComparison reads the flags that say which golfer to compare with; at most
// one may be given.
func chosenComparison(flags *flag.FlagSet, target, level float64, baseline string) (analysis.Choice, error) {
	n := 0
	for _, name := range []string{"target", "level", "baseline"} {
		if given(flags, name) {
			n++
		}
	}
	switch {
	case n > 1:
		return analysis.Choice{}, usagef("give one of --target S, --level S and --baseline tour")
	case given(flags, "level"):
		return analysis.Level(level), nil
	case given(flags, "baseline") && baseline == "tour":
		return analysis.Tour(), nil
	case given(flags, "baseline"):
		return analysis.Choice{}, usagef("--baseline %q; allowed: tour", baseline)
	default:
		return analysis.Target(target), nil
	}
}

func open(name string, stdin io.Reader) (io.Reader, func() error, error) {
	if name == "-" {
		return stdin, func() error { return nil }, nil
	}
	file, err := os.Open(name)
	if err != nil {
		return nil, nil, err
	}
	return file, file.Close, nil
}

// layout is how reports are written: a beginning, a piece for each round, made on
// any core, and an end.
type layout interface {
	begin(w *bufio.Writer)
	round(to []byte, r analysis.Statement) []byte
	add(w *bufio.Writer, r analysis.Statement) // in the order of the file, before its piece is written
	end(w *bufio.Writer)
}

// analyseFile works through a file round by round. What it writes waits in a
// temporary file until the last line has been read, since a file with a fault is
// refused as a whole.
func analyseFile(analyst *analysis.Analyst, in io.Reader, form layout, s streams) error {
	waiting, err := os.CreateTemp("", "strokeledger-*")
	if err != nil {
		return err
	}
	defer os.Remove(waiting.Name())
	defer waiting.Close()
	w := bufio.NewWriterSize(waiting, 1<<16)
	form.begin(w)
	reader := shotsfile.NewReader(in, shotsfile.Limits{})
	if err := eachReport(analyst, reader, form, w, newProgress(s.err)); err != nil {
		return err
	}
	form.end(w)
	if err := w.Flush(); err != nil {
		return err
	}
	for _, column := range reader.Unknown() {
		fmt.Fprintf(s.err, "column %q is unknown and was ignored\n", column)
	}
	if _, err := waiting.Seek(0, io.SeekStart); err != nil {
		return err
	}
	_, err = io.Copy(s.out, waiting)
	return err
}

// batch is how many rounds a core takes at a time.
const batch = 16

// piece is the result of a batch: its reports, and their text.
type piece struct {
	reports []analysis.Statement
	text    [][]byte
}

// eachReport reads rounds, makes their reports on all cores, and writes them in the
// order of the file.
func eachReport(analyst *analysis.Analyst, reader *shotsfile.Reader, form layout, w *bufio.Writer, line *progress) error {
	defer line.end()
	var failed error
	done := 0
	for p := range parallel.InOrder(batches(reader, &failed), func(rounds []golf.Round) piece { return reportOn(analyst, rounds, form) }) {
		for i, r := range p.reports {
			form.add(w, r)
			w.Write(p.text[i]) // Flush returns any failure
		}
		done += len(p.reports)
		line.update("%d rounds", done)
	}
	return failed
}

// batches yields the rounds of a file, a batch at a time. An error ends it early and
// is then in failed.
func batches(reader *shotsfile.Reader, failed *error) iter.Seq[[]golf.Round] {
	return func(yield func([]golf.Round) bool) {
		var rounds []golf.Round
		for r, err := range reader.Rounds() {
			if *failed = err; err != nil {
				return
			}
			if rounds = append(rounds, r); len(rounds) == batch {
				if !yield(rounds) {
					return
				}
				rounds = nil
			}
		}
		if len(rounds) > 0 {
			yield(rounds)
		}
	}
}

func reportOn(analyst *analysis.Analyst, rounds []golf.Round, form layout) piece {
	var p piece
	for _, r := range rounds {
		report := analyst.Statement(r, 0)
		p.reports = append(p.reports, report)
		p.text = append(p.text, form.round(nil, report))
	}
	return p
}
