package words

import (
	"testing"

	"strokeledger/analysis/account"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/form"
)

// inMetres are the units of a player who reads metres, on greens too.
var inMetres = form.Units{Far: golf.Metres, Green: golf.Metres}

func TestUnit(t *testing.T) {
	for unit, want := range map[golf.Unit]string{golf.Yards: "Yards", golf.Metres: "Metres", golf.Feet: "Feet"} {
		if got := Unit(unit); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

func TestSpansHaveNames(t *testing.T) {
	for text, want := range map[string]string{
		"2026-05": "May", "2026": "2026", "last10": "the last ten rounds", "before10": "the ten before", "..": "all rounds",
		"2026-05-03..2026-06-14": "3 May 2026 to 14 Jun 2026", "..2026-06-14": "up to 14 Jun 2026", "2026-05-03..": "from 3 May 2026",
	} {
		span, err := golf.ParseSpan(text)
		if err != nil {
			t.Fatal(err)
		}
		if got := Span(span, false); got != want {
			t.Errorf("%s: %q, want %q", text, got, want)
		}
	}
	if got := Span(golf.Month(2025, 5), true); got != "May 2025" {
		t.Errorf("%q", got)
	}
}

func TestLevels(t *testing.T) {
	for _, c := range []struct {
		level compare.Level
		text  string
	}{
		{compare.Level{Value: 79.4}, "79"},
		{compare.Level{Value: 79.6}, "80"},
		{compare.Level{Value: 84}, "84"},
		{compare.Level{Value: 108}, "108"},
		{compare.Level{Value: 68, Past: compare.Better}, "better than 68"},
		{compare.Level{Value: 110, Past: compare.Worse}, "above 110"},
	} {
		if got := Level(c.level); got != c.text {
			t.Errorf("%q, want %q", got, c.text)
		}
	}
	p := compare.PlaysTo{Low: compare.Level{Value: 76.6}, High: compare.Level{Value: 110, Past: compare.Worse}}
	if got := LevelRange(p); got != "77 to above 110" {
		t.Errorf("%q", got)
	}
}

func TestPartsOfTheGame(t *testing.T) {
	for c, want := range map[golf.Category][2]string{
		golf.TeeShots:  {"game off the tee", "off the tee"},
		golf.Approach:  {"approach", "on the approach"},
		golf.ShortGame: {"short game", "in the short game"},
		golf.Putting:   {"putting", "putting"},
	} {
		if got := [2]string{PartName(c), Where(c)}; got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

func TestDistance(t *testing.T) {
	for _, c := range []struct {
		lie   golf.Lie
		d     golf.Distance
		units form.Units
		want  string
	}{
		{golf.Fairway, golf.Yards.Of(155), form.StandardUnits, "155 yd"},
		{golf.Fairway, golf.Yards.Of(155), inMetres, "142 m"},
		{golf.Rough, golf.Metres.Of(142.5), inMetres, "142.5 m"},
		{golf.Bunker, golf.Yards.Of(10), inMetres, "9.1 m"},
		{golf.Green, golf.Feet.Of(20), form.StandardUnits, "20 ft"},
		{golf.Green, golf.Feet.Of(20), inMetres, "6.1 m"},
	} {
		if got := Distance(c.lie, c.d, c.units); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	if y, m := TotalLength(golf.Yards.Of(6012), form.StandardUnits), TotalLength(golf.Yards.Of(6012), inMetres); y != "6,012 yd" || m != "5,497 m" {
		t.Errorf("%q, %q", y, m)
	}
}

func TestBand(t *testing.T) {
	for _, c := range []struct {
		band  account.Band
		units form.Units
		want  string
	}{
		{account.Band{Category: golf.TeeShots, Par: 5}, form.StandardUnits, "Par 5"},
		{account.Band{Category: golf.Approach, Low: 50 * golf.Yard, High: 100 * golf.Yard}, form.StandardUnits, "50 to 100 yd"},
		{account.Band{Category: golf.Approach, Low: 50 * golf.Yard, High: 100 * golf.Yard}, inMetres, "45.7 to 91.4 m"},
		{account.Band{Category: golf.Approach, Low: 200 * golf.Yard}, form.StandardUnits, "Over 200 yd"},
		{account.Band{Category: golf.Putting, Low: 40 * golf.Foot}, inMetres, "Over 12.2 m"},
		{account.Band{Category: golf.Putting, Low: 3 * golf.Foot, High: 6 * golf.Foot}, form.StandardUnits, "3 to 6 ft"},
		{account.Band{Category: golf.ShortGame, Lie: golf.Rough, High: 10 * golf.Yard}, inMetres, "Rough, 0 to 9.1 m"},
	} {
		if got := Band(c.band, c.units); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
