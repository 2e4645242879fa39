package sample

import (
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/entry"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// walkedPages are the rounds that a coach enters for a pupil.
func walkedPages() []Page {
	own, pupil := signedIn(paths.Rounds), teaches(paths.Coaching)
	pupil.Pupil = pupilBar()
	list := func(state string, page layout.Page, in entry.WalkedListInput) Page {
		in.Name = Player
		return Page{"entry", "walked-list", state, entry.NewWalkedListPage(page, in).View()}
	}
	one := func(state string, page layout.Page, in entry.WalkedInput) Page {
		in.Name = Player
		return Page{"entry", "walked", state, entry.NewWalkedPage(page, in).View()}
	}
	courses := []components.Choice{{Value: "1", Name: "Harrow Fen, white, 9 holes, par 36", Chosen: true}}
	draft, sent, wrong := walked("f150 g20 2"), walked("f150 g20 2", "=5"), walked("f150 g20 q7", "p3")
	sent.Sent, sent.ID = true, 2
	start := form.RoundStart{Date: form.DayOf(coachingDay), First: form.WholeOf(1)}
	refused := start
	other := entry.WalkedInput{Whose: pupilsPages, Round: walked("f150 g20 2"), Tried: true, Shown: []string{"f150 g22 2", "", ""}, Other: []entry.OtherLine{{Hole: 1, Line: walked("f150 g22 2").Lines[0]}}}
	refused.Course = form.Course{Text: "1", Problem: "The card of this course is not whole. Fill it in on the page of the course first."}
	typed := holeInput("f202 b25", 5)
	typed.ID, typed.Walked = 0, &entry.WalkedHole{Whose: pupilsPages, Round: 1, Name: Player}
	return []Page{
		{"entry", "hole", "walked", entry.NewHolePage(teaches(paths.Coaching), typed).View()},
		list("coach", pupil, entry.WalkedListInput{Whose: pupilsPages, Rounds: []entry.WalkedRound{draft, sent}, Begin: start, Courses: courses}),
		list("refused", pupil, entry.WalkedListInput{Whose: pupilsPages, Begin: refused, Courses: courses}),
		list("no-course", pupil, entry.WalkedListInput{Whose: pupilsPages, Begin: start}),
		list("player", own, entry.WalkedListInput{Whose: ownPages, Rounds: []entry.WalkedRound{sent}}), list("empty", own, entry.WalkedListInput{Whose: ownPages}),
		one("draft", pupil, entry.WalkedInput{Whose: pupilsPages, Round: walked("f150 g20 2")}), one("refused", pupil, entry.WalkedInput{Whose: pupilsPages, Round: wrong, Tried: true}),
		one("other-window", pupil, other), one("nothing", pupil, entry.WalkedInput{Whose: pupilsPages, Round: walked(), Tried: true, ToSend: true}), one("sent", pupil, entry.WalkedInput{Whose: pupilsPages, Round: sent}),
		one("player", own, entry.WalkedInput{Whose: ownPages, Round: sent}),
	}
}

// walked is a round of three holes with some lines.
func walked(lines ...string) entry.WalkedRound {
	w := entry.WalkedRound{ID: 1, Coach: "Ines Vale", Day: coachingDay.AddDays(-1), Course: "Harrow Fen", Tee: "white", Units: form.StandardUnits, First: 1}
	for i, par := range []int{4, 3, 5} {
		h := golf.CardHole{Number: i + 1, Par: par, Length: golf.Distance(100*par-20) * golf.Yard, Index: i + 1}
		text := ""
		if i < len(lines) {
			text = lines[i]
		}
		w.Card, w.Lines = append(w.Card, h), append(w.Lines, form.ParseWalkedLine(text, h, w.Units))
	}
	return w
}
