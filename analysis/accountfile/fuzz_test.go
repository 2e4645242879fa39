package accountfile

import (
	"bytes"
	"errors"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Whatever it is given, the reader does not panic and answers with a fault; and
// what it takes comes back from a file written anew.
func FuzzReader(f *testing.F) {
	f.Add([]byte(begins + oneRound + "]}"))
	f.Add([]byte(begins + oneRound + "," + oneRound + `],"notes":[{"body":"é\n"}]}`))
	f.Add([]byte(begins + `],"run_out":[` + oneBall + `]}`))
	f.Add([]byte(`{"version":1,"rounds":[0,0,0]}`))
	f.Add([]byte("{\"x\":\"\xc3"))
	f.Fuzz(func(t *testing.T, data []byte) {
		rounds, c, err := readAll(bytes.NewReader(data))
		if err != nil {
			if !errors.As(err, new(*Fault)) {
				t.Fatalf("%T %v", err, err)
			}
			return
		}
		var b bytes.Buffer
		w := NewWriter(&b, c)
		for _, r := range rounds {
			w.Write(r)
		}
		if err := w.Close(Written{}); err != nil {
			t.Fatal(err)
		}
		again, d, err := readAll(bytes.NewReader(b.Bytes()))
		if err != nil {
			t.Fatalf("%v\n%s", err, b.String())
		}
		for i := range rounds {
			if !Same(rounds[i], again[i]) {
				t.Fatal(cmp.Diff(rounds[i], again[i]))
			}
		}
		if len(again) != len(rounds) || d.Target != c.Target {
			t.Fatal("not the same account")
		}
	})
}
