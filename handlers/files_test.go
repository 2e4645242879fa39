package handlers

import (
	"net/http"
	"os"
	"strings"
	"testing"
)

func TestWhatIsExportedHoldsTheRound(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	v.withRound()
	if a := v.get("/export/shots.csv"); a.status != http.StatusOK || strings.Count(a.body, "\n") != 5 || !strings.Contains(a.body, "Harrow Fen") {
		t.Errorf("%d %s", a.status, a.body)
	}
}

// What one account exports, another can import.
func TestExportAndImport(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	season, err := os.ReadFile("../testdata/shots/season.csv")
	if err != nil {
		t.Fatal(err)
	}
	one, two := s.member("one"), s.member("two")
	if a := one.upload(string(season)); a.status != http.StatusOK || !strings.Contains(a.body, "36 rounds") {
		t.Fatalf("%d %s", a.status, a.body)
	}
	if a := one.get("/rounds"); strings.Contains(a.body, "Harrow Fen") {
		t.Error("kept before it was confirmed")
	}
	if a := one.post("/import/confirm"); a.status != http.StatusSeeOther {
		t.Fatalf("%d", a.status)
	}
	first := one.get("/export/shots.csv").body
	if a := two.upload(first); a.status != http.StatusOK {
		t.Fatalf("%d %s", a.status, a.body)
	}
	if a := two.post("/import/confirm"); a.status != http.StatusSeeOther {
		t.Fatalf("%d", a.status)
	}
	if second := two.get("/export/shots.csv").body; second != first || strings.Count(first, "\n") < 3000 {
		t.Errorf("%d bytes went out, %d came back", len(first), len(second))
	}
	if a := two.upload(first); !strings.Contains(a.body, "You already have 36 rounds just as in the file") || strings.Contains(a.body, "replace") {
		t.Errorf("the page does not say which rounds are already there: %s", a.body)
	}
	for _, there := range []string{"skip", "replace"} {
		if two.upload(first).status != http.StatusOK || two.post("/import/confirm", "there", there).status != http.StatusSeeOther {
			t.Errorf("%s failed", there)
		}
		if again := two.get("/export/shots.csv").body; again != first {
			t.Errorf("%s: %d bytes went out, %d came back", there, len(first), len(again))
		}
	}
}

func TestBrokenFilesAreRefusedWhole(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	for _, text := range []string{"", "nothing", "round,date,hole,par,shot,lie,distance\nr,2026-05-02,1,4,1,moon,390\n", "\x00\xff\xfe"} {
		if a := v.upload(text); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "line 1") && !strings.Contains(a.body, "line 2") {
			t.Errorf("%q: %d", text, a.status)
		}
	}
	if a := v.post("/import/confirm"); a.status != http.StatusNotFound {
		t.Errorf("something waited: %d", a.status)
	}
}

// The file of everything brings the same account back.
func TestEverythingComesBack(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	one, two := s.member("one"), s.member("two")
	round := one.withRound()
	one.post("/account", "name", "Robin", "target", "84.5", "boundary", "40", "far", "m", "green", "m", "clubs", "d 3w 7i")
	one.post(round+"/holes/2", "line", "g~15m 2", "version", "0")
	one.post(round+"/holes/3", "line", "v150 r20s4 g3m-", "version", "0")
	one.post(round+"/holes/1/shots", "version", "1", "club", "d", "miss", "left", "word", "pulled", "club", "", "miss", "", "word", "", "club", "", "miss", "", "word", "", "club", "", "miss", "", "word", "")
	one.post(round+"/conditions", "out", "14", "conditions", "wind from the west")
	first := one.get("/export/everything.json").body
	if !strings.Contains(first, "pulled") || !strings.Contains(first, "wind from the west") || !strings.Contains(first, "d 3w 7i") {
		t.Fatal(first)
	}
	if a := two.upload(first); a.status != http.StatusOK || !strings.Contains(a.body, "Import its settings too: name Robin, target 84.5, distances in metres, clubs d 3w 7i") {
		t.Fatalf("%d %s", a.status, a.body)
	}
	if a := two.get("/rounds"); strings.Contains(a.body, "Harrow Fen") {
		t.Error("kept before it was confirmed")
	}
	if a := two.post("/import/confirm", "there", "skip", "settings", "yes"); a.status != http.StatusSeeOther {
		t.Fatalf("%d %s", a.status, a.body)
	}
	if second := two.get("/export/everything.json").body; second != first {
		t.Errorf("went out\n%s\ncame back\n%s", first, second)
	}
	for _, broken := range []string{"{", `{"version":9}`, strings.Replace(first, `"lie":"green"`, `"lie":"moon"`, 1), strings.Replace(first, `"target":79`, `"target":12`, 1), strings.Replace(first, `"distance_in":`, `"distance_in":-`, 1)} {
		if a := two.upload(broken); a.status != http.StatusUnprocessableEntity {
			t.Errorf("%.60s: %d", broken, a.status)
		}
	}
}
