package stat

import (
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// Source: E. S. Pearson and H. O. Hartley, Biometrika Tables for Statisticians,
// table 40, confidence limits for the expectation of a Poisson variable, 95 %
// (figures from memory).
func TestCountInterval(t *testing.T) {
	for _, c := range []struct {
		events    int
		low, high float64
	}{{0, 0, 3.69}, {1, .0253, 5.57}, {2, .242, 7.22}, {5, 1.62, 11.67}, {10, 4.80, 18.39}, {20, 12.22, 30.89}, {50, 37.11, 65.92}} {
		i := CountInterval(c.events, .95)
		near(t, "low", i.Low, c.low, 5e-3)
		near(t, "high", i.High, c.high, 5e-3)
	}
}

// Sources: the worked example of M. P. Fay, Two-sided exact tests and matching
// confidence intervals for discrete data, The R Journal 2, 2010: 2 events in
// 17,877 and 10 in 20,000 give p = .0606, twice the smaller tail (from memory).
// The documentation of poisson.test in R: 11 in 800 and 21 in 3,011 have a smaller
// tail of .0560 (from memory). By hand: 4 and none in the same time, 2/2⁴.
func TestRatesP(t *testing.T) {
	near(t, "2 and 10", RatesP(2, 10, 17877, 20000), .06056, 5e-6)
	near(t, "11 and 21", RatesP(11, 21, 800, 3011), 2*.056009, 5e-6)
	near(t, "4 and none", RatesP(4, 0, 5, 5), .125, 1e-12)
	near(t, "none and none", RatesP(0, 0, 5, 8), 1, 1e-12)
}

// Sources: R. A. Fisher, The Design of Experiments, 1935, tea: 3 of 4 and 1 of 4
// have a tail of 17/70; Fisher's twins, 10 of 13 and 2 of 17 convicted, have one of
// .0004652, as the documentation of fisher.test in R prints (from memory).
func TestSharesP(t *testing.T) {
	near(t, "tea", SharesP(3, 4, 1, 4), 34./70, 1e-12)
	near(t, "twins", SharesP(10, 13, 2, 17), 2*.0004652, 1e-7)
	near(t, "all and all", SharesP(3, 3, 5, 5), 1, 1e-12)
	near(t, "none and none", SharesP(0, 3, 0, 5), 1, 1e-12)
}

// Fisher's test against a sum of whole numbers.
func TestSharesPIsTheSumOfTables(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, m := rapid.IntRange(1, 300).Draw(t, "tries"), rapid.IntRange(1, 300).Draw(t, "other tries")
		a, b := rapid.IntRange(0, n).Draw(t, "hits"), rapid.IntRange(0, m).Draw(t, "other hits")
		below, above, all := new(big.Int), new(big.Int), new(big.Int)
		for k := max(0, a+b-m); k <= min(n, a+b); k++ {
			ways := new(big.Int).Mul(new(big.Int).Binomial(int64(n), int64(k)), new(big.Int).Binomial(int64(m), int64(a+b-k)))
			all.Add(all, ways)
			if k <= a {
				below.Add(below, ways)
			}
			if k >= a {
				above.Add(above, ways)
			}
		}
		smaller := below
		if above.Cmp(below) < 0 {
			smaller = above
		}
		want, _ := new(big.Rat).SetFrac(smaller, all).Float64()
		if got := SharesP(a, n, b, m); math.Abs(got-min(1, 2*want)) > 1e-9 {
			t.Fatalf("%d of %d and %d of %d: %g, want %g", a, n, b, m, got, 2*want)
		}
	})
}

// Source: R. G. Newcombe, Two-sided confidence intervals for the single
// proportion, Statistics in Medicine 17, 1998, table I, the score method (figures
// from memory).
func TestShareIntervalOfTheTable(t *testing.T) {
	for _, c := range []struct {
		hits, tries int
		low, high   float64
	}{{81, 263, .2553, .3662}, {15, 148, .0624, .1605}, {0, 20, 0, .1611}, {1, 29, .0061, .1718}} {
		i := ShareInterval(c.hits, c.tries, .95)
		near(t, "low", i.Low, c.low, 5e-5)
		near(t, "high", i.High, c.high, 5e-5)
	}
}
