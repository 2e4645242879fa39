package analysis

import (
	"crypto/sha256"
	"slices"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
)

// Summarized is a round with what is kept of it, so that many players are
// looked over without reading a shot.
type Summarized struct {
	ID      golf.RoundID
	Day     golf.Date
	Summary []byte // as Summary makes it, for the player's target and boundary
	Digest  Digest // of the summary
}

// Digest is the SHA-256 of a summary: two with one digest are the same.
type Digest [sha256.Size]byte

// DigestOf is the digest of a summary.
func DigestOf(summary []byte) Digest { return sha256.Sum256(summary) }

// Player is one of many who are looked over.
type Player struct {
	Target float64      // the player's, a score of 18 holes
	Rounds []Summarized // the latest first
}

// SummaryVersion names what a summary is worked out with. One that was made
// under another name is out of date.
func SummaryVersion(target float64, boundary golf.Distance) string {
	return compare.SummaryVersion(target, boundary)
}

// Summary answers "what does this round of a player with a target come to?" in little
// enough to be kept with it. A target outside golf.MinTarget to golf.MaxTarget is an
// error.
func (e *Engine) Summary(r golf.Played, target float64, boundary golf.Distance) ([]byte, error) {
	s, err := e.ladder.Summary(r, target, boundary)
	if err != nil {
		return nil, err
	}
	return s.Encode(), nil
}

// decoded reads what is kept of rounds, and leaves out those of which no hole
// was entered. days are those of the rounds that it read.
func (e *Engine) decoded(rounds []Summarized) (all []compare.Summary, days []golf.Date, err error) {
	for _, r := range rounds {
		s, err := e.ladder.Decode(r.Summary)
		if err != nil {
			return nil, nil, err
		}
		if s.Entered == 0 {
			continue
		}
		all, days = append(all, s), append(days, r.Day)
	}
	return slices.Clip(all), days, nil
}
