package handlers

import (
	"bytes"
	"compress/gzip"
	"context"
	"fmt"
	"io"
	"mime/multipart"
	"net/http"
	"os"
	"path/filepath"
	"runtime"
	"runtime/metrics"
	"strings"
	"sync"
	"testing"
	"time"

	"strokeledger/analysis/golf"
)

// upload sends a file as the import form does.
func (v visitor) upload(text string) answer { return v.sends(strings.NewReader(text)) }

// sends sends a file while it is made.
func (v visitor) sends(file io.Reader) answer {
	v.t.Helper()
	body, out := io.Pipe()
	defer body.Close()
	w := multipart.NewWriter(out)
	go func() {
		part, err := w.CreateFormFile("file", "shots.csv")
		if err == nil {
			_, err = io.Copy(part, file)
		}
		if err == nil {
			err = w.Close()
		}
		out.CloseWithError(err)
	}()
	r, err := http.NewRequest(http.MethodPost, v.URL+"/import", body)
	if err != nil {
		v.t.Fatal(err)
	}
	r.Header.Set("Content-Type", w.FormDataContentType())
	return v.ask(r)
}

// repeated is a text many times over, made while it is read.
type repeated struct {
	text, rest string
	left       int
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

const shotsHead = "round,date,hole,par,shot,lie,distance\n"

// hostile are files that are made to do harm, with what the page says of each.
func hostile() map[string]struct {
	file io.Reader
	want string
} {
	const begins = `{"version":1,"settings":{"name":"R","far_unit":"yd","green_unit":"ft","target":79,"boundary_yd":50,"clubs":""},"rounds":[`
	var bomb bytes.Buffer
	packed := gzip.NewWriter(&bomb)
	io.Copy(packed, &repeated{text: strings.Repeat("0", 64<<10), left: 1 << 10})
	packed.Close()
	long := func(head, piece string) io.Reader {
		const block = 64 << 10
		return io.MultiReader(strings.NewReader(head), &repeated{text: strings.Repeat(piece, block/len(piece)), left: (40 << 20) / block})
	}
	return map[string]struct {
		file io.Reader
		want string
	}{
		"rounds that are none": {long(`{"version":1,"rounds":[`, "0,"), "The version and the settings come once each"},
		"zeros":                {long(begins, "0,"), "Round 1: a number here"},
		"nested":               {long(`{"x":`, "["), "nested more than 32 deep"},
		"a huge text":          {long(`{"x":"`, "aaaaaaaa"), "longer than 65536 bytes"},
		"a huge number":        {long(`{"version":`, "11111111"), "longer than 65536 bytes"},
		"40 MiB of JSON":       {long(`{"x":[`, `"aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa",`), "larger than 16 MiB"},
		"a cell without end":   {long(shotsHead+`"`, "aaaaaaaa"), "more than 65536 bytes in a line"},
		"rounds without end":   {&counting{}, "more than 2000 rounds"},
		"200,001 rows":         {io.MultiReader(strings.NewReader(shotsHead), &repeated{text: strings.Repeat("r,2026-05-02,1,4,1,tee,390\n", 1000), left: 201}), "more than 200000 rows"},
		"a packed file":        {&bomb, "line 1"},
	}
}

// counting is a shots file of a round a row.
type counting struct {
	n    int
	rest string
}

func (c *counting) Read(p []byte) (int, error) {
	if c.rest == "" {
		if c.n == 0 {
			c.rest = shotsHead
		}
		for i := range 1000 {
			c.rest += fmt.Sprintf("r%d,2026-05-02,1,4,1,tee,390\nr%d,2026-05-02,1,4,2,green,9\n", c.n*1000+i, c.n*1000+i)
		}
		c.n++
	}
	if c.n > 100 {
		return 0, io.EOF
	}
	n := copy(p, c.rest)
	c.rest = c.rest[n:]
	return n, nil
}

// peak measures how far the memory in use grows while work runs.
func peak(work func()) (grown int64) {
	runtime.GC()
	heap := []metrics.Sample{{Name: "/memory/classes/heap/objects:bytes"}}
	metrics.Read(heap)
	before := int64(heap[0].Value.Uint64())
	done := make(chan struct{})
	var measuring sync.WaitGroup
	measuring.Go(func() {
		for {
			metrics.Read(heap)
			grown = max(grown, int64(heap[0].Value.Uint64())-before)
			select {
			case <-done:
				return
			case <-time.After(5 * time.Millisecond):
			}
		}
	})
	work()
	close(done)
	measuring.Wait()
	return grown
}

// temporary counts the files of forms in the folder for temporary files.
func temporary(t *testing.T) int {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(os.TempDir(), "multipart-*"))
	if err != nil {
		t.Fatal(err)
	}
	return len(files)
}

