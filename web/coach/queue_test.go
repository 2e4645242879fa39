package coach

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
	"strokeledger/web/layout"
)

func queueSaid(r Roster) []string {
	var all []string
	for _, q := range append(r.Queue, r.Folded...) {
		all = append(all, strings.Join([]string{q.Kind, q.Who, q.What, q.Do, q.At}, "|"))
	}
	return all
}

// Lessons of today stand first, by their time; then who asks something, and who asks to be
// let in; then lessons of tomorrow. An archived pupil's lesson stands there as well.
func TestQueueHasLessonsAndWhoAsks(t *testing.T) {
	at := func(hour, minute int) *int { m := hour*60 + minute; return &m }
	all := pupils()
	all[0].Lessons = []NearLesson{{ID: 3, Day: today, Starts: at(17, 30), Aim: "Start line"}, {ID: 4, Day: today.AddDays(1), Starts: at(9, 0)}}
	all[1].Lessons = []NearLesson{{ID: 5, Day: today, Starts: at(8, 5)}}
	all[5].Lessons = []NearLesson{{ID: 6, Day: today, Aim: "The gate"}, {ID: 7, Day: today.AddDays(1)}}
	in := RosterInput{Pupils: all, Today: today, Askers: []Asker{{Name: "Gwen", What: "to be coached by you, since 30 Aug", At: "#request-9"}, {Name: "Cora", What: "to be approved as your coach", At: "#coach-8"}}}
	all[3].Unsent = []UnsentRound{{ID: 8, Day: today.AddDays(-1)}}
	r := NewRoster(in)
	if diff := cmp.Diff([]string{
		"lesson|Fay|today: The gate|Get ready|/players/6#lesson-6",
		"lesson|Bea|today at 08:05|Get ready|/players/2#lesson-5",
		"lesson|Abara|today at 17:30: Start line|Get ready|/players/1#lesson-3",
		"asks|Calder|about hole 4, shot 2, of the round of 11 Aug|Answer|/players/3/rounds/9#note-7",
		"asks|Gwen|to be coached by you, since 30 Aug|Answer|#request-9",
		"asks|Cora|to be approved as your coach|Answer|#coach-8",
		"lesson|Fay|tomorrow|Get ready|/players/6#lesson-7",
		"lesson|Abara|tomorrow at 09:00|Get ready|/players/1#lesson-4",
		"not sent|Dev|the round of 30 Aug that you entered|Go on|/players/4/walked/8",
	}, queueSaid(r)[:9]); diff != "" {
		t.Error(diff)
	}
	if want := "Three lessons today and two tomorrow. Nine things wait."; r.Lede != want {
		t.Errorf("%q", r.Lede)
	}
	if want := "7 more: one has a lesson tomorrow, one has a round that is not sent, one played, two have changed clearly, one is late, one has gone quiet"; r.Rest != want {
		t.Errorf("%q", r.Rest)
	}
	if diff := cmp.Diff([]string{"Bea", "Abara", "Calder"}, names(r)[:3]); diff != "" {
		t.Error(diff)
	}
	in.Pupils = []RosterPupil{{ID: 1, Name: "A", Lessons: []NearLesson{{ID: 4, Day: today.AddDays(1)}}}, {ID: 2, Name: "B"}}
	in.Askers = in.Askers[1:]
	if got := NewRoster(in).Lede; got != "One lesson tomorrow. One thing waits." {
		t.Errorf("%q", got)
	}
	for i := range in.Pupils {
		in.Pupils[i].Lessons = nil
	}
	if got := NewRoster(in).Lede; got != "One thing waits." {
		t.Errorf("%q", got)
	}
	in.Pupils[0].Lessons, in.Askers = []NearLesson{{ID: 4, Day: today.AddDays(1)}}, nil
	if got := NewRoster(in).Lede; got != "One lesson tomorrow. Nothing else is waiting." {
		t.Errorf("%q", got)
	}
	if next, ok := NextInQueue(in.Pupils, 2, today); !ok || next.Who != "A" || next.At != "/players/1#lesson-4" {
		t.Errorf("%+v, %v", next, ok)
	}
}

// Somebody without a pupil yet reads first that a golfer asks, and then who sees the own
// rounds.
func TestCoachingPageSaysFirstWhoAsks(t *testing.T) {
	in := CoachingInput{Codes: CodesInput{Asks: []RequestInput{{ID: 4, Name: "Gwen", Asked: today}, {ID: 5, Name: "Bea", Asked: today}}}, Coaches: []CoachInput{{Coach: 7, Name: "Cora"}}}
	if got := NewCoachingPage(layout.Page{}, in); got.Lede != "Two golfers ask you to coach them. Only you can see your rounds; one coach is waiting for your approval." {
		t.Errorf("%q", got.Lede)
	}
	in.Roster = RosterInput{Pupils: []RosterPupil{{ID: golf.PlayerID(1), Name: "A"}}, Today: today}
	in.Codes.Asks = in.Codes.Asks[:1]
	if diff := cmp.Diff([]string{"asks|Gwen|to be coached by you, since 31 Aug|Answer|#request-4", "asks|Cora|to be approved as your coach|Answer|#coach-7"}, queueSaid(NewCoachingPage(layout.Page{}, in).Roster)); diff != "" {
		t.Error(diff)
	}
}
