package sample

import (
	"net/url"

	"strokeledger/analysis"
	"strokeledger/analysis/aim"
	"strokeledger/analysis/golf"
	"strokeledger/web/form"
	"strokeledger/web/paths"
	"strokeledger/web/play"
)

// advisedHoles are the pages of a hole, and of the plan of a round, of which a coach has
// said something.
func advisedHoles(full, short, coach play.HoleInput) []Page {
	day := golf.Date{Year: 2026, Month: 9, Day: 14}
	price := func(in play.HoleInput, of analysis.OtherAim) *analysis.TakenAim {
		taken := must(engineOf.Price(analysis.AimInput{Picture: in.Picture, As: in.As, Clubs: clubsOf(in)}, of))
		return &taken
	}
	hybrid := play.Advised{ID: 1, Coach: "Ines Moreno", Day: day, Note: "Left is never the place here. From the hybrid there is a full wedge left.", Proposes: true, Club: "hybrid", Side: 6, Price: price(full, analysis.OtherAim{Club: "hybrid", Side: 6})}
	note := play.Advised{ID: 2, Coach: "Another Coach", Day: day, Note: "Take the time that the walk gives you."}
	taken, declined, unknown := hybrid, hybrid, hybrid
	taken.Safe = aim.ShortSide
	taken.Taken, declined.Declined, unknown.Price, unknown.Club = true, true, nil, "old persimmon"
	page := func(state string, in play.HoleInput, all ...play.Advised) Page {
		in.Advice = all
		if len(all) > 0 && all[0].Taken {
			in.Plan.Safe = all[0].Safe
			in.Plan = must(engineOf.Taking(in.Plan, analysis.AimInput{Picture: in.Picture, As: in.As, Clubs: clubsOf(in)}, *all[0].Price))
		}
		shell := signedIn(in.Whose.Play())
		if !in.Whose.Own {
			shell = teaches(paths.Coaching)
		}
		return Page{"play", "hole", state, play.NewHolePage(shell, in).View()}
	}
	flag := play.Advised{ID: 3, Coach: "Ines Moreno", Day: day, Proposes: true, Side: 9, Long: -4, Price: price(short, analysis.OtherAim{Side: 9, Long: -4})}
	safe, both := play.Advised{ID: 4, Coach: "Ines Moreno", Day: day, Safe: aim.ShortSide}, flag
	both.Safe = aim.LeftSide
	mine := both
	mine.Mine, mine.Declined = true, true
	coachShort := short
	coachShort.Whose, coachShort.By = coach.Whose, coach.By
	refused := coach
	typed := form.ParseHoleAdvice(url.Values{"side": {"70"}, "long": {"2"}, "note": {"Aim right"}}, golf.Yards, play.AdviceClubs(coach))
	refused.Form = &typed
	late := full
	late.Changed = true
	bare := play.HoleInput{Whose: paths.Whose{Player: 1}, Player: Player, Course: 3, Name: "Harrow Fen, white", Holes: []int{6}, Hole: sixth, As: coach.As, Target: 79, Unit: golf.Yards}
	return []Page{
		page("proposed", full, hybrid, note), page("taken", full, taken), page("declined", full, declined), page("unpriced", full, unknown),
		page("flag-proposed", short, flag), page("safe-proposed", full, safe), page("changed-meanwhile", late, hybrid), page("both-proposed", short, both), page("coach-proposed", coachShort, mine), page("coach-refused", refused), page("coach-short-hole", coachShort), page("coach-not-drawn", bare),
		advisedRound(full, short, taken, note),
	}
}

func clubsOf(in play.HoleInput) []analysis.Club {
	var all []analysis.Club
	for _, c := range in.Plan.Advice.Clubs {
		all = append(all, c.Club)
	}
	return all
}

// advisedRound is a plan in which a proposal stands.
func advisedRound(full, short play.HoleInput, taken, note play.Advised) Page {
	plan := must(engineOf.Taking(full.Plan, analysis.AimInput{Picture: full.Picture, As: full.As, Clubs: clubsOf(full)}, *taken.Price))
	plan.Safe = taken.Safe
	in := play.RoundInput{Whose: full.Whose, Player: Player, Course: 3, Name: full.Name, Card: []golf.CardHole{full.Hole, short.Hole}, As: full.As, Target: 79, Unit: golf.Yards, Today: golf.Date{Year: 2026, Month: 9, Day: 15},
		Drawn: 2, Plans: map[int]analysis.HolePlan{6: plan, 14: short.Plan}, Advice: map[int][]play.Advised{6: {taken}, 14: {note}}}
	return Page{"play", "round", "advised", play.NewRoundPage(signedIn(in.Whose.Play()), in).View()}
}
