package statement

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/chart"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// Line is one line of the statement: a part of the game, or a band of one.
type Line struct {
	Name    string
	Key     string // the name as one word; empty for a band
	Course  bool   // it is what the course costs, which no hole is charged with
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
	AllCost string     // what they lost together, signed, two decimals; empty for a part
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

// part names what the amount of a line, or of a band of the line with the key of,
// is added up to.
func (l Line) part(of string) string {
	switch {
	case of != "":
		return of
	case l.Course:
		return "account lost by-nine by-hole"
	}
	return "account lost"
}

// voucher is that of the amount.
func (l Line) voucher() figures.Voucher { return figures.Voucher{Name: l.Name, Working: l.Working} }

// sum names what the amount of a line is the sum of: its bands, and what each nine
// lost in the part.
func (l Line) sum(of string) string {
	switch {
	case of != "" || l.Course:
		return ""
	case len(l.Bands) == 0:
		return "nines-" + l.Key
	}
	return l.Key + " nines-" + l.Key
}

// counted names what the shots of a line are added up to.
func (l Line) counted(of string) string {
	if of != "" {
		return ""
	}
	return "shots"
}

// shotKey is a name for the shots of a band.
func (l Line) shotKey(of string) string { return "shots-" + of + "-" + key(l.Name) }

// ShotLink leads to a shot further down the page.
type ShotLink struct {
	At   string // its place
	Name string // hole and shot
	Cost string // strokes lost, signed, two decimals
	lost float64
}

// Names of the lines that are no part of the game.
const (
	scoreOnly  = figures.ScoreOnly
	courseLine = figures.CourseLine
	rounding   = figures.PickedUpLine
)

// lineNames are those of all lines that holes can be charged to.
var lineNames = []string{"Tee", "Approach", "Short game", "Putting", scoreOnly, rounding}

// partName is the line of a part of the game.
func partName(c golf.Category) string { return lineNames[slices.Index(golf.Categories, c)] }

// accountScale is the same on every statement, so that a bar of one round can be
// held against that of another.
var accountScale = chart.Fixed(-3, 5, 1)

// lines fills in the lines from target to score, and returns what is printed for
// each. What is printed adds up, by lines and by bands.
func (s *RoundPage) lines(in RoundInput) map[string]float64 {
	printed := map[string]float64{}
	target, lines := figures.AccountLines(in.Account)
	s.Axis = components.NewAxis(accountScale, words.Tick)
	balance := target
	s.Opening, s.Target = "Target", fmt.Sprintf("%.1f", balance)
	for _, line := range lines {
		balance += line.Printed
		l := Line{Name: line.Name, Key: key(line.Name), Balance: fmt.Sprintf("%.1f", balance), Course: line.Name == courseLine}
		printed[line.Name] = line.Printed
		if line.Part != 0 {
			fillLine(&l, in, func(sh account.Shot) bool { return sh.Band.Category == line.Part })
			l.Bands = bandLines(in, line.Part, line.Printed)
		}
		if line.Name == scoreOnly {
			l.Working = scoresWorking(in.Account, line.Printed)
		}
		l.charge(line.Printed)
		s.Lines = append(s.Lines, l)
	}
	s.Strokes = strokesOf(in.Account, in.Round)
	s.Lost, s.Score = words.Signed(balance-target, 1), words.Score(balance, len(in.Account.PickedUp()) > 0)
	return printed
}

// scoresWorking shows how the loss on holes without shots comes about.
func scoresWorking(a account.Account, tenths float64) string {
	expected, taken, lost := 0.0, 0.0, 0.0
	for _, h := range a.Holes {
		if !h.Detailed {
			taken += h.Score
			lost += figures.ScoreLost(h)
			expected += h.Score - figures.ScoreLost(h)
		}
	}
	return figures.WithNote(fmt.Sprintf("%.2f to play, %.0f taken: %s", expected, taken, figures.LostWords(lost)), figures.SharedOut(lost, tenths))
}

// key is the name of a line as one word, by which a page marks what adds up to it.
func key(name string) string { return strings.ReplaceAll(strings.ToLower(name), " ", "-") }

// StrokeCount is one kind of the strokes that a score is made of.
type StrokeCount struct {
	Count string // a whole number, or one decimal for what a picked-up hole still takes
	What  string // in words, after the count
	Joint string // between it and the one before
	Shots bool   // they are the shots of the lines
}

// strokesOf are the strokes that the printed score is made of: shots, penalty
// strokes, those of holes without shots, and those that picked-up holes still
// take.
func strokesOf(a account.Account, r golf.Round) []StrokeCount {
	shots, penalties, alone, left, holes := 0, 0, 0, figures.Tenth(a.Score), 0
	for i, h := range a.Holes {
		played := r.Holes[i]
		shots += len(h.Shots)
		if h.Detailed {
			penalties += played.Strokes() - len(h.Shots)
		} else {
			alone += played.ScoreOnly
			holes++
		}
	}
	left -= float64(shots + penalties + alone)
	var all []StrokeCount
	for _, c := range []StrokeCount{
		{Count: fmt.Sprint(shots), What: words.OneOrMany(shots, "shot", "shots"), Shots: true},
		{Count: fmt.Sprint(penalties), What: words.OneOrMany(penalties, "penalty stroke", "penalty strokes")},
		{Count: fmt.Sprint(alone), What: words.OneOrMany(holes, "on a hole", "on holes") + " without shots"},
		{Count: words.Plain(left), What: "to come after picking up"},
	} {
		if c.Count != "0" {
			all = append(all, c)
		}
	}
	for i := range all {
		switch {
		case i > 0 && i == len(all)-1:
			all[i].Joint = " and "
		case i > 0:
			all[i].Joint = ", "
		}
	}
	return all
}

// charge prints the amount of a line, with its bar and its working.
func (l *Line) charge(tenths float64) {
	l.Amount, l.Bar = words.Signed(tenths, 1), accountScale.Bar(tenths)
	if n := l.working.Shots(); n > 0 {
		l.Working = figures.WithNote(l.working.String(), figures.SharedOut(l.working.Lost(), tenths))
	}
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
	rounded := figures.Tenths(amounts, total)
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
	if len(l.All) > 0 {
		l.AllCost = words.Signed(l.working.Lost(), 2)
	}
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
