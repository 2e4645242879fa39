package compare

import (
	"encoding/binary"
	"errors"
	"fmt"
	"math"
	"sync"

	"strokeledger/analysis/account"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
)

// Summary is what a round comes to when many players are looked over at once:
// little enough to be kept with the round.
type Summary struct {
	Entered  int     // holes of the round, 0 to 18
	Holes    float64 // of these with their strokes known
	Score    float64 // over the holes entered, in whole strokes; a picked-up hole counts those still to come, rounded
	Target   float64 // of those holes
	PickedUp bool    // one of them was picked up
	Doubles  int     // of a known kind
	Compound int     // of these, in which one mistake led to the next
	profile  Profile
	bands    []float64 // lost to the golfer of the player's target, by band of the standard boundary
}

// Summary sums up a legal round of a player with a target, which may be another than
// the round's; one outside 68 to 110 is an error.
func (l Ladder) Summary(r golf.Played, target float64, boundary golf.Distance) (Summary, error) {
	fixed, err := expect.Level(r.Target)
	if err != nil {
		return Summary{}, err
	}
	bands, err := lostInBands(r.Round, target)
	if err != nil {
		return Summary{}, err
	}
	a := account.Of(r.Round, account.Terms{Lens: fixed, Fixed: fixed, Boundary: boundary})
	return Summary{Entered: len(r.Round.Holes), Holes: float64(a.Counts.Holes), Score: float64(a.Whole()), Target: golf.TargetOver(r.Round.Card(), r.Target, r.Par18), PickedUp: len(a.PickedUp()) > 0,
		Doubles: a.Counts.Doubles - a.Counts.Unknown, Compound: a.Counts.Compound, profile: l.Profile(r.Round, boundary), bands: bands}, nil
}

// Lost returns what the round lost in a part of the game to the golfer of a
// level from 68 to 110.
func (l Ladder) Lost(s Summary, part golf.Category, level float64) float64 {
	lost := s.profile.lost[part]
	if len(lost) == 0 {
		return 0
	}
	for i := range l.rungs[1:] {
		if low, high := l.rungs[i].Level(), l.rungs[i+1].Level(); level <= high {
			w := (level - low) / (high - low)
			return lost[i] + w*(lost[i+1]-lost[i])
		}
	}
	return lost[len(lost)-1]
}

// summaryFormat counts the ways in which summaries have been worked out and
// written: raise it when either changes.
const summaryFormat = 3

// levelsVersion names the stored levels, since every loss in a summary comes from
// them.
var levelsVersion = sync.OnceValue(expect.Version)

// SummaryVersion names what a summary was worked out with. One that was made
// under another name is out of date.
func SummaryVersion(target float64, boundary golf.Distance) string {
	return fmt.Sprintf("%s %g %g", EngineVersion(), boundary.Yards(), target)
}

// EngineVersion names the engine that worked something out.
func EngineVersion() string { return fmt.Sprintf("%d %s", summaryFormat, levelsVersion()) }

// storedSummary is the fixed part of a written summary; the losses follow, part
// by part and rung by rung, and then those by band.
type storedSummary struct {
	Entered, Holes, Score, Target, PickedUp, Doubles, Compound float32
}

// Encode writes the summary in little-endian float32.
func (s Summary) Encode() []byte {
	out, err := binary.Append(nil, binary.LittleEndian, storedSummary{float32(s.Entered), float32(s.Holes), float32(s.Score), float32(s.Target), tally(s.PickedUp), float32(s.Doubles), float32(s.Compound)})
	if err != nil {
		panic("compare: " + err.Error()) // it has fixed size, so it cannot be
	}
	for _, c := range golf.Categories {
		for _, x := range s.profile.lost[c] {
			out = binary.LittleEndian.AppendUint32(out, math.Float32bits(float32(x)))
		}
	}
	for i := range standardBands {
		out = binary.LittleEndian.AppendUint32(out, math.Float32bits(float32(s.Band(i))))
	}
	return out
}

// tally is 1 when something holds and 0 otherwise.
func tally(holds bool) float32 {
	if holds {
		return 1
	}
	return 0
}

// errSummary says that a summary was made with other levels, or is not one.
var errSummary = errors.New("a summary of the wrong size")

// Decode reads a summary that Encode wrote with the same version.
func (l Ladder) Decode(data []byte) (s Summary, err error) {
	const head = 7
	if len(data) != 4*(head+len(golf.Categories)*len(l.rungs)+len(standardBands)) {
		return s, errSummary
	}
	at := func(i int) float64 { return float64(math.Float32frombits(binary.LittleEndian.Uint32(data[4*i:]))) }
	s = Summary{Entered: int(at(0)), Holes: at(1), Score: at(2), Target: at(3), PickedUp: at(4) > 0, Doubles: int(at(5)), Compound: int(at(6))}
	room := make([]float64, len(golf.Categories)*len(l.rungs)+len(standardBands))
	for i := range room {
		room[i] = at(head + i)
	}
	for i, c := range golf.Categories {
		s.profile.lost[c] = room[i*len(l.rungs) : (i+1)*len(l.rungs)]
	}
	s.bands = room[len(golf.Categories)*len(l.rungs):]
	return s, nil
}
