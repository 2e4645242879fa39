package form

import (
	"fmt"
	"net/url"
	"strconv"
	"time"

	"strokeledger/analysis/golf"
)

// Lesson is a lesson to come.
type Lesson struct {
	Coach  Field[golf.PlayerID] // with whom
	Day    Day
	Time   Field[int] // minutes after midnight, where it takes place; says nothing where its text is empty
	Place  Text       // may be empty
	Aim    Text       // may be empty
	Agreed Text       // of several lines; may be empty
}

// ParseTime reads a time of the day as minutes after midnight.
func ParseTime(text string) Field[int] {
	for _, layout := range []string{"15:04", "15.04", "15:04:05"} {
		if at, err := time.Parse(layout, text); err == nil {
			return Field[int]{Text: at.Format("15:04"), Value: at.Hour()*60 + at.Minute()}
		}
	}
	return refused[int](text, "Write it as 17:30.")
}

// TimeOf is the field of a time that is kept; nil is none.
func TimeOf(minute *int) Field[int] {
	if minute == nil {
		return Field[int]{}
	}
	return Field[int]{Text: fmt.Sprintf("%02d:%02d", *minute/60, *minute%60), Value: *minute}
}

// parseDayFrom reads a day that is to come: today or later.
func parseDayFrom(text string, today golf.Date) Day {
	d := ParseDay(text)
	if d.Sound() && d.Value.Compare(today) < 0 {
		d.Problem = "This day has passed."
	}
	return d
}

// ParseArranged reads a day that is arranged: today or later, at most a year ahead.
func ParseArranged(text string, today golf.Date) Day {
	d := parseDayFrom(text, today)
	switch {
	case !d.Sound():
	case d.Value.Compare(today.AddDays(golf.MaxAhead)) > 0:
		d.Problem = "Allowed: at most a year ahead."
	}
	return d
}

// ParseArrangedLesson reads a lesson to come with a coach of the player's.
func ParseArrangedLesson(v url.Values, today golf.Date) Lesson {
	l := ParseLessonOf(v, today)
	l.Coach = parseCoach(v.Get("coach"))
	return l
}

// ParseLessonOf reads a lesson to come where it is known with whom it is.
func ParseLessonOf(v url.Values, today golf.Date) Lesson {
	return Lesson{
		Day:    ParseArranged(v.Get("day"), today),
		Time:   optional(v.Get("time"), ParseTime),
		Place:  practice(v.Get("place")),
		Aim:    practice(v.Get("aim")),
		Agreed: optional(v.Get("agreed"), func(t string) Text { return ParseBody(t, golf.MaxNote) }).saying(fmt.Sprintf("Allowed: at most %d characters.", golf.MaxNote)),
	}
}

// parseCoach reads the number of a coach.
func parseCoach(text string) Field[golf.PlayerID] {
	n, err := strconv.ParseInt(text, 10, 64)
	if err != nil || n < 1 {
		return refused[golf.PlayerID](text, "Choose a coach.")
	}
	return Field[golf.PlayerID]{Text: text, Value: golf.PlayerID(n)}
}

// Sound reports whether nothing is wrong with the form.
func (l Lesson) Sound() bool { return sound(l.Coach, l.Day, l.Time, l.Place, l.Aim, l.Agreed) }
