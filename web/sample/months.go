package sample

import (
	"strokeledger/analysis"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/handicap"
	"strokeledger/web/figures"
	"strokeledger/web/form"
	"strokeledger/web/months"
	"strokeledger/web/paths"
)

// monthsPages are the months side by side, what is behind their figures, and the
// handicap estimate.
func monthsPages() []Page {
	played := playedSeason()
	two := comparison(played, golf.Month(2026, 5), golf.Month(2026, 6))
	three := comparison(played, golf.Month(2026, 4), golf.Month(2026, 5), golf.Month(2026, 6))
	three.Marks = []figures.MarkedDay{{ID: 1, Day: golf.Date{Year: 2026, Month: 5, Day: 20}, What: "new driver"}}
	four := comparison(playedYears(), golf.Month(2026, 8), golf.Month(2026, 9), golf.Month(2026, 10), golf.Month(2026, 11))
	four.Marks = []figures.MarkedDay{{ID: 1, Day: golf.Date{Year: 2026, Month: 10, Day: 20}, What: "lesson"}}
	gap := comparison(playedYears(), golf.Month(2026, 8), golf.Month(2027, 2), golf.Span{Last: 10, Before: true}, golf.Month(2027, 3))
	changed := comparison(playedYears(), golf.Year(2025), golf.Year(2026))
	thin := comparison(played[:2], golf.Month(2026, 4), golf.Month(2026, 5))
	refused := two
	refused.Refused = form.Comparing{Spans: "The span ends before it begins.", Level: "Allowed: " + form.TargetRange() + "."}
	refused.Mark = form.Mark{Day: form.Day{Problem: "Not a day."}, What: form.Text{Problem: "Say what happened."}}
	coach, tour := two, two
	coach.At.Whose, coach.At.Course, coach.At.Without = paths.Whose{Player: 1}, "Harrow Fen", []golf.RoundID{3}
	tour.At.Versus, tour.Level = golf.VersusTour, 0
	none := figures.ComparisonInput{At: paths.Comparison{Whose: paths.Whose{Player: 1, Own: true}}, Name: Player, Target: 79, Units: form.StandardUnits, Months: analysis.Months{Level: 79}}
	noneLeft := none
	noneLeft.At.Course = "Saltmarsh Links"
	side := func(state string, in figures.ComparisonInput) Page {
		return Page{"months", "comparison", state, months.NewComparisonPage(signedIn(paths.MyMonths), in).View()}
	}
	return append([]Page{
		side("two-months", two), side("three-months", three), side("four-months", four), side("gap", gap), side("clear", changed), side("thin", thin), side("refused", refused),
		side("coach", coach), side("tour", tour), side("empty", none), side("none-left", noneLeft),
	}, append(behindPages(two), handicapPages()...)...)
}

// behindPages are the shots and holes behind figures.
func behindPages(in figures.ComparisonInput) []Page {
	var all []Page
	coach := in
	coach.At.Whose = paths.Whose{Player: 1}
	for _, p := range []struct {
		state  string
		figure analysis.Figure
	}{{"all", analysis.Figure{Column: 2, Row: "all"}}, {"part", analysis.Figure{Column: 2, Row: "approach"}}, {"doubles", analysis.Figure{Column: 2, Measure: "doubles"}},
		{"short-putts", analysis.Figure{Column: 2, Measure: analysis.ShortPutts}}, {"putts", analysis.Figure{Putts: in.Curve[0].String()}}} {
		b, err := in.Behind(p.figure)
		if err != nil {
			panic("sample: " + err.Error())
		}
		all = append(all, Page{"months", "behind", p.state, months.NewBehindPage(signedIn(paths.MyMonths), in, b).View()})
		if p.state == "all" {
			all = append(all, Page{"months", "behind", "coach", months.NewBehindPage(teaches(paths.Coaching), coach, b).View()})
		}
	}
	return all
}

