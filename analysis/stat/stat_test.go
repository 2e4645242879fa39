package stat

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat"
	"pgregory.net/rapid"
)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %.8g, handbook %.8g", what, got, want)
	}
}

// Source: NIST/SEMATECH e-Handbook, 1.3.5.2, confidence limits for the mean,
// data set ZARR13.DAT (figures from memory).
func TestIntervalOfTheMean(t *testing.T) {
	s := Sample{195, 9.261460, .2278881e-1}
	i, ok := s.Interval(.95)
	if !ok {
		t.Fatal("no interval")
	}
	near(t, "low", i.Low, 9.258242, 5e-6)
	near(t, "high", i.High, 9.264679, 5e-6)
}

// Source: NIST/SEMATECH e-Handbook, 1.3.5.3, two-sample t-test for equal
// means, data set AUTO83B.DAT, unequal variances (figures from memory).
func TestWelch(t *testing.T) {
	d, ok := Welch(Sample{249, 20.14458, 6.414700}, Sample{79, 30.48101, 6.107710})
	if !ok {
		t.Fatal("no test")
	}
	near(t, "t", d.T, 12.94627, 5e-5)
	near(t, "degrees of freedom", d.DF, 136.8750, 5e-3)
	if d.P > 1e-20 {
		t.Errorf("p %g", d.P)
	}
	i := d.Interval(.95)
	near(t, "middle of the interval", (i.Low+i.High)/2, 30.48101-20.14458, 1e-9)
}

// Source: NIST/SEMATECH e-Handbook, 1.3.6.7.2, critical values of Student's t
// (from memory).
func TestTQuantile(t *testing.T) {
	for _, c := range []struct{ p, df, want float64 }{
		{.95, 5, 2.015}, {.975, 5, 2.571}, {.975, 10, 2.228}, {.975, 30, 2.042}, {.99, 20, 2.528}, {.995, 100, 2.626},
	} {
		near(t, "t", TQuantile(c.p, c.df), c.want, 5e-4)
	}
}

func TestTooFewValues(t *testing.T) {
	if _, ok := Of(nil).Interval(.95); ok {
		t.Error("an interval from nothing")
	}
	if _, ok := Of([]float64{3}).Interval(.95); ok {
		t.Error("an interval from one value")
	}
	if d, ok := Welch(Of([]float64{1, 2}), Of([]float64{4})); ok || d.Mean != 2.5 {
		t.Errorf("a test against one value: %+v", d)
	}
	if _, ok := Welch(Of([]float64{1, 1}), Of([]float64{2, 2})); ok {
		t.Error("a test between values that do not spread")
	}
}

// Under equal means p is even over [0, 1]: about one in twenty is below .05.
func TestWelchIsEvenUnderNoDifference(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	below := 0
	for range 4000 {
		a, b := make([]float64, 8), make([]float64, 12)
		for i := range a {
			a[i] = rng.NormFloat64() * 4
		}
		for i := range b {
			b[i] = rng.NormFloat64() * 2
		}
		if d, _ := Welch(Of(a), Of(b)); d.P < .05 {
			below++
		}
	}
	near(t, "share below .05", float64(below)/4000, .05, .012)
}

// An interval of 95 % for the mean of few normal values covers it in about 95
// of 100; plain percentiles cover .84 for 5, .89 for 10 and .94 for 20.
func TestBootstrapIntervalCovers(t *testing.T) {
	for _, n := range []int{5, 10, 20} {
		rng := rand.New(rand.NewPCG(uint64(n), 7))
		covered, plain := 0, 0
		const trials = 1000
		for range trials {
			x := make([]float64, n)
			for i := range x {
				x[i] = rng.NormFloat64()
			}
			mean := func(drawn []int32) float64 {
				sum := 0.0
				for _, i := range drawn {
					sum += x[i]
				}
				return sum / float64(n)
			}
			draws := NewDraws(rng, n, 400)
			if i := draws.Interval(.95, mean); i.Low < 0 && i.High > 0 {
				covered++
			}
			if means := drawnInOrder(draws, mean); means[10] < 0 && means[389] > 0 {
				plain++
			}
		}
		share := float64(covered) / trials
		t.Logf("%d values: covers %.3f, plain percentiles %.3f", n, share, float64(plain)/trials)
		if share < .92 || share > .985 {
			t.Errorf("%d values: covers %.3f", n, share)
		}
	}
}

// drawnInOrder is what a statistic came to in every draw, ascending.
func drawnInOrder(d Draws, statistic func(drawn []int32) float64) []float64 {
	var all []float64
	d.Each(func(drawn []int32) { all = append(all, statistic(drawn)) })
	slices.Sort(all)
	return all
}

