package sample

import (
	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/web/paths"
	"strokeledger/web/play"
)

// plannedPages set a round beside its plan; in is the plan of the sample course.
func plannedPages(in play.RoundInput) []Page {
	own, pupil := paths.Whose{Player: 1, Own: true}, paths.Whose{Player: 1}
	round := func(fifth, sixthLine, fourteenthLine string) golf.Round {
		r := golf.Round{Date: playedOn, Course: "Harrow Fen", Tee: "white"}
		for i, text := range []string{fifth, sixthLine, fourteenthLine} {
			r.Holes = append(r.Holes, typedHole(text, sampleCard[i]))
		}
		return r
	}
	page := func(state string, round golf.Round, in play.RoundInput) Page {
		shell := signedIn(in.Whose.Play())
		if !in.Whose.Own {
			shell = teaches(paths.Coaching)
		}
		return Page{"play", "planned", state, play.NewPlannedPage(shell, play.PlannedInput{RoundInput: in, ID: 1, Round: round}).View()}
	}
	in.Whose = own
	coach, working, none, few, easy := in, in, in, in, in
	coach.Whose = pupil
	working.Plans = map[int]analysis.HolePlan{5: in.Plans[5]}
	none.Drawn, none.Plans = 0, nil
	few.As, few.Unit = must(engineOf.PlaysAs(nil, 79)), golf.Metres
	easy.Drawn, easy.Plans = 1, map[int]analysis.HolePlan{5: in.Plans[5]}
	left := round("t/driver f150 g20 2", "t/driver r190 f60 g28 2", "t/7i r20 g8 2")
	left.Holes[1].Shots[0].Miss = golf.Miss{Side: golf.Right}
	left.Holes[2].Shots[0].Miss = golf.Miss{Side: golf.Left, Depth: golf.Short}
	kept := round("t f150 g20 2", "t/fw f200 r30 g12 2", "t r20 g8 2")
	unpriced := round("t f150 g20 2", "t/8i f280 f90 g12 2", "t r20 g8 2")
	changed := round("t f150 g20 2", "t f200 g12 2", "t r20 g8 2")
	changed.Holes[1].Shots[0].Distance = 350 * golf.Yard
	return []Page{
		page("left", left, in), page("coach", left, coach), page("kept", kept, few), page("not-among", unpriced, in), page("no-club", round("t f150 g20 2", "t f200 g12 2", "t r20 g8 2"), in),
		page("changed", changed, in), page("working", left, working), page("not-drawn", left, none), page("no-matter", left, easy),
	}
}
