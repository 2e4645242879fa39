package analysis

import (
	"crypto/sha256"
	"encoding/binary"
	"math"
	"sync"
)

// mostRows is how many rows of rosters are kept, those of several coaches.
const mostRows = 4096

// rosterRows keeps rows of rosters by what they were worked out of: most of a row is
// the intervals of its levels, which draw the rounds anew a thousand times. A row is
// good as long as the summaries that it stands on are.
type rosterRows struct {
	sync.Mutex
	known  map[rowKey]RosterRow
	worked int // rows that had to be worked out
}

type rowKey [sha256.Size]byte

// keyOf names all that a row follows from.
func keyOf(p Player) (key rowKey) {
	h := sha256.New()
	number := func(x uint64) {
		var b [8]byte
		binary.LittleEndian.PutUint64(b[:], x)
		h.Write(b[:])
	}
	number(math.Float64bits(p.Target))
	for _, r := range p.Rounds {
		number(uint64(r.Day.Time().Unix()))
		h.Write(r.Digest[:])
	}
	h.Sum(key[:0])
	return key
}

// find returns a row that is kept.
func (k *rosterRows) find(key rowKey) (RosterRow, bool) {
	k.Lock()
	defer k.Unlock()
	row, ok := k.known[key]
	return row, ok
}

// keep keeps a row; when there are too many it forgets the others.
func (k *rosterRows) keep(key rowKey, row RosterRow) {
	k.Lock()
	defer k.Unlock()
	if k.known == nil || len(k.known) >= mostRows {
		k.known = map[rowKey]RosterRow{}
	}
	k.known[key] = row
	k.worked++
}
