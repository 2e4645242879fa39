package account

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golf/golftest"
)

// played is a shot, or the putts in a row of one green, taken straight from
// the definitions and not from the code under test.
type played struct {
	shots   []int // from 1
	cost    []float64
	trouble bool
}

func (p played) lost() float64 {
	sum := 0.0
	for _, x := range p.cost {
		sum += x
	}
	return sum
}

// marked is the costliest shot, from 1.
func (p played) marked() int { return p.shots[slices.Index(p.cost, slices.Max(p.cost))] }

func playedBy(h golf.Hole, t Terms) []played {
	struck := len(h.Shots)
	if h.PickedUp {
		struck--
	}
	var all []played
	for i, s := range h.Shots[:struck] {
		left := 0.0
		if i+1 < len(h.Shots) {
			left = t.Fixed.Shot(h.Shots[i+1])
		}
		p := played{shots: []int{i + 1}, cost: []float64{1 + float64(s.Penalty) + left - t.Fixed.Shot(s)}}
		p.trouble = s.Lie == golf.Bunker || s.Lie == golf.Recovery || s.Shortfall() > 0
		if i > 0 {
			before := h.Shots[i-1]
			p.trouble = p.trouble || before.Penalty > 0
			if s.Lie == golf.Green && before.Lie == golf.Green {
				u := &all[len(all)-1]
				u.shots, u.cost = append(u.shots, i+1), append(u.cost, p.cost[0])
				continue
			}
		}
		all = append(all, p)
	}
	return all
}

// linked says whether two errors are, by the words of the definition.
func linked(all []played, i, j int) bool {
	if j == i+1 {
		return true
	}
	for _, p := range all[i+1 : j+1] {
		if !p.trouble {
			return false
		}
	}
	return true
}

// told is what the definitions say of a double.
type told struct {
	kind        Kind
	root        int // 0 for nowhere
	costliest   int
	chain       []int
	compounding float64
}

// tell works out a double from every pair of its errors: chains are the groups
// that links hold together.
func tell(all []played) told {
	var errors []int
	worst := 0
	for i, p := range all {
		if p.lost() >= .5 {
			errors = append(errors, i)
		}
		if p.lost() > all[worst].lost() {
			worst = i
		}
	}
	group := make([]int, len(errors)) // the first error each is held to
	for j := range errors {
		group[j] = j
		for i := range j {
			if linked(all, errors[i], errors[j]) {
				group[j] = min(group[j], group[i])
			}
		}
	}
	best := told{kind: [...]Kind{Leak, Single, Separate}[min(len(errors), 2)]}
	if len(all) > 0 {
		best.costliest = all[worst].marked()
	}
	if len(errors) > 0 {
		best.root = all[errors[0]].marked()
	}
	most := 0.0
	for first := range errors {
		c, sum := told{kind: Compound, costliest: best.costliest}, 0.0
		for j, i := range errors {
			if group[j] != first {
				continue
			}
			c.chain = append(c.chain, all[i].marked())
			sum += all[i].lost()
		}
		if len(c.chain) > 1 && sum > most {
			c.root, c.compounding = c.chain[0], sum-all[errors[first]].lost()
			best, most = c, sum
		}
	}
	return best
}

// Every hole of a random round, told again from the definitions.
func TestDoublesAreAsDefined(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := golftest.Rounds().Draw(t, "round")
		terms, _ := drawTerms(t, r)
		a := Of(r, terms)
		doubles := map[int]Double{}
		for _, d := range a.Doubles {
			doubles[d.Hole] = d
		}
		for i, h := range r.Holes {
			score := h.Strokes()
			if h.PickedUp {
				score = int(math.Round(float64(score) + terms.Fixed.Shot(h.Shots[len(h.Shots)-1])))
			}
			d, is := doubles[h.Number]
			if is != (score >= h.Par+2) || is && d.Score != score {
				t.Fatalf("hole %d, par %d: %d strokes, told as %+v", h.Number, h.Par, score, d)
			}
			if !h.Detailed() {
				continue
			}
			all := playedBy(h, terms)
			sameErrors(t, all, a.Holes[i])
			if want := tell(all); is && (d.Kind != want.kind || d.Root != want.root || d.Costliest != want.costliest || !slices.Equal(d.Chain, want.chain) || math.Abs(d.Compounding-want.compounding) > 1e-9) {
				t.Fatalf("hole %d: %+v, by the definitions %+v", h.Number, d, want)
			}
		}
	})
}

func sameErrors(t *rapid.T, all []played, h Hole) {
	want := map[int]bool{}
	for _, p := range all {
		if p.lost() >= .5 {
			want[p.marked()] = true
		}
	}
	for k, s := range h.Shots {
		if s.Error != want[k+1] {
			t.Fatalf("hole %d, shot %d: error %v, by the definitions %v", h.Number, k+1, s.Error, want[k+1])
		}
	}
}

// A double is the same double whatever the shots are charged against.
func TestLensChangesNoVerdict(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := golftest.Rounds().Draw(t, "round")
		terms, _ := drawTerms(t, r)
		a := Of(r, terms)
		terms.Lens, terms.Course = terms.Fixed, 0
		b := Of(r, terms)
		if a.Counts != b.Counts {
			t.Fatalf("%+v and %+v", a.Counts, b.Counts)
		}
		for i, d := range a.Doubles {
			e := b.Doubles[i]
			if d.Score != e.Score || d.Kind != e.Kind || d.Root != e.Root || d.RootCategory != e.RootCategory || d.Costliest != e.Costliest ||
				d.Compounding != e.Compounding || !slices.Equal(d.Chain, e.Chain) || !slices.Equal(d.Missed, e.Missed) {
				t.Fatalf("%+v and %+v", d, e)
			}
		}
		for i, h := range a.Holes {
			for k, s := range h.Shots {
				if other := b.Holes[i].Shots[k]; s.Error != other.Error || s.Trouble != other.Trouble || s.Band != other.Band {
					t.Fatalf("hole %d, shot %d: %+v and %+v", h.Number, k+1, s, other)
				}
			}
		}
	})
}
