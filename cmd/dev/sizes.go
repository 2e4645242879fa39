package main

import (
	"flag"
	"fmt"
	"io"
	"os"
	"text/tabwriter"
)

// sizes prints how large the parts of every package are, beside the goals, and
// then every goal that is missed. With --check a missed goal is an error.
func sizes(args []string) error {
	flags := flag.NewFlagSet("sizes", flag.ContinueOnError)
	strict := flags.Bool("check", false, "fail when a goal is missed")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if flags.NArg() > 0 {
		return errUsage
	}
	packages, err := tree(".")
	if err != nil {
		return err
	}
	var all []measured
	for _, p := range packages {
		m, err := measure(p)
		if err != nil {
			return err
		}
		all = append(all, m)
	}
	missed := printSizes(os.Stdout, all)
	if *strict && missed > 0 {
		return fmt.Errorf("%d goals missed", missed)
	}
	return nil
}

// testCell is how many lines of tests there are to a line of code, or why nobody
// asks.
func (m measured) testCell() string {
	if m.name == testData {
		return "data"
	}
	return fmt.Sprintf("%.2f", m.testRatio())
}

// printSizes writes the table and the goals that are missed, and returns how
// many these are.
func printSizes(w io.Writer, all []measured) int {
	table := tabwriter.NewWriter(w, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(table, "files\tp50\tp90\tmax\tfunctions\tp50\tp90\tmax\tparameters\tcomments\tbare fields\ttest to code\t  package")
	fmt.Fprintf(table, "\t\t≤ %d\t≤ %d\t\t\t≤ %d\t≤ %d\t≤ %d\t≥ %.0f %%\t\t≥ %.1f\t  goals; comments of analysis, tests of web\n",
		goalFileP90, mostLines, goalFunctionP90, goalFunction, goalParameters, 100*goalComments, goalTests)
	for _, m := range all {
		files, functions := m.files(), m.functionLines()
		fmt.Fprintf(table, "%d\t%d\t%d\t%d\t%d\t%d\t%d\t%d\t%d\t%.0f %%\t%d\t%s\t  %s\n",
			len(files), percentile(files, 50), percentile(files, 90), percentile(files, 100),
			len(functions), percentile(functions, 50), percentile(functions, 90), percentile(functions, 100),
			m.mostParameters(), 100*m.commentShare(), m.bareFields, m.testCell(), m.name)
	}
	table.Flush()
	missed := 0
	for _, m := range all {
		for _, what := range m.missed() {
			if missed == 0 {
				fmt.Fprintln(w, "\nGoals missed:")
			}
			missed++
			fmt.Fprintf(w, "%s: %s\n", m.name, what)
		}
	}
	if missed == 0 {
		fmt.Fprintln(w, "\nEvery goal is reached.")
	}
	return missed
}
