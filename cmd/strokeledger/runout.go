package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/runout"
)

// runOut sums up a file of run-out trials, and says which club to take for a shot.
func runOut(args []string, s streams) error {
	ask, err := readRunOut(args, s)
	if err != nil {
		return err
	}
	pages, err := readBook(ask.file)
	if err != nil {
		return err
	}
	var choices []runout.Choice
	if ask.hasShot {
		if choices, err = ask.choose(pages); err != nil {
			return err
		}
	}
	if ask.json {
		return json.NewEncoder(s.out).Encode(runOutJSON(pages, choices))
	}
	for _, p := range pages {
		fmt.Fprintf(s.out, "%-8s %-8s %3d trials  run-out %5.1f yd at %.0f yd of carry%s\n", p.club, p.lie, p.Trials, p.Run(typicalCarry), typicalCarry, nextBall(p.Page))
	}
	for _, c := range choices {
		if c.Possible {
			fmt.Fprintf(s.out, "%-8s land it at %.1f yd, it runs %.1f yd: %.2f strokes\n", c.Club, c.Land, c.Run, c.Strokes)
		} else {
			fmt.Fprintf(s.out, "%-8s too little green\n", c.Club)
		}
	}
	return nil
}

// typicalCarry is the carry, in yards, for which a run-out is printed.
const typicalCarry = 12.0

func nextBall(p runout.Page) string {
	i, ok := p.Next(typicalCarry, .95)
	if !ok {
		return ""
	}
	return fmt.Sprintf(", the next ball %.1f to %.1f", i.Low, i.High)
}

type runOutAsk struct {
	file    string
	shot    runout.Shot
	level   float64
	hasShot bool
	json    bool
}

func readRunOut(args []string, s streams) (runOutAsk, error) {
	ask := runOutAsk{shot: runout.Shot{Lie: golf.Fairway, Slope: golf.LevelGround}}
	flags := flag.NewFlagSet("runout", flag.ContinueOnError)
	flags.Float64Var(&ask.shot.Distance, "distance", 0, "yards from the ball to the hole")
	flags.Float64Var(&ask.shot.Green, "green", 0, "yards from the edge of the green to the hole, on the line")
	lie := flags.String("lie", "fairway", "where the ball lies: fairway or rough")
	slope := flags.String("slope", "level", "how the green lies: uphill, level or downhill")
	flags.Float64Var(&ask.level, "level", 85, "level of the player, "+levelRange())
	flags.BoolVar(&ask.json, "json", false, "print JSON")
	name := ""
	if len(args) > 0 && !strings.HasPrefix(args[0], "-") {
		name, args = args[0], args[1:]
	}
	rest, err := parse(flags, args, s, "FILE [--distance D --green G [--lie L] [--slope S] [--level S]] [--json]")
	if err != nil {
		return ask, err
	}
	if name == "" && len(rest) == 1 {
		name, rest = rest[0], nil
	}
	if name == "" || len(rest) > 0 {
		return ask, usagef("give one file with the columns club,lie,carry,total")
	}
	ask.file, ask.hasShot = name, given(flags, "distance")
	if given(flags, "green") != ask.hasShot {
		return ask, usagef("give --distance and --green together, or neither")
	}
	return ask, ask.readShot(*lie, *slope)
}

func (ask *runOutAsk) readShot(lie, slope string) (err error) {
	if ask.shot.Lie, err = golf.ParseLie(lie); err != nil {
		return usagef("--lie: %v", err)
	}
	if ask.shot.Slope, err = golf.ParseGreenSlope(slope); err != nil {
		return usagef("--slope: %v", err)
	}
	if ask.hasShot {
		if problems := ask.shot.Check(); problems != nil {
			return usagef("--%v", problems[0])
		}
	}
	return nil
}

// choose says what the clubs of the book would do from the lie of the shot.
func (ask *runOutAsk) choose(pages []bookPage) ([]runout.Choice, error) {
	of := golfer.Committed()
	by, err := of.Striker(ask.level)
	if err != nil {
		return nil, usagef("--%v", err)
	}
	level, err := expect.Level(ask.level)
	if err != nil {
		return nil, usagef("--%v", err)
	}
	var clubs []runout.Club
	for _, p := range pages {
		if p.lie == ask.shot.Lie {
			clubs = append(clubs, runout.Club{Name: p.club, Page: p.Page})
		}
	}
	return ask.shot.Choose(clubs, by, func(lie golf.Lie, yd float64) float64 { return level.Strokes(lie, golf.Distance(yd)*golf.Yard) }), nil
}

