package handlers

import (
	"fmt"
	"net/http"
	"testing"

	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// A course too many is refused in words, with what was typed, wherever one is
// added.
func TestNoRoomForAnotherCourse(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("robin")
	dbtest.Exec(t, s.url, fmt.Sprintf(`insert into courses (owner_id, name, tee) select 1, 'Fen', '' from generate_series(1, %d)`, db.CoursesOfADay))
	try := func(want string) {
		t.Helper()
		a := v.sendForm("/courses/new", nineHoles(""), "name", "Harrow Moor")
		b := v.post("/rounds/new", "date", "2026-05-02", "new_course", "Harrow Moor", "new_holes", "9")
		for _, a := range []answer{a, b} {
			if a.status != http.StatusUnprocessableEntity {
				t.Errorf("%d", a.status)
			}
			v.mustSee(a, want, `value="Harrow Moor"`)
		}
	}
	try("You have added 50 courses today")
	dbtest.Exec(t, s.url, fmt.Sprintf(`insert into courses (owner_id, name, tee) select 1, 'Fen', '' from generate_series(1, %d)`, db.CoursesInAll))
	dbtest.Exec(t, s.url, `update courses set created_at = now() - interval '2 days'`)
	try("You have added 300 courses, the most allowed")
	dbtest.Exec(t, s.url, `delete from courses where id > 1`)
	if a := v.sendForm("/courses/new", nineHoles(""), "name", "Harrow Moor"); a.status != http.StatusSeeOther {
		t.Errorf("%d", a.status)
	}
}
