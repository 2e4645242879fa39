package accountfile

import (
	"errors"
	"fmt"
	"io"
	"runtime"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golf/golftest"
)

func readAll(in io.Reader) (rounds []Round, c Settings, err error) {
	r := NewReader(in)
	for round, err := range r.Rounds() {
		if err != nil {
			return nil, c, err
		}
		rounds = append(rounds, round)
	}
	return rounds, r.Settings(), nil
}

var someSettings = Settings{Name: "Robin", Far: "m", Green: "ft", Target: 84.5, BoundaryYd: 40, Clubs: "d 3w 7i", Zone: "Pacific/Auckland"}

// ofGolf is a round of an account with the strokes of one played.
func ofGolf(played golf.Round) Round {
	r := Round{Name: played.ID, Day: played.Date, Course: played.Course, Tee: played.Tee, Target: 84.5, BoundaryYd: 50, Par18: 71, Conditions: "wind", EnteredBy: "Ines Vale", CardOut: 44, FirstHole: 10}
	for _, h := range played.Holes {
		r.Holes = append(r.Holes, Hole{Hole: h, Length: h.Length(), Index: 3, Line: "as typed", Far: golf.Yards, Green: golf.Metres})
	}
	return r
}

func TestWhatIsWrittenComesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var b strings.Builder
		var rounds []Round
		w := NewWriter(&b, someSettings)
		for _, played := range rapid.SliceOfNDistinct(golftest.Rounds(), 0, 4, func(r golf.Round) string { return r.ID }).Draw(t, "rounds") {
			r := ofGolf(played)
			r.Holes[0].Shots[0].Word, r.Holes[0].Shots[0].About = "pulled <left> & short", true
			if !Same(r, r) || Same(r, Round{}) {
				t.Fatal("same")
			}
			w.Write(r)
			rounds = append(rounds, r)
		}
		if err := w.Close(Written{Notes: []Note{{Body: "two\nlines", Hole: 3}}}); err != nil {
			t.Fatal(err)
		}
		got, c, err := readAll(strings.NewReader(b.String()))
		if err != nil {
			t.Fatalf("%v\n%s", err, b.String())
		}
		if diff := cmp.Diff(rounds, got) + cmp.Diff(someSettings, c); diff != "" {
			t.Fatal(diff)
		}
	})
}

// What an account holds from before a rule is written all the same, and can be
// read again; names that are there twice are kept apart.
func TestWhateverIsGivenIsWrittenAndRead(t *testing.T) {
	var b strings.Builder
	w := NewWriter(&b, Settings{Name: "\u200b", Far: "yd", Green: "ft", Target: 79, BoundaryYd: 50, Clubs: "7i\ufeff"})
	r := Round{Name: "a ", Day: golf.Date{Year: 2026, Month: 5, Day: 2}, Course: "x\x00y\n", Target: 79, BoundaryYd: 50, Par18: 72, Conditions: strings.Repeat("é", golf.MaxText)}
	w.Write(r)
	r.Name = "a"
	w.Write(r)
	if err := w.Close(Written{}); err != nil {
		t.Fatal(err)
	}
	got, c, err := readAll(strings.NewReader(b.String()))
	if err != nil {
		t.Fatalf("%v\n%s", err, b.String())
	}
	if c.Name != "?" || c.Clubs != "7i" || len(got) != 2 || got[0].Name != "a" || got[1].Name != "a (2)" || got[0].Course != "xy" || got[0].Conditions != strings.Repeat("é", golf.MaxText/2) {
		t.Errorf("%+v %+v", c, got)
	}
}

const (
	begins   = `{"version":1,"settings":{"name":"R","far_unit":"yd","green_unit":"ft","target":79,"boundary_yd":50,"clubs":""},"rounds":[`
	oneRound = `{"name":"x","day":"2026-05-02","course":"c","tee":"","target":79,"boundary_yd":50,"par18":72,"note":"","card_out":0,"card_in":0,"holes":[` + oneHole + `]}`
	oneHole  = `{"number":4,"par":3,"length_in":5400,"stroke_index":0,"line":"g20 2","picked_up":false,"score_only":0,"shots":[` + oneShot + `,{"lie":"green","distance_in":240}]}`
	oneShot  = `{"lie":"tee","distance_in":5400,"unit":"yd","club":"7i"}`
)

