package handlers

import (
	"fmt"
	"net/http"
	"net/url"
	"strings"
	"testing"
)

// Requests that once were answered with a fault of the server's, each as it was
// sent.
func TestFormerFaults(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	owner, coach := s.furnished()
	unseen := []string{"\x00", "a\x00b", "\xff", "\xc0\xaf", "a\xed\xa0\x80"}
	for _, path := range []string{"/sign-in email", "/join name", "/account name", "/courses/new name", "/courses/new tee", "/courses/1 name", "/courses/1 tee", "/rounds/new note", "/rounds/1/note note"} {
		path, field, _ := strings.Cut(path, " ")
		for _, text := range unseen {
			if a := owner.post(path, field, text); a.status != http.StatusBadRequest {
				t.Errorf("%s %s=%q: %d", path, field, text, a.status)
			}
		}
	}
	for _, text := range unseen {
		for _, path := range []string{"/rounds?course=", "/players/1/rounds?course="} {
			if a := owner.get(path + url.QueryEscape(text)); a.status != http.StatusBadRequest {
				t.Errorf("%s%q: %d", path, text, a.status)
			}
		}
	}
	for _, end := range []string{"%00", "%ff", "%C0%AF", "1%00"} {
		if a := coach.get("/players/1/rounds/" + end); a.status != http.StatusBadRequest {
			t.Errorf("round %s: %d", end, a.status)
		}
	}
	if a := coach.get("/players/1/rounds/" + strings.Repeat("qx7", 3000)); a.status != http.StatusNotFound {
		t.Errorf("a round of 9,000 letters: %d", a.status)
	}
	for _, span := range []string{"0001", "0001-01", "0001-01-01..", "0001-01-01..0001-01-01", "0001-01-01..9999-12-31", "0001-01-02..0001-02-01"} {
		for _, v := range []visitor{owner, coach} {
			if a := v.get("/players/1/report?span=" + span); a.status != http.StatusOK {
				t.Errorf("a report of %s: %d", span, a.status)
			}
		}
	}
	for _, on := range []string{"0", "19", "-1", "2147483648", "9223372036854775808", "1.0", "1.100", "1.2147483648", "1.99999999999", "1.1.1", "x"} {
		for _, v := range []visitor{owner, coach} {
			if a := v.post("/players/1/notes", "round", "1", "body", "x", "on", on); a.status != http.StatusNotFound {
				t.Errorf("a note on %s: %d", on, a.status)
			}
		}
	}
	if a := owner.post("/rounds/new", "date", "2026-05-02", "new_course", "Moor", "new_holes", "2147483648"); a.status != http.StatusUnprocessableEntity {
		t.Errorf("a course of two thousand million holes: %d", a.status)
	}
	const shots = "/rounds/1/holes/1/shots"
	for _, body := range []string{"%zz", "a;b=c", "%"} {
		if a := owner.raw(shots, urlencoded, body); a.status != http.StatusBadRequest {
			t.Errorf("shots %q: %d", body, a.status)
		}
	}
	for _, query := range []string{"?%zz", "?a;b"} {
		if a := owner.post(shots + query); a.status != http.StatusBadRequest {
			t.Errorf("shots%s: %d", query, a.status)
		}
	}
	if a := owner.raw(shots, ";", "a=1"); a.status != http.StatusBadRequest {
		t.Errorf("shots of no kind: %d", a.status)
	}
	if a := owner.raw(shots, urlencoded, strings.Repeat("a=1&", 12000)); a.status >= http.StatusInternalServerError {
		t.Errorf("12,000 fields: %d", a.status)
	}
}

// A body of several parts that cannot be told apart is the sender's fault.
func TestFilesThatCannotBeRead(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("robin")
	const kind = "multipart/form-data; boundary=x"
	for name, c := range map[string]struct {
		kind, body string
	}{
		"no boundary":  {"multipart/form-data", "--x\r\n"},
		"cut off":      {kind, "--x\r\nContent-Disposition: form-data; name=\"file\"; filename=\"a.csv\"\r\n\r\nround"},
		"cut off soon": {kind, "--x\r\nContent-Dispo"},
		"garbage":      {kind, "\x1f\x8b\x08garbage"},
		"empty":        {kind, ""},
		"no file":      {kind, "--x\r\nContent-Disposition: form-data; name=\"other\"\r\n\r\nround\r\n--x--\r\n"},
		"NUL in name":  {kind, "--x\r\nContent-Disposition: form-data; name=\"file\"; filename=\"a\x00.csv\"\r\n\r\nround\r\n--x--\r\n"},
		"another kind": {"text/csv", "round"},
		"large field":  {kind, "--x\r\nContent-Disposition: form-data; name=\"other\"\r\n\r\n" + strings.Repeat("a", 12<<20) + "\r\n--x--\r\n"},
	} {
		if a := v.raw("/import", c.kind, c.body); a.status < 400 || a.status >= 500 || !strings.Contains(a.body, "<h1") {
			t.Errorf("%s: %d", name, a.status)
		}
	}
	if a, _ := v.send(http.MethodPost, "/import", kind, "\x1f\x8b\x08\x00", "Content-Encoding", "gzip"); a.status < 400 || a.status >= 500 {
		t.Errorf("packed: %d", a.status)
	}
}

// A file of everything holds nothing that the database or an export refuses
// later.
func TestAFileOfEverythingIsChecked(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("robin")
	file := func(round, holes string) string {
		return fmt.Sprintf(`{"version":1,"settings":{"name":"robin","target":79,"boundary_yd":50,"far_unit":"yd","green_unit":"ft"},"rounds":[{"day":"2026-05-02","target":79,"boundary_yd":50,"par18":72,%s,"holes":[%s]}]}`, round, holes)
	}
	const hole = `{"number":1,"par":4,"length_in":13824}`
	if a := v.upload(file(`"name":"first"`, hole)); a.status >= 400 {
		t.Errorf("the good file: %d %s", a.status, a.body)
	}
	for name, text := range map[string]string{
		"out beyond int4":    file(`"name":"x","card_out":2147483648`, hole),
		"in beyond int4":     file(`"name":"x","card_in":9223372036854775807`, hole),
		"a nine below zero":  file(`"name":"x","card_in":-1`, hole),
		"a hole twice":       file(`"name":"x"`, hole+","+hole),
		"no name":            file(`"name":""`, hole),
		"a course unseen":    file(`"name":"x","course":"Fen\ufeff"`, hole),
		"a score beyond all": file(`"name":"x"`, `{"number":1,"par":4,"length_in":13824,"score_only":2147483648}`),
		"penalties":          file(`"name":"x"`, `{"number":1,"par":4,"length_in":13824,"shots":[{"lie":"tee","distance_in":13824,"penalty":2147483648}]}`),
	} {
		if a := v.upload(text); a.status != http.StatusUnprocessableEntity {
			t.Errorf("%s: %d", name, a.status)
		}
	}
	if a := v.get("/export/shots.csv"); a.status != http.StatusOK {
		t.Errorf("the export: %d", a.status)
	}
}

// What forms take can be taken away again as a file.
func TestWhatIsTypedCanBeExported(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("robin")
	round := v.withRound()
	for _, line := range []string{"r150:7i\ufeff g20 2", "r150:7i\u00a0 g20 2", "r150:\u20037i g20 2", "r150:7i\u2028 g20 2"} {
		v.post(round+"/holes/1", "line", line, "version", "1", "press", "save")
		if a := v.get("/export/shots.csv"); a.status != http.StatusOK || strings.Contains(a.body, "<h1") {
			t.Errorf("after %q: %d", line, a.status)
		}
	}
}
