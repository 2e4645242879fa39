package handlers

import (
	"net/http"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
	"strokeledger/db"
)

// units changes a member's setting.
func (v visitor) units(far, green string) {
	v.t.Helper()
	if a := v.post("/account", "name", "Robin", "target", "79", "boundary", "50", "far", far, "green", green); a.status != http.StatusSeeOther {
		v.t.Fatalf("%d %s", a.status, a.body)
	}
}

// line is what stands in the field of a hole's page.
func (v visitor) line(path string) string {
	v.t.Helper()
	a := v.get(path)
	field := regexp.MustCompile(`(?s)<input[^>]*id="line"[^>]*>`).FindString(a.body)
	value := regexp.MustCompile(`value="([^"]*)"`).FindStringSubmatch(field)
	if value == nil {
		v.t.Fatalf("%d %s", a.status, a.body)
	}
	return value[1]
}

func (v visitor) kept() db.Round {
	v.t.Helper()
	all, err := v.store.Rounds(v.t.Context(), 1, 1, db.Chosen{})
	if err != nil || len(all) != 1 {
		v.t.Fatalf("%d rounds, %v", len(all), err)
	}
	return all[0]
}

// A hole that is opened in other units and saved untouched is the same hole, and
// one that is changed there keeps the shots that were not.
func TestUnitsBelongToTheSavedLine(t *testing.T) {
	v := newSite(t, Options{SignUp: SignUpOpen}).member("a")
	path := v.withRound() + "/holes/1"
	if a := v.post(path, "line", "f140w r~20s4/sw g12 3 =6", "version", "1", "press", "save"); a.status != http.StatusSeeOther {
		t.Fatalf("%d %s", a.status, a.body)
	}
	want := v.kept().Holes[0]
	for _, c := range []struct{ far, green, line string }{
		{"m", "m", "f140ydw r~20yds4/sw g12ft 3ft =6"},
		{"m", "ft", "f140ydw r~20yds4/sw g12 3 =6"},
		{"yd", "m", "f140w r~20s4/sw g12ft 3ft =6"},
		{"yd", "ft", "f140w r~20s4/sw g12 3 =6"},
	} {
		v.units(c.far, c.green)
		line := v.line(path)
		if line != c.line {
			t.Errorf("in %s and %s the line is %q, want %q", c.far, c.green, line, c.line)
		}
		if a := v.post(path, "line", line, "version", strconv.Itoa(v.kept().Holes[0].Version), "press", "save"); a.status != http.StatusSeeOther {
			t.Fatalf("%d %s", a.status, a.body)
		}
		if diff := cmp.Diff(want.Shots, v.kept().Holes[0].Shots); diff != "" {
			t.Errorf("saved untouched in %s and %s: %s", c.far, c.green, diff)
		}
	}
	v.units("m", "m")
	if a := v.post(path, "line", v.line(path)[:len("f140ydw r~20yds4/sw ")]+"g12ft 1", "version", strconv.Itoa(v.kept().Holes[0].Version), "press", "save"); a.status != http.StatusSeeOther {
		t.Fatalf("%d %s", a.status, a.body)
	}
	got := v.kept().Holes[0]
	if got.Units != (db.Units{Far: golf.Metres, Green: golf.Metres}) || got.Line != "f140ydw r~20yds4/sw g12ft 1" {
		t.Errorf("%q in %v", got.Line, got.Units)
	}
	if diff := cmp.Diff(want.Shots[:4], got.Shots[:4]); diff != "" || got.Shots[4].Distance != golf.Metre {
		t.Errorf("the last putt was changed: %s, %v", diff, got.Shots[4])
	}
}

// takes imports a file, in the place of the rounds that are there.
func (v visitor) takes(file string) {
	v.t.Helper()
	if a := v.upload(file); a.status != http.StatusOK {
		v.t.Fatalf("%d %s", a.status, a.body)
	}
	if a := v.post("/import/confirm", "there", "replace", "settings", "yes"); a.status != http.StatusSeeOther {
		v.t.Fatalf("%d %s", a.status, a.body)
	}
}

// The file of an account keeps the units of each line, and reads a line that has
// none as the account's.
func TestAccountFilesKeepTheUnitsOfLines(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	v.withRound()
	before := v.kept().Holes[0]
	v.units("m", "m")
	file := v.get("/export/everything.json").body
	v.takes(file)
	before.Version = 1
	if diff := cmp.Diff(before, v.kept().Holes[0]); diff != "" {
		t.Error(diff)
	}
	without := strings.Replace(file, `"line":"r150 g20 2","far_unit":"yd","green_unit":"ft"`, `"line":"r150 g20 2"`, 1)
	if without == file {
		t.Fatal(file)
	}
	v.takes(without)
	if got := v.kept().Holes[0].Units; got != (db.Units{Far: golf.Metres, Green: golf.Metres}) {
		t.Errorf("a line without units is in %v", got)
	}
	if a := v.upload(strings.Replace(file, `"green_unit":"ft"`, `"green_unit":"yd"`, 1)); a.status != http.StatusUnprocessableEntity {
		t.Errorf("yards on the green: %d", a.status)
	}
}
