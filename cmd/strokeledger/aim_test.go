package main

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A hole with out of bounds on the right, as the contract has it.
const outRight = `{"version": 1, "par": 4, "length": 432, "bends": [], "fairway": [[170, 18, 15], [420, 15, 18]],
	"zones": [{"kind": "out", "from": 0, "to": 480, "across": [25, null]}],
	"green": {"front": 419, "width": 26, "depth": 26, "turn": 0}}`

func TestAimFromTheTee(t *testing.T) {
	r := runLine(outRight, "aim", "-", "--level", "84", "--json")
	var out writtenAims
	if err := json.Unmarshal([]byte(r.out), &out); err != nil || out.Version != 1 || len(out.Aims) != 4 {
		t.Fatalf("%v: %+v", err, r)
	}
	for i, a := range out.Aims {
		s := a.Shares
		if sum := s.Green + s.Fairway + s.Rough + s.Bunker + s.Trees + s.Water + s.Out + s.Penalty; math.Abs(sum-1) > 1e-6 {
			t.Errorf("%s: shares add up to %g", a.Club, sum)
		}
		if a.AimYd >= 0 || a.Cost > a.Straight || a.Shares.Out >= a.ByMiddle.Out || i > 0 && a.Cost < out.Aims[i-1].Cost {
			t.Errorf("%+v", a)
		}
	}
	draw := runLine(outRight, "aim", "-", "--level", "84", "--bias", "-10", "--json")
	var drawn writtenAims
	if err := json.Unmarshal([]byte(draw.out), &drawn); err != nil || drawn.Aims[0].AimYd <= out.Aims[0].AimYd+7 {
		t.Errorf("%v: %s", err, draw.out)
	}
	if words := runLine(outRight, "aim", "--level", "84", "-"); !strings.Contains(words.out, "yd left of the middle: ") || !strings.Contains(words.out, "out of bounds") {
		t.Errorf("%+v", words)
	}
}

func TestAimAtTheGreen(t *testing.T) {
	name := filepath.Join(t.TempDir(), "hole.json")
	if err := os.WriteFile(name, []byte(outRight), 0o644); err != nil {
		t.Fatal(err)
	}
	var middle, right writtenAims
	r := runLine("", "aim", name, "--level", "84", "--from", "fairway,150", "--json")
	if err := json.Unmarshal([]byte(r.out), &middle); err != nil || len(middle.Aims) != 1 || middle.Aims[0].LongYd == nil || middle.Aims[0].Club != "" {
		t.Fatalf("%v: %+v", err, r)
	}
	r = runLine("", "aim", name, "--level", "84", "--from", "rough,150", "--hole-at", "13,9", "--json")
	if err := json.Unmarshal([]byte(r.out), &right); err != nil || right.Aims[0].AimYd >= -1 || right.Aims[0].Straight < middle.Aims[0].Straight {
		t.Errorf("%v: %s", err, r.out)
	}
	if words := runLine("", "aim", name, "--level", "84", "--from", "rough,150", "--hole-at", "13,9"); !strings.Contains(words.out, "left of the flag") {
		t.Errorf("%+v", words)
	}
}

func TestAimRefuses(t *testing.T) {
	for _, c := range []struct {
		in     string
		args   []string
		status int
		says   string
	}{
		{outRight, []string{"-"}, exitUsage, "--level"},
		{outRight, []string{"-", "--level", "60"}, exitUsage, "68 to 110"},
		{outRight, []string{"--level", "84"}, exitUsage, "one picture"},
		{outRight, []string{"-", "--level", "84", "--bias", "NaN"}, exitUsage, "--bias"},
		{outRight, []string{"-", "--level", "84", "--hole-at", "3"}, exitUsage, "two numbers"},
		{outRight, []string{"-", "--level", "84", "--hole-at", "3,NaN"}, exitUsage, "two numbers"},
		{outRight, []string{"-", "--level", "84", "--hole-at", "40,0"}, exitRefused, "not on the green"},
		{outRight, []string{"-", "--level", "84", "--from", "green,150"}, exitUsage, "off the green"},
		{outRight, []string{"-", "--level", "84", "--from", "sand,150"}, exitUsage, "unknown lie"},
		{outRight, []string{"-", "--level", "84", "--from", "rough,20"}, exitUsage, "more than 30"},
		{strings.Replace(outRight, `"out"`, `"lava"`, 1), []string{"-", "--level", "84"}, exitRefused, `zones, row 1: no kind "lava"`},
		{"", []string{"/nonexistent.json", "--level", "84"}, exitRefused, "no such file"},
	} {
		r := runLine(c.in, append([]string{"aim"}, c.args...)...)
		if r.status != c.status || !strings.Contains(r.err, c.says) || r.out != "" {
			t.Errorf("%v: %+v, want %d %s", c.args, r, c.status, c.says)
		}
	}
}

func TestChance(t *testing.T) {
	name := filepath.Join(t.TempDir(), "holes.csv")
	if err := os.WriteFile(name, []byte("hole,par,length_yd\n1,4,380\n2,3,160\n3,5,500\n4,4,400\n5,4,350\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	r := runLine("", "chance", seasonFile, "--course", name, "--target", "82", "--rounds", "1000", "--json")
	var out writtenChance
	if err := json.Unmarshal([]byte(r.out), &out); err != nil || out.Version != 1 || out.Target != 82 || out.Played < 5 ||
		!(*out.Low <= out.Chance && out.Chance <= *out.High) || len(out.WhatIf) < 5 {
		t.Fatalf("%v: %+v", err, r)
	}
	if again := runLine("", "chance", seasonFile, "--course", name, "--target", "82", "--rounds", "1000", "--json"); again.out != r.out {
		t.Error("the same seed gave another result")
	}
	if words := runLine("", "chance", seasonFile, "--course", name, "--target", "82", "--rounds", "1000"); !strings.Contains(words.out, "82 or better: ") || !strings.Contains(words.out, "It may be between") {
		t.Errorf("%+v", words)
	}
	for _, args := range [][]string{{seasonFile}, {"--course", name}, {seasonFile, "--course", name, "--rounds", "1"}, {seasonFile, "--course", name, "--target", "60"}} {
		if r := runLine("", append([]string{"chance"}, args...)...); r.status != exitUsage || r.out != "" {
			t.Errorf("%v: %+v", args, r)
		}
	}
}
