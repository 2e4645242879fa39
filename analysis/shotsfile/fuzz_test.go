package shotsfile

import (
	"bytes"
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
)

// Whatever it is given, the reader does not panic; and rounds that it takes
// are legal, and come back from a file written anew.
func FuzzReader(f *testing.F) {
	f.Add([]byte(head + "r,2026-05-02,,1,3,1,tee,150,,,,,,,\n"))
	f.Add([]byte("\ufeffround;date;hole;par;shot;lie;distance\r\nr;2026-05-02;1;4;1;Tee;350,5\r\n"))
	f.Add([]byte(head + "r,2026-05-02,\"x\ny\",1,3,1,tee,150,,9,yes,3,yes,5,left-short\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		var rounds []golf.Round
		for r, err := range NewReader(bytes.NewReader(data), Limits{Bytes: 1 << 20, Rows: 5000}).Rounds() {
			if err != nil {
				return
			}
			if problems := r.Check(); problems != nil {
				t.Fatalf("not legal: %v", problems)
			}
			rounds = append(rounds, r)
		}
		var b bytes.Buffer
		w := NewWriter(&b)
		for _, r := range rounds {
			if err := w.Write(r); err != nil {
				t.Fatal(err)
			}
		}
		if err := w.Flush(); err != nil {
			t.Fatal(err)
		}
		i := 0
		for r, err := range NewReader(&b, Limits{}).Rounds() {
			if err != nil {
				t.Fatalf("written anew: %v\n%s", err, b.String())
			}
			if diff := cmp.Diff(rounds[i], r); diff != "" {
				t.Fatal(diff)
			}
			i++
		}
	})
}
