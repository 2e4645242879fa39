package main

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestSimulate(t *testing.T) {
	r := runLine("", "simulate", "--level", "79", "--rounds", "2000", "--seed", "3", "--json")
	var out simulated
	if err := json.Unmarshal([]byte(r.out), &out); err != nil || out.Version != 1 || out.Rounds != 2000 || math.Abs(out.Mean-79) > .5 || len(out.Scores) < 15 {
		t.Errorf("%v: %s", err, r.out)
	}
	if again := runLine("", "simulate", "--level", "79", "--rounds", "2000", "--seed", "3", "--json"); again.out != r.out {
		t.Error("the same seed gave another result")
	}
	if words := runLine("", "simulate", "--level", "79", "--rounds", "200"); !strings.Contains(words.out, "200 rounds: ") || !strings.Contains(words.out, independence) || words.status != exitDone {
		t.Errorf("%+v", words)
	}
}

func TestSimulateOnHolesOfAFile(t *testing.T) {
	name := filepath.Join(t.TempDir(), "holes.csv")
	write := func(text string) {
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write("\ufeffpar,HOLE,length_yd\n3,7,150\n4,8,400\n")
	r := runLine("", "simulate", "--level", "90", "--rounds", "500", "--holes", name, "--json")
	var out simulated
	if err := json.Unmarshal([]byte(r.out), &out); err != nil || out.Mean < 7 || out.Mean > 11 {
		t.Errorf("%v: %s", err, r.out)
	}
	for _, text := range []string{"", "hole,par\n1,4\n", "hole,par,length_yd\n", "hole,par,length_yd\n1,4,x\n", "hole,par,length_yd\n1,9,400\n",
		"hole,par,length_yd\n1,4,nan\n", "hole,par,length_yd\n1,4,400\n1,4,400\n", "hole,par,length_yd\n1,4\n"} {
		write(text)
		if r := runLine("", "simulate", "--level", "79", "--holes", name); r.status != exitRefused || strings.Count(r.err, "\n") != 1 || !strings.Contains(r.err, "allowed") && !strings.Contains(r.err, "line") {
			t.Errorf("%q: %+v", text, r)
		}
	}
}
