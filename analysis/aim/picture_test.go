package aim

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

var inf = math.Inf(1)

// dogleg is a hole with a row of every kind.
func dogleg() Picture {
	return Picture{
		Par: 4, Length: 417,
		Bends:   []Bend{{260, 10}},
		Fairway: []Width{{165, 17, 16}, {230, 15, 17}, {280, 12, 14}, {392, 14, 13}},
		Zones: []Zone{
			{Out, 0, 222, -inf, -34}, {Out, 222, 470, -inf, -16.5}, {Trees, 120, 214, 40, inf},
			{Bunker, 222, 252, 13, 27}, {Water, -inf, inf, 60, inf}, {Rough, 300, 310, -inf, inf},
		},
		Green: Green{402, 26, 29, -15},
	}
}

func TestFileAndRowsComeBackAsTheyWere(t *testing.T) {
	p := dogleg()
	got, err := Read(p.Write())
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(p, got); diff != "" {
		t.Errorf("file: %s", diff)
	}
	got, faults := ParseRows(p.Par, p.Length, p.Rows())
	if diff := cmp.Diff(p, got); diff != "" || faults != nil {
		t.Errorf("rows: %s %v\n%s", diff, faults, p.Rows())
	}
	const want = `bend 260: 10 right
fairway 165: 17 left, 16 right
fairway 230: 15 left, 17 right
fairway 280: 12 left, 14 right
fairway 392: 14 left, 13 right
out 0 to 222, across open to -34
out 222 to 470, across open to -16.5
trees 120 to 214, across 40 to open
bunker 222 to 252, across 13 to 27
water open to open, across 60 to open
rough 300 to 310
green 402: 26 wide, 29 deep, turned -15
`
	if diff := cmp.Diff(want, p.Rows()); diff != "" {
		t.Error(diff)
	}
}

// drawn is any picture that Check allows.
func drawn() *rapid.Generator[Picture] {
	return rapid.Custom(func(t *rapid.T) Picture {
		number := func(low, high float64, name string) float64 {
			return hundredth(rapid.Float64Range(low, high).Draw(t, name))
		}
		p := Picture{Par: rapid.IntRange(3, 6).Draw(t, "par"), Length: number(90, 640, "length")}
		for i := range rapid.IntRange(0, 3).Draw(t, "bends") {
			p.Bends = append(p.Bends, Bend{hundredth(float64(100*i) + number(10, 90, "at")), number(-59, 59, "degrees")})
		}
		if n := rapid.IntRange(0, 5).Draw(t, "points"); n > 1 {
			for i := range n {
				p.Fairway = append(p.Fairway, Width{hundredth(float64(80*i) + number(0, 70, "at")), number(0, 40, "left"), number(0, 40, "right")})
			}
		}
		end := func(open, low, high float64) float64 {
			if rapid.Bool().Draw(t, "open") {
				return open
			}
			return number(low, high, "end")
		}
		for range rapid.IntRange(0, 6).Draw(t, "zones") {
			p.Zones = append(p.Zones, Zone{rapid.SampledFrom(ZoneKinds).Draw(t, "kind"),
				end(-inf, -100, 200), end(inf, 201, 700), end(-inf, -200, 0), end(inf, .01, 200)})
		}
		if rapid.Bool().Draw(t, "green") {
			p.Green = Green{p.Length - number(10, 20, "front"), number(8, 40, "wide"), number(8, 40, "deep"), number(-90, 90, "turn")}
			p.Green.Front = hundredth(p.Green.Front)
		}
		return p
	}).Filter(func(p Picture) bool { return p.Check() == nil })
}

func TestEveryPictureComesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawn().Draw(t, "picture")
		got, err := Read(p.Write())
		if err != nil || !cmp.Equal(p, got) {
			t.Fatalf("file: %v %s", err, cmp.Diff(p, got))
		}
		got, faults := ParseRows(p.Par, p.Length, p.Rows())
		if faults != nil || !cmp.Equal(p, got) {
			t.Fatalf("rows: %v %s", faults, cmp.Diff(p, got))
		}
	})
}

func TestRowsReadAsPeopleTypeThem(t *testing.T) {
	got, faults := ParseRows(4, 417, "Green 402 26 29\r\n\nFAIRWAY 280 12, 14\n  fairway 165: 17 left 16 right\nwater 100 to Open , across −40 to -15\nbend 200 12 left")
	want := Picture{Par: 4, Length: 417, Bends: []Bend{{200, -12}}, Fairway: []Width{{165, 17, 16}, {280, 12, 14}},
		Zones: []Zone{{Water, 100, inf, -40, -15}}, Green: Green{402, 26, 29, 0}}
	if diff := cmp.Diff(want, got); diff != "" || faults != nil {
		t.Error(diff, faults)
	}
}

