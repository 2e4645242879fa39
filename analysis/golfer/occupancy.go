package golfer

import (
	"strokeledger/analysis/golf"
)

// Visits is how often, on average, a golfer plays from each state over the
// holes of a card: the exact counterpart of a simulation, with no random
// number.
type Visits struct {
	golfer *Golfer
	count  []float64 // strokes played from each state over the card
}

// Visits follows the golfer forward from every tee of a card.
func (g *Golfer) Visits(card []golf.CardHole) *Visits {
	v := &Visits{g, make([]float64, g.grid.states())}
	flow := make([]float64, g.grid.states())
	for _, h := range card {
		i, w := g.grid.locate(golf.Tee, h.Length.Yards())
		flow[i] += 1 - w
		flow[i+1] += w
	}
	for left := 1.0; left > settled; {
		left = 0
		for _, order := range [][]int{g.grid.courseOrder, g.grid.greenOrder} {
			for k := len(order) - 1; k >= 0; k-- {
				i := order[k]
				if flow[i] != 0 {
					v.pass(i, flow)
				}
			}
		}
		for _, f := range flow {
			left += f
		}
	}
	return v
}

// pass plays everything that waits at state i.
func (v *Visits) pass(i int, flow []float64) {
	here := flow[i]
	flow[i] = 0
	v.count[i] += here
	for _, m := range v.golfer.steps[i].to {
		flow[m.state] += here * m.chance
	}
}

// Strokes is how many strokes a round are played from where, penalties
// included.
func (v *Visits) Strokes(where func(From) bool) float64 {
	sum := 0.0
	for i, n := range v.count {
		if n != 0 && where(v.golfer.grid.place(i)) {
			sum += n * v.golfer.steps[i].cost
		}
	}
	return sum
}

// Shots is how many shots a round are played from where, without penalties.
func (v *Visits) Shots(where func(From) bool) float64 {
	sum := 0.0
	for i, n := range v.count {
		if n != 0 && where(v.golfer.grid.place(i)) {
			sum += n
		}
	}
	return sum
}

// Lost is how many strokes a round the golfer loses to a better one by the
// shots played from where.
func (v *Visits) Lost(better *Golfer, where func(From) bool) float64 {
	sum := 0.0
	for i, n := range v.count {
		if n == 0 || !where(v.golfer.grid.place(i)) {
			continue
		}
		played, back := v.golfer.steps[i].value(i, better.e)
		sum += n * (played + back*better.e[i] - better.e[i])
	}
	return sum
}

// Penalties is how many penalty strokes a round the golfer takes.
func (v *Visits) Penalties() float64 {
	sum := 0.0
	for i, n := range v.count {
		sum += n * (v.golfer.steps[i].cost - 1)
	}
	return sum
}

// Mean is the mean of a figure of single shots over those played from where, 0
// when there are none.
func (v *Visits) Mean(where func(From) bool, figure func(state int) float64) float64 {
	sum, shots := 0.0, 0.0
	for i, n := range v.count {
		if n != 0 && where(v.golfer.grid.place(i)) {
			sum += n * figure(i)
			shots += n
		}
	}
	if shots == 0 {
		return 0
	}
	return sum / shots
}

// ThreePutts is on how many greens a round the golfer takes three putts or more.
func (v *Visits) ThreePutts() float64 {
	green := v.golfer.grid.state(golf.Green, 0)
	first := make([]float64, v.golfer.grid.states()) // putts of a green, by state
	for i, n := range v.count[:green] {
		for _, m := range v.golfer.steps[i].to {
			first[m.state] += n * m.chance
		}
	}
	sum := 0.0
	for i, n := range first[green:] {
		sum += n * (1 - v.golfer.inTwo(green+i))
	}
	return sum
}

// Greens is how many greens a round the golfer hits in regulation, in two
// strokes fewer than par. A penalty stroke does not count as a stroke here; a green
// that was hit in spite of one is rare.
func (g *Golfer) Greens(card []golf.CardHole) float64 {
	sum := 0.0
	for par := golf.MinPar; par <= golf.MaxPar; par++ {
		flow := make([]float64, g.grid.states())
		for _, h := range card {
			if h.Par == par {
				i, w := g.grid.locate(golf.Tee, h.Length.Yards())
				flow[i] += 1 - w
				flow[i+1] += w
			}
		}
		for range par - 2 {
			sum += g.onto(&flow)
		}
	}
	return sum
}

// onto plays one stroke from every state off the green and returns how many of
// the balls came onto it or into the hole.
func (g *Golfer) onto(flow *[]float64) float64 {
	next, hit := make([]float64, len(*flow)), 0.0
	for i, n := range (*flow)[:g.grid.state(golf.Green, 0)] {
		if n == 0 {
			continue
		}
		hit += n * g.onGreen(i)
		for _, m := range g.steps[i].to {
			next[m.state] += n * m.chance
		}
	}
	*flow = next
	return hit
}

// onGreen is the chance that one stroke from state i, off the green, comes to rest
// on the green or in the hole.
func (g *Golfer) onGreen(i int) float64 {
	chance, green := 1.0, g.grid.state(golf.Green, 0)
	for _, m := range g.steps[i].to {
		if int(m.state) < green {
			chance -= m.chance
		}
	}
	return chance
}

// UpAndDown is the chance of holing out in two strokes or fewer from a lie off
// the green at yd yards.
func (g *Golfer) UpAndDown(lie golf.Lie, yd float64) float64 {
	at, w := g.grid.locate(lie, yd)
	return (1-w)*g.inTwo(at) + w*g.inTwo(at+1)
}

// inTwo is the chance of holing out in two strokes or fewer from state i. Strokes
// that cost a penalty are counted as one here; near the green they are rare.
func (g *Golfer) inTwo(i int) float64 {
	chance := g.steps[i].holed
	for _, m := range g.steps[i].to {
		chance += m.chance * g.steps[m.state].holed
	}
	return chance
}
