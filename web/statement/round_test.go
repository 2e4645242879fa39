package statement

import (
	"net/url"
	"slices"
	"strings"
	"testing"
	"time"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/notes"
	"strokeledger/web/paths"
)

// doubled is two holes: a par, and a six that errors following errors made.
func doubled(t *testing.T) RoundInput {
	par := hole(1, 4, yd(golf.Tee, 390), yd(golf.Fairway, 150), ft(20), ft(2))
	six := hole(2, 4, yd(golf.Tee, 410), yd(golf.Recovery, 210), yd(golf.Recovery, 195), yd(golf.Fairway, 60), ft(5), ft(2))
	six.Shots[0].Club, six.Shots[3].ShortSided, six.Shots[2].About, six.Shots[1].Penalty = "driver", true, true, 0
	r := golf.Round{Date: golf.Date{Year: 2026, Month: time.May, Day: 2}, Course: "Harrow Fen", Tee: "white", Holes: []golf.Hole{par, six}}
	in := asked(t, r, 79, form.StandardUnits)
	in.Whose = paths.Whose{Player: 7, Own: true}
	return in
}

func TestRoundPage(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*RoundInput)
		want   RoundPage // its plain fields only
	}{
		{"the player's", func(*RoundInput) {}, RoundPage{At: "Harrow Fen, white tees, par 8, 800 yd", Remove: "/rounds/1/remove", Details: "/rounds/1/details", Enter: "/rounds/1/holes/1"}},
		{"a coach's", func(in *RoundInput) { in.Whose.Own, in.Of, in.Coached, in.Conditions = false, "Robin", true, "Windy." },
			RoundPage{At: "Robin. Harrow Fen, white tees, par 8, 800 yd", Conditions: "Windy.", Enter: "/rounds/1/holes/1", CanWrite: true}},
		{"one hole to go", func(in *RoundInput) {
			in.Card = append(in.Card, golf.CardHole{Number: 3, Par: 3, Length: 150 * golf.Yard})
		},
			RoundPage{At: "Harrow Fen, white tees, par 11, 950 yd", Left: "1 hole still to enter.", Remove: "/rounds/1/remove", Details: "/rounds/1/details", Enter: "/rounds/1/holes/3"}},
		{"in metres, tees unknown", func(in *RoundInput) { in.Round.Tee, in.Units = "", form.Units{Far: golf.Metres, Green: golf.Metres} },
			RoundPage{At: "Harrow Fen, par 8, 732 m", Remove: "/rounds/1/remove", Details: "/rounds/1/details", Enter: "/rounds/1/holes/1"}},
		{"nothing entered", func(in *RoundInput) { in.Round.Holes = nil },
			RoundPage{At: "Harrow Fen, white tees, par 8, 800 yd", Empty: true, Left: "2 holes still to enter.", Remove: "/rounds/1/remove", Details: "/rounds/1/details", Enter: "/rounds/1/holes/1"}},
	} {
		in := doubled(t)
		c.change(&in)
		s := NewRoundPage(layout.Page{}, in)
		got := [...]any{s.At, s.Conditions, s.Left, s.Remove, s.Details, s.Enter, s.Empty, s.CanWrite}
		want := [...]any{c.want.At, c.want.Conditions, c.want.Left, c.want.Remove, c.want.Details, c.want.Enter, c.want.Empty, c.want.CanWrite}
		if got != want {
			t.Errorf("%s: %q\nwant %q", c.name, got, want)
		}
		if s.Heading != "Statement, Saturday 2 May 2026" || s.Title != "Statement of Saturday 2 May 2026" {
			t.Errorf("%s: %q, %q", c.name, s.Heading, s.Title)
		}
	}
}

func TestSharesOfTheStatement(t *testing.T) {
	s := NewRoundPage(layout.Page{}, doubled(t))
	var names []string
	for _, l := range s.Lines {
		names = append(names, l.Name)
	}
	if want := []string{"Tee", "Approach", "Short game", "Putting"}; !slices.Equal(names, want) {
		t.Errorf("lines %q, want %q", names, want)
	}
	if tee := s.Lines[0]; tee.Shots != "2" || tee.Worst != "hole 2, shot 1" || tee.WorstAt != "#h2-1" || len(tee.All) != 0 || len(tee.Bands) != 1 || tee.Bands[0].Name != "Par 4" {
		t.Errorf("%+v", tee)
	}
	if band := s.Lines[0].Bands[0]; band.Balance != "" || len(band.All) != 2 || band.All[0].At != "#h2-1" {
		t.Errorf("%+v", band)
	}
	if s.Opening != "Target" || len(s.Strokes) != 1 || s.Strokes[0].Count+" "+s.Strokes[0].What != "10 shots" || s.Score != "10" {
		t.Errorf("%q, %v, %q", s.Opening, s.Strokes, s.Score)
	}
}

