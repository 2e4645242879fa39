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
	Balance string     // strokes so far, from the target down; empty for a band
	Bands   []Line     // of a part of the game; none when it has no shots
	All     []ShotLink // every shot of a band, the costliest first; none for a part
}

// ShotLink leads to a shot further down the page.
type ShotLink struct {
	At   string // its place
	Name string // hole and shot
	Cost string // strokes lost, signed, two decimals
	lost float64
}

// lineAmounts are the lines from the target to the score: the parts of the game,
// and what is not known shot by shot where there is any.
func lineAmounts(a account.Account) (names []string, amounts []float64) {
	names = []string{"Tee", "Approach", "Short game", "Putting"}
	for _, c := range golf.Categories {
		amounts = append(amounts, a.Lost.Of(c))
	}
	for _, extra := range []struct {
		name   string
		amount float64
	}{{"Score only", a.Lost.Undetailed}, {"Course", a.Lost.Course}} {
		if math.Abs(extra.amount) > 1e-9 {
			names, amounts = append(names, extra.name), append(amounts, extra.amount)
		}
	}
	return names, amounts
}

// lines fills in the lines from target to score, and returns what is printed for
// each part of the game. What is printed adds up, by lines and by bands.
func (s *RoundPage) lines(in RoundInput) map[golf.Category]float64 {
	printed := map[golf.Category]float64{}
	names, amounts := lineAmounts(in.Account)
	target := math.Round((in.Account.Expected-in.Account.Lost.Course)*10) / 10
	rounded := stat.RoundedTo(amounts, .1, math.Round(in.Account.Score*10)/10-target)
	scale := s.scale(in, rounded)
	s.Axis = components.NewAxis(scale, words.Tick)
	balance := target
	s.Opening, s.Target = "Target", fmt.Sprintf("%.1f", balance)
	for i, name := range names {
		l := Line{Name: name, Amount: words.Signed(rounded[i], 1), Bar: scale.Bar(rounded[i])}
		balance += rounded[i]
		l.Balance = fmt.Sprintf("%.1f", balance)
		if i < len(golf.Categories) {
			fillLine(&l, in, func(sh account.Shot) bool { return sh.Band.Category == golf.Categories[i] })
			printed[golf.Categories[i]] = rounded[i]
			l.Bands = bandLines(in, golf.Categories[i], rounded[i], scale)
		}
		s.Lines = append(s.Lines, l)
	}
	s.Shots = words.Plural(shotCount(in.Account), "shot", "shots")
	if n := in.Account.Counts.Penalties; n > 0 {
		s.Shots += " and " + words.Plural(n, "penalty stroke", "penalty strokes")
	}
	s.Lost, s.Score = words.Signed(balance-target, 1), words.Plain(balance)
	return printed
}

// scale holds the bars of all lines and bands.
func (s *RoundPage) scale(in RoundInput, lines []float64) chart.Scale {
	values := lines
	for _, c := range golf.Categories {
		for _, b := range account.Bands(in.Bounds) {
			if b.Category == c {
				values = append(values, bandLoss(in, b))
			}
		}
	}
	return chart.NewScale(values...)
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
func bandLines(in RoundInput, c golf.Category, total float64, scale chart.Scale) []Line {
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
		lines[i].Amount, lines[i].Bar = words.Signed(rounded[i], 1), scale.Bar(rounded[i])
	}
	return lines
}

// shotsOf lists the shots of a band, the costliest first.
func shotsOf(in RoundInput, b account.Band) []ShotLink {
	var all []ShotLink
	eachShot(in, func(hole, shot int, s account.Shot) {
		if s.Band == b {
			all = append(all, ShotLink{paths.Shot(hole, shot), fmt.Sprintf("hole %d, shot %d", hole, shot), words.Signed(s.Lost, 2), s.Lost})
		}
	})
	slices.SortStableFunc(all, func(a, b ShotLink) int { return cmp.Compare(b.lost, a.lost) })
	return all
}

// fillLine counts the shots of a line and names the worst; it reports whether
// there is any.
func fillLine(l *Line, in RoundInput, belongs func(account.Shot) bool) bool {
	n, worst := 0, math.Inf(-1)
	eachShot(in, func(hole, shot int, s account.Shot) {
		if !belongs(s) {
			return
		}
		if n++; s.Lost > worst {
			worst = s.Lost
			l.Worst, l.WorstAt, l.Cost = fmt.Sprintf("hole %d, shot %d", hole, shot), paths.Shot(hole, shot), words.Signed(s.Lost, 2)
		}
	})
	l.Shots = fmt.Sprint(n)
	return n > 0
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
