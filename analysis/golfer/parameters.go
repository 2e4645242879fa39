package golfer

import (
	_ "embed"
	"encoding/json"
	"fmt"
	"math"
	"sync"
)

// Skill is one number of the golfer as a smooth function of the skill
// coordinate t: Base at t = 0, log-quadratic on [0, 1], log-linear with the
// slope at the ends outside. Quadratics in the log would turn over past 1.5.
type Skill struct {
	Base  float64 `json:"base"`  // at t = 0, about a tour player
	Slope float64 `json:"slope"` // of the log, at t = 0
	Curve float64 `json:"curve"` // half the second derivative of the log
}

// At returns the value at skill coordinate t.
func (k Skill) At(t float64) float64 {
	if k.Slope == 0 && k.Curve == 0 {
		return k.Base
	}
	switch {
	case t < 0:
		return k.Base * math.Exp(k.Slope*t)
	case t <= 1:
		return k.Base * math.Exp(k.Slope*t+k.Curve*t*t)
	default:
		return k.Base * math.Exp(k.Slope+k.Curve+(k.Slope+2*k.Curve)*(t-1))
	}
}

// key names a parameter by its place in Parameters.
type key int

const (
	drive key = iota
	angle10
	angle40
	angle110
	angle180
	angle260
	shortAngle
	longAngle
	driverAngle
	length10
	length40
	length110
	length180
	length260
	shortLength
	longLength
	longMishit
	badLength
	shortMishit
	thinOdds
	fatLength
	thinLength
	fluff
	sandFails
	sandMishit
	recoveryFails
	bunkerShort
	bunkerMiddle
	bunkerLong
	roughShort
	roughLong
	recoverySpread
	teeShort
	reachFairway
	reachRough
	reachBunker
	reachRecovery
	recoveryAim
	greenRadius
	greenEdge
	nearApron
	nearBunker
	nearRecovery
	nearPenalty
	fairwayHalf
	fairwayEdge
	fairwayBunker
	recoveryFrom
	recoveryShare
	penaltyFrom
	penaltyShare
	penaltyGrowth
	puttAngle
	puttLength
	puttReading
	puttClose
	parameterCount
)

// Parameters are the skill numbers of the whole family of golfers, from tour
// players to beginners. The committed ones come from Committed.
type Parameters [parameterCount]Skill

//go:embed parameters.json
var committedJSON []byte

// Committed returns the parameters in the repository, as the calibration
// command last wrote them. They are read once; every caller has a copy.
func Committed() Parameters { return *committed() }

var committed = sync.OnceValue(func() *Parameters {
	p, err := ParseParameters(committedJSON)
	if err != nil {
		panic("golfer: the committed parameter file: " + err.Error())
	}
	return &p
})

type writtenParameter struct {
	Name    string `json:"name"`
	Unit    string `json:"unit"`
	Meaning string `json:"meaning"`
	Skill
}

// ParseParameters reads a parameter file as Format writes it. Every parameter
// must be there, in order.
func ParseParameters(data []byte) (Parameters, error) {
	var p Parameters
	var written []writtenParameter
	if err := json.Unmarshal(data, &written); err != nil {
		return p, err
	}
	if len(written) != len(p) {
		return p, fmt.Errorf("%d parameters, want %d", len(written), len(p))
	}
	for i, w := range written {
		if w.Name != specs[i].name {
			return p, fmt.Errorf("parameter %d is %q, want %q", i, w.Name, specs[i].name)
		}
		p[i] = w.Skill
	}
	return p, nil
}

// Format writes the parameters as the file that ParseParameters reads, one
// line each.
func (p Parameters) Format() []byte {
	out := []byte("[\n")
	for i, k := range p {
		line, err := json.Marshal(writtenParameter{specs[i].name, specs[i].unit, specs[i].meaning, k})
		if err != nil {
			panic("golfer: a parameter is not finite: " + err.Error())
		}
		out = append(append(out, "  "...), line...)
		if i < len(p)-1 {
			out = append(out, ',')
		}
		out = append(out, '\n')
	}
	return append(out, "]\n"...)
}
