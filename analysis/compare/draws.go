package compare

import (
	"math/rand/v2"
	"sync"

	"strokeledger/analysis/stat"
)

// resamples is how often rounds are drawn anew for an interval.
const resamples = 1000

// keptDraws is up to how many rounds their draws are kept: those of the usual
// spans.
const keptDraws = 20

// draws keeps the draws of usual numbers of rounds, since they are the same for
// the same seed.
type draws struct{ kept sync.Map } // stat.Draws by drawsKey

type drawsKey struct {
	rounds int
	seed   uint64
}

// of are the draws of a seed from so many rounds.
func (d *draws) of(rounds int, seed uint64) stat.Draws {
	key := drawsKey{rounds, seed}
	if made, ok := d.kept.Load(key); ok {
		return made.(stat.Draws)
	}
	made := stat.NewDraws(rand.New(rand.NewPCG(seed, uint64(rounds))), rounds, resamples)
	if rounds <= keptDraws {
		d.kept.Store(key, made)
	}
	return made
}

// resampled are rounds of a span drawn anew, for every figure of it alike.
type resampled struct {
	stat.Draws
	reach float64 // of an interval, in standard errors
}

// over are the draws of a span of rounds; none of fewer than two, which have no
// interval.
func (d *draws) over(rounds int, seed uint64) resampled {
	if rounds < minForInterval {
		return resampled{}
	}
	return resampled{d.of(rounds, seed), stat.TQuantile(.5+confidence/2, float64(rounds-1))}
}
