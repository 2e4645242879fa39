package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// ran is what a command line came to.
type ran struct {
	status   int
	out, err string
}

func runLine(stdin string, args ...string) ran {
	var out, errs bytes.Buffer
	status := run(args, streams{strings.NewReader(stdin), &out, &errs})
	return ran{status, out.String(), errs.String()}
}

const card84 = "../../testdata/shots/card84.csv"

func TestWrongUsage(t *testing.T) {
	for _, args := range []string{
		"play", "analyse", "analyse a b", "analyse --target 67 " + card84, "analyse --target x " + card84, "analyse --level nan " + card84,
		"analyse --target 79 --level 79 " + card84, "analyse --baseline scratch " + card84, "analyse --colour " + card84,
		"expect", "expect --level 79", "expect --level 79 --lie moon --distance 10", "expect --level 79 --lie green --distance 10,x",
		"expect --level 60 --lie green --distance 10", "expect --level 79 --baseline tour --lie green --distance 10",
		"expect --level 79 --lie rough --distance 0", "expect --level 79 --lie rough --distance nan", "expect --level 79 --lie rough --distance 701",
		"expect --level 79 --lie rough --distance 40 --green-to-work-with 3", "expect --level 79 --lie green --distance 9 --green-to-work-with 1",
		"simulate", "simulate --level 111", "simulate --level 79 --rounds 0", "simulate --level 79 --putting 10", "simulate --level 79 now",
		"plan", "plan a b", "plan --target 60 " + card84, "plan --minutes 59 " + card84, "plan --minutes 62 " + card84, "plan --target nan " + card84,
		"drill", "drill --level 79", "drill moon --level 79", "drill ladder", "drill ladder --level 60", "drill ladder --level 79 --today 111", "drill ladder --level 79 --feet 5",
		"drill start-line --level 79 --feet 11", "drill ladder --level 79 --tries 12", "drill start-line --level 79 --tries 0", "drill short-side --level 79", "drill --list now",
		"startline", "startline --feet 2 --tries 4 --made 1", "startline --feet 6 --tries 4 --made 5", "startline --feet 6 --tries 4 --made 1 --left 2",
		"startline --feet 6 --tries 4 --made 1 --left 2 --right 2", "startline --feet 6 --tries 4 --made 1 --level 60", "startline --feet 6 --tries 4 --made 1 now",
		"runout", "runout a b", "runout a --distance 20", "runout a --distance 20 --green 20", "runout a --distance 20 --green 9 --lie bunker", "runout a --distance 20 --green 9 --slope steep",
		"calibrate --check --show", "calibrate now", "ready now",
		"serve now", "serve --sign-up everybody", "serve --listen nowhere", "serve --demo --listen 0.0.0.0:8177", "serve --demo --listen example.org:1",
		"serve --demo --database postgres://x", "serve --proxies everywhere",
		"serve --behind-tls", "serve --address golf.example.org", "serve --address https://golf.example.org",
		"serve --behind-tls --proxies 10.0.0.0/8 --address http://golf.example.org", "serve --address http://golf.example.org/ledger",
	} {
		r := runLine("", strings.Fields(args)...)
		if r.status != exitUsage || r.out != "" || strings.Count(r.err, "\n") != 1 || !strings.HasPrefix(r.err, "strokeledger ") {
			t.Errorf("%s: status %d, out %q, err %q", args, r.status, r.out, r.err)
		}
	}
}

func TestHelp(t *testing.T) {
	for _, args := range []string{"", "help", "--help", "analyse --help", "expect -h", "simulate --help", "plan --help", "drill --help", "startline --help", "runout --help", "calibrate --help", "serve --help", "ready -h"} {
		if r := runLine("", strings.Fields(args)...); r.status != exitDone || r.err != "" || len(r.out) < 80 {
			t.Errorf("%q: status %d, out %q, err %q", args, r.status, r.out, r.err)
		}
	}
}

const oneHole = "round,date,hole,par,shot,lie,distance,penalty,picked_up,score_only\n"

func TestRefusedFiles(t *testing.T) {
	r := runLine(oneHole+"r1,2026-05-02,1,4,1,tee,390,0,,\nr1,2026-05-02,1,4,2,moon,150,0,,\n", "analyse", "--json", "-")
	if r.status != exitRefused || r.out != "" {
		t.Errorf("status %d, out %q", r.status, r.out)
	}
	want := "line 3, column lie: unknown lie, read \"moon\", allowed: tee, fairway, rough, bunker, recovery, green\n"
	if r.err != want {
		t.Errorf("err %q", r.err)
	}
	if r := runLine("", "analyse", filepath.Join(t.TempDir(), "none.csv")); r.status != exitRefused || strings.Count(r.err, "\n") != 1 {
		t.Errorf("a file that is not there: %+v", r)
	}
}

