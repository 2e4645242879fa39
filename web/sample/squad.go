package sample

import (
	"strokeledger/analysis"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/practice"
	"strokeledger/web/coach"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

// squadPages are a group lesson while it is chosen, side by side, and on paper.
func squadPages() []Page {
	pupils := teaches(paths.Coaching)
	wrongDays, nothingShared, away, lately := squad(), squad(), squad(), squad()
	wrongDays.Days.To.Problem = "The last day is before the first."
	nothingShared.Shared = analysis.Shared{Told: 2}
	away.Squad = analysis.Squad{Rows: make([]analysis.SquadRow, len(away.Members))}
	lately.Days = form.Days{}
	return []Page{
		Page{"coach", "squad", "full", coach.NewSquadPage(pupils, squad()).View()},
		Page{"coach", "squad", "latest", coach.NewSquadPage(pupils, lately).View()},
		Page{"coach", "squad", "refused", coach.NewSquadPage(pupils, wrongDays).View()},
		Page{"coach", "squad", "nobody-played", coach.NewSquadPage(pupils, away).View()},
		Page{"coach", "squad", "choosing", coach.NewSquadPage(pupils, choosing()).View()},
		Page{"coach", "squad", "nothing-shared", coach.NewSquadPage(pupils, nothingShared).View()},
		Page{"coach", "squad", "sheet", coach.NewSquadSheet(pupils, lessonOf("")).View()},
		Page{"coach", "squad", "sheet-of-one-place", coach.NewSquadSheet(pupils, lessonOf("putting 3-6")).View()},
		Page{"coach", "squad", "sheet-too-few", coach.NewSquadSheet(pupils, squad()).View()},
		Page{"coach", "squad", "no-pupils", coach.NewSquadPage(signedIn(paths.Coaching), coach.SquadInput{Days: form.Days{From: form.DayOf(coachingDay), To: form.DayOf(coachingDay)}}).View()},
	}
}

// shared is what some members of a squad lose beyond the usual: putting and a band of
// it together, and bunkers the last of them alone.
func shared(members ...int) analysis.Shared {
	in := func(name string, who ...int) analysis.SharedRow {
		r, _ := compare.RowAt(golf.StandardBoundary, name)
		row := analysis.SharedRow{Row: r}
		for i, m := range who {
			row.Who = append(row.Who, analysis.Unusual{Player: m, Estimate: practice.Estimate{Mean: 2.1 - .17*float64(i%8), SD: .3 + .1*float64(i%3), Usual: .9}})
		}
		return row
	}
	return analysis.Shared{Told: len(members), Rows: []analysis.SharedRow{
		in("putting", members...), in("putting 3-6", members...), in("short game bunker 0-10", members[len(members)-1])}}
}

// choosing is a group lesson before anybody has been chosen, of as many pupils as a
// club has.
func choosing() coach.SquadInput {
	in := squad()
	in.Days, in.At, in.Members = form.Days{}, paths.SquadChosen(nil), nil
	var sharing []int
	for i, p := range crowd().Pupils {
		in.Members = append(in.Members, coach.SquadMember{ID: p.ID, Name: p.Name, Target: p.Target})
		if i%9 == 0 {
			sharing = append(sharing, i)
		}
	}
	in.Squad, in.Shared = analysis.Squad{}, shared(sharing...)
	in.Shared.Told = len(in.Members)
	return in
}

// lessonOf is a group lesson of six about a place, or what they share.
func lessonOf(row string) coach.SquadInput {
	in := squad()
	in.Row, in.At = row, in.At.About(row)
	if row == "" {
		in.At = in.At.Shared()
	}
	for i, of := range shared(0, 1).Rows[1:] {
		drill, err := practice.Find([]string{"start-line", "bunker"}[i])
		if err != nil {
			panic("sample: " + err.Error())
		}
		l := analysis.LessonDrill{SharedRow: of, Drill: drill, Named: true}
		for range of.Who {
			l.Marks = append(l.Marks, practice.Mark{Tries: 20, Pass: 12})
		}
		if row == "" || row == of.Row.String() {
			in.Lesson = append(in.Lesson, l)
		}
	}
	in.Members[2].Chosen = true
	return in
}