func TestFaultsOfRowsSayWhere(t *testing.T) {
	for row, says := range map[string]string{
		"bunkr 404 to 418, across 13 to 22":     `line 2: no kind "bunkr"`,
		"water 260 to 180, across 1 to 2":       "line 2: along from 260 to 180",
		"water 180 to 260, across -10 to -15":   "line 2: across from -10 to -15",
		"water 180 to 260, across -900 to -15":  "line 2: across, the first end is -900; allowed: -500 to 500",
		"water 180":                             "line 2: no stretch",
		"water 180 to x":                        `line 2: "x" is not a number`,
		"fairway 170: 18 left":                  "line 2: a number is missing",
		"fairway 170: 18 left, 15 right, 3":     `line 2: "3" is too much`,
		"fairway 170: -1 left, 15 right":        "line 2: left is -1; allowed: 0 to 150",
		"bend 0: 10 right":                      "line 2: at 0 yd",
		"bend 200: 100 right":                   "line 2: the turn is 100; allowed: -90 to 90",
		"bend 200: nan right":                   `line 2: "nan" is not a number`,
		"bend 200: 0x1p4 right":                 `line 2: "0x1p4" is not a number`,
		"green 419: 26 wide":                    "line 2: a number is missing",
		"green 100: 26 wide, 26 deep":           "line 2: its middle is 113 yd from the tee",
		"green 419: 26 wide, 2 deep":            "line 2: the depth is 2; allowed: 4 to 120",
		"green 419: 26 wide, 26 deep, turned x": `line 2: "x" is not a number`,
		strings.Repeat("x", 300):                "line 2: a row of 300 bytes",
	} {
		_, faults := ParseRows(4, 432, "\n"+row)
		if faults == nil || !strings.HasPrefix(faults[0].String(), says) {
			t.Errorf("%s: %v, want %s", row, faults, says)
		}
	}
	_, faults := ParseRows(4, 432, "green 419 26 26\ngreen 419 26 26\nfairway 200 1 1\nfairway 100 1 1\nfairway 200 2 2")
	if got := faults.Error(); !strings.Contains(got, "line 2: a second green") || !strings.Contains(got, "line 5: at 200 yd") {
		t.Error(got)
	}
	if _, faults := ParseRows(9, 0, strings.Repeat("\n", MaxBytes+1)); len(faults) != 1 {
		t.Error(faults)
	}
	if _, faults := ParseRows(9, 0, ""); len(faults) != 2 {
		t.Error(faults)
	}
}

const soundFile = `{"version": 1, "par": 4, "length": 432, "bends": [], "fairway": [[170, 18, 15], [420, 15, 18]],
	"zones": [{"kind": "out", "from": 0, "to": 480, "across": [45, null]}],
	"green": {"front": 419, "width": 26, "depth": 26, "turn": 0}}`

func TestTheFileOfTheContractIsRead(t *testing.T) {
	p, err := Read([]byte(soundFile))
	want := Picture{Par: 4, Length: 432, Fairway: []Width{{170, 18, 15}, {420, 15, 18}},
		Zones: []Zone{{Out, 0, 480, 45, inf}}, Green: Green{419, 26, 26, 0}}
	if diff := cmp.Diff(want, p); diff != "" || err != nil {
		t.Error(diff, err)
	}
}