// Files of before, which say no units of lines and no first hole, stay readable;
// and what is not known is passed over.
func TestFilesOfBefore(t *testing.T) {
	file := strings.Replace(begins+oneRound+`],"steward":true,"notes":[{"a":[1,{"b":null}]}]}`, `"tee":""`, `"id":7,"player_id":[2],"tee":"white"`, 1)
	got, _, err := readAll(strings.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	if h := got[0].Holes[0]; got[0].FirstHole != 1 || got[0].Tee != "white" || h.Far != golf.Yards || h.Green != golf.Feet || h.Shots[0].Club != "7i" {
		t.Errorf("%+v", got)
	}
	for _, empty := range []string{begins + `]}`, strings.Replace(begins, "[", "null}", 1)} {
		if got, _, err := readAll(strings.NewReader(empty)); err != nil || len(got) != 0 {
			t.Errorf("%s: %v %v", empty, got, err)
		}
	}
}

func TestFaultsAreToldWithTheirPlace(t *testing.T) {
	whole := begins + oneRound + "]}"
	for _, c := range []struct{ old, new, want string }{
		{`"card_out":0`, `"card_out":3000000000`, `round 1 "x": card_out: 3000000000; allowed: 0 to 200`},
		{`"card_in":0`, `"card_in":-1`, `round 1 "x": card_in: -1; allowed: 0 to 200`},
		{`"card_in":0`, `"card_in":1e999`, `round 1 "x": card_in: 1e999; allowed: 0 to 200`},
		{`"par18":72`, `"par18":72.5`, `round 1 "x": par18: 72.5; allowed: a whole number`},
		{`"par18":72,`, ``, `round 1 "x": a round needs target, boundary_yd and par18`},
		{`"course":"c"`, `"course":"c\u0000"`, `round 1 "x": course: this text has a letter that cannot be seen, or more than one line`},
		{`"course":"c"`, "\"course\":\"c\x00\"", `the file contains a NUL byte`},
		{`"course":"c"`, "\"course\":\"\xff\"", `the file is not text in UTF-8`},
		{`"course":"c"`, `"course":7`, `round 1 "x": course: a number; allowed: a text`},
		{`"day":"2026-05-02"`, `"day":"2026-02-30"`, `round 1 "x": day: not a day "2026-02-30"; allowed: YYYY-MM-DD`},
		{`"holes":[` + oneHole, `"holes":[` + oneHole + "," + oneHole, `round 1 "x": hole 4 comes twice`},
		{`"lie":"tee"`, `"lie":"moon"`, `round 1 "x": hole 4: shot 1: lie: unknown lie "moon"; allowed: tee, fairway, rough, bunker, recovery, green`},
		{`"lie":"tee"`, `"lie":"green"`, `round 1 "x": hole 4: hole 4, shot 1, distance: out of range`},
		{`"number":4`, `"number":0`, `round 1 "x": hole at place 1: number: 0; allowed: 1 to 18`},
		{`"line":"g20 2"`, `"line":""`, `round 1 "x": hole 4: it has shots but no line`},
		{`"version":1`, `"version":9`, `version: 9; allowed: 1 to 1`},
		{`"clubs":""`, `"clubs":"","zone":"Mars/Olympus"`, `settings: time zone "Mars/Olympus"; allowed: a name of the tz database, such as Europe/London, or none`},
		{`"target":79,"boundary_yd":50,"clubs"`, `"target":12,"boundary_yd":50,"clubs"`, `settings: target: 12; allowed: 68 to 110`},
		{`"far_unit":"yd"`, `"far_unit":"ft"`, `settings: units "ft" and "ft"; allowed: yd or m, ft or m`},
		{`"name":"x"`, `"name":""`, `round 1 "": name: a round needs one`},
		{`[{"name"`, `[0,{"name"`, `round 1: a number here; allowed: an object`},
		{`]}`, `]`, `the file ends too early`},
		{`"day":`, `"day"`, `this is not JSON`},
		{`"version":1,`, ``, `the version and the settings come once each, before the rounds`},
	} {
		broken := strings.Replace(whole, c.old, c.new, 1)
		if c.old == "]}" {
			broken = strings.TrimSuffix(whole, "}")
		}
		_, _, err := readAll(strings.NewReader(broken))
		var fault *Fault
		if !errors.As(err, &fault) || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %s", c.new, err, c.want)
		}
	}
	for _, broken := range []string{"", "{", "[]", "null", `{"version":1}`, whole + "x", whole + "{}"} {
		if _, _, err := readAll(strings.NewReader(broken)); !errors.As(err, new(*Fault)) {
			t.Errorf("%q: %v", broken, err)
		}
	}
	broken := errors.New("the line dropped")
	if _, _, err := readAll(io.MultiReader(strings.NewReader(begins), failing{broken})); err != broken {
		t.Errorf("%v", err)
	}
}

