package expect

import (
	"crypto/sha256"
	_ "embed"
	"encoding/binary"
	"encoding/hex"
	"fmt"
	"math"
)

// Stored is one solved level as the calibration command writes it.
type Stored struct {
	T     float64    // skill coordinate
	Table Table      // the generative golfer's own expected strokes
	Short ShortTable // what missing green adds
}

//go:embed levels.bin
var levelsFile []byte

// Committed returns the levels in the repository, in ascending order of skill
// coordinate, as the calibration command last wrote them.
func Committed() ([]Stored, error) { return Decode(levelsFile) }

// Version names the levels in the repository: another after every calibration,
// so that what was worked out with them is known to be out of date.
func Version() string {
	sum := sha256.Sum256(levelsFile)
	return hex.EncodeToString(sum[:6])
}

// Encode writes levels as the level file: little-endian float64 in the order
// of the fields, one level after the other.
func Encode(levels []Stored) []byte {
	out, err := binary.Append(nil, binary.LittleEndian, levels)
	if err != nil {
		panic("expect: " + err.Error()) // a Stored has fixed size, so it cannot be
	}
	return out
}

// Decode reads a level file. It refuses one of the wrong size, with a number
// that is not finite, or with levels out of order.
func Decode(data []byte) ([]Stored, error) {
	size := binary.Size(Stored{})
	if len(data) == 0 || len(data)%size != 0 {
		return nil, fmt.Errorf("level file of %d bytes, want a multiple of %d", len(data), size)
	}
	levels := make([]Stored, len(data)/size)
	if _, err := binary.Decode(data, binary.LittleEndian, levels); err != nil {
		return nil, err
	}
	for i := 0; i+8 <= len(data); i += 8 {
		if x := math.Float64frombits(binary.LittleEndian.Uint64(data[i:])); math.IsNaN(x) || math.IsInf(x, 0) {
			return nil, fmt.Errorf("level file: number %d is not finite", i/8)
		}
	}
	for i := range levels[1:] {
		if levels[i+1].T <= levels[i].T {
			return nil, fmt.Errorf("level file: levels out of order at %d", i+1)
		}
	}
	return levels, nil
}
