package figures

import (
	"cmp"
	"fmt"
	"strings"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/words"
)

// said is what is to be known of a shot beyond what it lost, tag being how it is
// marked. It is empty for most.
func said(in ShotInput, tag string) string {
	var all []string
	for _, text := range []string{countedWith(in.Hole, in.Worth, in.Number-1, tag), shortSideSaid(in)} {
		if text != "" {
			all = append(all, text)
		}
	}
	return strings.Join(all, "; ")
}

// shortSideSaid says by what a short side that was not measured is judged, from where
// it was played.
func shortSideSaid(in ShotInput) string {
	shot := in.Hole.Shots[in.Number-1]
	if !shot.ByRunOut() {
		return ""
	}
	by := "the model’s run-out"
	switch {
	case shot.OwnRunKnown && in.Of == "":
		by = "your run-out book"
	case shot.OwnRunKnown:
		by = words.Whose(in.Of) + " run-out book"
	}
	if shot.Shortfall() == 0 {
		return fmt.Sprintf("short side by %s: the ball stops where it lands, so the green is long enough", by)
	}
	from := map[golf.Lie]string{golf.Fairway: "from the fairway", golf.Rough: "from the rough", golf.Bunker: "from sand"}[shot.Lie]
	return fmt.Sprintf("short side by %s: %s %s, half of it green", by, words.Distance(golf.Tee, shot.Run(), in.Units), cmp.Or(from, "from there"))
}

// countedWith says that the putts of the green of shot k, from 0, count together,
// where tag marks one of them, or that a way out of trouble cost nothing of its own.
func countedWith(played golf.Hole, worth account.Hole, k int, tag string) string {
	if putts := puttsOf(played, len(worth.Shots), k); tag != "" && len(putts) > 1 {
		lost := make([]account.Shot, len(putts))
		for i, at := range putts {
			lost[i] = worth.Shots[at]
		}
		return fmt.Sprintf("the %s of this green count together: %s", words.SpelledPlural(len(putts), "putt", "putts"), words.Signed(WorkingOf(lost...).Lost(), 2))
	}
	if playedOut(played, worth, k) {
		return "the trouble is charged to the shot before"
	}
	return ""
}

// puttsOf are the strokes in a row on the green that shot k is one of; none for a
// shot off the green.
func puttsOf(played golf.Hole, struck, k int) []int {
	if played.Shots[k].Lie != golf.Green {
		return nil
	}
	first, last := k, k
	for first > 0 && played.Shots[first-1].Lie == golf.Green {
		first--
	}
	for last+1 < struck && played.Shots[last+1].Lie == golf.Green {
		last++
	}
	var all []int
	for i := first; i <= last; i++ {
		all = append(all, i)
	}
	return all
}

// atNoCost is how little a shot out of recovery loses or wins back, in strokes,
// that is said to cost nothing of its own (our choice).
const atNoCost = .25

// playedOut reports whether shot k came out of recovery onto fairway or rough at no
// cost, after an error.
func playedOut(played golf.Hole, worth account.Hole, k int) bool {
	if k == 0 || k+1 >= len(played.Shots) || played.Shots[k].Lie != golf.Recovery || !worth.Shots[k-1].Error {
		return false
	}
	out := played.Shots[k+1].Lie
	lost := worth.Shots[k].Lost
	return (out == golf.Fairway || out == golf.Rough) && lost > -atNoCost && lost < atNoCost
}
