package practice

import (
	_ "embed"
	"encoding/binary"
	"errors"
	"fmt"
	"math"
	"sync"

	"strokeledger/analysis/account"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/parallel"
)

// The levels of the table of the family: every second one from 68 to 110.
const (
	familyStep   = 2
	familyLevels = (golf.MaxTarget-golf.MinTarget)/familyStep + 1
)

// bands are those of the table, whatever boundary a player has chosen.
var bands = account.Bands(golf.StandardBoundary)

// rows of the table: the four parts of the game at the number of their category
// (row 0 is everything), and after them the bands.
const bandRow = int(golf.Putting) + 1

var rowOf = func() map[account.Band]int {
	rows := map[account.Band]int{}
	for i, b := range bands {
		rows[b] = bandRow + i
	}
	return rows
}()

func rowCount() int { return bandRow + len(bands) }

// Family is what golfers of every level lose, on average over 18 holes, by part of
// the game and band: found by playing rounds on the reference course.
type Family struct {
	lost   [familyLevels][familyLevels][]float64 // by the golfer's level, that of who judges, and row
	spread [familyLevels][]float64               // of one round judged by the golfer's own level, by row
	chains [familyLevels]float64                 // what errors after the first of a chain lose a round
}

// familyRounds is how many rounds are played at each level.
const familyRounds = 6000

// BuildFamily plays the rounds of a table on all cores. The same seed gives the
// same table.
func BuildFamily(of golfer.Parameters, seed uint64) (*Family, error) {
	all := make([]int, familyLevels)
	for i := range all {
		all[i] = i
	}
	f := &Family{}
	return f, f.playLevels(of, seed, all...)
}

// playLevels plays the rounds of some levels of the table.
func (f *Family) playLevels(of golfer.Parameters, seed uint64, levels ...int) error {
	var judges [familyLevels]*expect.Baseline
	var players [familyLevels]*golfer.Player
	for i := range familyLevels {
		var err error
		if judges[i], err = expect.Level(levelOf(i)); err != nil {
			return err
		}
		if players[i], err = golfer.NewPlayer(&of, golfer.Even(levelOf(i)), expect.ReferenceCourse(), golf.StandardBoundary); err != nil {
			return err
		}
	}
	parallel.Do(len(levels), func(n int) { f.play(levels[n], players[levels[n]], &judges, seed) })
	return nil
}

func levelOf(i int) float64 { return float64(golf.MinTarget + familyStep*i) }

// play fills in what the golfer of one level loses.
func (f *Family) play(level int, player *golfer.Player, judges *[familyLevels]*expect.Baseline, seed uint64) {
	for k := range f.lost[level] {
		f.lost[level][k] = make([]float64, rowCount())
	}
	squares, round := make([]float64, rowCount()), make([]float64, rowCount())
	terms := account.Terms{Lens: judges[level], Fixed: judges[level], Boundary: golf.StandardBoundary}
	for n := range uint64(familyRounds) {
		r := golf.Round{Holes: player.Play(seed, n)}
		for k, judge := range judges {
			clear(round)
			for _, h := range r.Holes {
				charge(round, h, judge)
			}
			for row, x := range round {
				f.lost[level][k][row] += x / familyRounds
				if k == level {
					squares[row] += x * x / familyRounds
				}
			}
		}
		a := account.Of(r, terms)
		f.chains[level] += chains(&a) / familyRounds
	}
	f.spread[level] = make([]float64, rowCount())
	for row, x := range squares {
		mean := f.lost[level][level][row]
		f.spread[level][row] = math.Sqrt(max(x-mean*mean, 0))
	}
}

// charge adds what the shots of a hole lost, by row.
func charge(to []float64, h golf.Hole, judge *expect.Baseline) {
	after := 0.0
	for i := len(h.Shots) - 1; i >= 0; i-- {
		s := h.Shots[i]
		before := judge.Shot(s)
		lost := 1 + float64(s.Penalty) + after - before
		b := account.BandOf(s.Lie, s.Distance, h.Par, golf.StandardBoundary)
		for _, row := range [...]int{0, int(b.Category), rowOf[b]} {
			to[row] += lost
		}
		after = before
	}
}

