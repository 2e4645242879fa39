package form

import "testing"

// How long it takes to read a hole, which happens with every key typed.
func BenchmarkParseLine(b *testing.B) {
	for b.Loop() {
		ParseLine("t385/D xx 140fw r~20s4 g25,3 =9", par(4, 392), StandardUnits)
	}
}
