package practice

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"strokeledger/analysis/account"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/parallel"
	"strokeledger/analysis/stat"
)

// MinRounds is from how many rounds a plan is made; before that the way is to
// play, to note distances, and to do a drill as a test.
const MinRounds = 5

// What is believed of a golfer before the rounds are seen, beside what a golfer of
// the family with the same score loses: how far a part of the game, or a band, may
// lie from that, in strokes for 18 holes and as a share. Our own choice, held by
// planted weaknesses; there is no published source.
const (
	partApart, partShare = 1.5, .6
	bandApart, bandShare = .15, .6
	familyWeight         = 6 // rounds for which the family's spread of a round stands
)

// How sure it is that a part is weaker than the rest of the game.
const (
	clearFrom   = .975
	leaningFrom = .9
)

// Certainty says how sure it is that a part of the game is weaker than the rest.
type Certainty uint8

// The degrees of certainty. The zero value says that the loss is as large as for
// any golfer of the score.
const (
	Usual Certainty = iota
	Leaning
	Clear
)

// String returns "as usual for the score", "leaning" or "clear".
func (c Certainty) String() string {
	return [...]string{"as usual for the score", "leaning", "clear"}[c]
}

// Estimate is what a player loses for 18 holes in a part of the game or a band,
// judged by the golfer of the target.
type Estimate struct {
	Mean, SD float64 // of what is believed after the rounds
	Usual    float64 // what a golfer of the family with the same score loses
}

// WinBack is what would be won back on average by losing nothing there, for what
// is lost may also be less than nothing: never negative.
func (e Estimate) WinBack() float64 {
	if e.SD == 0 {
		return max(e.Mean, 0)
	}
	z := e.Mean / e.SD
	return e.Mean*stat.NormalCDF(z) + e.SD*math.Exp(-z*z/2)/math.Sqrt(2*math.Pi)
}

// Interval is where the loss lies, 95 %.
func (e Estimate) Interval() stat.Interval {
	return stat.Interval{Low: e.Mean - 1.96*e.SD, High: e.Mean + 1.96*e.SD}
}

// Certainty says how sure it is that the loss is larger than usual.
func (e Estimate) Certainty() Certainty {
	switch p := stat.NormalCDF((e.Mean - e.Usual) / e.SD); {
	case p >= clearFrom:
		return Clear
	case p >= leaningFrom:
		return Leaning
	default:
		return Usual
	}
}

// Game is what some rounds say about each part of the game and each band.
type Game struct {
	Rounds int
	Holes  float64 // with their strokes known
	Target float64
	Level  float64                    // the target and what was lost to its golfer for 18 holes
	Parts  [golf.Putting + 1]Estimate // by category
	Bands  []Estimate                 // by the list of Bands
	Spread [golf.Putting + 1]float64  // of one round in a part
	Played [golf.Putting + 1]float64  // the level that the part is played to
	Cross  [crossKinds]Cross          // by Kind
	lost   []Measured                 // by row of the family

	Accounts []*account.Account // of the rounds, in their order, judged by the golfer of the target
}

// Bands are those of a game: the standard boundary's, whatever a player has chosen.
func Bands() []account.Band { return bands }

// ErrNothing says that no hole of the rounds has its strokes known.
var ErrNothing = errors.New("no hole whose strokes are known")

// Look judges rounds by the golfer of a target, from 68 to 110, at the standard
// boundary. Holes known by their score alone do not count; ErrNothing without
// another.
func (f *Family) Look(rounds []golf.Round, target float64) (g Game, err error) {
	judge, err := expect.Level(target)
	if err != nil {
		return Game{}, err
	}
	terms := account.Terms{Lens: judge, Fixed: judge, Boundary: golf.StandardBoundary}
	accounts := make([]*account.Account, len(rounds))
	parallel.Do(len(rounds), func(i int) {
		a := account.Of(rounds[i], terms)
		accounts[i] = &a
	})
	if g, err = f.game(newNumbers(accounts), target); err != nil {
		return Game{}, err
	}
	g.Accounts = accounts
	g.crosses(f, accounts)
	g.shortSide(rounds, accounts, judge)
	return g, nil
}

// game works out the parts of the game and the bands.
func (f *Family) game(n numbers, target float64) (Game, error) {
	if n.weight == 0 {
		return Game{}, ErrNothing
	}
	g := Game{Rounds: len(n.holes), Target: target, Level: target + n.mean[0], Bands: make([]Estimate, len(bands))}
	for _, h := range n.holes {
		g.Holes += h
	}
	for _, c := range golf.Categories {
		g.part(f, n, c)
	}
	for i, b := range bands {
		g.band(f, n, i, b.Category)
	}
	g.measure(f, n)
	return g, nil
}

