package handlers

import (
	"bytes"
	"fmt"
	"net/http"
	"strings"
	"sync"
	"testing"
	"time"

	"strokeledger/analysis/accountfile"
	"strokeledger/analysis/golf"
	"strokeledger/db/dbtest"
)

// Confirming many times at once takes a file in once, and other pages answer.
func TestConfirmingAtOnce(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v, other := s.member("a"), s.member("b")
	var file bytes.Buffer
	w := accountfile.NewWriter(&file, accountfile.Settings{Name: "R", Far: "yd", Green: "ft", Target: 79, BoundaryYd: 50})
	const rounds = 800
	for i := range rounds {
		r := accountfile.Round{Name: fmt.Sprint("round ", i), Day: golf.Date{Year: 2026, Month: 5, Day: 2}, Course: "Fen", Target: 79, BoundaryYd: 50, Par18: 72, FirstHole: 1}
		for n := range 18 {
			r.Holes = append(r.Holes, accountfile.Hole{Hole: golf.Hole{Number: n + 1, Par: 4, Shots: []golf.Shot{
				{Lie: golf.Tee, Distance: 390 * golf.Yard}, {Lie: golf.Fairway, Distance: 150 * golf.Yard}, {Lie: golf.Green, Distance: 20 * golf.Foot}}},
				Length: 390 * golf.Yard, Line: "150 g20 1", Far: golf.Yards, Green: golf.Feet})
		}
		w.Write(r)
	}
	if err := w.Close(accountfile.Written{}); err != nil {
		t.Fatal(err)
	}
	if a := v.upload(file.String()); a.status != http.StatusOK || !strings.Contains(a.body, "800 rounds") {
		t.Fatalf("%d", a.status)
	}
	answers := make([]answer, 5)
	var confirming sync.WaitGroup
	for i := range answers {
		confirming.Go(func() { answers[i] = v.post("/import/confirm", "there", "replace") })
	}
	for range 3 {
		began := time.Now()
		if a := other.get("/rounds"); a.status != http.StatusOK {
			t.Errorf("another's page: %d", a.status)
		}
		t.Log("another's page took", time.Since(began))
	}
	confirming.Wait()
	count := map[int]int{}
	for _, a := range answers {
		count[a.status]++
	}
	if count[http.StatusSeeOther] != 1 || count[http.StatusConflict]+count[http.StatusNotFound] != 4 {
		t.Errorf("%v", count)
	}
	ids, err := s.store.RoundIDs(t.Context(), 1)
	if err != nil || len(ids) != rounds {
		t.Errorf("%d rounds, %v", len(ids), err)
	}
}

// What an import replaces is shown first, and can be brought back; what is the
// same stays.
func TestWhatAnImportReplaces(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	round := v.withRound()
	before := v.get("/export/everything.json").body
	csv := v.get("/export/shots.csv").body
	if a := v.upload(before); !strings.Contains(a.body, "1 round is there already and the same") && !strings.Contains(a.body, "One round is there already and the same") || !strings.Contains(a.body, "there already, the same") {
		t.Errorf("%d %s", a.status, a.body)
	}
	v.post("/account", "name", "Robin", "target", "84.5", "boundary", "40", "far", "m", "green", "m")
	v.post(round+"/holes/1", "line", "r100 g10 1", "version", "1", "press", "save")
	changed := v.get("/export/everything.json").body
	if changed == before {
		t.Fatal("not changed")
	}
	for kind, file := range map[string]string{"the account": before, "the shots": csv} {
		if a := v.upload(file); !strings.Contains(a.body, "yes, but different") || !strings.Contains(a.body, "Import all and replace 1") {
			t.Errorf("%s: %d %s", kind, a.status, a.body)
		}
		if now := v.get("/export/everything.json").body; now != changed {
			t.Errorf("%s: changed before it was confirmed", kind)
		}
		if a := v.post("/import/confirm", "there", "skip"); a.status != http.StatusSeeOther || v.get("/export/everything.json").body != changed {
			t.Errorf("%s: skipping changes something", kind)
		}
	}
	v.upload(before)
	a := v.post("/import/confirm", "there", "replace")
	if a.status != http.StatusSeeOther || a.location != "/removed?saved=replaced" {
		t.Fatalf("%d %s", a.status, a.location)
	}
	if a := v.get(a.location); !strings.Contains(a.body, "What they replaced is listed here") || !strings.Contains(a.body, "Harrow Fen") {
		t.Errorf("%s", a.body)
	}
	if got := v.get("/export/shots.csv").body; got != csv {
		t.Errorf("not replaced: %s", got)
	}
	if !strings.Contains(v.get("/account").body, `value="84.5"`) {
		t.Error("the settings were taken without a tick")
	}
	if a := v.post("/removed", "what", "round.1.1"); a.status != http.StatusSeeOther || v.get(round).status != http.StatusOK {
		t.Errorf("not brought back: %d", a.status)
	}
}

// Exports hold whatever is stored, from before any rule too, and can be read
// again.
func TestExportsNeverBreak(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	v.withRound()
	dbtest.Exec(s.t, s.url, "update shots set club = '7i' || chr(65279)")
	dbtest.Exec(s.t, s.url, "update rounds set course = ' Harrow' || chr(10) || chr(8232) || '=Fen ', name = '', tee = 'x;=1+1'")
	for _, path := range []string{"/export/shots.csv", "/export/everything.json"} {
		a := v.get(path)
		if a.status != http.StatusOK {
			t.Fatalf("%s: %d %s", path, a.status, a.body)
		}
		if a := v.upload(a.body); a.status != http.StatusOK {
			t.Errorf("%s: %d %s", path, a.status, a.body)
		}
	}
	if a := v.get("/export/shots.csv"); !strings.Contains(a.body, `"x;'=1+1"`) || strings.Contains(a.body, "\ufeff") {
		t.Error(a.body)
	}
}