func TestUnknownColumnsAreTold(t *testing.T) {
	r := runLine("round,date,hole,par,shot,lie,distance,wind\nr1,2026-05-02,1,3,1,tee,150,left\n", "analyse", "-")
	if r.status != exitDone || r.err != "column \"wind\" is unknown and was ignored\n" {
		t.Errorf("%+v", r)
	}
}

type result struct {
	Version  int
	Baseline struct {
		Kind  string
		Value *float64
	}
	Rounds []struct {
		Round, Date, Course string
		Holes, Par          int
		Score, Expected     float64
		Lost                map[string]float64
		Shots               []struct {
			Hole, Shot            int
			Lie, Unit, Category   string
			Distance              float64
			Penalty               int
			Expected, After, Lost float64
			Error, Trouble        bool
		}
		Doubles []struct {
			Hole, Par, Score int
			Lost             float64
			Kind             string
			Root             int    `json:"root_shot"`
			RootCategory     string `json:"root_category"`
			Costliest        int    `json:"costliest_shot"`
			Chain            []int
			Compounding      float64
		}
		PickedUp []int `json:"picked_up"`
	}
}

func analysed(t *testing.T, stdin string, args ...string) result {
	t.Helper()
	r := runLine(stdin, append([]string{"analyse", "--json"}, args...)...)
	if r.status != exitDone || r.err != "" {
		t.Fatalf("status %d, err %q", r.status, r.err)
	}
	var out result
	d := json.NewDecoder(strings.NewReader(r.out))
	d.DisallowUnknownFields()
	if err := d.Decode(&out); err != nil {
		t.Fatal(err)
	}
	return out
}

func TestAnalyseCard(t *testing.T) {
	for _, args := range [][]string{{card84}, {"--target", "79", card84}, {card84, "--level", "82.5"}, {"--baseline=tour", card84}} {
		out := analysed(t, "", args...)
		if out.Version != 1 || len(out.Rounds) != 1 {
			t.Fatalf("%v: version %d, %d rounds", args, out.Version, len(out.Rounds))
		}
		r := out.Rounds[0]
		if r.Score != 84 || r.Par != 72 || r.Holes != 18 || r.Course != "Saltmarsh Links" || len(r.Shots) != 83 {
			t.Errorf("%v: %d strokes listed, score %g", args, len(r.Shots), r.Score)
		}
		sum, shots := 0.0, 0.0
		for part, lost := range r.Lost {
			if part != "total" {
				sum += lost
			}
		}
		for _, s := range r.Shots {
			shots += s.Lost
			if math.Abs(s.Lost-(1+float64(s.Penalty)+s.After-s.Expected)) > 1e-9 {
				t.Errorf("%v: shot %+v", args, s)
			}
		}
		if math.Abs(sum-r.Lost["total"]) > 1e-9 || math.Abs(shots-(r.Score-r.Expected)) > 1e-9 || len(r.Lost) != 7 {
			t.Errorf("%v: lost %v, shots %.9f", args, r.Lost, shots)
		}
	}
	if out := analysed(t, "", card84); out.Baseline.Kind != "target" || *out.Baseline.Value != 79 ||
		math.Abs(out.Rounds[0].Expected-79) > 1e-9 || math.Abs(out.Rounds[0].Lost["total"]-5) > 1e-9 {
		t.Errorf("%+v", out.Baseline)
	}
	if out := analysed(t, "", "--baseline", "tour", card84); out.Baseline.Kind != "tour" || out.Baseline.Value != nil {
		t.Errorf("%+v", out.Baseline)
	}
}

func TestAnalyseSpecialHoles(t *testing.T) {
	out := analysed(t, oneHole+
		"r1,2026-05-02,4,4,1,tee,390,0,,\nr1,2026-05-02,4,4,2,rough,150,0,,\nr1,2026-05-02,4,4,3,green,4,0,yes,\n"+
		"r1,2026-05-02,5,5,1,tee,510,0,,8\n\"r\"\"2\",2026-05-03,1,3,1,tee,150,0,,\n", "-")
	first, second := out.Rounds[0], out.Rounds[1]
	if len(first.PickedUp) != 1 || first.PickedUp[0] != 4 || first.Score <= 11 || first.Score >= 12 {
		t.Errorf("picked up %v, score %g", first.PickedUp, first.Score)
	}
	if d := first.Doubles; len(d) != 1 || d[0].Kind != "unknown" || d[0].Root != 0 || d[0].RootCategory != "" || d[0].Costliest != 0 || d[0].Chain == nil {
		t.Errorf("%+v", d)
	}
	if second.Round != `r"2` || second.Score != 1 || second.Doubles == nil {
		t.Errorf("%+v", second)
	}
}

