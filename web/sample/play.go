package sample

import (
	"math"
	"net/url"
	"slices"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/forecast"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/paths"
	"strokeledger/web/play"
)

// sixthRows is the picture of a hole of the sample course.
const sixthRows = `bend 260: 10 right
fairway 165: 17 left, 16 right
fairway 230: 15 left, 17 right
fairway 280: 12 left, 14 right
fairway 392: 14 left, 13 right
out 0 to 222, across open to -34
out 222 to 470, across open to -16
trees 120 to 214, across 40 to open
trees 222 to 330, across 31 to open
bunker 222 to 252, across 13 to 27
water 300 to 322, across 20 to open
green 402: 26 wide, 29 deep
bunker 392 to 412, across -24 to -13
bunker 404 to 418, across 13 to 22`

// fourteenthRows is the picture of a par 3.
const fourteenthRows = `water 120 to 150, across open to 12
green 151: 24 wide, 22 deep, turned 20
bunker 150 to 166, across 14 to 24`

var (
	sixth      = golf.CardHole{Number: 6, Par: 4, Length: 417 * golf.Yard, Index: 1}
	fourteenth = golf.CardHole{Number: 14, Par: 3, Length: 162 * golf.Yard, Index: 11}
)

// drawPages are the pages on which holes are drawn.
func drawPages() []Page {
	own := paths.Whose{Player: 1, Own: true}
	page := func(state, flash string, hole golf.CardHole, f form.PictureForm, in play.DrawInput) Page {
		in.Course, in.Name, in.Holes, in.Hole, in.Form, in.Unit, in.Whose = 3, "Harrow Fen, white", []int{6, 14}, hole, f, golf.Yards, own
		shell := signedIn(own.Play())
		shell.Flash = flash
		return Page{"play", "draw", state, play.NewDrawPage(shell, in).View()}
	}
	sent := func(hole golf.CardHole, text string) form.PictureForm {
		v, _ := url.ParseQuery(text) // the texts are below
		return form.ParsePicture(v, hole, golf.Yards).Done()
	}
	kept := func(hole golf.CardHole, rows string) form.PictureForm {
		f := form.NewPictureForm(hole)
		f.Rows = form.TextOf(rows)
		return f
	}
	day := golf.Date{Year: 2026, Month: 9, Day: 14}
	history := []play.Version{{Number: 4, By: 1, Day: day}, {Number: 3, Day: day, Empty: true}, {Number: 2, By: 2, Day: day}, {Number: 1, By: 1, Day: day}}
	return []Page{
		page("empty", "", sixth, form.NewPictureForm(sixth), play.DrawInput{}),
		page("kept", "", sixth, kept(sixth, sixthRows), play.DrawInput{Versions: history}),
		page("short-hole", "", fourteenth, kept(fourteenth, fourteenthRows), play.DrawInput{Versions: history[:1]}),
		page("answered", "Drawn, and not saved yet.", sixth, sent(sixth, "do=draw&bend=left&fairway=30&left=water&left_far=22&right=trees&right_far=28&width=26&depth=29&short=bunker&green_left=bunker&green_right=rough&rows=green+400%3A+20+wide%2C+20+deep"), play.DrawInput{}),
		page("answers-refused", "", sixth, form.ParsePicture(url.Values{"do": {"draw"}, "fairway": {"3"}, "left": {"water"}, "width": {"x"}}, sixth, golf.Yards), play.DrawInput{}),
		page("rows-refused", "", sixth, kept(sixth, sixthRows+"\nbunkr 404 to 418, across 13 to 22\nwater 300 to 280"), play.DrawInput{Judged: true}),
		page("file-refused", "", sixth, form.NewPictureForm(sixth), play.DrawInput{File: `{"version": 2}`, FileSaid: []string{"Version: 2; allowed: 1."}}),
		page("removed-drawing", "The drawing is removed.", sixth, form.NewPictureForm(sixth), play.DrawInput{Versions: history[1:]}),
		{"play", "pictures", "full", play.NewPicturesPage(signedIn(own.Play()), play.PicturesInput{Whose: own, Course: 3, Name: "Harrow Fen, white", Holes: []play.PicturedHole{
			{Hole: sixth, File: play.ReadRows(sixth, sixthRows).File()}, {Hole: fourteenth}}}).View()},
		{"play", "pictures", "none", play.NewPicturesPage(signedIn(own.Play()), play.PicturesInput{Whose: own, Course: 3, Name: strings.Repeat("Harrow Fen ", 3), Holes: []play.PicturedHole{{Hole: sixth}}}).View()},
		{"play", "pictures", "no-holes", play.NewPicturesPage(signedIn(own.Play()), play.PicturesInput{Whose: own, Course: 3, Name: "Harrow Fen, white"}).View()},
	}
}

