package db_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// The newest picture of a hole holds; earlier ones are kept, and taking the drawing
// away is another version.
func TestPictures(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	a, b := newPlayer(t, s, "a@example.org"), newPlayer(t, s, "b@example.org")
	course, err := s.SaveCourse(ctx, a, db.Course{Name: "Harrow Fen", Tee: "white", Holes: threeHoles()})
	if err != nil {
		t.Fatal(err)
	}
	for i, save := range []struct {
		who  golf.PlayerID
		text string
		want int
	}{{a, "first", 1}, {b, "second", 2}, {a, "second", 2}, {b, "", 3}, {b, "", 3}, {a, "first", 4}} {
		if got, err := s.SavePicture(ctx, save.who, course, 2, save.text); err != nil || got != save.want {
			t.Errorf("save %d: version %d, %v", i, got, err)
		}
		all, err := s.Pictures(ctx, course)
		holds := ""
		if len(all) > 0 {
			holds = all[0].Text
		}
		if err != nil || holds != save.text || len(all) > 1 {
			t.Errorf("save %d: %+v, %v", i, all, err)
		}
	}
	var drawn []string
	all, err := s.PictureVersions(ctx, course, 2, 3)
	for _, p := range all {
		drawn = append(drawn, p.Text)
	}
	if err != nil || !slices.Equal(drawn, []string{"first", "", "second"}) || *all[0].DrawnBy != a || *all[2].DrawnBy != b {
		t.Errorf("%q %+v, %v", drawn, all, err)
	}
	if p, err := s.PictureVersion(ctx, course, 2, 2); err != nil || p.Text != "second" {
		t.Errorf("%+v, %v", p, err)
	}
	if err := s.DeletePlayer(ctx, b); err != nil {
		t.Fatal(err)
	}
	if p, err := s.PictureVersion(ctx, course, 2, 2); err != nil || p.DrawnBy != nil {
		t.Errorf("the picture went with who drew it: %+v, %v", p, err)
	}
	for name, err := range map[string]error{
		"a hole that is not there": second(s.SavePicture(ctx, a, course, 4, "x")), "a course that is not there": second(s.SavePicture(ctx, a, course+1, 1, "x")),
		"a version that is not there": second(s.PictureVersion(ctx, course, 2, 9)),
	} {
		if !errors.Is(err, golf.ErrNotFound) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Drawings from a file that somebody else's course gets count for the day on which they
// come, whatever day the file says, and all drawings of a player have a most of bytes.
func TestDrawingsFromAFileAreLimited(t *testing.T) {
	p := newPair(t)
	holes := append(threeHoles(), golf.CardHole{Number: 4, Par: 4, Length: 384 * golf.Yard})
	_, err := p.SaveCourse(p.ctx, p.other, db.Course{Name: "Fen", Holes: holes})
	p.must(err)
	_, err = p.SaveCourse(p.ctx, p.pupil, db.Course{Name: "Own", Holes: holes})
	p.must(err)
	of := func(hole, n, size int) (all []db.OwnPicture) {
		for i := range n {
			all = append(all, db.OwnPicture{Hole: hole, DrawnAt: time.Date(2001, 5, 2, 0, 0, 0, 0, time.UTC), Text: fmt.Sprint(i) + strings.Repeat("x", size)})
		}
		return all
	}
	add := func(course string, drawn []db.OwnPicture, want error) {
		t.Helper()
		if err := p.AddPictures(p.ctx, p.pupil, db.Course{Name: course}, drawn); !errors.Is(err, want) {
			t.Errorf("%d on %s: %v", len(drawn), course, err)
		}
	}
	add("Fen", of(1, db.PicturesOfADay+1, 1), db.ErrPicturesOfADay)
	add("Own", of(1, db.PicturesOfADay+1, 1), nil)
	add("Fen", of(1, db.PicturesOfADay-1, 1), nil)
	add("Fen", of(2, 2, 1), db.ErrPicturesOfADay)
	add("Own", of(2, 2, 1), nil)
	add("Own", of(3, 2, db.PictureBytes/2), db.ErrPictureBytes)
	dbtest.Exec(t, p.url, fmt.Sprintf(`insert into hole_pictures (course_id, hole, version, drawn_by, drawn_at, picture) select c.id, 3, n, c.owner_id, '2001-05-02', repeat('x', 20000) from courses c, generate_series(1, %d) n where c.name = 'Own'`, db.PictureBytes/20000))
	dbtest.Exec(t, p.url, `update hole_pictures set drawn_at = now() - interval '2 days'`)
	add("Own", of(4, 1, 10000), db.ErrPictureBytes)
	if _, err := p.SavePicture(p.ctx, p.pupil, 2, 4, strings.Repeat("x", 10000)); !errors.Is(err, db.ErrPictureBytes) {
		t.Errorf("%v", err)
	}
}

// A player keeps so many plans, taken here or from files.
func TestTheNumberOfPlansIsLimited(t *testing.T) {
	p := newPair(t)
	dbtest.Exec(t, p.url, fmt.Sprintf(`insert into practice_plans (player_id, day, first_day, last_day, rounds, target, minutes, engine, figures)
		select %d, '2026-05-02', '2026-05-02', '2026-05-02', 5, 79, 180, 'x', '{}' from generate_series(1, %d)`, p.pupil, db.PlansInAll))
	plan := db.TakenPlan{Day: time.Now(), FirstDay: time.Now(), LastDay: time.Now(), Rounds: 5, Target: 79, Minutes: 180, Figures: []byte("{}")}
	if _, err := p.TakePlan(p.ctx, p.pupil, plan, nil); !errors.Is(err, db.ErrPlansInAll) {
		t.Errorf("taken: %v", err)
	}
	if err := p.AddPlans(p.ctx, p.pupil, []db.TakenPlan{plan}); !errors.Is(err, db.ErrPlansInAll) {
		t.Errorf("from a file: %v", err)
	}
	dbtest.Exec(t, p.url, fmt.Sprintf(`update practice_plans set removed_at = now() where player_id = %d and id = (select min(id) from practice_plans)`, p.pupil))
	gone, err := p.Removed(p.ctx, p.pupil)
	p.must(err)
	p.must(p.RestorePlan(p.ctx, p.pupil, gone[0].ID)) // there is room
	p.must(p.RemovePlan(p.ctx, p.pupil, gone[0].ID))
	_, err = p.TakePlan(p.ctx, p.pupil, plan, nil)
	p.must(err)
	if err := p.RestorePlan(p.ctx, p.pupil, gone[0].ID); !errors.Is(err, db.ErrFull) {
		t.Errorf("brought back: %v", err)
	}
	if err := p.AddPlans(p.ctx, p.other, []db.TakenPlan{plan}); err != nil {
		t.Errorf("another's: %v", err)
	}
}

// A player can save so many pictures a day.
func TestTheNumberOfPicturesIsLimited(t *testing.T) {
	p := newPair(t)
	course, err := p.SaveCourse(p.ctx, p.pupil, db.Course{Name: "Harrow Fen", Tee: "white", Holes: threeHoles()})
	p.must(err)
	dbtest.Exec(t, p.url, `insert into hole_pictures (course_id, hole, version, drawn_by, picture) select c.id, 1, n, c.owner_id, 'p' || n from courses c, generate_series(1, 400) n where c.name = 'Harrow Fen'`)
	if _, err := p.SavePicture(p.ctx, p.pupil, course, 1, "more"); !errors.Is(err, db.ErrPicturesOfADay) {
		t.Errorf("saved: %v", err)
	}
	if _, err := p.SavePicture(p.ctx, p.other, course, 1, "more"); err != nil {
		t.Errorf("another player may not: %v", err)
	}
	dbtest.Exec(t, p.url, `update hole_pictures set drawn_at = now() - interval '25 hours'`)
	if _, err := p.SavePicture(p.ctx, p.pupil, course, 1, "more yet"); err != nil {
		t.Errorf("the day after: %v", err)
	}
}

// A bag and range sessions are the player's; a coach reads them.
func TestBag(t *testing.T) {
	p := newPair(t)
	p.must(p.SaveBag(p.ctx, p.pupil, []db.BagClub{{Club: "hybrid", LengthYd: 190}, {Club: "driver", LengthYd: 230, ShapeYd: -8}}))
	p.must(p.SaveBag(p.ctx, p.pupil, []db.BagClub{{Club: "fairway wood"}, {Club: "driver", LengthYd: 232, ShapeYd: -8}}))
	today := time.Now()
	id, err := p.RecordRange(p.ctx, p.pupil, db.RangeSession{Club: "driver", Day: today, Balls: "3 -4"})
	p.must(err)
	for who, sees := range map[golf.PlayerID]bool{p.pupil: true, p.coach: true, p.stranger: false} {
		bag, err := p.Bag(p.ctx, who, p.pupil)
		p.must(err)
		if sees != slices.Equal(bag, []db.BagClub{{Club: "driver", LengthYd: 232, ShapeYd: -8}, {Club: "fairway wood"}}) {
			t.Errorf("%d reads %+v", who, bag)
		}
		all, err := p.RangeSessions(p.ctx, who, p.pupil, 10)
		p.must(err)
		if sees != (len(all) == 1 && all[0].ID == id && all[0].Balls == "3 -4") {
			t.Errorf("%d reads %+v", who, all)
		}
	}
	p.refused(map[string]error{
		"a stranger removes it": p.RemoveRange(p.ctx, p.stranger, id), "the coach removes it": p.RemoveRange(p.ctx, p.coach, id),
		"what is there is brought back": p.RestoreRange(p.ctx, p.pupil, id),
	})
	p.must(p.RemoveRange(p.ctx, p.pupil, id))
	if all, err := p.RangeSessions(p.ctx, p.pupil, p.pupil, 0); err != nil || len(all) != 0 || !slices.Equal(p.removed(p.pupil), []string{"range"}) || len(p.removed(p.coach)) != 0 {
		t.Errorf("%+v, %v", all, err)
	}
	p.refused(map[string]error{"a stranger restores it": p.RestoreRange(p.ctx, p.stranger, id)})
	p.must(p.RestoreRange(p.ctx, p.pupil, id))
	if all, err := p.RangeSessions(p.ctx, p.pupil, p.pupil, 0); err != nil || len(all) != 1 {
		t.Errorf("%+v, %v", all, err)
	}
	dbtest.Exec(t, p.url, `insert into range_sessions (player_id, club, day, balls) select 1, 'driver', '2026-01-01', n::text from generate_series(1, 999) n`)
	if _, err := p.RecordRange(p.ctx, p.pupil, db.RangeSession{Club: "driver", Day: today, Balls: "1 1"}); !errors.Is(err, db.ErrRangeSessionsInAll) {
		t.Errorf("recorded beyond the limit: %v", err)
	}
}