type failing struct{ err error }

func (f failing) Read([]byte) (int, error) { return 0, f.err }

// repeated is a text many times over, made while it is read.
type repeated struct {
	text string
	left int
	rest string
}

func (r *repeated) Read(p []byte) (int, error) {
	if r.rest == "" {
		if r.left == 0 {
			return 0, io.EOF
		}
		r.rest, r.left = r.text, r.left-1
	}
	n := copy(p, r.rest)
	r.rest = r.rest[n:]
	return n, nil
}

// No file takes much memory, whatever it is made of.
func TestHostileFilesAreStoppedEarly(t *testing.T) {
	hole := strings.TrimSuffix(oneRound, oneHole+`]}`)
	for name, c := range map[string]struct{ head, piece, want string }{
		"rounds that are none":  {begins, "0,", "round 1"},
		"rounds without end":    {begins, oneRound + ",", "more than 2000 rounds"},
		"holes without end":     {begins + hole, oneHole + ",", "more than 18 holes"},
		"empty holes":           {begins + hole, "{},", "number and par"},
		"shots without end":     {begins + hole + strings.TrimSuffix(oneHole, oneShot+`,{"lie":"green","distance_in":240}]}`), oneShot + ",", "more than 60 shots"},
		"trials without end":    {begins + `],"run_out":[`, oneBall + ",", "more than 2000 run_out"},
		"nested deeply":         {`{"x":`, "[", "nested more than 32 deep"},
		"nested objects":        {`{"x":`, `{"a":`, "nested more than 32 deep"},
		"a huge text":           {`{"x":"`, "aaaaaaaa", "longer than 65536 bytes"},
		"a huge name":           {`{"`, `\"aaaaaaa`, "longer than 65536 bytes"},
		"a huge number":         {`{"version":`, "11111111", "longer than 65536 bytes"},
		"huge and unknown":      {`{"x":[`, "1,{},[],", "larger than 16 MiB"},
		"spaces":                {"", "        ", "longer than 65536 bytes"},
		"sessions without end":  {begins + `],"range_sessions":[`, `{"club":"d","day":"2026-05-02"},`, "more than 1000 sessions"},
		"balls without end":     {begins + `],"range_sessions":[{"balls":[`, `"1 2",`, "more than 200 balls"},
		"drawings without end":  {begins + `],"drawn_courses":[{"course":"c","drawings":[`, `{"hole":1},`, "more than 400 drawings"},
		"courses without end":   {begins + `],"drawn_courses":[`, `{"course":"c"},`, "more than 200 courses"},
		"a picture without end": {begins + `],"drawn_courses":[{"course":"c","drawings":[{"picture":[`, "1,{},[],", "picture: more bytes than are allowed"},
	} {
		var before, after runtime.MemStats
		runtime.GC()
		runtime.ReadMemStats(&before)
		peak, rounds := uint64(0), 0
		r := NewReader(io.MultiReader(strings.NewReader(c.head), &repeated{text: strings.Repeat(c.piece, 1+(64<<10)/len(c.piece)), left: 512}))
		var err error
		for _, err = range r.Rounds() {
			rounds++
			if rounds%100 == 0 {
				var now runtime.MemStats
				runtime.GC() // what is held, not what waits to be freed
				if runtime.ReadMemStats(&now); now.HeapAlloc > before.HeapAlloc {
					peak = max(peak, now.HeapAlloc-before.HeapAlloc)
				}
			}
		}
		runtime.ReadMemStats(&after)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %s", name, err, c.want)
		}
		if peak > 8<<20 || after.HeapSys > before.HeapSys+64<<20 {
			t.Errorf("%s: %d MiB, %d of the system", name, peak>>20, (after.HeapSys-before.HeapSys)>>20)
		}
	}
}

func ExampleFault() {
	fmt.Println(&Fault{Place: `round 3 "Open day"`, What: "hole 4 comes twice"})
	// Output: round 3 "Open day": hole 4 comes twice
}

func TestAFaultRepeatsWholeLetters(t *testing.T) {
	for text, want := range map[string]string{
		"Open day":                      "Open day",
		"x" + strings.Repeat("é", 30):   "x" + strings.Repeat("é", 19) + "…",
		strings.Repeat("a", 40):         strings.Repeat("a", 40),
		strings.Repeat("a", 40) + "bcd": strings.Repeat("a", 40) + "…",
	} {
		if got := shortened(text); got != want {
			t.Errorf("%q is repeated as %q, want %q", text, got, want)
		}
	}
}