// playPages are the pages of preparing a round.
func playPages() []Page {
	return slices.Concat(drawPages(), holePlanPages(), bagPages(), roundPlanPages(), chancePages())
}

// engineOf works out what the pages of plans show.
var engineOf = analysis.NewEngine()

func must[T any](x T, err error) T {
	if err != nil {
		panic("sample: " + err.Error())
	}
	return x
}

// planned is the plan of a hole for the golfer of the season.
func planned(as analysis.PlaysAs, hole golf.CardHole, rows string, clubs []analysis.Club) (analysis.Picture, analysis.HolePlan) {
	d := play.ReadRows(hole, rows)
	plan := must(engineOf.RoundPlan(analysis.RoundPlanInput{Card: []golf.CardHole{hole}, Pictures: map[int]analysis.Picture{hole.Number: d.Picture}, As: as, Clubs: clubs}))
	return d.Picture, plan.Holes[0]
}

// easyRows is the picture of a hole where no aim matters.
const easyRows = `fairway 165: 20 left, 20 right
fairway 390: 20 left, 20 right
green 402: 30 wide, 29 deep`

// holePlanPages are the pages of where to aim.
func holePlanPages() []Page {
	own, pupil := paths.Whose{Player: 1, Own: true}, paths.Whose{Player: 1}
	as := must(engineOf.PlaysAs(playedSeason(), 79))
	few := must(engineOf.PlaysAs(nil, 79))
	in := func(whose paths.Whose, as analysis.PlaysAs, hole golf.CardHole, rows string, clubs []analysis.Club) play.HoleInput {
		picture, plan := planned(as, hole, rows, clubs)
		return play.HoleInput{Whose: whose, Player: Player, Course: 3, Name: "Harrow Fen, white", Holes: []int{5, 6, 14}, Hole: hole, Picture: picture, Drawn: true, By: "Drawn by you, 14 Sep 2026",
			As: as, Target: 79, Unit: golf.Yards, Plan: plan}
	}
	page := func(state string, in play.HoleInput) Page {
		shell := signedIn(in.Whose.Play())
		if !in.Whose.Own {
			shell = teaches(paths.Coaching)
		}
		return Page{"play", "hole", state, play.NewHolePage(shell, in).View()}
	}
	coach := in(pupil, as, sixth, sixthRows, nil)
	coach.By = "Drawn by " + Player + ", 14 Sep 2026"
	full := in(own, as, sixth, sixthRows, sampleClubs(as))
	best := full.Plan.Advice.Best()
	for _, yd := range play.Shapes {
		advice := must(engineOf.Aim(analysis.AimInput{Picture: full.Picture, As: as, Clubs: []analysis.Club{best.Club}, Shape: yd}))
		full.Shapes = append(full.Shapes, play.ShapedAim{Yd: yd, Shot: advice.Best()})
	}
	flagged := in(own, as, fourteenth, fourteenthRows, nil)
	flagged.Flag = "back-left"
	flagged.Approach = must(engineOf.Aim(analysis.AimInput{Picture: flagged.Picture, Flag: play.FlagAt(flagged.Picture, flagged.Flag), As: as})).Approach
	metres := in(own, few, sixth, sixthRows, nil)
	metres.Unit = golf.Metres
	short := in(own, as, fourteenth, fourteenthRows, nil)
	return append(advisedHoles(full, short, coach), []Page{
		page("full", full), page("flag", flagged), page("short-hole", short), page("no-matter", in(own, as, sixth, easyRows, nil)),
		page("few-rounds", metres), page("coach", coach),
		page("not-drawn", play.HoleInput{Whose: own, Course: 3, Name: "Harrow Fen, white", Holes: []int{6}, Hole: sixth, As: as, Target: 79, Unit: golf.Yards}),
	}...)
}

// sampleBag is a bag with balls from the range.
func sampleBag() play.Bag {
	return play.Bag{Clubs: []play.BagClub{{Name: "driver", Length: 232}, {Name: "fairway wood"}, {Name: "hybrid", Length: 200, Bend: -6}, {Name: "5-iron", Length: 176}},
		Sessions: []play.Session{{ID: 2, Club: "driver", Day: golf.Date{Year: 2026, Month: 10, Day: 2}, Balls: "8 left, 3 long\n12 right, 5 short\n2 left, 0 short\n15 right, 9 long\n4 right, 12 short\n7 left, 6 long\n20 right, 4 short\n1 right, 2 long\n11 right, 15 short\n3 left, 8 long\n16 right, 1 short\n40 right, 60 short"}}}
}