// A leak began nowhere, separate errors with the first of them, and what cost most
// is told of both.
func TestAnalyseDoubles(t *testing.T) {
	file := "round,date,hole,par,shot,lie,distance\n"
	for i, hole := range []string{"tee 370 recovery 175 fairway 80 rough 24 green 16 green 2", "tee 450 rough 265 rough 78 fairway 20 green 22 green 2", "tee 420 fairway 175 rough 22 green 9 green 6 green 1"} {
		words := strings.Fields(hole)
		for k := 0; k < len(words); k += 2 {
			file += fmt.Sprintf("r1,2026-05-02,%d,4,%d,%s,%s\n", i+1, k/2+1, words[k], words[k+1])
		}
	}
	doubles := analysed(t, file, "-").Rounds[0].Doubles
	if len(doubles) != 3 {
		t.Fatalf("%+v", doubles)
	}
	if d := doubles[0]; d.Root != 1 || d.RootCategory != "tee" || d.Costliest == 0 {
		t.Errorf("separate: %+v", d)
	}
	if d := doubles[1]; d.Kind != "leak" || d.Root != 0 || d.RootCategory != "" || d.Costliest == 0 {
		t.Errorf("leak: %+v", d)
	}
	if r := runLine(oneHole+"r1,2026-05-02,1,3,1,tee,150,0,,\n", "analyse", "-"); !strings.Contains(r.out, "\n1 hole in 1: ") {
		t.Errorf("one hole: %s", r.out)
	}
	r := runLine(file, "analyse", "-")
	for _, want := range []string{"leak, most lost at shot", "began with shot 4 (putting), since the putts of a green count together", "1 tee, 0 approach, 0 short game, 1 putting, 1 nowhere (leak)"} {
		if !strings.Contains(r.out, want) {
			t.Errorf("no %q in\n%s", want, r.out)
		}
	}
}

func TestStatementInWords(t *testing.T) {
	r := runLine("", "analyse", card84)
	for _, want := range []string{"2026-05-16, Saltmarsh Links", "18 holes in 84: 5.0 over the target of 79", "target         79.0", "score          84.0", "All 1 round"} {
		if !strings.Contains(r.out, want) {
			t.Errorf("no %q in\n%s", want, r.out)
		}
	}
	if strings.Contains(r.out, "\x1b") || r.status != exitDone {
		t.Error("colour codes, or not done")
	}
}

func TestSeasonInWords(t *testing.T) {
	r := runLine("", "analyse", "../../testdata/shots/season.csv")
	if r.status != exitDone || strings.Count(r.out, "Harrow Fen, white") != 36 || !strings.Contains(r.out, "All 36 rounds") {
		t.Errorf("status %d, %d bytes", r.status, len(r.out))
	}
}

func TestExpect(t *testing.T) {
	r := runLine("", "expect", "--level", "79", "--lie", "rough", "--distance", "20,30", "--json")
	var out struct {
		Version  int
		Level    float64
		Expected []struct {
			Lie, Unit         string
			Distance, Strokes float64
		}
	}
	if err := json.Unmarshal([]byte(r.out), &out); err != nil || out.Version != 1 || out.Level != 79 || len(out.Expected) != 2 {
		t.Fatalf("%v: %s", err, r.out)
	}
	if e := out.Expected[0]; e.Lie != "rough" || e.Unit != "yd" || e.Distance != 20 || e.Strokes < 2.5 || e.Strokes > 3 {
		t.Errorf("%+v", e)
	}
	// Source: PGA TOUR putting baseline 2010 (cited copy): 1.515 from 8 ft.
	if r := runLine("", "expect", "--baseline", "tour", "--lie", "green", "--distance", "8", "--json"); !strings.Contains(r.out, `"level":"tour"`) || !strings.Contains(r.out, "1.515") {
		t.Errorf("%s", r.out)
	}
	tight := runLine("", "expect", "--level", "79", "--lie", "rough", "--distance", "20", "--green-to-work-with", "2")
	if room := runLine("", "expect", "--level", "79", "--lie", "rough", "--distance", "20"); tight.out <= room.out {
		t.Errorf("tight %q, with room %q", tight.out, room.out)
	}
}

func TestCalibrateShowsItsTable(t *testing.T) {
	r := runLine("", "calibrate", "--show")
	written, err := os.ReadFile("../../" + resultFile)
	if err != nil || r.status != exitDone || r.out != string(written) {
		t.Errorf("%v: status %d, err %q", err, r.status, r.err)
	}
	if r := runLine("", "calibrate", "--into", t.TempDir()); r.status != exitRefused || r.out != "" {
		t.Errorf("a folder that is no source tree: %+v", r)
	}
}
