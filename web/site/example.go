package site

import (
	"sync"

	"strokeledger/analysis"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/web/form"
)

// exampleLines are the holes of an invented round as a player types them, in
// order of play.
var exampleLines = [18]string{
	"t/driver r165 r45 g30 2", "f180 r14 g12 1", "g31 2", "f245 f60 g14 2", "f150 r12 g7 2", "v150 v140 f60 g9 3", "g38 5 2", "r185 b12 g24 5 2", "f250 f70 g30 4",
	"f165 r16 g8 2", "r240 f85 g22 3", "b14 g9 2", "f275 f115 g35 6", "f160 g18 2", "r175 r60 g30 5", "g38 6 2", "f250 f45 g16 2", "r195 f40 g10 2",
}

// exampleRound is that round on the course that every level is measured on, with
// its account against the standard target. It is worked out once.
var exampleRound = sync.OnceValue(func() analysis.Statement {
	round := golf.Round{}
	for i, card := range expect.ReferenceCourse() {
		line := form.ParseLine(exampleLines[i], card, form.StandardUnits)
		if len(line.Problems) > 0 {
			panic("site: a line of the example is not sound: " + exampleLines[i])
		}
		round.Holes = append(round.Holes, line.Hole)
	}
	analyst, err := analysis.NewAnalyst(analysis.Target(analysis.StandardTarget), golf.StandardBoundary)
	if err != nil {
		panic("site: the standard target is not a target: " + err.Error())
	}
	return analyst.Statement(round, golf.StandardPar)
})
