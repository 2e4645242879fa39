package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"strings"

	"strokeledger/analysis/golfer"
	"strokeledger/analysis/practice"
)

// drill lists the drills, or says what to reach in one.
func drill(args []string, s streams) error {
	ask, err := readDrill(args, s)
	if err != nil {
		return err
	}
	if ask.list {
		return listDrills(s, ask.json)
	}
	m, chance, err := ask.mark()
	if err != nil {
		return err
	}
	if ask.json {
		return json.NewEncoder(s.out).Encode(ask.result(m, chance))
	}
	fmt.Fprintf(s.out, "%s: a golfer of level %g has %.0f of 100 tries count.\n", ask.drill.Name, ask.level, 100*chance)
	fmt.Fprintf(s.out, "Mark: %d of %d. That golfer passes it %.0f times in 100", m.Pass, m.Tries, 100*m.Target)
	if ask.hasToday {
		fmt.Fprintf(s.out, ", one of level %g %.0f times", ask.today, 100*m.Today)
	}
	fmt.Fprintln(s.out, ".")
	if ask.hasToday && !m.Tells {
		fmt.Fprintln(s.out, "One session of so many tries cannot tell the two apart.")
	}
	return nil
}

// drillAsk is what the command was asked.
type drillAsk struct {
	list, json      bool
	drill           practice.Drill
	level, today    float64
	hasToday        bool
	tries           int
	chosen          bool // the number of tries
	target, present []float64
}

func readDrill(args []string, s streams) (drillAsk, error) {
	var ask drillAsk
	flags := flag.NewFlagSet("drill", flag.ContinueOnError)
	flags.BoolVar(&ask.list, "list", false, "list the drills")
	feet := flags.Float64("feet", 0, "how long the putt is, for the drill start-line")
	flags.Float64Var(&ask.level, "level", 0, "level of the golfer whose mark it is, "+levelRange())
	flags.Float64Var(&ask.today, "today", 0, "level of the golfer who practises, likewise")
	flags.IntVar(&ask.tries, "tries", 0, "how many tries, in whole sets; without it, as many as it takes to tell the two levels apart")
	flags.BoolVar(&ask.json, "json", false, "print JSON")
	name := ""
	if len(args) > 0 && !strings.HasPrefix(args[0], "-") {
		name, args = args[0], args[1:]
	}
	rest, err := parse(flags, args, s, "--list [--json] | NAME [--feet X] --level S [--today S2] [--tries N] [--json]")
	switch {
	case err != nil:
		return ask, err
	case len(rest) > 0:
		return ask, usagef("unexpected argument %q", rest[0])
	case ask.list:
		return ask, nil
	case !given(flags, "level"):
		return ask, usagef("give the name of a drill and --level S, %s, or --list", levelRange())
	}
	if ask.drill, err = findDrill(name, *feet, given(flags, "feet")); err != nil {
		return ask, err
	}
	ask.hasToday, ask.chosen = given(flags, "today"), given(flags, "tries")
	return ask, ask.check()
}

func findDrill(name string, feet float64, moved bool) (practice.Drill, error) {
	d, err := practice.Find(name)
	switch {
	case err != nil:
		return d, usagef("%v; --list prints them", err)
	case d.NoMark:
		return d, usagef("%s has no mark: its results cannot tell levels apart", d.Key)
	case moved:
		if d, err = d.At(feet); err != nil {
			return d, usagef("--feet: %v", err)
		}
	}
	return d, nil
}

// mostTries is the largest number of tries that can be asked for.
const mostTries = 1000

func (ask *drillAsk) check() error {
	if ask.chosen && (ask.tries < ask.drill.Set() && len(ask.drill.Stations) > 1 || ask.tries < 1 || ask.tries > mostTries || len(ask.drill.Stations) > 1 && ask.tries%ask.drill.Set() != 0) {
		return usagef("--tries %d; allowed: 1 to %d, in sets of %d", ask.tries, mostTries, ask.drill.Set())
	}
	of := golfer.Committed()
	var err error
	if ask.target, err = ask.drill.Chances(&of, ask.level); err != nil {
		return usagef("--%v", err)
	}
	ask.present = ask.target
	if ask.hasToday {
		if ask.present, err = ask.drill.Chances(&of, ask.today); err != nil {
			return usagef("--today: %v", err)
		}
	}
	return nil
}

// mark is the mark, and the share of tries that count for the golfer whose it is.
func (ask *drillAsk) mark() (practice.Mark, float64, error) {
	chance := practice.Chance(ask.target)
	switch {
	case ask.chosen:
		return practice.MarkOf(ask.target, ask.present, ask.tries), chance, nil
	case ask.hasToday:
		return ask.drill.Mark(ask.target, ask.present), chance, nil
	default:
		set := ask.drill.Set()
		return practice.MarkOf(ask.target, ask.present, (20+set-1)/set*set), chance, nil
	}
}

type drillResult struct {
	Version   int      `json:"version"`
	Drill     string   `json:"drill"`
	Level     float64  `json:"level"`
	Tries     int      `json:"tries"`
	Chance    float64  `json:"chance"`
	Mark      int      `json:"mark"`
	Pass      float64  `json:"pass"`
	PassToday *float64 `json:"pass_today,omitempty"`
}

func (ask *drillAsk) result(m practice.Mark, chance float64) drillResult {
	r := drillResult{Version: 1, Drill: ask.drill.Key, Level: ask.level, Tries: m.Tries, Chance: chance, Mark: m.Pass, Pass: m.Target}
	if ask.hasToday {
		r.PassToday = &m.Today
	}
	return r
}

type listedDrill struct {
	Drill    string    `json:"drill"`
	Name     string    `json:"name"`
	Part     string    `json:"part"`
	SetUp    [3]string `json:"set_up"`
	Counts   string    `json:"counts"`
	Stations int       `json:"stations"`
	Mark     bool      `json:"mark"`
}

func listDrills(s streams, asJSON bool) error {
	var all []listedDrill
	for _, d := range practice.Drills() {
		all = append(all, listedDrill{d.Key, d.Name, d.Part.String(), d.SetUp, d.Counts, len(d.Stations), !d.NoMark})
		if !asJSON {
			fmt.Fprintf(s.out, "%-15s  %-10s  %s\n", d.Key, d.Part, d.Name)
		}
	}
	if asJSON {
		return json.NewEncoder(s.out).Encode(map[string]any{"version": 1, "drills": all})
	}
	return nil
}