// A hole known by its score alone has a line of its own, since no part of the game
// can be charged for it.
func TestScoresAloneHaveALine(t *testing.T) {
	in := doubled(t)
	holes := append(in.Round.Holes, golf.Hole{Number: 3, Par: 4, ScoreOnly: 7, Shots: []golf.Shot{yd(golf.Tee, 380)}})
	s := NewRoundPage(layout.Page{}, asked(t, golf.Round{Holes: holes}, 79, form.StandardUnits))
	if last := s.Lines[len(s.Lines)-1]; last.Name != "Score only" || last.Shots != "" || last.Bands != nil {
		t.Errorf("%+v", last)
	}
	if h := s.Holes[2]; !h.Alone || h.Total != "A score of 7, without shots" || len(h.Shots) != 0 {
		t.Errorf("%+v", h)
	}
}

func TestDoublesOfTheStatement(t *testing.T) {
	s := NewRoundPage(layout.Page{}, doubled(t))
	if len(s.Doubles) != 1 || s.Doubles[0].Heading != "Hole 2, par 4: six" || s.Doubles[0].Kind != "compound: one error led to the next" || s.Doubles[0].Note != "" {
		t.Fatalf("%+v", s.Doubles)
	}
	if !strings.HasPrefix(s.Verdict, "One mistake led to the next, and the second one cost +") || s.Without == "" {
		t.Errorf("%q, %q", s.Verdict, s.Without)
	}
	if len(s.Trouble.Doubles) > 0 || s.Script != "" {
		t.Errorf("one double to walk through: %+v, %q", s.Trouble, s.Script)
	}
	if len(s.Missed) != 0 || len(s.MissedFew) != 1 || s.MissedFew[0].Hole != "Hole 2" || s.MissedFew[0].At != "#h2-5" || s.MissedFew[0].Length != "5 ft" {
		t.Errorf("%+v, %+v", s.Missed, s.MissedFew)
	}
	coach := doubled(t)
	coach.Of = "Robin"
	s = NewRoundPage(layout.Page{}, coach)
	if want := (Trouble{Doubles: []components.Link{{Name: "2", At: "#h2"}}, Roots: []components.Link{{Name: "hole 2, shot 1", At: "#h2-1"}}}); s.Script != "walk.js" || !slices.Equal(s.Trouble.Doubles, want.Doubles) || !slices.Equal(s.Trouble.Roots, want.Roots) {
		t.Errorf("a coach's: %+v, %q", s.Trouble, s.Script)
	}
	plain := NewRoundPage(layout.Page{}, asked(t, par3s(3), 79, form.StandardUnits))
	if len(plain.Doubles)+len(plain.Missed)+len(plain.MissedFew)+len(plain.Trouble.Doubles) > 0 || plain.Verdict != "" || plain.Script != "" {
		t.Errorf("without a double: %+v", plain)
	}
}

func TestHolesOfTheStatement(t *testing.T) {
	in := doubled(t)
	in.Notes = []notes.Note{{ID: 4, Author: "Ines", Hole: 2, Shot: 2}, {ID: 5, Author: "Robin", Mine: true, Hole: 2}, {ID: 6, Author: "Ines"}}
	h := NewRoundPage(layout.Page{}, in).Holes[1]
	if h.Heading != "Hole 2, par 4, 410 yd" || h.Total != "Holed in 6" || h.Change != "/rounds/1/holes/2" || h.Clubs != "/rounds/1/holes/2/shots" || h.Open || h.Write != nil || h.Shots[0].Write != "" {
		t.Errorf("%+v", h)
	}
	if len(h.Notes) != 2 || h.Notes[0].At != "#note-4" || h.Notes[1].Who != "You" || h.Notes[0].Place != "hole 2, shot 2" {
		t.Errorf("%+v", h.Notes)
	}
	in.Whose.Own, in.Of, in.Coached = false, "Robin", true
	h = NewRoundPage(layout.Page{}, in).Holes[1]
	if h.Change != "" || len(h.Shots) != 6 || h.Write == nil || h.Write.ID != "write-2" || h.Shots[5].Write != "/players/7/rounds/1?on=2.6#write-2" {
		t.Errorf("a coach's: %+v", h)
	}
	in.Round.Holes[1].PickedUp = true
	in.Account = asked(t, in.Round, 79, form.StandardUnits).Account
	if got := NewRoundPage(layout.Page{}, in).Holes[1].Total; got[:30] != "Picked up after 5 strokes; cou" {
		t.Errorf("%q", got)
	}
}

