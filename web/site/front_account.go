package site

import (
	"fmt"
	"sync"

	"strokeledger/analysis"
	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/chart"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/form"
	"strokeledger/web/words"
)

// FrontAccount is the account of an invented round, from its target down to its
// score.
type FrontAccount struct {
	Sentence string // what was shot, and by how much too many
	Axis     components.Axis
	Target   string // the balance that the account opens with, one decimal
	Lines    []FrontLine
	Lost     string // over the target, signed, one decimal
	Score    string // a whole number
	Doubles  string // “Two doubles. One began here,”
	Began    string // where, and what the shots of its chain lost
}

// FrontLine is a part of the game, or a band of the one that is open.
type FrontLine struct {
	Name    string
	Shots   string // “24 shots”
	Worst   string // the costliest shot and what it lost
	Bar     chart.Bar
	Amount  string      // strokes lost, signed, one decimal
	Balance string      // strokes so far; empty for a band
	Bands   []FrontLine // of the line that is open; none of the others
	Working string      // of the costliest shot, under the band that it is in
}

// frontScale is the axis of the account, in strokes: that of every statement.
var frontScale = chart.Scale{Low: -3, High: 5, Step: 2}

// frontAccount is worked out once, since it is the same for every visitor.
var frontAccount = sync.OnceValue(func() FrontAccount { return newFrontAccount(exampleRound()) })

// placed is a shot with its place.
type placed struct {
	hole, number int // number counts from 1
	played       golf.Shot
	account.Shot
}

// placedShots lists the shots of a round in order of play.
func placedShots(s analysis.Statement) []placed {
	var all []placed
	for i, h := range s.Account.Holes {
		for k, shot := range h.Shots {
			all = append(all, placed{h.Number, k + 1, s.Round.Holes[i].Shots[k], shot})
		}
	}
	return all
}

// newFrontAccount makes the account. What is printed adds up: the lines to what
// is over the target, and the bands to their line.
func newFrontAccount(s analysis.Statement) FrontAccount {
	shots := placedShots(s)
	target, lines := figures.AccountLines(s.Account)
	over := s.Account.Score - target
	f := FrontAccount{Axis: components.NewAxis(frontScale, words.Tick), Target: fmt.Sprintf("%.1f", target), Lost: words.Signed(over, 1), Score: words.Plain(s.Account.Score),
		Sentence: fmt.Sprintf("You shot %s. Your target is %s. Here is where the %s went.", words.Plain(s.Account.Score), words.Plain(target), words.SpelledAmount(over))}
	worst := costliest(shots)
	balance := target
	for _, line := range lines {
		of := shotsIn(shots, func(b account.Band) bool { return b.Category == line.Part })
		l := newFrontLine(line.Name, of, line.Printed)
		balance += line.Printed
		if l.Balance = fmt.Sprintf("%.1f", balance); worst.Band.Category == line.Part {
			l.Bands = frontBands(of, line.Printed, worst)
		}
		f.Lines = append(f.Lines, l)
	}
	f.Doubles, f.Began = doublesOf(s.Account)
	return f
}

// newFrontLine makes a line of shots.
func newFrontLine(name string, of []placed, amount float64) FrontLine {
	worst := costliest(of)
	return FrontLine{Name: name, Shots: words.Plural(len(of), "shot", "shots"), Bar: frontScale.Bar(amount), Amount: words.Signed(amount, 1),
		Worst: fmt.Sprintf("hole %d, shot %d: %s", worst.hole, worst.number, words.Signed(figures.WorkingOf(worst.Shot).Lost(), 2))}
}

// frontBands are the bands of a part of the game that have shots; that of the
// costliest shot has its working.
func frontBands(of []placed, total float64, worst placed) []FrontLine {
	var lines []FrontLine
	var amounts []float64
	for _, b := range account.Bands(golf.StandardBoundary) {
		in := shotsIn(of, func(other account.Band) bool { return other == b })
		if len(in) == 0 {
			continue
		}
		l := newFrontLine(words.Band(b, form.StandardUnits), in, 0)
		if b == worst.Band {
			l.Working = worst.working()
		}
		lines, amounts = append(lines, l), append(amounts, lostBy(in))
	}
	for i, amount := range figures.Tenths(amounts, total) {
		lines[i].Amount, lines[i].Bar = words.Signed(amount, 1), frontScale.Bar(amount)
	}
	return lines
}

// working says in one line how the loss of the shot comes about; it follows from
// the two decimals that are printed.
func (p placed) working() string {
	return fmt.Sprintf("Hole %d, shot %d, %s %s: %s", p.hole, p.number, p.played.Lie,
		words.Distance(p.played.Lie, p.played.Distance, form.StandardUnits), figures.WorkingOf(p.Shot))
}

func shotsIn(all []placed, belongs func(account.Band) bool) []placed {
	var some []placed
	for _, p := range all {
		if belongs(p.Band) {
			some = append(some, p)
		}
	}
	return some
}

func costliest(all []placed) placed {
	worst := all[0]
	for _, p := range all {
		if p.Lost > worst.Lost {
			worst = p
		}
	}
	return worst
}

func lostBy(all []placed) float64 {
	sum := 0.0
	for _, p := range all {
		sum += p.Lost
	}
	return sum
}

// doublesOf says how many doubles there were, and where the first that is a chain
// began.
func doublesOf(a account.Account) (count, began string) {
	count = words.Capital(words.SpelledPlural(len(a.Doubles), "double", "doubles")) + "."
	for _, d := range a.Doubles {
		if d.Kind != account.Compound {
			continue
		}
		for _, h := range a.Holes {
			if h.Number == d.Hole {
				root, next := h.Shots[d.Root-1], h.Shots[d.Chain[1]-1]
				return count + " One began here,", fmt.Sprintf("%s on hole %d: it lost %.2f, its follow-up %.2f.", words.Where(d.RootCategory), d.Hole, figures.WorkingOf(root).Lost(), figures.WorkingOf(next).Lost())
			}
		}
	}
	return count, ""
}
