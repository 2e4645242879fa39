package account

import (
	"strokeledger/analysis/golf"
)

// ErrorAt is how many strokes a shot must lose to be an error.
const ErrorAt = 0.5

// Kind says how a double came about. The zero value is invalid.
type Kind uint8

// The kinds of doubles.
const (
	Compound Kind = iota + 1 // one mistake led to the next
	Single                   // exactly one error
	Separate                 // several errors, none the child of another
	Leak                     // no error, all of it adding up
	Unknown                  // known by its score alone
)

var kindNames = [...]string{"", "compound", "single", "separate", "leak", "unknown"}

// Kinds lists every kind.
var Kinds = []Kind{Compound, Single, Separate, Leak, Unknown}

// String returns the kind's name in lower case, and "" for the zero value.
func (k Kind) String() string {
	if int(k) < len(kindNames) {
		return kindNames[k]
	}
	return ""
}

// Double is a hole at par + 2 or worse.
type Double struct {
	Hole, Par    int
	Score        int     // that of a picked-up hole is rounded
	Lost         float64 // on the hole, as its shots are charged
	Kind         Kind
	Root         int           // the shot, from 1, where it began; 0 for a leak, which began nowhere, and when unknown
	RootCategory golf.Category // the part of the game of the root; 0 without a root
	Costliest    int           // the shot, from 1, at which what lost most is marked; 0 when unknown
	Chain        []int         // shots of the costliest chain, from 1; empty without one
	Compounding  float64       // what that chain's errors after the first lost to the fixed golfer
	Missed       []int         // putts of 6 ft and less that were missed on the way
}

// unit is a shot off the green, or a run of putts, which count as one shot.
type unit struct {
	first, last int     // shots, from 0
	marked      int     // the shot it is marked at
	lost        float64 // to the fixed golfer
	trouble     bool
}

func (u unit) isError() bool { return u.lost >= ErrorAt }

// units gathers the shots of a hole into all, which is empty room; lost is what
// each shot lost to the fixed golfer.
func units(all []unit, h golf.Hole, shots []Shot, lost []float64) []unit {
	for i, x := range lost {
		if n := len(all); n > 0 && h.Shots[i].Lie == golf.Green && h.Shots[i-1].Lie == golf.Green {
			u := &all[n-1]
			u.last = i
			u.lost += x
			if x > lost[u.marked] {
				u.marked = i
			}
			continue
		}
		all = append(all, unit{i, i, i, x, shots[i].Trouble})
	}
	return all
}

// chain is a run of linked errors: places in a list of units.
type chain struct {
	at   []int
	lost float64
}

// costliest returns the chain of linked errors that lost the most; the earlier
// of two that lost the same. Its at is empty when no two errors are linked.
func costliest(all []unit) chain {
	var best, run chain
	open := false // every unit since the run's last error was played from trouble
	for i, u := range all {
		if !u.isError() {
			open = open && u.trouble
			continue
		}
		last := len(run.at) - 1
		if last >= 0 && (run.at[last] == i-1 || open && u.trouble) {
			run = chain{append(run.at, i), run.lost + u.lost}
		} else {
			run = chain{[]int{i}, u.lost}
		}
		open = true
		if len(run.at) > 1 && (run.lost > best.lost || len(best.at) == 0) {
			best = chain{append([]int(nil), run.at...), run.lost}
		}
	}
	return best
}

// judge marks the errors of a hole and, when it is a double, says of which
// kind and where it began.
func (a *Account) judge(to *Hole, h golf.Hole, lost []float64, t Terms) {
	var room [16]unit // a hole of more strokes than this asks for its own
	all := units(room[:0], h, to.Shots, lost)
	for _, u := range all {
		to.Shots[u.marked].Error = u.isError()
	}
	d := Double{Hole: h.Number, Par: h.Par, Score: to.Whole, Lost: to.Lost, Kind: Unknown}
	if d.Score < h.Par+2 {
		return
	}
	if h.Detailed() {
		d.trace(all, to.Shots)
		d.Missed = missedShort(h, len(to.Shots))
	}
	a.Doubles = append(a.Doubles, d)
	a.Counts.Double(d.Kind)
}

// trace finds kind, root, costliest shot and chain. A double began with the first
// error of its costliest chain, without a chain with its first error, and without
// an error nowhere.
func (d *Double) trace(all []unit, shots []Shot) {
	if len(all) == 0 {
		d.Kind = Leak // picked up on the tee
		return
	}
	errors, root, worst := errorsOf(all)
	d.Costliest = all[worst].marked + 1
	switch chain := costliest(all); {
	case len(chain.at) > 0:
		d.Kind, root = Compound, chain.at[0]
		for _, i := range chain.at {
			d.Chain = append(d.Chain, all[i].marked+1)
			d.Compounding += all[i].lost
		}
		d.Compounding -= all[root].lost
	case errors == 0:
		d.Kind = Leak
		return
	case errors == 1:
		d.Kind = Single
	default:
		d.Kind = Separate
	}
	d.Root = all[root].marked + 1
	d.RootCategory = shots[all[root].marked].Band.Category
}

// errorsOf counts the errors of a hole, and finds the places of the first of them
// and of the unit that lost most, the first of equals; 0 where there is none.
func errorsOf(all []unit) (errors, first, worst int) {
	for i, u := range all {
		if u.isError() {
			if errors++; errors == 1 {
				first = i
			}
		}
		if u.lost > all[worst].lost {
			worst = i
		}
	}
	return errors, first, worst
}

// missedShort lists the putts of 6 ft and less that were played and missed.
func missedShort(h golf.Hole, played int) []int {
	var all []int
	for i, s := range h.Shots[:played] {
		holed := i == played-1 && !h.PickedUp
		if s.Lie == golf.Green && s.Distance <= 6*golf.Foot && !holed {
			all = append(all, i+1)
		}
	}
	return all
}
