package analysis

import (
	"encoding/binary"
	"errors"
	"math"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/practice"
	"strokeledger/analysis/stat"
)

// A player stands beside others with PeerRounds rounds or more, the latest of which
// count, at least PeersLeast of them so that nobody can be told apart, whose scores lie
// within the same PeersWide levels. The bounds are fixed, and not taken about each
// player, so that moving a little does not bring one other player in or out.
const (
	PeerRounds = SquadRounds
	PeersLeast = 5
	PeersWide  = 6
)

// Peer is what a player's latest rounds come to when other players are set beside
// them: nothing of it names a round or a shot.
type Peer struct {
	Level  float64   // the score that they come to, for 18 holes
	Beyond []float64 // strokes for 18 holes more than the golfer of the model loses who has that score, by the list of practice.Bands
}

// Peer answers "what does this player do otherwise than a golfer of the same
// score?". ok is false with fewer than PeerRounds rounds.
func (e *Engine) Peer(p Player) (s Peer, ok bool, err error) {
	g, err := e.gameOf(p, PeerRounds)
	if err != nil || g == nil || g.Rounds < PeerRounds {
		return s, false, err
	}
	s = Peer{Level: g.Level, Beyond: make([]float64, len(practice.Bands()))}
	for i := range s.Beyond {
		s.Beyond[i] = g.BandLost(i).Mean - practice.Committed().BandUsual(g, i).Usual
	}
	return s, true, nil
}

// PeersAt are the levels, from and below, within which a player of a level has peers.
func PeersAt(level float64) (from, below float64) {
	steps := math.Floor((level - golf.MinTarget) / PeersWide)
	from = golf.MinTarget + PeersWide*steps
	return from, from + PeersWide
}

// Encode writes what is beyond the usual in little-endian float32.
func (s Peer) Encode() []byte {
	var out []byte
	for _, x := range s.Beyond {
		out = binary.LittleEndian.AppendUint32(out, math.Float32bits(float32(x)))
	}
	return out
}

// ErrPeer says that a peer was made by another engine.
var ErrPeer = errors.New("a peer of the wrong size")

// DecodePeer reads what Encode wrote.
func DecodePeer(level float64, data []byte) (Peer, error) {
	s := Peer{Level: level}
	if len(data) != 4*len(practice.Bands()) {
		return s, ErrPeer
	}
	for i := range practice.Bands() {
		s.Beyond = append(s.Beyond, float64(math.Float32frombits(binary.LittleEndian.Uint32(data[4*i:]))))
	}
	return s, nil
}

// Beside is a player beside golfers of the same score.
type Beside struct {
	Rounds int
	First  golf.Date // of the rounds; zero without any
	Level  float64   // the score that they come to
	Thin   golf.Thin // why nothing is said; no note when there are rounds enough
	Rows   []BesideRow
}

// BesideRow is a part of the game or a band.
type BesideRow struct {
	compare.Row
	Lost     float64       // strokes for 18 holes, to the golfer of the target
	Interval stat.Interval // 95 %
	Usual    float64       // what the golfer of the model loses who has the same score
	Sure     practice.Certainty
	More     bool // more is lost than is usual; otherwise less
	band     int
}

// Beside answers "is that much to lose for somebody who scores as I do?" of the latest
// rounds. A target outside golf.MinTarget to golf.MaxTarget is an error where there are
// rounds enough.
func (e *Engine) Beside(p Player) (Beside, error) {
	g, err := e.gameOf(p, PeerRounds)
	if err != nil {
		return Beside{}, err
	}
	var b Beside
	rounds, days, err := e.decoded(p.Rounds)
	for i, r := range rounds {
		if r.Holes > 0 && b.Rounds < PeerRounds {
			b.Rounds, b.First = b.Rounds+1, days[i]
		}
	}
	b.Thin = golf.Enough(golf.ThinPlan, b.Rounds, practice.MinRounds)
	if err != nil || g == nil {
		return b, err
	}
	b.Level = g.Level
	for _, row := range lessonRows() {
		b.Rows = append(b.Rows, besideRow(row, g))
	}
	return b, nil
}

// besideRow fills a row in. How sure it is is asked of what is believed after the
// rounds, in which few strokes count for little.
func besideRow(row SharedRow, g *practice.Game) BesideRow {
	believed, lost := row.of(g), g.PartLost(row.Category)
	if row.band >= 0 {
		lost = g.BandLost(row.band)
	}
	b := BesideRow{Row: row.Row, Lost: lost.Mean, Interval: lost.Interval(), Usual: believed.Usual, More: lost.Mean > believed.Usual, band: row.band}
	if b.Sure = believed.Certainty(); !b.More {
		b.Sure = believed.Under()
	}
	return b
}

// Peers are other players of about the same score, all together.
type Peers struct {
	From, Below float64 // their levels
	Count       int     // how many they are; 0 for fewer than PeersLeast
	beyond      []float64
}

// PeersOf puts together what other players within the levels of a player lose beyond
// the usual. Of fewer than PeersLeast it keeps nothing.
func PeersOf(level float64, others []Peer) Peers {
	p := Peers{beyond: make([]float64, len(practice.Bands()))}
	p.From, p.Below = PeersAt(level)
	for _, o := range others {
		if o.Level >= p.From && o.Level < p.Below {
			p.Count++
			for i, x := range o.Beyond {
				p.beyond[i] += x
			}
		}
	}
	if p.Count < PeersLeast {
		return Peers{From: p.From, Below: p.Below}
	}
	for i := range p.beyond {
		p.beyond[i] /= float64(p.Count)
	}
	return p
}

// Lost is what the others lose in a row on average, where the golfer of the model
// loses what is usual; ok is false of too few others.
func (p Peers) Lost(r BesideRow) (lost float64, ok bool) {
	if p.Count == 0 {
		return 0, false
	}
	if r.band >= 0 {
		return r.Usual + p.beyond[r.band], true
	}
	lost = r.Usual
	for i, b := range practice.Bands() {
		if b.Category == r.Category {
			lost += p.beyond[i]
		}
	}
	return lost, true
}