// playedSeason is a spring of rounds by a golfer who loses most on the approach.
func playedSeason() []golf.Played {
	p := golfer.Committed()
	rounds, err := golfer.Season{Player: Player, Course: "Harrow Fen", Tee: "white", Card: expect.ReferenceCourse(),
		Levels: golfer.Levels{Tee: 84, Approach: 92, ShortGame: 84, Putting: 86},
		First:  golf.Date{Year: 2026, Month: 4, Day: 25}, Days: 5, Rounds: 14, Seed: 7}.Play(&p)
	if err != nil {
		panic("sample: " + err.Error())
	}
	var all []golf.Played
	for i, r := range rounds {
		all = append(all, golf.Played{ID: golf.RoundID(i + 1), Round: r, Target: 79})
	}
	return all
}

// playedYears are two seasons by a golfer who putts much better in the second.
func playedYears() []golf.Played {
	p := golfer.Committed()
	var all []golf.Played
	for i, year := range []golfer.Season{
		{Levels: golfer.Levels{Tee: 84, Approach: 88, ShortGame: 84, Putting: 100}, First: golf.Date{Year: 2025, Month: 7, Day: 25}, Days: 6, Rounds: 16, Seed: 3},
		{Levels: golfer.Levels{Tee: 84, Approach: 88, ShortGame: 84, Putting: 84}, First: golf.Date{Year: 2026, Month: 7, Day: 25}, Days: 6, Rounds: 18, Seed: 5},
	} {
		year.Player, year.Course, year.Tee, year.Card = Player, "Harrow Fen", "white", expect.ReferenceCourse()
		rounds, err := year.Play(&p)
		if err != nil {
			panic("sample: " + err.Error())
		}
		for _, r := range rounds {
			all = append(all, golf.Played{ID: golf.RoundID(100*i + len(all) + 1), Round: r, Target: 79})
		}
	}
	return all
}

// comparison sets spans of rounds side by side.
func comparison(played []golf.Played, spans ...golf.Span) figures.ComparisonInput {
	const target = 79
	in := figures.ComparisonInput{At: paths.Comparison{Whose: paths.Whose{Player: 1, Own: true}}, Name: Player, Target: target, Units: form.StandardUnits}
	in.At.Spans = spans
	var err error
	in.Months, err = analysis.NewEngine().Months(analysis.MonthsInput{History: played, Choice: in.At.Comparison, Target: target, Boundary: golf.StandardBoundary})
	if err != nil {
		panic("sample: " + err.Error())
	}
	return in
}

// handicapPages are the estimate of a handicap.
func handicapPages() []Page {
	own, listed := paths.Whose{Player: 1, Own: true}, golf.CourseID(1)
	scores := handicapScores()
	courses := map[golf.RoundID]months.RatedCourse{}
	for i, s := range scores {
		courses[s.Round] = months.RatedCourse{Name: "Harrow Fen", Course: &listed}
		if i == 1 {
			courses[s.Round] = months.RatedCourse{Name: "Saltmarsh Links"}
		}
	}
	estimate := func(state string, whose paths.Whose, of []handicap.Score) Page {
		in := months.HandicapInput{Whose: whose, Name: Player, Record: handicap.Estimate(of), Courses: courses}
		return Page{"months", "handicap", state, months.NewHandicapPage(signedIn(paths.MyMonths), in).View()}
	}
	return []Page{estimate("full", own, scores), estimate("coach", paths.Whose{Player: 1}, scores), estimate("thin", own, scores[:2]), estimate("empty", own, nil)}
}

// handicapScores are eight scores, one on an unrated course and one of nine holes.
func handicapScores() []handicap.Score {
	var all []handicap.Score
	for i := range 8 {
		s := handicap.Score{Round: golf.RoundID(i + 1), Date: playedOn.AddDays(7 * i), Rating: 71.2, Slope: 128}
		for k, h := range expect.ReferenceCourse() {
			s.Holes = append(s.Holes, handicap.Hole{Par: h.Par, Index: k + 1, Strokes: h.Par + (i+k)%3})
		}
		switch i {
		case 1:
			s.Rating, s.Slope = 0, 0
		case 6:
			s.Holes, s.Rating = s.Holes[:9], 35.8
		}
		all = append(all, s)
	}
	return all
}