func TestNines(t *testing.T) {
	in := asked(t, golf.Round{Holes: par3s(18).Holes[:10]}, 79, form.StandardUnits)
	in.Card = par3s(18).Card()
	all := NewRoundPage(layout.Page{}, in).Nines
	if len(all) != 2 || all[0].Sum != "Out" || all[1].Sum != "In" || all[0].Title != "The front nine" || all[0].Unit != "Yards" || all[0].Length != "1350" || all[0].Par != "27" || all[0].Score != "27" || all[1].Score != "3" {
		t.Fatalf("%+v", all)
	}
	if c := all[1].Holes[0]; c.Number != "10" || c.At != "#h10" || c.Mark.Said != "par" || c.Mark.Text != "3" || c.Lost == "" {
		t.Errorf("%+v", c)
	}
	if c := all[1].Holes[1]; c.At != "" || c.Mark.Said != "not entered" || c.Lost != "" || c.Stack != nil {
		t.Errorf("%+v", c)
	}
	if front := NewRoundPage(layout.Page{}, asked(t, par3s(9), 79, form.StandardUnits)).Nines; len(front) != 1 {
		t.Errorf("nine holes have %d nines", len(front))
	}
	picked := par3s(1)
	picked.Holes[0].PickedUp = true
	if c := NewRoundPage(layout.Page{}, asked(t, picked, 79, form.StandardUnits)).Nines[0].Holes[0]; c.Mark.Text[0] != '(' {
		t.Errorf("picked up: %+v", c.Mark)
	}
}

// A note is written under the hole that it is about: the shot is chosen that the
// address names, or else the one at which the double began.
func TestNoteForms(t *testing.T) {
	typed := form.ParseRoundNote(url.Values{"on": {"2"}, "body": {" "}})
	round := form.ParseRoundNote(url.Values{"on": {""}, "body": {" "}})
	for _, c := range []struct {
		name         string
		own          bool
		on           string
		returned     form.Returned
		title, share string
		open         bool // the form of the hole
		chosen       string
		wrong        string // of the form of the hole
	}{
		{"the player asks", true, "", form.Returned{}, "Ask about hole 2", "Ask", false, "hole 2, shot 1: tee, 410 yd", ""},
		{"a coach writes", false, "", form.Returned{}, "Write about hole 2", "Share with Robin", false, "hole 2, shot 1: tee, 410 yd", ""},
		{"about a shot", false, "2.5", form.Returned{}, "Write about hole 2", "Share with Robin", true, "hole 2, shot 5: green, 5 ft", ""},
		{"about another hole", false, "1.1", form.Returned{}, "Write about hole 2", "Share with Robin", false, "hole 2, shot 1: tee, 410 yd", ""},
		{"refused", false, "", form.Returned{Note: &typed}, "Write about hole 2", "Share with Robin", true, "hole 2", "Not saved yet: one thing to fix."},
		{"refused, about the round", false, "", form.Returned{Note: &round}, "Write about hole 2", "Share with Robin", false, "hole 2, shot 1: tee, 410 yd", ""},
	} {
		in := doubled(t)
		in.Of, in.Coached = "Robin", true
		in.Whose.Own, in.On, in.Returned = c.own, c.on, c.returned
		s := NewRoundPage(layout.Page{}, in)
		f := s.Holes[1].Write
		i := slices.IndexFunc(f.On, func(o components.Choice) bool { return o.Chosen })
		if i < 0 || f.On[i].Name != c.chosen {
			t.Errorf("%s: %+v is chosen", c.name, f.On)
		}
		if f.Title != c.title || f.Share != c.share || f.Open != c.open || s.Holes[1].Open != c.open && c.open || f.CanHide == c.own || f.Wrong.Heading != c.wrong || f.At != "/players/7/notes" {
			t.Errorf("%s: %+v", c.name, f)
		}
		if whole := s.Write; len(whole.On) != 1+2+10 || whole.Open != (c.name == "refused, about the round") || whole.Open != (whole.Wrong.Heading != "") {
			t.Errorf("%s: the form about the round: %+v", c.name, whole)
		}
	}
}

