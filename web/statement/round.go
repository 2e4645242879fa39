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
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/notes"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// notes shows what is written about the round, and where to write.
func (s *RoundPage) notes(q RoundInput) {
	for _, n := range notes.QuestionsFirst(q.Notes) {
		s.Notes = append(s.Notes, notes.NewCard(n, q.Whose, true, q.Returned))
		s.NotesFirst = s.NotesFirst || n.Unread || n.Open() && !q.Whose.Own
	}
	s.NotesFirst = s.NotesFirst || q.Returned.OnNotes() || q.On != ""
	s.CanWrite, s.Write = q.Coached, noteForm(q)
}

// RoundPage is the account of a round.
type RoundPage struct {
	layout.Page
	Heading string // the day
	At      string // course, tees, par and length
	Lede    string // the round in a sentence
	Empty   bool   // no hole has been entered
	Opening string // Target, and its amount
	Target  string
	Axis    components.Axis
	Lines   []Line
	Shots   string // how many, and penalty strokes
	Lost    string
	Score   string
	Nines   []Nine
	Verdict string // what compounding cost, empty when nothing
	Without string // the score without it
	Doubles []figures.DoubleStory
	Missed  []MissedPutt
	Holes   []OpenHole
	Enter   string // address at which the round goes on
	Remove  string // address that removes it; empty for a coach
	Details string // address that puts day, course and target right; empty for a coach
	Note    components.Field

	NinesWrong, NoteWrong components.Summary // after a form of the card came back

	NoteAt string // address that saves the note
	Checks []NineCheck
	Counts string // fairways, greens, putts, up and downs
	Agrees string // that the card's nines agree with the holes; empty when not
	Left   string // how many holes are not entered yet, empty when none
	Day    string // weather and greens, to a coach

	Notes      []notes.Card
	CardFirst  bool // the card's nines are asked for before all else
	NotesFirst bool // something in them is new, or waits for an answer
	Write      NoteForm
	CanWrite   bool // somebody would read it
	Trouble    Trouble
}

// Line is one line of the account, with its bands.
type Line struct {
	Name    string
	Shots   string
	Worst   string // hole and shot
	WorstAt string // its address
	Cost    string // of the worst shot
	Bar     chart.Bar
	Amount  string
	Balance string
	Bands   []Line
	All     []ShotLink // the shots of a band, the costliest first; none in a line of several bands
}

// ShotLink leads to a shot below.
type ShotLink struct {
	At, Name, Cost string
	lost           float64
}

// RoundInput is what a statement is made of.
type RoundInput struct {
	Whose       paths.Whose
	Of          string // whose it is, for who may only read it; empty for its player
	Notes       []notes.Note
	Coached     bool   // somebody has been let in, or who looks is a coach
	On          string // the hole, or hole and shot, about which a note is to be written
	Returned    form.Returned
	ID          golf.RoundID
	First       int        // hole at which the round began, 0 for the first of the card
	Round       golf.Round // the holes entered
	Card        []golf.CardHole
	Account     account.Account
	Target      float64 // of 18 holes
	Level       float64 // of the golfer that the lens found, for the foot
	Bounds      golf.Distance
	Units       form.Units
	Note        string // weather and greens
	JustEntered bool   // its last hole was saved a moment ago
	Nines       [2]int // what the card says of each nine, 0 for not told
}

// NewRoundPage makes the page of a round.
func NewRoundPage(page layout.Page, q RoundInput) RoundPage {
	page.Title = "Statement of " + words.LongDay(q.Round.Date)
	page.Here = layout.Here(q.Whose, paths.Rounds)
	s := RoundPage{Page: page, Heading: "Statement, " + words.LongDay(q.Round.Date), At: place(q), Enter: paths.Hole(q.ID, nextHole(q)), Remove: paths.RemoveRound(q.ID), Details: paths.Details(q.ID)}
	if q.Of != "" {
		s.At, s.Remove, s.Details, s.Day = q.Of+". "+s.At, "", "", q.Note
	}
	if left := len(q.Card) - len(q.Round.Holes); left > 0 && q.Of == "" {
		s.Left = words.Plural(left, "hole is", "holes are") + " not entered yet."
	}
	if len(q.Round.Holes) == 0 {
		s.Empty = true
		s.Lede = "Nothing has been entered for this round yet."
		return s
	}
	s.Foot = fmt.Sprintf("Target here. The golfer compared with averages exactly %s on the holes played, so the lines add up to your score; on the reference course he plays to %.1f. Doubles are judged by a fixed %s golfer. Expected strokes know distance and lie, not slope, wind or the height of the rough.",
		words.Plain(q.Account.Expected-q.Account.Lost.Course), q.Level, words.Plain(q.Target))
	s.notes(q)
	printed := s.account(q)
	s.Lede = lede(q, printed)
	s.Nines = nines(q)
	s.doubles(q)
	s.Missed = missedPutts(q)
	s.Holes = openHoles(q)
	s.checks(q)
	s.Counts = countsLine(q.Account.Counts, len(q.Round.Holes))
	s.Trouble = trouble(q)
	if len(s.Trouble.Doubles) > 0 {
		s.Script = "walk.js"
	}
	return s
}

