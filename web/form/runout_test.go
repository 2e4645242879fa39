package form

import (
	"net/url"
	"slices"
	"strings"
	"testing"

	"strokeledger/analysis/golf"
)

func trialForm(pairs string) url.Values {
	return url.Values{"pairs": {pairs}, "club": {" pitching  wedge "}, "lie": {"rough"}, "green": {"fast"}, "unit": {"paces"}, "day": {"2026-05-02"}, "entered": {"x"}}
}

func TestTrialsAreRead(t *testing.T) {
	for _, text := range []string{"12 21, 13.5 23", "12-21;13.5-23", " 12/21 , 13.5 23,", "12 21\r\n13.5 23"} {
		f := ParseTrials(trialForm(text))
		want := []golf.Trial{
			{Club: "pitching wedge", Lie: golf.Rough, Speed: golf.FastGreen, Carry: 12, Total: 21, Unit: golf.TrialPaces},
			{Club: "pitching wedge", Lie: golf.Rough, Speed: golf.FastGreen, Carry: 13.5, Total: 23, Unit: golf.TrialPaces},
		}
		if !f.Sound() || !slices.Equal(f.Pairs.Value, want) {
			t.Errorf("%q: %+v", text, f.Pairs)
		}
	}
	again := ParseTrials(trialForm(WritePairs(ParseTrials(trialForm("12 21, 13.5 23")).Pairs.Value)))
	if again.Pairs.Text != "12 21, 13.5 23" {
		t.Errorf("written as %q", again.Pairs.Text)
	}
}

// What is wrong is said by the place of the ball, with the line as it was typed.
func TestTrialsThatAreRefused(t *testing.T) {
	for text, says := range map[string][]string{
		"":                              {"Needed: carry and total"},
		" , ":                           {"Needed: carry and total"},
		"12 21, 13, 14 24":              {"Ball 2, “13”: two numbers"},
		"12,5 21":                       {"Ball 1, “12”", "write a decimal with a point"},
		"12 21, 13 x, 0 5":              {"Ball 2, “13 x”", "Ball 3, “0 5”: the carry is over 0"},
		"12 101":                        {"Ball 1", "the total is over 0 and at most 100 paces"},
		"12 21 30":                      {"Ball 1, “12 21 30”"},
		strings.Repeat("12 21,", 51):    {"at most 50 balls"},
		strings.Repeat("1 2 ", 400):     {"at most 50 balls"},
		"12 1e5, 12 NaN, 12 Inf, 12 +4": {"Ball 1", "Ball 2", "Ball 3", "Ball 4"},
	} {
		f := ParseTrials(trialForm(text))
		if f.Sound() || len(f.Pairs.Value) > 0 || f.Pairs.Text != strings.TrimSpace(text) {
			t.Errorf("%.30q: %+v", text, f.Pairs)
		}
		for _, part := range says {
			if !strings.Contains(f.Pairs.Problem, part) {
				t.Errorf("%.30q: %q is not in %q", text, part, f.Pairs.Problem)
			}
		}
	}
	for field := range trialForm("") {
		if field == "entered" {
			continue
		}
		v := trialForm("12 21")
		v.Set(field, "")
		if ParseTrials(v).Sound() {
			t.Errorf("an empty %s is allowed", field)
		}
	}
}

func TestChipsAhead(t *testing.T) {
	ask := func(distance, edge string) url.Values {
		return url.Values{"distance": {distance}, "edge": {edge}, "lie": {"fairway"}, "speed": {"slow"}, "slope": {"downhill"}}
	}
	c := ParseChip(ask("23", "17,5"), golf.Yards)
	if a := c.Ahead(); a == nil || a.Distance != 23*golf.Yard || a.Green != 17.5*golf.Yard || a.Lie != golf.Fairway || a.Speed != golf.SlowGreen || a.Slope != golf.Downhill {
		t.Errorf("%+v", c)
	}
	if c := ParseChip(ask("20", "10"), golf.Metres); c.Ahead().Distance != 20*golf.Metre {
		t.Errorf("%+v", c)
	}
	if c := ParseChip(url.Values{}, golf.Yards); c.Asked || !c.Sound() || c.Ahead() != nil {
		t.Errorf("nothing asked: %+v", c)
	}
	for distance, wrong := range map[string]string{"": "10", "61": "10", "0": "0", "23": "23", "22": "", "21": "-1"} {
		if c := ParseChip(ask(distance, wrong), golf.Yards); c.Sound() || c.Ahead() != nil {
			t.Errorf("%s and %s are allowed", distance, wrong)
		}
	}
	v := ask("23", "17")
	v.Set("lie", "bunker")
	v.Set("slope", "steep")
	if c := ParseChip(v, golf.Yards); c.Lie.Sound() || c.Slope.Sound() {
		t.Errorf("%+v", c)
	}
}
