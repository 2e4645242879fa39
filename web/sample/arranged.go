package sample

import (
	"net/url"

	"strokeledger/web/coach"
	"strokeledger/web/form"
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