// part works out a part of the game.
func (g *Game) part(f *Family, n numbers, c golf.Category) {
	usual := f.Lost(g.Level, g.Target, int(c))
	spread := f.Spread(g.Level, int(c))
	apart := max(partApart, partShare*math.Abs(usual))
	g.Parts[c] = after(usual, apart*apart, n.mean[c], n.variance(int(c), spread))
	g.Parts[c].Usual = usual
	g.Spread[c] = math.Sqrt(n.variance(int(c), spread) * n.weight)
	g.Played[c] = f.LevelFor(g.Parts[c].Mean, g.Target, int(c))
}

// band works out a band inside its part: what a golfer of the family loses there
// who loses as much in the part as this player.
func (g *Game) band(f *Family, n numbers, i int, c golf.Category) {
	row, s := bandRow+i, g.Played[c]
	usual := f.Lost(s, g.Target, row)
	low, high := max(s-1, float64(golf.MinTarget)), min(s+1, float64(golf.MaxTarget))
	slope := 0.0
	if whole := f.Lost(high, g.Target, int(c)) - f.Lost(low, g.Target, int(c)); whole > 0 {
		slope = (f.Lost(high, g.Target, row) - f.Lost(low, g.Target, row)) / whole
	}
	apart := max(bandApart, bandShare*math.Abs(usual))
	g.Bands[i] = after(usual, apart*apart+slope*slope*g.Parts[c].SD*g.Parts[c].SD, n.mean[row], n.variance(row, f.Spread(s, row)))
	g.Bands[i].Usual = usual
}

// after is what is believed of a loss after a mean of rounds was seen.
func after(prior, priorVariance, mean, variance float64) Estimate {
	if variance == 0 {
		return Estimate{Mean: prior, SD: math.Sqrt(priorVariance)} // nothing was ever played from there, by anybody
	}
	precision := 1/priorVariance + 1/variance
	return Estimate{Mean: (prior/priorVariance + mean/variance) / precision, SD: math.Sqrt(1 / precision)}
}

// numbers are the losses of rounds by row of the family.
type numbers struct {
	holes   []float64 // of each round, with their strokes known
	weight  float64   // rounds of 18 holes that they come to
	mean    []float64 // for 18 holes
	squares []float64 // about the mean, of each round for 18 holes, weighted
}

func newNumbers(rounds []*account.Account) numbers {
	var played []float64
	var lost [][]float64
	for _, r := range rounds {
		round, holes := make([]float64, rowCount()), 0.0
		for _, h := range r.Holes {
			if h.Detailed {
				holes++
				add(round, h)
			}
		}
		if holes > 0 {
			played, lost = append(played, holes), append(lost, round)
		}
	}
	return numbersOf(played, lost)
}

// numbersOf are those of rounds of so many holes each, more than none, and what each
// lost by row.
func numbersOf(holes []float64, lost [][]float64) numbers {
	n := numbers{holes: holes, mean: make([]float64, rowCount()), squares: make([]float64, rowCount())}
	for _, h := range holes {
		n.weight += h / 18
	}
	for row := range n.mean {
		for i := range lost {
			n.mean[row] += lost[i][row] / n.weight
		}
		for i, h := range n.holes {
			d := lost[i][row]*18/h - n.mean[row]
			n.squares[row] += h / 18 * d * d
		}
	}
	return n
}

// add adds the shots of a hole to a round, by row.
func add(round []float64, h account.Hole) {
	for _, s := range h.Shots {
		for _, row := range [...]int{0, int(s.Band.Category), rowOf[s.Band]} {
			round[row] += s.Lost
		}
	}
}

// variance is that of the mean of a row, pooled with the family's spread of one
// round so that a few rounds that agree by luck do not look certain.
func (n numbers) variance(row int, spread float64) float64 {
	return (n.squares[row] + familyWeight*spread*spread) / ((n.weight + familyWeight - 1) * n.weight)
}

// order says which of the parts to work on first: those that are clearly weaker
// than the rest by how much, then all by what would be won back.
func (g *Game) order() []golf.Category {
	parts := slices.Clone(golf.Categories)
	slices.SortStableFunc(parts, func(a, b golf.Category) int {
		x, y := g.Parts[a], g.Parts[b]
		xClear, yClear := x.Certainty() == Clear, y.Certainty() == Clear
		switch {
		case xClear && yClear:
			return cmp.Compare(y.Mean-y.Usual, x.Mean-x.Usual)
		case xClear:
			return -1
		case yClear:
			return 1
		default:
			return cmp.Compare(y.WinBack(), x.WinBack())
		}
	})
	return parts
}

// dearest is the band of a part that would win back most, by its place in Bands.
func (g *Game) dearest(c golf.Category) int {
	best := -1
	for i, b := range bands {
		if b.Category == c && (best < 0 || g.Bands[i].WinBack() > g.Bands[best].WinBack()) {
			best = i
		}
	}
	return best
}
