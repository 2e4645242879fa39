package accountfile

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
)

const oneBall = `{"day":"2026-05-02","club":"pw","lie":"rough","green":"fast","carry":12,"total":21.5,"unit":"paces"}`

// ballsOf are the balls in a file.
func ballsOf(text string) ([]Ball, error) {
	r := NewReader(strings.NewReader(text))
	for _, err := range r.Rounds() {
		if err != nil {
			return nil, err
		}
	}
	return r.Balls(), nil
}

// The run-out book comes back from the file that a writer made of it; what stands
// beside it does not.
func TestTheRunOutBookComesBack(t *testing.T) {
	var b strings.Builder
	w := NewWriter(&b, someSettings)
	if err := w.Close(Written{Notes: []Note{{Body: "a note"}}, RunOut: []Trial{
		{Day: "2026-05-02", Club: "pw", Lie: "rough", Green: "fast", Carry: 12, Total: 21.5, Unit: "paces"},
		{Day: "2026-05-09", Club: "8 iron", Lie: "fairway", Green: "slow", Carry: 7.3, Total: 6, Unit: "m"},
	}}); err != nil {
		t.Fatal(err)
	}
	got, err := ballsOf(b.String())
	want := []Ball{
		{golf.Date{Year: 2026, Month: 5, Day: 2}, golf.Trial{Club: "pw", Lie: golf.Rough, Speed: golf.FastGreen, Carry: 12, Total: 21.5, Unit: golf.TrialPaces}},
		{golf.Date{Year: 2026, Month: 5, Day: 9}, golf.Trial{Club: "8 iron", Lie: golf.Fairway, Speed: golf.SlowGreen, Carry: 7.3, Total: 6, Unit: golf.TrialMetres}},
	}
	if diff := cmp.Diff(want, got); diff != "" || err != nil {
		t.Errorf("%v %s", err, diff)
	}
	for _, none := range []string{begins + "]}", begins + `],"run_out":null}`, begins + `],"run_out":[]}`} {
		if got, err := ballsOf(none); err != nil || len(got) != 0 {
			t.Errorf("%s: %v, %v", none, got, err)
		}
	}
}

func TestFaultsOfBallsAreToldWithTheirPlace(t *testing.T) {
	for _, c := range []struct{ old, new, want string }{
		{`"lie":"rough"`, `"lie":"bunker"`, `ball 2 of the run-out book: lie: bunker; allowed: fairway, rough`},
		{`"lie":"rough",`, ``, `ball 2 of the run-out book: lie: none; allowed: fairway, rough`},
		{`"day":"2026-05-02",`, ``, `ball 2 of the run-out book: day, club, green and unit are needed`},
		{`"club":"pw"`, `"club":""`, `ball 2 of the run-out book: day, club, green and unit are needed`},
		{`"club":"pw"`, `"club":"` + strings.Repeat("w", 41) + `"`, `ball 2 of the run-out book: club: a text of 41 bytes; allowed: at most 40`},
		{`"green":"fast"`, `"green":"quick"`, `ball 2 of the run-out book: green: unknown green speed "quick"; allowed: slow, medium, fast`},
		{`"carry":12`, `"carry":0`, `ball 2 of the run-out book: the carry is over 0 and at most 60 paces`},
		{`"carry":12`, `"carry":61`, `ball 2 of the run-out book: the carry is over 0 and at most 60 paces`},
		{`"total":21.5`, `"total":"21"`, `ball 2 of the run-out book: total: a text; allowed: a number`},
	} {
		_, err := ballsOf(begins + `],"run_out":[` + oneBall + "," + strings.Replace(oneBall, c.old, c.new, 1) + "]}")
		if !errors.As(err, new(*Fault)) || err.Error() != c.want {
			t.Errorf("%s: %v, want %s", c.new, err, c.want)
		}
	}
}