// No file fills the memory or leaves anything on the disk, alone or with others.
func TestHostileFiles(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v, w := s.member("a"), s.member("b")
	t.Setenv("TMPDIR", t.TempDir())
	for name, c := range hostile() {
		var a answer
		if grown := peak(func() { a = v.sends(c.file) }); grown > 100<<20 {
			t.Errorf("%s: %d MiB", name, grown>>20)
		}
		if a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, c.want) {
			t.Errorf("%s: %d, no %q", name, a.status, c.want)
		}
	}
	all := hostile()
	grown := peak(func() {
		var sending sync.WaitGroup
		for i, name := range []string{"zeros", "a huge text", "40 MiB of JSON", "a cell without end"} {
			sending.Go(func() { []visitor{v, w}[i%2].sends(all[name].file) })
		}
		sending.Wait()
	})
	if grown > 150<<20 {
		t.Errorf("at once: %d MiB", grown>>20)
	}
	if n := temporary(t); n != 0 {
		t.Errorf("%d temporary files are left", n)
	}
	if a := v.get("/rounds"); a.status != http.StatusOK {
		t.Errorf("after it: %d", a.status)
	}
}

// What a broken request sends is the visitor's fault, and nothing waits after
// it.
func TestBrokenUploads(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	for kind, body := range map[string]string{
		"multipart/form-data":              "x",
		"multipart/form-data; boundary=b":  "--b\r\nContent-Disposition: form-data; name=\"file\"; filename=\"f\"\r\n\r\nround,da",
		"multipart/form-data; boundary=bb": "nothing of the kind",
	} {
		r, err := http.NewRequest(http.MethodPost, v.URL+"/import", strings.NewReader(body))
		if err != nil {
			t.Fatal(err)
		}
		r.Header.Set("Content-Type", kind)
		if a := v.ask(r); a.status != http.StatusBadRequest && a.status != http.StatusUnprocessableEntity {
			t.Errorf("%s: %d", kind, a.status)
		}
	}
	if a := v.post("/import/confirm"); a.status != http.StatusNotFound || !strings.Contains(a.body, "No file to import") {
		t.Errorf("something waited: %d", a.status)
	}
}

func TestOneImportAtATime(t *testing.T) {
	u := newUploads()
	u.wait = time.Millisecond
	end, err := u.begin(t.Context(), 1)
	if err != nil {
		t.Fatal(err)
	}
	for who, want := range map[golf.PlayerID]error{1: errOwnImport, 2: errImports} {
		for range 2 {
			if _, err := u.begin(t.Context(), who); err != want {
				t.Errorf("%d: %v", who, err)
			}
		}
	}
	gone, cancel := context.WithCancel(t.Context())
	cancel()
	u.wait = time.Hour
	if _, err := u.begin(gone, 3); err != context.Canceled {
		t.Errorf("%v", err)
	}
	end()
	for _, who := range []golf.PlayerID{1, 2, 3} {
		end, err := u.begin(t.Context(), who)
		if err != nil {
			t.Fatal(who, err)
		}
		end()
	}
}

func TestTheQuotaOfADay(t *testing.T) {
	u := newUploads()
	for _, c := range []struct {
		who   golf.PlayerID
		bytes int64
		want  bool
	}{{1, quotaDay - 1, true}, {1, 2, false}, {1, 1, true}, {1, 1, false}, {2, quotaDay, true}} {
		if got := u.count(c.who, c.bytes, golf.Date{Year: 2026, Month: 5, Day: 2}); got != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
	u.day = golf.Date{} // another day
	if !u.count(1, quotaDay, golf.Date{Year: 2026, Month: 5, Day: 2}) {
		t.Error("the next day is counted with the one before")
	}
	c := &counted{Reader: strings.NewReader("x"), read: func(n int64) bool { return u.count(1, n, golf.Date{Year: 2026, Month: 5, Day: 2}) }}
	if _, err := io.ReadAll(c); unreadable(err) != errQuota {
		t.Errorf("%v", err)
	}
}
