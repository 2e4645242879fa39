package golf

import (
	"fmt"
	"strings"
)

// Lie is what the ball lies on before a stroke. The zero value is invalid.
type Lie uint8

// The six lies. The fringe counts as fairway; recovery is any place from which
// a stroke at the green is blocked, and a ball played in a penalty area counts
// as rough.
const (
	Tee Lie = iota + 1
	Fairway
	Rough
	Bunker
	Recovery
	Green
)

// Lies lists every lie, tee first and green last.
var Lies = []Lie{Tee, Fairway, Rough, Bunker, Recovery, Green}

var lieNames = [...]string{"", "tee", "fairway", "rough", "bunker", "recovery", "green"}

// String returns the lie's name in lower case, and "" for the zero value.
func (l Lie) String() string {
	if int(l) < len(lieNames) {
		return lieNames[l]
	}
	return ""
}

// Unit returns the unit in which distances from this lie are written when
// nothing else is said: feet on the green, yards elsewhere.
func (l Lie) Unit() Unit {
	if l == Green {
		return Feet
	}
	return Yards
}

// ParseLie reads the name of a lie in any letter case.
func ParseLie(s string) (Lie, error) {
	for _, l := range Lies {
		if strings.EqualFold(s, l.String()) {
			return l, nil
		}
	}
	return 0, fmt.Errorf("unknown lie %q; allowed: tee, fairway, rough, bunker, recovery, green", s)
}
