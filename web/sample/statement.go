package sample

import (
	"net/url"
	"strings"
	"strokeledger/analysis/account"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/web/form"
	"strokeledger/web/notes"
	"strokeledger/web/paths"
	"strokeledger/web/statement"
)

// statementPages are a round's statement and the list of rounds, for the player
// and for a coach.
func statementPages() []Page {
	whole, unread := statementInput(enteredRound(18)), statementInput(enteredRound(18))
	whole.Coached, whole.Notes = true, someNotes()
	unread.Coached, unread.Notes = true, someNotes()
	unread.Notes[1].Unread = true
	just, agrees := statementInput(enteredRound(18)), statementInput(enteredRound(18))
	just.JustEntered = true
	agrees.Nines = [2]int{nineOf(agrees.Round, false), nineOf(agrees.Round, true)}
	refused, refusedNote := statementInput(enteredRound(18)), statementInput(enteredRound(18))
	card := form.ParseRoundCard(url.Values{"out": {"4o"}, "conditions": {strings.Repeat("windy ", 60)}}, form.RoundCard{})
	refused.Returned.Card = &card
	refusedNote.Coached, refusedNote.On = true, "6.2"
	note := form.ParseRoundNote(url.Values{"on": {"6.2"}})
	refusedNote.Returned.Note = &note
	begun := statementInput(enteredRound(7))
	none := statementInput(golf.Round{Date: playedOn, Course: "Harrow Fen", Tee: "white"})
	coach := statementInput(enteredRound(18))
	coach.Whose, coach.Of, coach.Coached, coach.Notes = paths.Whose{Player: 1}, Player, true, someNotes()
	book, pupilsBook := statementInput(bookRound()), statementInput(bookRound())
	pupilsBook.Whose, pupilsBook.Of, pupilsBook.Coached = paths.Whose{Player: 1}, Player, true
	rough, wild := statementInput(roughRound()), statementInput(wildRound())
	agrees.Plan, coach.Plan = ownPages.Planned(3, 1), pupilsPages.Planned(3, 1)
	view := func(in statement.RoundInput) Page {
		return Page{Subject: "statement", Name: "round", View: statement.NewRoundPage(signedIn(paths.Rounds), in).View()}
	}
	var all []Page
	for _, p := range []struct {
		state string
		in    statement.RoundInput
	}{{"full", whole}, {"unread-note", unread}, {"just-entered", just}, {"card-agrees", agrees}, {"refused-card", refused}, {"refused-note", refusedNote},
		{"begun", begun}, {"empty", none}, {"coach", coach}, {"picked-up", rough}, {"wild", wild}, {"run-out-book", book}, {"run-out-book-coach", pupilsBook}} {
		page := view(p.in)
		page.State = p.state
		all = append(all, page)
	}
	fold := func(state string, in statement.RoundInput) Page {
		return Page{"statement", "card", state, statement.NewFoldPage(signedIn(paths.Rounds), in).View()}
	}
	all = append(all, fold("full", whole), fold("picked-up", rough), fold("run-out-book", book), fold("empty", none))
	return append(all, roundsPages()...)
}

// playedOn is the day of the round in these pages.
var playedOn = golf.Date{Year: 2026, Month: 5, Day: 2}

// holeLines are the holes of that round as the player typed them, in order of
// play: two doubles, one of them with errors that follow one another.
var holeLines = []string{
	"t/driver r155/8i g28 3", "f190 r12s g8", "g34 3", "f260 f95 g18 2", "f140 g25 2", "v150 v140 f60 g9 3", "g22 2", "r185 b9 g20 5 2", "f250 f60 g30 4",
	"f150 g6", "tw r230 f40 g12 2", "r15 g5", "f290 f110 g25 3", "f175 f14 g7 2", "r160 r60 g30 5", "g16 2", "f255 f60 g16 2", "~f205 f35 g4 2",
}