func TestDrawsAreTheSameForASeed(t *testing.T) {
	first := func(drawn []int32) float64 { return float64(drawn[0]) }
	a := drawnInOrder(NewDraws(rand.New(rand.NewPCG(1, 1)), 9, 50), first)
	if b := drawnInOrder(NewDraws(rand.New(rand.NewPCG(1, 1)), 9, 50), first); !slices.Equal(a, b) {
		t.Fatal("not the same")
	}
}

// The ends of an interval are the quantiles of all that was drawn, as gonum reads
// them, from either side alike.
func TestIntervalReadsQuantiles(t *testing.T) {
	for _, n := range []int{2, 3, 5, 10, 40} {
		rng := rand.New(rand.NewPCG(uint64(n), 3))
		x := make([]float64, n)
		for i := range x {
			x[i] = math.Round(4 * rng.NormFloat64()) // with ties
		}
		sum := func(drawn []int32) (s float64) {
			for _, i := range drawn {
				s += x[i]
			}
			return s
		}
		d := NewDraws(rng, n, 1000)
		reach := math.Sqrt(float64(n)/float64(n-1)) * TQuantile(.975, float64(n-1))
		up := drawnInOrder(d, sum)
		down := drawnInOrder(d, func(drawn []int32) float64 { return -sum(drawn) })
		got := d.Interval(.95, sum)
		near(t, "low", got.Low, stat.Quantile(NormalCDF(-reach), stat.LinInterp, up, nil), 1e-9)
		near(t, "high", got.High, -stat.Quantile(NormalCDF(-reach), stat.LinInterp, down, nil), 1e-9)
	}
}

func TestRoundedPartsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts := rapid.SliceOfN(rapid.Float64Range(-30, 90), 1, 9).Draw(t, "parts")
		sum, printed := 0.0, 0.0
		for i, p := range RoundedParts(parts, .1) {
			if math.Abs(p-parts[i]) >= .1+1e-9 {
				t.Fatalf("%g became %g", parts[i], p)
			}
			sum += parts[i]
			printed += p
		}
		if math.Abs(printed-math.Round(sum*10)/10) > 1e-6 {
			t.Fatalf("printed %g, sum %g", printed, sum)
		}
	})
}

func TestCurve(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 12).Draw(t, "points")
		x, y := make([]float64, n), make([]float64, n)
		for i := 1; i < n; i++ {
			x[i] = x[i-1] + rapid.Float64Range(.1, 5).Draw(t, "step")
			y[i] = y[i-1] + rapid.Float64Range(0, 3).Draw(t, "rise")
		}
		c, err := NewCurve(x, y)
		if err != nil {
			t.Fatal(err)
		}
		last := math.Inf(-1)
		for at := x[0] - 1; at < x[n-1]+1; at += .05 {
			v := c.At(at)
			if v < last-1e-9 {
				t.Fatalf("falls at %g", at)
			}
			last = v
		}
		for i := range x {
			if math.Abs(c.At(x[i])-y[i]) > 1e-9 {
				t.Fatalf("misses point %d", i)
			}
		}
	})
}

func TestCurveRefuses(t *testing.T) {
	for _, bad := range []struct{ x, y []float64 }{{nil, nil}, {[]float64{1}, []float64{1}}, {[]float64{1, 1}, []float64{1, 2}}, {[]float64{1, 2}, []float64{1}}} {
		if _, err := NewCurve(bad.x, bad.y); err == nil {
			t.Errorf("a curve through %v, %v", bad.x, bad.y)
		}
	}
}

// The ends of a score interval are the shares from which the observed one is
// just z standard errors away: its definition.
func TestShareInterval(t *testing.T) {
	for _, c := range []struct{ hits, tries int }{{0, 10}, {1, 10}, {7, 9}, {115, 118}, {10, 10}} {
		i := ShareInterval(c.hits, c.tries, .95)
		p := float64(c.hits) / float64(c.tries)
		for _, end := range []float64{i.Low, i.High} {
			if end == 0 || end == 1 {
				continue
			}
			if z := math.Abs(p-end) / math.Sqrt(end*(1-end)/float64(c.tries)); math.Abs(z-1.959964) > 1e-5 {
				t.Errorf("%d of %d: end %g is %g away", c.hits, c.tries, end, z)
			}
		}
		if i.Low > p || i.High < p {
			t.Errorf("%d of %d: %+v", c.hits, c.tries, i)
		}
	}
	if i := ShareInterval(0, 0, .95); i != (Interval{0, 1}) {
		t.Errorf("%+v", i)
	}
}
