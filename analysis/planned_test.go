package analysis

import (
	"testing"

	"strokeledger/analysis/aim"
	"strokeledger/analysis/golf"
)

// teeShots are clubs with what they cost straight and at their best, the cheapest first.
func teeShots(names ...string) []aim.TeeShot {
	var all []aim.TeeShot
	for i, name := range names {
		cost := 4.3 + .1*float64(i)
		all = append(all, aim.TeeShot{Club: aim.Club{Name: name}, Best: aim.Aim{Cost: cost}, Straight: aim.Aim{Cost: cost + .05}})
	}
	return all
}

// A club is found by its name however it is written, or else by its kind, and never by
// where the ball went. How clubs are written: common practice.
func TestPlannedAndPlayed(t *testing.T) {
	plan := HolePlan{Advice: aim.Advice{Clubs: teeShots("fairway wood", "driver", "hybrid", "5-iron"), Driver: 1}}
	for _, c := range []struct {
		club, with string
		stands     Standing
	}{
		{"", "", ClubUnknown}, {"fairway wood", "fairway wood", ClubKept}, {"Fairway Wood", "fairway wood", ClubKept}, {"3w", "fairway wood", ClubKept}, {"5 wood", "fairway wood", ClubKept},
		{"d", "driver", ClubLeft}, {"Driver", "driver", ClubLeft}, {"1w", "driver", ClubLeft}, {"4h", "hybrid", ClubLeft}, {"5i", "5-iron", ClubLeft}, {"5 iron", "5-iron", ClubLeft},
		{"6i", "", ClubUnpriced}, {"3i", "", ClubUnpriced}, {"-", "", ClubUnknown}, {"putter", "", ClubUnpriced},
	} {
		for _, side := range []golf.Side{0, golf.Left, golf.Right} {
			hole := golf.Hole{Number: 1, Par: 4, Shots: []golf.Shot{{Lie: golf.Tee, Club: c.club, Miss: golf.Miss{Side: side}, Penalty: int(side)}, {Lie: golf.Fairway, Club: "driver"}}}
			got := PlannedAndPlayed(plan, hole)
			with := ""
			if got.With != nil {
				with = got.With.Club.Name
			}
			if got.Stands() != c.stands || with != c.with || got.Miss.Side != side {
				t.Errorf("%q: %d with %q, want %d with %q", c.club, got.Stands(), with, c.stands, c.with)
			}
		}
	}
	long := PlannedAndPlayed(HolePlan{Advice: aim.Advice{Clubs: teeShots("driver", "long iron", "3w", "fairway wood")}}, golf.Hole{Shots: []golf.Shot{{Club: "2i"}}})
	if long.With == nil || long.With.Club.Name != "long iron" {
		t.Errorf("%+v", long)
	}
	if named := PlannedAndPlayed(HolePlan{Advice: aim.Advice{Clubs: teeShots("fairway wood", "3w")}}, golf.Hole{Shots: []golf.Shot{{Club: "3 wood"}}}); named.Stands() != ClubLeft {
		t.Error("a club that has a name of its own is taken for its kind")
	}
	if short := PlannedAndPlayed(HolePlan{Advice: aim.Advice{Approach: &aim.Approach{}}}, golf.Hole{Shots: []golf.Shot{{Club: "7i"}}}); short.Stands() != NoClubPlanned || short.Club != "7i" {
		t.Errorf("%+v", short)
	}
	if lifted := PlannedAndPlayed(plan, golf.Hole{PickedUp: true, Shots: []golf.Shot{{Club: "driver"}}}); lifted.Stands() != ClubUnknown {
		t.Error("a ball that was lifted from the tee counts as played")
	}
}
