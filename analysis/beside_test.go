package analysis

import (
	"math"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/practice"
)

// The rows of a player add up part by part, in what is lost, what is usual and what
// others lose; a weak part stands out and a player who plays all parts alike does not.
func TestBesideGolfersOfTheSameScore(t *testing.T) {
	weak, err := engine.Beside(Player{79, summarized(t, playedAt(t, golfer.Levels{Tee: 84, Approach: 84, ShortGame: 84, Putting: 102}, 14, 3))})
	if err != nil || weak.Thin.Any() || weak.Rounds != PeerRounds || weak.First != (golf.Date{Year: 2026, Month: 5, Day: 5}) {
		t.Fatalf("%d rounds from %s: %v, %v", weak.Rounds, weak.First, weak.Thin, err)
	}
	peers := PeersOf(weak.Level, peersAbout(t, weak.Level, 5))
	var part BesideRow
	sums := [3]float64{}
	for i, r := range append(weak.Rows, BesideRow{band: -1}) {
		if r.band < 0 {
			other, _ := peers.Lost(part)
			for k, want := range []float64{part.Lost, part.Usual, other} {
				if i > 0 && math.Abs(sums[k]-want) > 1e-4 {
					t.Errorf("%s: the bands come to %g in column %d, the part to %g", part.Row, sums[k], k, want)
				}
			}
			part, sums = r, [3]float64{}
			continue
		}
		other, _ := peers.Lost(r)
		sums[0], sums[1], sums[2] = sums[0]+r.Lost, sums[1]+r.Usual, sums[2]+other
	}
	for _, r := range weak.Rows {
		if r.Category == golf.Putting && r.band < 0 && (r.Sure != practice.Clear || !r.More) {
			t.Errorf("putting is %v, more %v", r.Sure, r.More)
		}
	}
	even, err := engine.Beside(Player{79, summarized(t, playedAt(t, golfer.Even(86), 10, 5))})
	if err != nil {
		t.Fatal(err)
	}
	said := 0
	for _, r := range even.Rows {
		if r.Sure == practice.Clear {
			said++
		}
	}
	if said > 4 {
		t.Errorf("%d of %d rows of an even golfer are clear", said, len(even.Rows))
	}
	few, err := engine.Beside(Player{79, summarized(t, playedAt(t, golfer.Even(86), 4, 5))})
	if err != nil || !few.Thin.Any() || len(few.Rows) != 0 {
		t.Errorf("of four rounds: %+v, %v", few, err)
	}
}

// peersAbout are those of players about a level, as they are kept and read.
func peersAbout(t *testing.T, level float64, players int) []Peer {
	t.Helper()
	from, below := PeersAt(level)
	var all []Peer
	for i := range players {
		s, ok, err := engine.Peer(Player{79, summarized(t, playedAt(t, golfer.Even(level), 10, uint64(40+i)))})
		if err != nil || !ok {
			t.Fatalf("%v %v", ok, err)
		}
		kept, err := DecodePeer((from+below)/2, s.Encode())
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, kept)
	}
	return all
}

// Of fewer than five others nothing is told, nor of those of other levels.
func TestPeersAreFiveOrNone(t *testing.T) {
	all := peersAbout(t, 85, 5)
	if p := PeersOf(85, all); p.Count != 5 || p.From != 80 || p.Below != 86 {
		t.Errorf("%+v", p)
	}
	far := append(all[:4:4], Peer{Level: 86, Beyond: all[4].Beyond})
	p := PeersOf(85, far)
	if _, ok := p.Lost(BesideRow{}); ok || p.Count != 0 {
		t.Errorf("of four others: %+v", p)
	}
	if _, ok, err := engine.Peer(Player{79, summarized(t, playedAt(t, golfer.Even(86), 9, 5))}); ok || err != nil {
		t.Errorf("nine rounds have a peer: %v", err)
	}
	if _, err := DecodePeer(80, []byte{1}); err != ErrPeer {
		t.Errorf("%v", err)
	}
}