func sampleClubs(as analysis.PlaysAs) []analysis.Club {
	bag := sampleBag()
	clubs := play.TeeClubs(must(engineOf.ClubsOf(as)), bag)
	for i, c := range clubs {
		clubs[i].Pattern = must(engineOf.Pattern(analysis.PatternInput{As: as, Club: c, Tee: true, Session: bag.Balls(c.Name)})).Shaped(bag.Shape(c.Name))
	}
	return clubs
}

// bagPages are the clubs of a player.
func bagPages() []Page {
	own, pupil := paths.Whose{Player: 1, Own: true}, paths.Whose{Player: 1}
	as := must(engineOf.PlaysAs(playedSeason(), 79))
	level := must(engineOf.ClubsOf(as))
	day := form.DayOf(golf.Date{Year: 2026, Month: 11, Day: 26})
	full := play.BagInput{Whose: own, Player: Player, Level: level, Clubs: sampleClubs(as), Sessions: sampleBag().Sessions, Form: play.FormOf(sampleBag(), level, golf.Yards), Range: form.Range{Day: day}, Unit: golf.Yards}
	empty := full
	empty.Clubs, empty.Sessions, empty.Form = level, nil, play.FormOf(play.Bag{}, level, golf.Yards)
	coach := full
	coach.Whose = pupil
	wrong := full
	wrong.Form = form.ParseBag(url.Values{"club-1": {"driver"}, "length-1": {"20"}, "club-2": {"Driver"}, "length-3": {"200"}, "club-4": {"hybrid"}, "bend-4": {"8"}}, golf.Yards)
	balls := full
	balls.Range = form.ParseRange(url.Values{"range_club": {"spoon"}, "day": {"soon"}, "balls": {"8 left\n3"}}, []string{"driver"})
	_, balls.BallSaid = play.ReadSession("8 left\n3")
	page := func(state string, in play.BagInput) Page {
		shell := signedIn(in.Whose.Play())
		if !in.Whose.Own {
			shell = teaches(paths.Coaching)
		}
		return Page{"play", "bag", state, play.NewBagPage(shell, in).View()}
	}
	return []Page{page("full", full), page("empty", empty), page("coach", coach), page("clubs-refused", wrong), page("balls-refused", balls)}
}

// sampleCard is a course whose holes are drawn, apart from the last.
var sampleCard = []golf.CardHole{{Number: 5, Par: 4, Length: 361 * golf.Yard, Index: 9}, sixth, fourteenth, {Number: 15, Par: 5, Length: 507 * golf.Yard, Index: 5}}

// roundPlan is the plan of a round on the sample course.
func roundPlan() play.RoundInput {
	as := must(engineOf.PlaysAs(playedSeason(), 79))
	in := play.RoundInput{Whose: ownPages, Player: Player, Course: 3, Name: "Harrow Fen, white", Card: sampleCard, As: as, Target: 79, Unit: golf.Yards, Today: golf.Date{Year: 2026, Month: 11, Day: 26}, Drawn: 3, Plans: map[int]analysis.HolePlan{}}
	for hole, rows := range map[golf.CardHole]string{sampleCard[0]: "fairway 165: 20 left, 20 right\nfairway 340: 20 left, 20 right\ngreen 347: 30 wide, 28 deep", sixth: sixthRows, fourteenth: fourteenthRows} {
		_, in.Plans[hole.Number] = planned(as, hole, rows, nil)
	}
	return in
}