func TestNotesStandFirstWhenTheyWait(t *testing.T) {
	question := notes.Note{ID: 1, Question: true, Author: "Robin"}
	for _, c := range []struct {
		name  string
		note  notes.Note
		own   bool
		on    string
		first bool
	}{
		{"read", notes.Note{ID: 1}, true, "", false},
		{"unread", notes.Note{ID: 1, Unread: true}, true, "", true},
		{"an open question, to the player", question, true, "", false},
		{"an open question, to a coach", question, false, "", true},
		{"one is being written under a hole", notes.Note{ID: 1}, false, "2", false},
	} {
		in := doubled(t)
		in.Whose.Own, in.On, in.Notes = c.own, c.on, []notes.Note{c.note}
		if s := NewRoundPage(layout.Page{}, in); s.NotesFirst != c.first || len(s.Notes) != 1 {
			t.Errorf("%s: %v", c.name, s.NotesFirst)
		}
	}
}

func TestNineChecks(t *testing.T) {
	in := asked(t, par3s(18), 79, form.StandardUnits)
	in.Nines = [2]int{0, 28}
	checks := nineChecks(in)
	if c := checks[0]; !c.Asked || c.Score != "27" || c.Field.Label != "Score out on your card" || c.Field.Value != "" || c.Field.Problem != "" {
		t.Errorf("%+v", c)
	}
	if c := checks[1]; c.Asked || c.Field.Value != "28" || c.Field.Problem != "The holes add up to 27. Look for a missing putt or penalty, or one too many." {
		t.Errorf("%+v", c)
	}
	card := form.ParseRoundCard(url.Values{"out": {"x"}, "conditions": {"windy"}}, form.RoundCard{})
	in.Returned.Card = &card
	s := NewRoundPage(layout.Page{}, in)
	if s.Checks[0].Field.Value != "x" || s.NinesWrong.Links[0].Text != "Score out on your card: Allowed: 1 to 200." || s.ConditionsField.Value != "windy" || s.ConditionsWrong.Heading != "" {
		t.Errorf("%+v", s)
	}
	in.Round.Holes[0].PickedUp = true
	if left := nineChecks(in); len(left) != 1 || left[0].Field.Name != "in" {
		t.Errorf("a nine with a hole picked up is checked: %+v", left)
	}
	if whole := expect.ReferenceCourse(); len(nineChecks(RoundInput{Card: whole})) != 0 {
		t.Error("nines without holes are checked")
	}
}

// The back of the folded card has room for the parts that lost most, the worst
// first.
func TestPracticeOfTheFoldedCard(t *testing.T) {
	for _, c := range []struct {
		name  string
		lines map[string]float64
		want  []string
	}{
		{"two parts", map[string]float64{"Tee": .3, "Approach": -1, "Short game": .2, "Putting": 2.7, scoreOnly: 4}, []string{"Putting, 2.7 lost", "Tee, 0.3 lost", "Something else"}},
		{"four parts", map[string]float64{"Tee": 1, "Approach": 2, "Short game": 3, "Putting": 4}, []string{"Putting, 4.0 lost", "Short game, 3.0 lost", "Approach, 2.0 lost"}},
	} {
		var got []string
		for _, space := range practiceOf(c.lines) {
			got = append(got, space.Name)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
	f := NewFoldPage(layout.Page{}, doubled(t))
	if f.Course != "Harrow Fen" || f.Back != "/rounds/1" || f.BodyClass != "fold-page" || f.Script != "" || len(f.Practice) != practiceSpaces {
		t.Errorf("%+v", f)
	}
	if empty := NewFoldPage(layout.Page{}, RoundInput{Units: form.StandardUnits}); !empty.Empty || empty.Practice != nil {
		t.Errorf("without a hole: %+v", empty)
	}
}