func place(q RoundInput) string {
	yards, par := 0.0, 0
	for _, h := range q.Card {
		yards += h.Length.Yards()
		par += h.Par
	}
	at := q.Round.Course
	if q.Round.Tee != "" {
		at += ", " + q.Round.Tee + " tees"
	}
	return fmt.Sprintf("%s, par %d, %s", at, par, words.TotalLength(golf.Yards.Of(yards), q.Units))
}

// account fills in the lines from target to score, and returns what is printed
// for each part of the game. What is printed adds up, by lines and by bands.
func (s *RoundPage) account(q RoundInput) map[golf.Category]float64 {
	printed := map[golf.Category]float64{}
	a := q.Account
	opening := a.Expected - a.Lost.Course
	names := []string{"Tee", "Approach", "Short game", "Putting"}
	var amounts []float64
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
	target := math.Round(opening*10) / 10
	rounded := stat.RoundedTo(amounts, .1, math.Round(a.Score*10)/10-target)
	scale := s.scale(q, rounded)
	s.Axis = components.NewAxis(scale, words.Tick)
	balance := target
	s.Opening, s.Target = "Target", fmt.Sprintf("%.1f", balance)
	for i, name := range names {
		l := Line{Name: name, Amount: words.Signed(rounded[i], 1), Bar: scale.Bar(rounded[i])}
		balance += rounded[i]
		l.Balance = fmt.Sprintf("%.1f", balance)
		if i < len(golf.Categories) {
			fillLine(&l, q, func(sh account.Shot) bool { return sh.Band.Category == golf.Categories[i] })
			printed[golf.Categories[i]] = rounded[i]
			l.Bands = bandLines(q, golf.Categories[i], rounded[i], scale)
		}
		s.Lines = append(s.Lines, l)
	}
	s.Shots = words.Plural(shotCount(a), "shot", "shots")
	if n := a.Counts.Penalties; n > 0 {
		s.Shots += " and " + words.Plural(n, "penalty stroke", "penalty strokes")
	}
	s.Lost, s.Score = words.Signed(balance-target, 1), words.Plain(balance)
	return printed
}

// scale holds every bar of the account.
func (s *RoundPage) scale(q RoundInput, lines []float64) chart.Scale {
	values := lines
	for _, c := range golf.Categories {
		for _, b := range account.Bands(q.Bounds) {
			if b.Category == c {
				values = append(values, bandLoss(q, b))
			}
		}
	}
	return chart.NewScale(values...)
}

func bandLoss(q RoundInput, b account.Band) float64 {
	sum := 0.0
	eachShot(q, func(_, _ int, s account.Shot) {
		if s.Band == b {
			sum += s.Lost
		}
	})
	return sum
}

func bandLines(q RoundInput, c golf.Category, total float64, scale chart.Scale) []Line {
	var lines []Line
	var amounts []float64
	for _, b := range account.Bands(q.Bounds) {
		l := Line{Name: words.Band(b, q.Units), All: shotsOf(q, b)}
		if b.Category == c && fillLine(&l, q, func(s account.Shot) bool { return s.Band == b }) {
			lines, amounts = append(lines, l), append(amounts, bandLoss(q, b))
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
func shotsOf(q RoundInput, b account.Band) []ShotLink {
	var all []ShotLink
	eachShot(q, func(hole, shot int, s account.Shot) {
		if s.Band == b {
			all = append(all, ShotLink{paths.Shot(hole, shot), fmt.Sprintf("hole %d, shot %d", hole, shot), words.Signed(s.Lost, 2), s.Lost})
		}
	})
	slices.SortStableFunc(all, func(a, b ShotLink) int { return cmp.Compare(b.lost, a.lost) })
	return all
}

// fillLine counts the shots of a line and names the worst; it reports whether
// there is any.
func fillLine(l *Line, q RoundInput, belongs func(account.Shot) bool) bool {
	n, worst := 0, math.Inf(-1)
	eachShot(q, func(hole, shot int, s account.Shot) {
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

func eachShot(q RoundInput, do func(hole, shot int, s account.Shot)) {
	for _, h := range q.Account.Holes {
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
