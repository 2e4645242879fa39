package sample

import (
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/web/figures"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/statement"
)

// roundsPages are the list of rounds, and the book of a year.
func roundsPages() []Page {
	own, coach := paths.Whose{Player: 1, Own: true}, paths.Whose{Player: 1}
	listed := listedRounds()
	narrow := statement.Narrow{Courses: []string{"Harrow Fen", "Saltmarsh Links"}, Months: monthsOf(listed)}
	chosen, older := narrow, narrow
	chosen.Course, chosen.From = "Saltmarsh Links", golf.Date{Year: 2026, Month: 4, Day: 1}
	older.Before = golf.Date{Year: 2026, Month: 2, Day: 1}
	list := func(state string, page layout.Page, in statement.RoundsInput) Page {
		in.Leaf = statement.LeafOf(in.Narrow)
		return Page{"statement", "rounds", state, statement.NewRoundsPage(page, in).View()}
	}
	book := func(state string, whose paths.Whose, rounds []figures.ListedRound) Page {
		in := statement.YearBookInput{Whose: whose, Name: Player, Year: 2026, Rounds: rounds}
		return Page{"statement", "year-book", state, statement.NewYearBookPage(signedIn(paths.Rounds), in).View()}
	}
	full := statement.RoundsInput{Whose: own, Rounds: listed, Narrow: narrow, Lesson: "Lesson with Ines Vale on Tuesday at 17:30, the range: Start line"}
	news := full
	news.Unread, news.Waiting, news.DueWhat, news.Due, news.Today = 1, []string{"Ines Varga"}, "Ten putts from six feet", playedOn, playedOn.AddDays(2)
	removed := signedIn(paths.Rounds)
	removed.Undo = &layout.Undo{Text: "The round of 2 May 2026 is removed.", What: "round-1-4"}
	return []Page{
		list("full", signedIn(paths.Rounds), full),
		list("news", signedIn(paths.Rounds), news),
		list("removed", removed, full),
		list("older", signedIn(paths.Rounds), statement.RoundsInput{Whose: own, Rounds: listed[len(listed)-4:], Narrow: older}),
		list("targets", signedIn(paths.Rounds), statement.RoundsInput{Whose: own, Rounds: otherTargets(listed), Narrow: narrow}),
		list("none-chosen", signedIn(paths.Rounds), statement.RoundsInput{Whose: own, Narrow: chosen}),
		list("empty", signedIn(paths.Rounds), statement.RoundsInput{Whose: own}),
		list("coach", signedIn(paths.Coaching), statement.RoundsInput{Whose: coach, Name: Player, Rounds: listed, Narrow: narrow}),
		list("coach-empty", signedIn(paths.Coaching), statement.RoundsInput{Whose: coach, Name: Player}),
		book("full", own, listed),
		book("coach", coach, listed),
		book("empty", own, nil),
	}
}

// listedRounds are the rounds of five months, the latest first: one not entered,
// one begun, one with a hole of which only the score is known, and the rest
// whole, each with other holes gone wrong.
func listedRounds() []figures.ListedRound {
	all := []figures.ListedRound{{ID: 99, Round: golf.Round{Date: playedOn.AddDays(8), Course: "Harrow Fen", Tee: "white"}, Card: 18, Target: 79}}
	add := func(day golf.Date, r golf.Round) {
		r.Date = day
		all = append(all, figures.ListedRound{ID: golf.RoundID(90 - len(all)), Round: r, Card: 18, Target: 79, Account: statementInput(r).Account})
	}
	add(playedOn.AddDays(4), enteredRound(7))
	all[1].New, all[1].NewDay = figures.Entered, playedOn.AddDays(5)
	add(playedOn, enteredRound(18))
	add(playedOn.AddDays(-1), roughRound())
	for i := range 23 {
		add(playedOn.AddDays(-3-5*i), gambled(i))
	}
	return all
}

// gambled is the round with some of its holes played worse, others better, in an
// order that an index sets.
func gambled(i int) golf.Round {
	r, cards := enteredRound(18), expect.ReferenceCourse()
	for k := range r.Holes {
		switch card := cards[k]; (7*i + 5*k + i*k) % 11 {
		case 0:
			r.Holes[k] = typedHole("t/driver r155 r60 g28 5 2", card)
		case 3:
			if r.Holes[k].Par > 3 {
				r.Holes[k] = typedHole("f120 g12", card)
			}
		}
	}
	return r
}

// otherTargets are the rounds with a target that came down twice.
func otherTargets(listed []figures.ListedRound) []figures.ListedRound {
	all := make([]figures.ListedRound, len(listed))
	for i, l := range listed {
		if i > 7 {
			l.Target = 82
		}
		if i > 11 {
			l.Target = 84.5
		}
		all[i] = l
	}
	return all
}

// monthsOf counts the rounds of each month.
func monthsOf(listed []figures.ListedRound) []statement.MonthRounds {
	var all []statement.MonthRounds
	for _, l := range listed {
		month := golf.Date{Year: l.Round.Date.Year, Month: l.Round.Date.Month, Day: 1}
		if len(all) == 0 || all[len(all)-1].Month != month {
			all = append(all, statement.MonthRounds{Month: month})
		}
		all[len(all)-1].Rounds++
		all[len(all)-1].Chosen++
	}
	return all
}