// chains is what the errors after the first of every chain lost.
func chains(a *account.Account) float64 {
	sum := 0.0
	for _, d := range a.Doubles {
		sum += d.Compounding
	}
	return sum
}

// Lost is what a golfer of a level loses for 18 holes in a row, judged by the
// golfer of a target. Levels are taken to their nearest from 68 to 110.
func (f *Family) Lost(level, target float64, row int) float64 {
	i, u := at(level)
	k, v := at(target)
	low := f.lost[i][k][row] + v*(f.lost[i][k+1][row]-f.lost[i][k][row])
	high := f.lost[i+1][k][row] + v*(f.lost[i+1][k+1][row]-f.lost[i+1][k][row])
	return low + u*(high-low)
}

// Spread is the standard deviation of that from round to round.
func (f *Family) Spread(level float64, row int) float64 {
	i, u := at(level)
	return f.spread[i][row] + u*(f.spread[i+1][row]-f.spread[i][row])
}

// Chains is what the errors after the first of a chain lose a round of the golfer
// of a level.
func (f *Family) Chains(level float64) float64 {
	i, u := at(level)
	return f.chains[i] + u*(f.chains[i+1]-f.chains[i])
}

// at is the place of a level in the table: the level below, and the share of the
// way to the next.
func at(level float64) (i int, u float64) {
	x := min(max((level-float64(golf.MinTarget))/familyStep, 0), familyLevels-1)
	i = min(int(x), familyLevels-2)
	return i, x - float64(i)
}

// LevelFor is the level whose loss in a row is some strokes, judged by the golfer
// of a target: the ends of the scale where none is.
func (f *Family) LevelFor(strokes, target float64, row int) float64 {
	for i := range familyLevels - 1 {
		low, high := f.Lost(levelOf(i), target, row), f.Lost(levelOf(i+1), target, row)
		if strokes <= high {
			if strokes <= low || high <= low {
				return levelOf(i)
			}
			return levelOf(i) + familyStep*(strokes-low)/(high-low)
		}
	}
	return golf.MaxTarget
}

// familyVersion is the first number of the file; raise it when its form changes.
const familyVersion = 1

// Encode writes the table in little-endian float32, with a number for its form and
// one for its rows before it.
func (f *Family) Encode() []byte {
	out := binary.LittleEndian.AppendUint32(nil, familyVersion)
	out = binary.LittleEndian.AppendUint32(out, uint32(rowCount()))
	f.each(func(x *float64) { out = binary.LittleEndian.AppendUint32(out, math.Float32bits(float32(*x))) })
	return out
}

// DecodeFamily reads a table that Encode wrote.
func DecodeFamily(data []byte) (*Family, error) {
	f := &Family{}
	for i := range familyLevels {
		for k := range familyLevels {
			f.lost[i][k] = make([]float64, rowCount())
		}
		f.spread[i] = make([]float64, rowCount())
	}
	numbers := familyLevels*familyLevels*rowCount() + familyLevels*rowCount() + familyLevels
	if len(data) != 8+4*numbers {
		return nil, fmt.Errorf("practice: a table of %d bytes, want %d", len(data), 8+4*numbers)
	}
	if binary.LittleEndian.Uint32(data) != familyVersion || binary.LittleEndian.Uint32(data[4:]) != uint32(rowCount()) {
		return nil, errors.New("practice: a table of another form")
	}
	data = data[8:]
	f.each(func(x *float64) {
		*x, data = float64(math.Float32frombits(binary.LittleEndian.Uint32(data))), data[4:]
	})
	return f, nil
}

// each visits every number of the table, in the order of the file.
func (f *Family) each(visit func(*float64)) {
	for i := range f.lost {
		for k := range f.lost[i] {
			for row := range f.lost[i][k] {
				visit(&f.lost[i][k][row])
			}
		}
		for row := range f.spread[i] {
			visit(&f.spread[i][row])
		}
		visit(&f.chains[i])
	}
}

//go:embed family.bin
var committedFamily []byte

// Committed is the table of the committed golfer.
var Committed = sync.OnceValue(func() *Family {
	f, err := DecodeFamily(committedFamily)
	if err != nil {
		panic(err)
	}
	return f
})
