package expect

import "fmt"

// Model returns the generative golfer of level s, from 68 to 110, without what the
// published tour table adds: what a simulation of that golfer takes. It is what
// choices between strokes of that golfer must be priced with.
func Model(s float64) (*Baseline, error) {
	if !(s >= MinLevel && s <= MaxLevel) {
		return nil, fmt.Errorf("level %g; allowed: %g to %g", s, MinLevel, MaxLevel)
	}
	f := levels()
	i, w := place(f.sum, s)
	own := family{level: f.model, short: f.short, sum: f.sum}
	b := own.blend(i, w)
	b.level = s
	return b, nil
}