func TestHostileFilesAreRefused(t *testing.T) {
	whole := func(change, to string) string {
		if !strings.Contains(soundFile, change) {
			t.Fatalf("%q is not in the file", change)
		}
		return strings.Replace(soundFile, change, to, 1)
	}
	for _, c := range []struct{ file, says string }{
		{"", "ends too early"},
		{"[]", "allowed: an object"},
		{"{", "ends too early"},
		{"\x00", "not JSON"},
		{soundFile + "{}", "something comes after"},
		{strings.Repeat("[", 20000), "allowed: an object"},
		{strings.Repeat(" ", MaxBytes+1), "bytes; allowed"},
		{whole(`"par": 4`, `"par": 4, "par": 4`), `"par" comes twice`},
		{whole(`"par": 4`, `"par": 4.5`), "par: 4.5; allowed: a whole number"},
		{whole(`"par": 4`, `"par": "4"`), "par: a whole number: a text here"},
		{whole(`"par": 4`, `"par": 7`), "par: 7; allowed: 3 to 6"},
		{whole(`"par": 4, `, ``), "par: missing"},
		{whole(`"version": 1`, `"version": 2`), "version: allowed: 1"},
		{whole(`"length": 432`, `"length": 1e400`), "length: yards: the number 1e400"},
		{whole(`"length": 432`, `"length": 701`), "length: 701; allowed"},
		{whole(`"length": 432`, `"colour": "red", "length": 432`), `unknown field "colour"`},
		{whole(`[170, 18, 15]`, `[170, 18]`), "fairway, row 1: 2 numbers; allowed: 3"},
		{whole(`[170, 18, 15]`, `[170, 18, 15, 1]`), "fairway, row 1: more than 3 numbers"},
		{whole(`[170, 18, 15]`, `[170, 18, null]`), "fairway, row 1: a number: nothing here"},
		{whole(`[420, 15, 18]`, `[170, 15, 18]`), "fairway, row 2: at 170 yd"},
		{whole(`[], "fairway"`, `[[10,1],[20,1],[30,1],[40,1],[50,1],[60,1],[70,1]], "fairway"`), "bends: more than 6 rows"},
		{whole(`[], "fairway"`, `[[10,90],[20,90],[30,1]], "fairway"`), "bends: 181 degrees in all"},
		{whole(`"kind": "out"`, `"kind": "lava"`), `zones, row 1: no kind "lava"`},
		{whole(`"kind": "out"`, `"kind": 3`), "zones, row 1: kind: the number 3"},
		{whole(`"kind": "out", `, ``), "zones, row 1: no kind"},
		{whole(`"kind": "out"`, `"kind": "out", "deep": 3`), `zones, row 1: unknown field "deep"`},
		{whole(`"from": 0`, `"from": 490`), "zones, row 1: along from 490 to 480"},
		{whole(`[45, null]`, `[45, 45]`), "zones, row 1: across from 45 to 45"},
		{whole(`[45, null]`, `[1e9, null]`), "zones, row 1: across, the first end is 1000000000"},
		{whole(`"width": 26`, `"width": 1000`), "green: the width is 1000; allowed: 4 to 120"},
		{whole(`"width": 26, `, ``), "green: front, width or depth is missing"},
		{whole(`"turn": 0`, `"slope": 0`), `green: unknown field "slope"`},
		{whole(`"front": 419, "width": 26, "depth": 26`, `"front": 0, "width": 0, "depth": 0`), "green: the width is 0"},
		{whole(`"front": 419`, `"front": 219`), "green: its middle is 232 yd from the tee"},
	} {
		_, err := Read([]byte(c.file))
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%.80s: %v, want %s", c.file, err, c.says)
		}
	}
}

// A picture that was made in a program is held to the same rules.
func TestNumbersThatAreNone(t *testing.T) {
	for name, change := range map[string]func(*Picture){
		"length":  func(p *Picture) { p.Length = math.NaN() },
		"bend":    func(p *Picture) { p.Bends[0].Degrees = math.NaN() },
		"at":      func(p *Picture) { p.Bends[0].At = inf },
		"fairway": func(p *Picture) { p.Fairway[1].Left = math.NaN() },
		"order":   func(p *Picture) { p.Fairway[1].At = math.NaN() },
		"zone":    func(p *Picture) { p.Zones[0].Left = math.NaN() },
		"open":    func(p *Picture) { p.Zones[0].Left = inf },
		"kind":    func(p *Picture) { p.Zones[0].Kind = OnGreen },
		"green":   func(p *Picture) { p.Green.Turn = math.NaN() },
		"wide":    func(p *Picture) { p.Green.Width = inf },
		"one":     func(p *Picture) { p.Fairway = p.Fairway[:1] },
		"many":    func(p *Picture) { p.Zones = make([]Zone, MaxZones+1) },
	} {
		p := dogleg()
		change(&p)
		if p.Check() == nil {
			t.Errorf("%s: no fault", name)
		}
	}
	if faults := dogleg().Check(); faults != nil {
		t.Error(faults)
	}
}

func FuzzRead(f *testing.F) {
	f.Add([]byte(soundFile))
	f.Add(dogleg().Write())
	f.Fuzz(func(t *testing.T, data []byte) {
		p, err := Read(data)
		if err != nil {
			if err.Error() == "" {
				t.Error("a fault without a word")
			}
			return
		}
		again, err := Read(p.Write())
		if err != nil || !cmp.Equal(p, again) {
			t.Errorf("%v %s", err, cmp.Diff(p, again))
		}
		p.Map().Spot(Point{3, 200})
	})
}

func FuzzParseRows(f *testing.F) {
	f.Add(dogleg().Rows())
	f.Add("water open to 3, across 1e3 to .5\nbend 1 2 left")
	f.Fuzz(func(t *testing.T, text string) {
		p, faults := ParseRows(4, 417, text)
		if faults != nil {
			return
		}
		again, faults := ParseRows(4, 417, p.Rows())
		if faults != nil || !cmp.Equal(p, again) {
			t.Errorf("%v %s", faults, cmp.Diff(p, again))
		}
	})
}
