package practice

import (
	"net/url"
	"strings"
	"testing"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// bookOf is the input of a page with balls from the fairway to a medium green, by
// club, and a chip that is asked about; none when distance is empty.
func bookOf(t *testing.T, whose paths.Whose, units form.Units, distance, edge string, clubs map[string][]float64) RunOutInput {
	t.Helper()
	in := RunOutInput{Whose: whose, Name: "Bea", Units: units, Today: today, Entered: "page"}
	ask := analysis.RunOutInput{Target: 79}
	for _, club := range []string{"8i", "pw", "sw"} {
		pairs := clubs[club]
		for i := 0; i < len(pairs); i += 2 {
			trial := golf.Trial{Club: club, Lie: golf.Fairway, Speed: golf.MediumGreen, Carry: pairs[i], Total: pairs[i+1], Unit: golf.TrialYards}
			in.Trials = append(in.Trials, BookTrial{ID: int64(len(in.Trials) + 1), Day: today, Trial: trial})
			ask.Trials = append(ask.Trials, trial)
		}
	}
	if distance != "" {
		in.Chip = form.ParseChip(url.Values{"distance": {distance}, "edge": {edge}, "lie": {"fairway"}, "speed": {"medium"}, "slope": {"level"}}, units.Far)
	}
	ask.Chip = in.Chip.Ahead()
	var err error
	if in.RunOut, err = analysis.NewEngine().RunOut(ask); err != nil {
		t.Fatal(err)
	}
	return in
}

// wedge is the pair of common practice: 12 stops at 21, 13 at 23.
var wedge = map[string][]float64{"pw": {12, 21, 13, 23}}

func TestWhatTheBookSays(t *testing.T) {
	yards, metres := form.StandardUnits, form.Units{Far: golf.Metres, Green: golf.Metres}
	for _, c := range []struct {
		name        string
		in          RunOutInput
		place, lede string
	}{
		{"empty", bookOf(t, own, yards, "", "", nil), "", "No trials yet. Chip a few balls, and note for each where it landed and where it stopped."},
		{"a coach's view, empty", bookOf(t, pupil, yards, "", "", nil), "Bea.", "No trials yet."},
		{"nothing asked", bookOf(t, own, yards, "", "", wedge), "2 trials, the last of 26 Nov 2026.", "How far is the hole, and how much of it is green? The book says which club, and where to land it."},
		{"asked wrongly", bookOf(t, own, yards, "23", "30", wedge), "2 trials, the last of 26 Nov 2026.", "Not worked out yet."},
		{"a chip", bookOf(t, own, yards, "23", "17", wedge), "2 trials, the last of 26 Nov 2026.", "23 yd with 17 yd of green: pw, landed at 13.5 yd. It runs 9.5 yd."},
		{"in metres, for a coach", bookOf(t, pupil, metres, "20", "15", wedge), "Bea. 2 trials, the last of 26 Nov 2026.", "20 m with 15 m of green: pw, landed at 11.3 m. It runs 8.7 m."},
		{"too little green", bookOf(t, own, yards, "23", "4", wedge), "2 trials, the last of 26 Nov 2026.", "23 yd with 4 yd of green: no club of the book lands on the green and stops by the hole."},
		{"too near", bookOf(t, own, yards, "8", "7", wedge), "2 trials, the last of 26 Nov 2026.", "8 yd with 7 yd of green: no club of the book lands on the green and stops by the hole."},
	} {
		p := NewRunOutPage(layout.Page{}, c.in)
		if p.Place != c.place || p.Lede != c.lede {
			t.Errorf("%s: %q, %q", c.name, p.Place, p.Lede)
		}
		if (p.Add != nil) != c.in.Whose.Own || (len(p.Book) > 0) != (len(c.in.Trials) > 0) || len(p.Book) != len(p.Card) {
			t.Errorf("%s: %+v", c.name, p)
		}
		var html strings.Builder
		if err := p.View().Render(t.Context(), &html); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

func TestClubsOfAChip(t *testing.T) {
	in := bookOf(t, own, form.StandardUnits, "23", "17", map[string][]float64{"8i": {7, 21, 8, 25, 9, 26, 10, 31, 12, 34}, "pw": wedge["pw"], "sw": {8, 9, 8, 10, 8, 9}})
	table := NewRunOutPage(layout.Page{}, in).Answer
	doubts := map[string]string{}
	for _, r := range table.Rows {
		doubts[r.Club] = r.Doubt + r.Cannot
		if r.Cannot == "" && (r.Land == "" || r.Paces == "" || r.Ends == "" || !strings.Contains(r.Picture.Label, "eight balls in ten end between")) {
			t.Errorf("%+v", r)
		}
	}
	for club, want := range map[string]string{"8i": "would have to land at 7.5 yd; the green begins at 6 yd, and 2 yd of it are needed", "pw": "from two trials only", "sw": "no trial near that carry"} {
		if doubts[club] != want {
			t.Errorf("%s: %q", club, doubts[club])
		}
	}
	if want := "Played by a golfer who averages 79, the target, until there are rounds enough to know the level."; table.By != want {
		t.Errorf("%q", table.By)
	}
	in.RunOut.Chip.Known, in.RunOut.Chip.ShortGame, in.RunOut.Chip.Putting, in.Whose = true, 84.4, 79.6, pupil
	if want := "Played with Bea’s short game of today, an 84, and putted with Bea’s putting, an 80."; in.by() != want {
		t.Errorf("%q", in.by())
	}
}

func TestPagesOfTheBook(t *testing.T) {
	in := bookOf(t, own, form.StandardUnits, "", "", map[string][]float64{
		"8i": {7, 21, 8, 25, 9, 26, 10, 31, 12, 34}, "pw": {12, 21}, "sw": {12, 16, 12, 17, 12, 16, 12, 16, 12, 16, 12, 17, 12, 16, 12, 17, 12, 16, 12, 16, 12, 16, 12, 17, 12, 16, 12, 10}})
	p := NewRunOutPage(layout.Page{}, in)
	rows := map[string]BookRow{}
	for _, r := range p.Book[0].Rows {
		rows[r.Club] = r
	}
	if r := rows["8i"]; r.Grows != "by 1.6 yd for each yard of carry" || r.Trials != "5" || r.Runs != "22.7 yd" {
		t.Errorf("%+v", r)
	}
	if r := rows["pw"]; r.Next != "not known from one" || r.Grows != "not known from fewer than five trials: the mean" {
		t.Errorf("%+v", r)
	}
	if r := rows["sw"]; r.FarOff != "one trial far off, kept" || r.Grows != "not known from carries so close together: the mean" {
		t.Errorf("%+v", r)
	}
	if first := p.Book[0].Trials[0]; first.Runs != "−2 yd" || !first.FarOff || first.Lengths != "12 and 10 yd" || first.Remove != own.RemoveTrial(20) {
		t.Errorf("%+v", first)
	}
	if want := "8i, carry and total in yd: 7 and 21, 8 and 25, 9 and 26, 10 and 31, 12 and 34."; p.Book[0].Charts[0].Picture.Label != want {
		t.Errorf("%q", p.Book[0].Charts[0].Picture.Label)
	}
	card := p.Card[0]
	if got := strings.Join(card.Rows[0].Lands, " "); card.Rows[0].Club != "8i" || got != "– 5 6 8 9 11" {
		t.Errorf("%s: %s", card.Rows[0].Club, got)
	}
}

// A long book lists its latest balls, and says that there are more.
func TestALongBook(t *testing.T) {
	var many []float64
	for i := range 70 {
		many = append(many, 12, 20+float64(i%3))
	}
	p := NewRunOutPage(layout.Page{}, bookOf(t, own, form.StandardUnits, "", "", map[string][]float64{"pw": many}))
	if s := p.Book[0]; len(s.Trials) != 60 || s.Earlier != "The latest 60 of 70; the file has all of them." || !strings.HasSuffix(s.Charts[0].Picture.Label, "58 more.") {
		t.Errorf("%d, %q, %q", len(s.Trials), s.Earlier, s.Charts[0].Picture.Label)
	}
}

func TestBallsThatWereRefused(t *testing.T) {
	in := bookOf(t, own, form.StandardUnits, "", "", wedge)
	typed := form.ParseTrials(url.Values{"pairs": {"12"}, "day": {"today"}})
	in.Typed, in.Clubs = &typed, []string{"pw"}
	f := NewRunOutPage(layout.Page{}, in).Add
	if len(f.Wrong.Links) != 6 || f.Pairs.Value != "12" || f.Club.List != "clubs" {
		t.Errorf("%+v", f)
	}
	for _, row := range [][]string{FileRow(in.Trials[0]), FileHead} {
		if len(row) != 9 {
			t.Errorf("%v", row)
		}
	}
	in.Trials[0].Club = "=1+1"
	if FileRow(in.Trials[0])[0] != "'=1+1" {
		t.Error("a spreadsheet would run the name of a club")
	}
}
