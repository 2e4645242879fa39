package analysis

import (
	"slices"
	"testing"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/practice"
)

// playedAt are rounds of a golfer of given levels on the reference course.
func playedAt(t *testing.T, levels golfer.Levels, rounds int, seed uint64) []golf.Played {
	t.Helper()
	of := golfer.Committed()
	p, err := golfer.NewPlayer(&of, levels, expect.ReferenceCourse(), golf.StandardBoundary)
	if err != nil {
		t.Fatal(err)
	}
	all := make([]golf.Played, rounds)
	for i := range all {
		all[i] = golf.Played{ID: golf.RoundID(i + 1), Target: 79, Par18: 72}
		all[i].Round.Holes, all[i].Round.Date = p.Play(seed, uint64(i)), golf.Date{Year: 2026, Month: 5, Day: 1}.AddDays(i)
	}
	return all
}

// pupilsOfOne are thirty players who play every part alike, three who putt far worse
// than the rest of their game, and one with too few rounds.
func pupilsOfOne(t *testing.T) []Player {
	t.Helper()
	var all []Player
	for i := range 30 {
		all = append(all, Player{79, summarized(t, playedAt(t, golfer.Even(80+float64(i%16)), 10, uint64(i)))})
	}
	for i := range 3 {
		all = append(all, Player{79, summarized(t, playedAt(t, golfer.Levels{Tee: 84, Approach: 84, ShortGame: 84, Putting: 102}, 10, uint64(100+i)))})
	}
	return append(all, Player{79, summarized(t, playedAt(t, golfer.Even(95), 4, 7))})
}

// What many lose alike is usual at their scores, and nobody is named for it: those
// with a weak part are named there, others hardly.
func TestSharedIsWhatIsUnusual(t *testing.T) {
	shared, err := engine.Shared(pupilsOfOne(t), SquadRounds)
	if err != nil {
		t.Fatal(err)
	}
	if shared.Told != 33 {
		t.Errorf("%d are told of", shared.Told)
	}
	if len(shared.Rows) == 0 || shared.Rows[0].Category != golf.Putting || !shared.Rows[0].Whole() {
		t.Fatalf("first comes %+v", shared.Rows)
	}
	for _, r := range shared.Rows {
		weak := 0
		for i, u := range r.Who {
			if u.Player >= 30 {
				weak++
			}
			if !u.Named() || i > 0 && u.Excess() > r.Who[i-1].Excess() {
				t.Errorf("%s: %+v is no. %d", r.Row, u, i)
			}
		}
		if even := len(r.Who) - weak; even > 5 {
			t.Errorf("%s names %d of 30 who play everything alike", r.Row, even)
		}
		if r.Row == shared.Rows[0].Row && weak != 3 {
			t.Errorf("%d of three are named in all of putting", weak)
		}
	}
	if none, err := engine.Shared(nil, 10); err != nil || none.Told+len(none.Rows) != 0 {
		t.Errorf("of nobody: %+v, %v", none, err)
	}
	if _, err := engine.Shared([]Player{{79, []Summarized{{Summary: []byte{1}}}}}, 0); err == nil {
		t.Error("a summary of one byte was read")
	}
}

// A lesson is about what its players lose beyond the usual, or what it is asked for,
// with a mark for everybody whose game is known.
func TestLessonHasDrillsAndMarks(t *testing.T) {
	all := pupilsOfOne(t)
	lesson, err := engine.Lesson(all[29:], SquadRounds, "")
	if err != nil {
		t.Fatal(err)
	}
	if len(lesson) != LessonDrills || lesson[0].Category != golf.Putting || !lesson[0].Named || lesson[0].Drill.Part != golf.Putting {
		t.Fatalf("%+v", lesson)
	}
	for _, l := range lesson {
		if len(l.Who) != 4 || len(l.Marks) != 4 || l.Whole() {
			t.Errorf("%s: %d players, %d marks", l.Row, len(l.Who), len(l.Marks))
		}
		if m := l.Marks[0]; m.Pass == 0 || m.Tries < practice.MinTries {
			t.Errorf("%s: %+v", l.Row, m)
		}
	}
	for _, name := range []string{"short game", "approach 50-100"} {
		asked, err := engine.Lesson(all[:6], SquadRounds, name)
		if err != nil || len(asked) != 1 || asked[0].Row.String() != name || len(asked[0].Who) != 6 {
			t.Errorf("%s: %+v, %v", name, asked, err)
		}
	}
	even := slices.DeleteFunc(slices.Clone(all[:30]), func(p Player) bool {
		one, err := engine.Shared([]Player{p}, SquadRounds)
		return err != nil || len(one.Rows) > 0
	})
	if l, err := engine.Lesson(even, SquadRounds, ""); err != nil || len(l) != 1 || l[0].Named {
		t.Errorf("of %d with nothing unusual: %+v, %v", len(even), l, err)
	}
	if l, err := engine.Lesson(all[33:], SquadRounds, ""); err != nil || len(l) != 0 {
		t.Errorf("of too few rounds: %+v, %v", l, err)
	}
}
