package figures

import (
	"testing"

	"strokeledger/analysis/account"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/web/form"
	"strokeledger/web/words"
)

// rowsOf are the rows of a hole, judged by a 79 golfer.
func rowsOf(t *testing.T, hole golf.Hole) []ShotRow {
	t.Helper()
	lens, err := expect.Level(79)
	if err != nil {
		t.Fatal(err)
	}
	a := account.Of(golf.Round{Holes: []golf.Hole{hole}}, account.Terms{Lens: lens, Fixed: lens, Boundary: golf.StandardBoundary})
	d := account.Double{}
	if len(a.Doubles) > 0 {
		d = a.Doubles[0]
	}
	var rows []ShotRow
	for k := range a.Holes[0].Shots {
		rows = append(rows, NewShotRow(ShotInput{form.StandardUnits, hole, a.Holes[0], k + 1, d, ""}))
	}
	return rows
}

// A short side that was not measured says by what it is judged: the player's book,
// which a coach reads about by name, or the model.
func TestTheShortSideIsJudgedBy(t *testing.T) {
	short := shot(golf.Rough, 10)
	short.ShortSided = true
	with := func(change func(*golf.Shot)) golf.Shot {
		s := short
		change(&s)
		return s
	}
	own := func(s *golf.Shot) { s.OwnRun, s.OwnRunKnown = 9*golf.Yard, true }
	metres := form.Units{Far: golf.Metres, Green: golf.Metres}
	for _, c := range []struct {
		shot  golf.Shot
		of    string
		units form.Units
		want  string
	}{
		{short, "", form.StandardUnits, "short side by the model’s run-out: 5.5 yd from the rough, half of it green"},
		{short, "Bea", form.StandardUnits, "short side by the model’s run-out: 5.5 yd from the rough, half of it green"},
		{with(own), "", form.StandardUnits, "short side by your run-out book: 9 yd from the rough, half of it green"},
		{with(own), "Ines", form.StandardUnits, "short side by Ines’ run-out book: 9 yd from the rough, half of it green"},
		{with(own), "", metres, "short side by your run-out book: 8.2 m from the rough, half of it green"},
		{with(func(s *golf.Shot) { s.OwnRunKnown = true }), "", form.StandardUnits, "short side by your run-out book: the ball stops where it lands, so the green is long enough"},
		{with(func(s *golf.Shot) { s.Lie = golf.Bunker }), "", form.StandardUnits, "short side by the model’s run-out: 2.8 yd from sand, half of it green"},
		{with(func(s *golf.Shot) { s.Lie = golf.Recovery }), "", form.StandardUnits, "short side by the model’s run-out: 5.5 yd from there, half of it green"},
		{with(func(s *golf.Shot) { s.GreenKnown, s.GreenToWork = true, 4*golf.Yard }), "", form.StandardUnits, ""},
		{shot(golf.Rough, 10), "", form.StandardUnits, ""},
	} {
		in := ShotInput{Units: c.units, Of: c.of, Number: 1, Hole: golf.Hole{Shots: []golf.Shot{c.shot}}, Worth: account.Hole{Shots: []account.Shot{{}}}}
		if got := NewShotRow(in).Said; got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

func shot(lie golf.Lie, distance float64) golf.Shot {
	return golf.Shot{Lie: lie, Distance: lie.Unit().Of(distance)}
}

// What else is to be known of a shot: that putts count together where one is
// marked, and that the trouble of a plain way out is charged to the shot before.
func TestSaid(t *testing.T) {
	fourPutts := rowsOf(t, golf.Hole{Number: 4, Par: 4, Shots: []golf.Shot{shot(golf.Tee, 400), shot(golf.Fairway, 150), shot(golf.Green, 42), shot(golf.Green, 5), shot(golf.Green, 4), shot(golf.Green, 1)}})
	for k, row := range fourPutts {
		if marked := row.Tag != ""; marked != (k == 3) || marked != (row.Said != "") {
			t.Errorf("shot %d: %q, %q", k+1, row.Tag, row.Said)
		}
	}
	if sum := fourPutts[2].lost + fourPutts[3].lost + fourPutts[4].lost + fourPutts[5].lost; fourPutts[3].Said != "the four putts of this green count together: "+words.Signed(sum, 2) {
		t.Errorf("%q", fourPutts[3].Said)
	}
	out := rowsOf(t, golf.Hole{Number: 5, Par: 4, Shots: []golf.Shot{shot(golf.Tee, 370), shot(golf.Recovery, 175), shot(golf.Fairway, 105), shot(golf.Green, 24), shot(golf.Green, 2)}})
	for k, want := range []string{"", "the trouble is charged to the shot before", "", "", ""} {
		if out[k].Said != want {
			t.Errorf("shot %d: %q, lost %s", k+1, out[k].Said, out[k].Lost)
		}
	}
	tried := rowsOf(t, golf.Hole{Number: 6, Par: 4, Shots: []golf.Shot{shot(golf.Tee, 410), shot(golf.Recovery, 210), shot(golf.Recovery, 195), shot(golf.Fairway, 60), shot(golf.Green, 1)}})
	if tried[1].Said != "" || tried[1].Tag != "error" {
		t.Errorf("a try that stayed in the trees: %+v", tried[1])
	}
	leak := rowsOf(t, golf.Hole{Number: 7, Par: 4, Shots: []golf.Shot{shot(golf.Tee, 450), shot(golf.Rough, 265), shot(golf.Rough, 78), shot(golf.Fairway, 20), shot(golf.Green, 22), shot(golf.Green, 2)}})
	marked := 0
	for _, row := range leak {
		if row.Tag == "costliest" {
			marked++
		} else if row.Tag != "" {
			t.Errorf("a leak has %q", row.Tag)
		}
	}
	if marked != 1 {
		t.Errorf("%d shots of a leak are marked", marked)
	}
}
