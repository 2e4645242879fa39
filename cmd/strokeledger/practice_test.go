package main

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestDrill(t *testing.T) {
	r := runLine("", "drill", "--list", "--json")
	var list struct {
		Version int
		Drills  []listedDrill
	}
	if err := json.Unmarshal([]byte(r.out), &list); err != nil || list.Version != 1 || len(list.Drills) != 13 {
		t.Fatalf("%v: %s", err, r.out)
	}
	if lines := runLine("", "drill", "--list"); strings.Count(lines.out, "\n") != 13 {
		t.Errorf("%s", lines.out)
	}
	for _, d := range list.Drills {
		if !d.Mark {
			continue
		}
		r := runLine("", "drill", d.Drill, "--level", "79", "--today", "90", "--json")
		var out drillResult
		if err := json.Unmarshal([]byte(r.out), &out); err != nil {
			t.Fatalf("%v: %+v", err, r)
		}
		if out.Drill != d.Drill || out.Level != 79 || out.Mark < 1 || out.Mark > out.Tries || out.Chance <= 0 || out.Chance >= 1 || out.Pass < .6 || *out.PassToday >= out.Pass {
			t.Errorf("%s", r.out)
		}
		if words := runLine("", "drill", d.Drill, "--level", "79"); !strings.Contains(words.out, "Mark: ") || strings.Contains(words.out, "one of level") {
			t.Errorf("%+v", words)
		}
	}
	near, far := runLine("", "drill", "start-line", "--level", "79", "--feet", "3", "--tries", "20", "--json"), runLine("", "drill", "start-line", "--level", "79", "--feet", "9", "--tries", "20", "--json")
	var a, b drillResult
	if json.Unmarshal([]byte(near.out), &a) != nil || json.Unmarshal([]byte(far.out), &b) != nil || a.Chance <= b.Chance || a.Tries != 20 || a.PassToday != nil {
		t.Errorf("%s%s", near.out, far.out)
	}
}

const seasonFile = "../../testdata/shots/season.csv"

func TestPlan(t *testing.T) {
	r := runLine("", "plan", "--target", "79", "--minutes", "180", "--json", seasonFile)
	var out planResult
	if err := json.Unmarshal([]byte(r.out), &out); err != nil || out.Version != 1 || out.Rounds < 5 || len(out.Candidates) < 3 || len(out.Candidates) > 5 {
		t.Fatalf("%v: %+v", err, r)
	}
	minutes := 0
	for _, c := range out.Candidates {
		minutes += c.Minutes
		if c.Low > c.High || c.WinBack < 0 || c.Drill == "" {
			t.Errorf("%+v", c)
		}
	}
	if minutes != 180 {
		t.Errorf("%d minutes of 180", minutes)
	}
	if words := runLine("", "plan", seasonFile); !strings.Contains(words.out, "to win back") || strings.Contains(words.out, "say little") {
		t.Errorf("%+v", words)
	}
	if words := runLine("", "plan", card84); !strings.HasPrefix(words.out, "1 round: ") || !strings.Contains(words.out, "Fewer than 5 rounds say little") {
		t.Errorf("%+v", words)
	}
	scores := "round,date,hole,par,shot,lie,distance,score_only\nr1,2026-05-02,1,4,1,tee,390,5\n"
	if r := runLine(scores, "plan", "-"); r.status != exitRefused || !strings.Contains(r.err, "no hole whose strokes are known") {
		t.Errorf("%+v", r)
	}
	if r := runLine("round\n", "plan", "-"); r.status != exitRefused {
		t.Errorf("%+v", r)
	}
}

func TestStartLine(t *testing.T) {
	r := runLine("", "startline", "--feet", "6", "--tries", "40", "--made", "22", "--left", "15", "--right", "2", "--json")
	var out startLineResult
	if err := json.Unmarshal([]byte(r.out), &out); err != nil || out.Version != 1 || !(out.Low < out.Spread && out.Spread < out.High) || out.Bias == nil || *out.Bias >= 0 || math.Abs(out.Window-1.0226) > 5e-5 {
		t.Errorf("%v: %s", err, r.out)
	}
	r = runLine("", "startline", "--feet", "6", "--tries", "40", "--made", "22", "--json")
	if !strings.Contains(r.out, `"bias_deg":null`) {
		t.Errorf("%s", r.out)
	}
	if words := runLine("", "startline", "--feet", "6", "--tries", "40", "--made", "22"); strings.Contains(words.out, "Bias") || !strings.Contains(words.out, "Spread of the start line") {
		t.Errorf("%s", words.out)
	}
}

func TestRunOut(t *testing.T) {
	name := filepath.Join(t.TempDir(), "trials.csv")
	write := func(text string) {
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	// Common practice: 12 to 21 and 13 to 23 with a wedge; a 23 yd shot is landed at 13 to 13.5.
	write("\ufefflie,club,carry,total\nfairway,sw,12,21\nfairway,sw,13,23\nrough,sw,12,19\nfairway,8i,6,20\nfairway,8i,7,24\n")
	r := runLine("", "runout", name, "--distance", "23", "--green", "16", "--json")
	var out runOutResult
	if err := json.Unmarshal([]byte(r.out), &out); err != nil || len(out.Clubs) != 3 || len(out.Shot) != 2 || out.Shot[0].Club != "sw" || math.Abs(out.Shot[0].Land-13.5) > 1e-9 || out.Shot[1].Possible || out.Shot[1].Strokes != nil {
		t.Errorf("%v: %s", err, r.out)
	}
	if words := runLine("", "runout", "--distance", "23", "--green", "16", name); !strings.Contains(words.out, "land it at 13.5 yd") || !strings.Contains(words.out, "too little green") {
		t.Errorf("%+v", words)
	}
	for _, text := range []string{"", "club,lie,carry\n", "club,lie,carry,total\n", "club,lie,carry,total\nsw,moon,12,21\n", "club,lie,carry,total\nsw,fairway,x,21\n",
		"club,lie,carry,total\nsw,fairway,nan,21\n", "club,lie,carry,total\n,fairway,12,21\n", "club,lie,carry,total\nsw,fairway,12\n"} {
		write(text)
		if r := runLine("", "runout", name); r.status != exitRefused || strings.Count(r.err, "\n") != 1 {
			t.Errorf("%q: %+v", text, r)
		}
	}
}
