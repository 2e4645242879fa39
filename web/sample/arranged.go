package sample

import (
	"net/url"

	"strokeledger/web/coach"
	"strokeledger/web/form"
	"strokeledger/web/notes"
	"strokeledger/web/paths"
)

// arrangedLessons are one that took place and is not written up, the next one with all
// that can be said of it, and one later that has only its day.
func arrangedLessons() []coach.ArrangedLesson {
	at := 17*60 + 30
	return []coach.ArrangedLesson{{ID: 1, CoachID: 2, Coach: "Ines Vale", Day: coachingDay.AddDays(-3), Aim: "Chips from below the green"},
		{ID: 2, CoachID: 2, Coach: "Ines Vale", Day: coachingDay.AddDays(8), Starts: &at, Place: "The range at Harrow Fen", Aim: "Start line", Agreed: "Until then:\n- forty putts a week\n- bring the 8 iron"},
		{ID: 3, CoachID: 3, Coach: "Tam Orr", Day: coachingDay.AddDays(15)}}
}

// refusedLesson is a lesson on a day that has passed, at a time that is none.
func refusedLesson() *form.Lesson {
	f := form.ParseArrangedLesson(url.Values{"coach": {"2"}, "day": {coachingDay.AddDays(-1).String()}, "time": {"at noon"}, "place": {"The range"}}, coachingDay)
	return &f
}

// codes are a pupil who asks, a coach who was asked, and a code of one's own.
func codes() coach.CodesInput {
	return coach.CodesInput{Code: "GHB-KXT-WRM", Asks: []coach.RequestInput{{ID: 4, Name: "Bea Lund", Email: "bea@harrowfen.example", From: coachingDay.AddDays(-90), Asked: coachingDay.AddDays(-1)}},
		Asked: []coach.RequestInput{{ID: 2, Name: "Ines Vale", Email: "ines@harrowfen.example", Asked: coachingDay}}}
}

// asksOf is a golfer who asks to be coached.
func asksOf(name string) coach.CodesInput {
	return coach.CodesInput{Code: "GHB-KXT-WRM", Asks: []coach.RequestInput{{ID: 9, Name: name, Email: "kit@harrowfen.example", Asked: coachingDay.AddDays(-1)}}}
}

// refusedCode is a code that nobody has.
func refusedCode() coach.CodesInput {
	typed := form.ParseAskCoach("KXT-WRM-GHB", "")
	typed.Code.Problem = "No coach has this code now. Ask the coach for it again."
	return coach.CodesInput{Typed: &typed}
}

// phrasesFor are the phrases of a coach who reads, none of a player.
func phrasesFor(whose paths.Whose) []notes.Phrase {
	if whose.Own {
		return nil
	}
	return []notes.Phrase{{ID: 1, Body: "Count to three, then swing."}, {ID: 2, Body: "Look at where the doubles begin, not at where they end.\n- the safe side\n- one club more"}}
}

// codePages are the pages of codes and phrases.
func codePages() []Page {
	here, pupils := signedIn(paths.Coaching), teaches(paths.Coaching)
	return []Page{
		Page{"coach", "coaching", "asked-by-code", coach.NewCoachingPage(here, coach.CoachingInput{Whose: ownPages, Codes: codes()}).View()},
		Page{"coach", "coaching", "refused-code", coach.NewCoachingPage(here, coach.CoachingInput{Whose: ownPages, Codes: refusedCode()}).View()},
		Page{"coach", "phrases", "full", coach.NewPhrasesPage(pupils, phrasesFor(pupilsPages), form.Text{}).View()},
		Page{"coach", "phrases", "refused", coach.NewPhrasesPage(pupils, nil, form.Text{Problem: "Allowed: 1 to 4000 characters."}).View()},
		Page{"coach", "ask", "open", coach.NewAskPage(here, coach.CodeOwner{Name: "Ines Vale", Email: "ines@harrowfen.example", Code: "KXT-WRM-GHB", From: coachingDay, Asked: true}).View()},
		Page{"coach", "ask", "has-access", coach.NewAskPage(here, coach.CodeOwner{Name: "Ines Vale", Coaches: true}).View()},
	}
}