// roundPlanPages are the plan of a round with its card, and the first page.
func roundPlanPages() []Page {
	own, pupil := paths.Whose{Player: 1, Own: true}, paths.Whose{Player: 1}
	few := must(engineOf.PlaysAs(nil, 79))
	in := roundPlan()
	planned := plannedPages(in)
	in.Compare = []components.Link{{Name: "2 May 2026", At: own.Planned(3, 1)}, {Name: "25 Apr 2026", At: own.Planned(3, 2)}}
	page := func(name, state string, in play.RoundInput, as func(play.RoundPage) play.RoundPage) Page {
		shell := signedIn(in.Whose.Play())
		if !in.Whose.Own {
			shell = teaches(paths.Coaching)
		}
		return Page{"play", name, state, as(play.NewRoundPage(shell, in)).View()}
	}
	whole := func(p play.RoundPage) play.RoundPage { return p }
	coach, working, none, thin, easy := in, in, in, in, in
	coach.Whose = pupil
	working.Plans = map[int]analysis.HolePlan{6: in.Plans[6]}
	none.Drawn, none.Plans = 0, nil
	thin.As, thin.Unit = few, golf.Metres
	easy.Drawn, easy.Plans = 1, map[int]analysis.HolePlan{5: in.Plans[5]}
	courses := []play.PlayedCourse{{ID: 3, Name: "Harrow Fen, white", Holes: 18, Drawn: 5, Times: 12}, {ID: 4, Name: "Harrow Fen, yellow", Holes: 18}, {ID: 5, Name: "Old Ford, red", Holes: 9, Drawn: 9, Times: 1}}
	return append(planned,
		page("round", "full", in, whole), page("round", "coach", coach, whole), page("round", "working", working, whole), page("round", "not-drawn", none, whole),
		page("round", "few-rounds", thin, whole), page("round", "no-matter", easy, whole), page("round", "card", in, play.RoundPage.Alone),
		Page{"play", "index", "full", play.NewIndexPage(signedIn(own.Play()), play.IndexInput{Whose: own, Player: Player, Target: 79, Courses: courses}).View()},
		Page{"play", "index", "coach", play.NewIndexPage(teaches(paths.Coaching), play.IndexInput{Whose: pupil, Player: Player, Target: 79, Courses: courses}).View()},
		Page{"play", "index", "empty", play.NewIndexPage(signedIn(own.Play()), play.IndexInput{Whose: own, Player: Player, Target: 79}).View()},
	)
}

// chancePages are the chance of the target; the figures are invented.
func chancePages() []Page {
	own, pupil := paths.Whose{Player: 1, Own: true}, paths.Whose{Player: 1}
	scores := map[int]float64{}
	sum := 0.0
	for score := 70; score <= 100; score++ {
		d := (float64(score) - 83.3) / 4.2
		scores[score] = math.Exp(-d * d / 2)
		sum += scores[score]
	}
	for score := range scores {
		scores[score] /= sum
	}
	known := forecast.Chance{Target: 79, Rounds: 20000, Played: 12, Mean: 83.3, SD: 4.2, Scores: scores, Chance: .17, Interval: stat.Interval{Low: .08, High: .30}, NoDoubles: .14,
		WhatIf: []forecast.WhatIf{{Change: forecast.PuttingAsTarget, Strokes: -1.8, Chance: .32}, {Change: forecast.ApproachAsTarget, Strokes: -1.4, Chance: .27}, {Change: forecast.ShortPutts, Strokes: -1.1, Chance: .25},
			{Change: forecast.TeeShotsAsTarget, Strokes: -.9, Chance: .23}, {Change: forecast.Longer, Strokes: -.8, Chance: .23}, {Change: forecast.PlansAims, Strokes: -.6, Chance: .22}, {Change: forecast.NoCompounding, Strokes: -.5, Chance: .21},
			{Change: forecast.ShortGameAsTarget, Strokes: -.3, Chance: .19}, {Change: forecast.OneClubLess, Strokes: .6, Chance: .14}},
		Pairs: []forecast.WhatIf{{Change: forecast.PuttingAsTarget, Second: forecast.ApproachAsTarget, Strokes: -3.2, Chance: .45}, {Change: forecast.PuttingAsTarget, Second: forecast.TeeShotsAsTarget, Strokes: -2.7, Chance: .40}},
		Takes: forecast.Takes{Known: true, Part: golf.Approach, Level: 74, Strokes: -3.8, Chance: .51}}
	known.Chance = known.AtOrBetter(79)
	in := play.ChanceInput{Whose: own, Player: Player, Course: 3, Name: "Harrow Fen, white", Card: sampleCard, Target: 79, Drawn: 3, Chance: known}
	page := func(state string, in play.ChanceInput) Page {
		shell := signedIn(in.Whose.Play())
		if !in.Whose.Own {
			shell = teaches(paths.Coaching)
		}
		return Page{"play", "chance", state, play.NewChancePage(shell, in).View()}
	}
	coach, few, none, plan, already, working, level, refused := in, in, in, in, in, in, in, in
	level.As, refused.As = form.ParseTarget("84"), form.ParseTarget("60")
	working.Working, working.Chance = true, forecast.Chance{}
	coach.Whose, coach.Takes = pupil, forecast.Takes{}
	few.Drawn, few.Thin, few.Played = 0, golf.Enough(golf.ThinLevel, 2, 5), 2
	none.Rounds, none.Card, none.Drawn = 0, nil, 0
	plan.Planned, plan.Drawn, plan.Taken = true, 1, map[int]analysis.OtherAim{6: {Club: "hybrid", Side: 6}}
	already.Takes = forecast.Takes{Already: true}
	return []Page{page("full", in), page("coach", coach), page("few-rounds", few), page("no-holes", none), page("plans-aims", plan), page("already", already), page("working", working), page("another-level", level), page("level-refused", refused)}
}