// enteredRound is the round with its first holes entered.
func enteredRound(holes int) golf.Round {
	r := golf.Round{Date: playedOn, Course: "Harrow Fen", Tee: "white"}
	for i, card := range expect.ReferenceCourse()[:holes] {
		r.Holes = append(r.Holes, typedHole(holeLines[i], card))
	}
	return r
}

// roughRound is a round of which less is known: a hole picked up, and one with
// its score alone.
func roughRound() golf.Round {
	r, card := enteredRound(9), expect.ReferenceCourse()
	r.Holes[3] = typedHole("r160 r30 g20 -", card[3])
	r.Holes[4] = typedHole("=7", card[4])
	return r
}

// wildRound is a round whose bars leave every axis, with five doubles, two of them
// of eight strokes.
func wildRound() golf.Round {
	r, card := enteredRound(18), expect.ReferenceCourse()
	for i, line := range map[int]string{1: "tw v260 r150 b40 g30 6 2", 6: "b20 b18 b15 g40 9 3", 13: "tw v200 r150 r90 b20 g50 5 2"} {
		r.Holes[i] = typedHole(line, card[i])
	}
	return r
}

// bookRound is a round with a double by two short sides from the rough, and one from
// sand: the player's run-out book judges the first two.
func bookRound() golf.Round {
	r, card := enteredRound(18), expect.ReferenceCourse()
	for i, line := range map[int]string{1: "f190 b12s g8", 10: "f150 r18s r14s g12 2"} {
		r.Holes[i] = typedHole(line, card[i])
	}
	for _, h := range r.Holes {
		golf.RunBook{{Club: "sw", Lie: golf.Rough, Start: 9, To: 20}}.Fill(h.Shots)
	}
	return r
}

// typedHole reads the line of a hole.
func typedHole(text string, card golf.CardHole) golf.Hole {
	line := form.ParseLine(text, card, form.StandardUnits)
	if len(line.Problems) > 0 {
		panic("sample: the line " + text + " is not sound")
	}
	return line.Hole
}

// statementInput works a round out against the target of 79.
func statementInput(r golf.Round) statement.RoundInput {
	const target = 79
	in := statement.RoundInput{ID: 1, Whose: paths.Whose{Player: 1, Own: true}, Round: r, Card: expect.ReferenceCourse(), Target: target,
		Bounds: golf.StandardBoundary, Units: form.StandardUnits, Conditions: "Wind from the west, greens quick."}
	if len(r.Holes) == 0 {
		return in
	}
	fixed, err := expect.Level(target)
	if err != nil {
		panic("sample: " + err.Error())
	}
	lens, course := expect.ForTarget(r.Card(), r.TargetOf(target, golf.StandardPar))
	in.Account = account.Of(r, account.Terms{Lens: lens, Course: course, Fixed: fixed, Boundary: golf.StandardBoundary}).InWholeStrokes()
	in.Level = lens.Level()
	return in
}

// nineOf adds up the strokes of the front nine or the back nine.
func nineOf(r golf.Round, back bool) int {
	score := 0
	for _, h := range r.Holes {
		if (h.Number > 9) == back {
			score += h.Strokes()
		}
	}
	return score
}

// someNotes are a coach's note on a shot and the player's open question.
func someNotes() []notes.Note {
	at := playedOn.Time()
	return []notes.Note{
		{ID: 1, Author: "Ines Varga", Day: playedOn, Round: 1, Hole: 6, Shot: 2, Body: "Chip out sideways here:\n- bogey is still on\n- the gap is not", Written: at.AddDate(0, 0, 1), Read: at.AddDate(0, 0, 2),
			Replies: []notes.Reply{{ID: 1, Mine: true, Author: Player, Body: "I will.", Written: at.AddDate(0, 0, 2)}}},
		{ID: 2, Mine: true, Author: Player, Question: true, Day: playedOn, Round: 1, Hole: 8, Body: "Which club from 165 in the rough?", Written: at.AddDate(0, 0, 1)},
	}
}