// bookPage is the page of one club from one lie.
type bookPage struct {
	club string
	lie  golf.Lie
	runout.Page
}

// readBook reads trials from a CSV file with the columns club, lie, carry and
// total, in any order, into a page for each club and lie.
func readBook(name string) ([]bookPage, error) {
	var book trialBook
	err := eachRow(name, func(cells []string) error {
		return book.add(cells[0], cells[1], [2]string{cells[2], cells[3]})
	}, "club", "lie", "carry", "total")
	if err != nil {
		return nil, err
	}
	pages, err := book.pages()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return pages, nil
}

// trialBook gathers trials by club and lie, in the order in which these come.
type trialBook struct {
	order  []bookPage
	trials [][]runout.Trial
}

func (b *trialBook) add(club, lieName string, lengths [2]string) error {
	club, lie, trial, err := readTrial(club, lieName, lengths)
	if err != nil {
		return err
	}
	i := slices.IndexFunc(b.order, func(p bookPage) bool { return p.club == club && p.lie == lie })
	if i < 0 {
		i = len(b.order)
		b.order, b.trials = append(b.order, bookPage{club: club, lie: lie}), append(b.trials, nil)
	}
	b.trials[i] = append(b.trials[i], trial)
	return nil
}

func (b *trialBook) pages() ([]bookPage, error) {
	if len(b.order) == 0 {
		return nil, errors.New("no trials")
	}
	for i, p := range b.order {
		if problems := runout.Check(b.trials[i]); problems != nil {
			return nil, fmt.Errorf("%s from %s: %v", p.club, p.lie, problems[0])
		}
		b.order[i].Page = runout.NewPage(b.trials[i])
	}
	return b.order, nil
}

func readTrial(club, lieName string, lengths [2]string) (string, golf.Lie, runout.Trial, error) {
	club = golf.Cleaned(club, golf.MaxClub)
	if club == "" {
		return "", 0, runout.Trial{}, fmt.Errorf("no club")
	}
	lie, err := golf.ParseLie(strings.TrimSpace(lieName))
	if err != nil || lie != golf.Fairway && lie != golf.Rough {
		return "", 0, runout.Trial{}, fmt.Errorf("lie %q; allowed: fairway, rough", lieName)
	}
	var yards [2]float64
	for i, text := range lengths {
		if yards[i], err = strconv.ParseFloat(strings.TrimSpace(text), 64); err != nil {
			return "", 0, runout.Trial{}, fmt.Errorf("%q is not a number of yards", text)
		}
	}
	return club, lie, runout.Trial{Carry: yards[0], Total: yards[1]}, nil
}

type pageJSON struct {
	Club   string   `json:"club"`
	Lie    string   `json:"lie"`
	Trials int      `json:"trials"`
	Start  float64  `json:"start_yd"` // the run-out is start + slope × carry
	Slope  float64  `json:"slope"`
	SD     float64  `json:"sd_yd"`
	Low    *float64 `json:"low_yd"` // of the next ball at 12 yd of carry
	High   *float64 `json:"high_yd"`
}

type choiceJSON struct {
	Club     string   `json:"club"`
	Possible bool     `json:"possible"`
	Land     float64  `json:"land_yd"`
	Run      float64  `json:"run_yd"`
	Strokes  *float64 `json:"strokes"`
}

type runOutResult struct {
	Version int          `json:"version"`
	Clubs   []pageJSON   `json:"clubs"`
	Shot    []choiceJSON `json:"shot,omitempty"`
}

func runOutJSON(pages []bookPage, choices []runout.Choice) runOutResult {
	out := runOutResult{Version: 1}
	for _, p := range pages {
		j := pageJSON{Club: p.club, Lie: p.lie.String(), Trials: p.Trials, Start: p.Start, Slope: p.Slope, SD: p.SD}
		if i, ok := p.Next(typicalCarry, .95); ok {
			j.Low, j.High = &i.Low, &i.High
		}
		out.Clubs = append(out.Clubs, j)
	}
	for _, c := range choices {
		j := choiceJSON{Club: c.Club, Possible: c.Possible, Land: c.Land, Run: c.Run}
		if c.Possible {
			j.Strokes = &c.Strokes
		}
		out.Shot = append(out.Shot, j)
	}
	return out
}
