package statement

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
	"strokeledger/web/chart"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// Line is one line of the statement: a part of the game, or a band of one.
type Line struct {
	Name    string
	Shots   string // how many; empty for lines without shots
	Worst   string // hole and shot of the costliest shot
	WorstAt string // place of that shot on the page
	Cost    string // strokes that it lost, two decimals
	Bar     chart.Bar
	Amount  string     // strokes lost, signed, one decimal
	Working string     // how the amount comes about; empty for lines without shots
	Balance string     // strokes so far, from the target down; empty for a band
	Bands   []Line     // of a part of the game; none when it has no shots
	All     []ShotLink // every shot of a band, the costliest first; none for a part
	working figures.Working
}

// shotWord goes with the count of shots, empty where there is none.
func (l Line) shotWord() string {
	switch l.Shots {
	case "":
		return ""
	case "1":
		return "shot"
	default:
		return "shots"
	}
}

// ShotLink leads to a shot further down the page.
type ShotLink struct {
	At   string // its place
	Name string // hole and shot
	Cost string // strokes lost, signed, two decimals
	lost float64
}

// Names of the lines that are no part of the game.
const (
	scoreOnly  = "Score only"
	courseLine = "Course"
	rounding   = "Picked up" // what counting picked-up holes in whole strokes changed
)

// lineNames are those of all lines that holes can be charged to.
var lineNames = []string{"Tee", "Approach", "Short game", "Putting", scoreOnly, rounding}

// partName is the line of a part of the game.
func partName(c golf.Category) string { return lineNames[slices.Index(golf.Categories, c)] }

// lineAmounts are the lines from the target to the score: the parts of the game,
// and what is not known shot by shot where there is any.
func lineAmounts(a account.Account) (names []string, amounts []float64) {
	for _, c := range golf.Categories {
		names, amounts = append(names, partName(c)), append(amounts, a.Lost.Of(c))
	}
	for _, extra := range []struct {
		name   string
		amount float64
	}{{scoreOnly, a.Lost.Undetailed}, {rounding, a.Lost.PickedUp}, {courseLine, a.Lost.Course}} {
		if math.Abs(extra.amount) > 1e-9 {
			names, amounts = append(names, extra.name), append(amounts, extra.amount)
		}
	}
	return names, amounts
}

// accountScale is the same on every statement, so that a bar of one round can be
// held against that of another.
var accountScale = chart.Fixed(-3, 5, 1)

// lines fills in the lines from target to score, and returns what is printed for
// each. What is printed adds up, by lines and by bands.
func (s *RoundPage) lines(in RoundInput) map[string]float64 {
	printed := map[string]float64{}
	names, amounts := lineAmounts(in.Account)
	target := math.Round((in.Account.Expected-in.Account.Lost.Course)*10) / 10
	rounded := stat.RoundedTo(amounts, .1, math.Round(in.Account.Score*10)/10-target)
	s.Axis = components.NewAxis(accountScale, words.Tick)
	balance := target
	s.Opening, s.Target = "Target", fmt.Sprintf("%.1f", balance)
	for i, name := range names {
		balance += rounded[i]
		l := Line{Name: name, Balance: fmt.Sprintf("%.1f", balance)}
		printed[name] = rounded[i]
		if i < len(golf.Categories) {
			fillLine(&l, in, func(sh account.Shot) bool { return sh.Band.Category == golf.Categories[i] })
			l.Bands = bandLines(in, golf.Categories[i], rounded[i])
		}
		l.charge(rounded[i])
		s.Lines = append(s.Lines, l)
	}
	s.Shots = words.Plural(shotCount(in.Account), "shot", "shots")
	if n := in.Account.Counts.Penalties; n > 0 {
		s.Shots += " and " + words.Plural(n, "penalty stroke", "penalty strokes")
	}
	s.Lost, s.Score = words.Signed(balance-target, 1), words.Score(balance, len(in.Account.PickedUp()) > 0)
	return printed
}

// charge prints the amount of a line, with its bar and its working.
func (l *Line) charge(tenths float64) {
	l.Amount, l.Bar = words.Signed(tenths, 1), accountScale.Bar(tenths)
	if n := l.working.Shots(); n > 0 {
		l.Working = l.working.String() + shared(l.working.Lost(), tenths)
	}
}

// shared says why an amount is not its working rounded to a tenth: tenths are
// shared out so that what is printed adds up.
func shared(lost, tenths float64) string {
	if math.Abs(lost-tenths) <= .0501 {
		return ""
	}
	return fmt.Sprintf("; %s here, so that the tenths add up", words.Signed(tenths, 1))
}

// bandLoss is what the shots of a band lost, in strokes.
func bandLoss(in RoundInput, b account.Band) float64 {
	sum := 0.0
	eachShot(in, func(_, _ int, s account.Shot) {
		if s.Band == b {
			sum += s.Lost
		}
	})
	return sum
}

// bandLines are the bands of a part of the game that have shots; their amounts add
// up to total as printed.
func bandLines(in RoundInput, c golf.Category, total float64) []Line {
	var lines []Line
	var amounts []float64
	for _, b := range account.Bands(in.Bounds) {
		l := Line{Name: words.Band(b, in.Units), All: shotsOf(in, b)}
		if b.Category == c && fillLine(&l, in, func(s account.Shot) bool { return s.Band == b }) {
			lines, amounts = append(lines, l), append(amounts, bandLoss(in, b))
		}
	}
	if len(amounts) == 0 {
		return nil
	}
	rounded := stat.RoundedTo(amounts, .1, total)
	for i := range lines {
		lines[i].charge(rounded[i])
	}
	return lines
}

// shotsOf lists the shots of a band, the costliest first.
func shotsOf(in RoundInput, b account.Band) []ShotLink {
	var all []ShotLink
	eachShot(in, func(hole, shot int, s account.Shot) {
		if s.Band == b {
			all = append(all, ShotLink{paths.Shot(hole, shot), fmt.Sprintf("hole %d, shot %d", hole, shot), words.Signed(figures.WorkingOf(s).Lost(), 2), figures.WorkingOf(s).Lost()})
		}
	})
	slices.SortStableFunc(all, func(a, b ShotLink) int { return cmp.Compare(b.lost, a.lost) })
	return all
}

// fillLine counts the shots of a line and names the worst; it reports whether
// there is any.
func fillLine(l *Line, in RoundInput, belongs func(account.Shot) bool) bool {
	worst, all := math.Inf(-1), []account.Shot{}
	eachShot(in, func(hole, shot int, s account.Shot) {
		if !belongs(s) {
			return
		}
		all = append(all, s)
		if lost := figures.WorkingOf(s).Lost(); lost > worst {
			worst = lost
			l.Worst, l.WorstAt, l.Cost = fmt.Sprintf("hole %d, shot %d", hole, shot), paths.Shot(hole, shot), words.Signed(lost, 2)
		}
	})
	l.Shots, l.working = fmt.Sprint(len(all)), figures.WorkingOf(all...)
	return len(all) > 0
}

// eachShot visits the shots in order of play, counted from 1 on each hole.
func eachShot(in RoundInput, do func(hole, shot int, s account.Shot)) {
	for _, h := range in.Account.Holes {
		for k, s := range h.Shots {
			do(h.Number, k+1, s)
		}
	}
}

func shotCount(a account.Account) int {
	n := 0
	for _, h := range a.Holes {
		n += len(h.Shots)
	}
	return n
}
