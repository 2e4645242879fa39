package db_test

import (
	"testing"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
)

// What a player drew elsewhere is added to the course of that name, or with it, and
// nowhere where anything was drawn.
func TestPicturesAreAdded(t *testing.T) {
	p := newPair(t)
	at := time.Date(2026, 5, 2, 16, 30, 0, 0, time.UTC)
	drawn := []db.OwnPicture{{Hole: 1, DrawnAt: at, Text: "one"}, {Hole: 2, DrawnAt: at, Text: "two"}, {Hole: 2, DrawnAt: at, Text: ""}, {Hole: 9, DrawnAt: at, Text: "nine"}}
	there, err := p.SaveCourse(p.ctx, p.coach, db.Course{Name: "Owl Fen", Tee: "white", Holes: threeHoles()})
	p.must(err)
	_, err = p.SavePicture(p.ctx, p.stranger, there, 1, "another's")
	p.must(err)
	for range 2 {
		p.must(p.AddPictures(p.ctx, p.pupil, db.Course{Name: "owl fen", Tee: "White", Holes: threeHoles()}, drawn))
		p.must(p.AddPictures(p.ctx, p.pupil, db.Course{Name: "Owl Fen", Tee: "red", Holes: threeHoles()}, drawn))
	}
	all, err := p.OwnPictures(p.ctx, p.pupil)
	p.must(err)
	if len(all) != 5 || all[0].CourseID != there || all[0].Hole != 2 || all[1].Text != "" || all[2].Text != "one" || !all[4].DrawnAt.Equal(at) {
		t.Errorf("%+v", all)
	}
	red, err := p.Course(p.ctx, all[2].CourseID)
	if err != nil || *red.Owner != p.pupil || red.Tee != "red" || len(red.Holes) != 3 {
		t.Errorf("%+v, %v", red, err)
	}
	for who, want := range map[golf.PlayerID]int{p.stranger: 1, p.coach: 0} {
		if all, err := p.OwnPictures(p.ctx, who); err != nil || len(all) != want {
			t.Errorf("%d: %+v, %v", who, all, err)
		}
	}
	p.must(p.RemoveCourse(p.ctx, p.pupil, red.ID))
	if all, err := p.OwnPictures(p.ctx, p.pupil); err != nil || len(all) != 2 {
		t.Errorf("drawings of a removed course: %+v, %v", all, err)
	}
	p.must(p.DeletePlayer(p.ctx, p.pupil))
	if kept, err := p.PictureVersions(p.ctx, there, 2, 9); err != nil || len(kept) != 2 || kept[0].DrawnBy != nil {
		t.Errorf("the drawings went with the account: %+v, %v", kept, err)
	}
}

// Sessions and plans are added all or none.
func TestRangesAndPlansAreAdded(t *testing.T) {
	p := newPair(t)
	day := time.Date(2026, 5, 2, 0, 0, 0, 0, time.UTC)
	p.must(p.AddRanges(p.ctx, p.pupil, []db.RangeSession{{Club: "driver", Day: day, Balls: "1 2"}, {Club: "hybrid", Day: day, Balls: "3 4"}}))
	if all, err := p.RangeSessions(p.ctx, p.pupil, p.pupil, 0); err != nil || len(all) != 2 || all[0].Club != "driver" {
		t.Errorf("%+v, %v", all, err)
	}
	plan := db.TakenPlan{Day: day, FirstDay: day, LastDay: day, Rounds: 6, Target: 79, Minutes: 180, Engine: "7", Figures: []byte(`{"version": 1}`)}
	other := plan
	other.Minutes = 120
	p.must(p.AddPlans(p.ctx, p.pupil, []db.TakenPlan{plan, other}))
	if all, err := p.TakenPlans(p.ctx, p.pupil, p.pupil); err != nil || len(all) != 2 || string(all[0].Figures) != `{"version": 1}` {
		t.Errorf("%+v, %v", all, err)
	}
	p.must(p.DeletePlayer(p.ctx, p.pupil))
	if all, err := p.RangeSessions(p.ctx, p.pupil, p.pupil, 0); err != nil || len(all) != 0 {
		t.Errorf("sessions outlive the account: %+v, %v", all, err)
	}
}
