package accountfile

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// What an account made itself comes back with it; what people wrote does not.
func TestWhatIsTheAccountsOwnComesBack(t *testing.T) {
	own := Own{
		Bag:    []BagClub{{"driver", 231.5, -8}, {"hybrid", 0, 0}},
		Ranges: []Range{{"driver", "2026-05-02", []string{"8 left, 3 long", "-2 0"}}},
		Drawn: []Drawn{{"Harrow Fen", "white", []CardHole{{1, 4, 13824, 7}, {2, 3, 5688, 0}}, []Drawing{
			{1, time.Date(2026, 5, 2, 16, 30, 0, 125000, time.UTC), json.RawMessage(`{"version":1,"zones":[]}`)}, {1, time.Date(2026, 5, 3, 0, 0, 0, 0, time.UTC), json.RawMessage(`null`)}}}},
		Plans: []Plan{{"2026-05-02", "2026-01-02", "2026-05-01", 12, 84.5, 180, "7", json.RawMessage(`{"version":1}`)}},
	}
	var b strings.Builder
	w := NewWriter(&b, someSettings)
	if err := w.Close(Written{Notes: []Note{{Body: "x"}}, Own: own}); err != nil {
		t.Fatal(err)
	}
	r := NewReader(strings.NewReader(b.String()))
	for _, err := range r.Rounds() {
		t.Fatal(err)
	}
	if diff := cmp.Diff(own, r.Own()); diff != "" {
		t.Errorf("%s\n%s", diff, b.String())
	}
	if !own.Any() || own.Pictures() != 2 || (Own{Bag: own.Bag}).Any() {
		t.Errorf("%v %d", own.Any(), own.Pictures())
	}
}

// What is wrong with it is told with its place. Each file ends with what is wrong.
func TestFaultsOfWhatIsTheAccountsOwn(t *testing.T) {
	for _, c := range []struct{ rest, want string }{
		{`"bag":[{"club":"driver","length_yd":20,"shape_yd":0}]}`, `bag: club 1: length_yd: 20; allowed: 0, or 60 to 400`},
		{`"bag":[{"club":"driver","length_yd":230,"shape_yd":0},{"club":"Driver"}]}`, `bag: club 2: club: "Driver" comes twice`},
		{`"bag":[{"club":"","length_yd":230,"shape_yd":0}]}`, `bag: club 1: club: a club needs a name`},
		{`"bag":[{"club":"driver","length_yd":230,"shape_yd":.2}]}`, `this is not JSON`},
		{`"bag":[{"club":"driver","length_yd":230,"shape_yd":0.2}]}`, `bag: club 1: shape_yd: 0.2; allowed: 0, or 1 to 60 to either side`},
		{`"bag":{"club":"driver"}}`, `a list or an object here; allowed: a list of clubs`},
		{`"range_sessions":[{"club":"driver","day":"yesterday","balls":[]}]}`, `range session 1: day: not a day "yesterday"; allowed: YYYY-MM-DD`},
		{`"range_sessions":[{"club":"driver","day":"2026-05-02","balls":["3 2","8\u0000"]}]}`, `range session 1: ball 2: this text has a letter that cannot be seen`},
		{`"range_sessions":[{"club":"driver","balls":["3 2"]}]}`, `range session 1: a session needs club and day`},
		{`"range_sessions":[{"club":"driver","day":"2026-05-02","balls":[` + strings.Repeat(`"`+strings.Repeat("3", 900)+`",`, 8) + `"` + strings.Repeat("3", 900) + `"]}]}`, `range session 1: balls: 8108 bytes; allowed: at most 8000`},
		{`"drawn_courses":[{"course":"Fen","tee":"","holes":[{"number":4,"par":3,"length_in":5688}],"drawings":[{"hole":5,"picture":{}}]}]}`, `drawn course 1: drawing 1: hole: 5 is not on its card`},
		{`"drawn_courses":[{"course":"Fen","holes":[{"number":4,"par":3,"length_in":5688},{"number":4,"par":3,"length_in":5688}]}]}`, `drawn course 1: hole at place 2: hole 4 comes twice`},
		{`"drawn_courses":[{"course":"Fen","holes":[{"number":4,"par":3,"length_in":5688}],"drawings":[{"hole":4,"drawn":"noon"}]}]}`, `drawn course 1: drawing 1: drawn: not a time "noon"; allowed: such as 2026-05-02T16:30:00Z`},
		{`"drawn_courses":[{"course":"Fen","holes":[{"number":4,"par":3,"length_in":5688}],"drawings":[{"hole":4,"picture":"` + strings.Repeat("x", 20000) + `"}]}]}`, `drawn course 1: drawing 1: picture: 20002 bytes; allowed: at most 20000`},
		{`"drawn_courses":[{"course":"Fen","holes":[{"number":4,"par":3,"length_in":0}]}]}`, `drawn course 1: hole at place 1: length_in: 0; allowed: 36 to 25200`},
		{`"drawn_courses":[{"course":"Fen","holes":[{"number":4,"par":3}]}]}`, `drawn course 1: hole at place 1: a hole needs number, par and length_in`},
		{`"drawn_courses":[{"tee":"white"}]}`, `drawn course 1: course: a course needs a name`},
		{`"practice_plans":[{"day":"2026-05-02","first_day":"2026-05-02","last_day":"2026-05-01","rounds":1,"target":79,"minutes":180,"figures":{}}]}`, `practice plan 1: last_day: 2026-05-01; allowed: from 2026-05-02 on`},
		{`"practice_plans":[{"day":"2026-05-02"}]}`, `practice plan 1: a plan needs day, first_day, last_day, rounds, target, minutes and figures`},
		{`"practice_plans":[{"figures":{"a":]}]}`, `this is not JSON`},
	} {
		_, _, err := readAll(strings.NewReader(begins + oneRound + "]," + c.rest))
		if !errors.As(err, new(*Fault)) || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%.80s: %v, want %s", c.rest, err, c.want)
		}
	}
}
