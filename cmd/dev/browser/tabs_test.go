package browser

import (
	"context"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

var app *App

func TestMain(m *testing.M) {
	var err error
	if app, err = Start("../../.."); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	code := m.Run()
	if err := app.Stop(); err != nil {
		fmt.Fprintln(os.Stderr, "the app did not stop well:", err)
		code = 1
	}
	os.Exit(code)
}

// sourceTouched looks at every file that the program is built from, from inside
// a test, so that go test does not take a result from its cache that an older
// program had.
var sourceTouched = sync.OnceValue(func() error { return touchSource("../../..") })

func touchSource(root string) error {
	for _, folder := range []string{"analysis", "cmd", "db", "handlers", "migrations", "static", "web", "go.mod"} {
		err := filepath.WalkDir(filepath.Join(root, folder), func(path string, d fs.DirEntry, err error) error {
			if err != nil {
				return err
			}
			if d.Name() == "node_modules" {
				return fs.SkipDir
			}
			_, err = os.Stat(path)
			return err
		})
		if err != nil {
			return err
		}
	}
	return nil
}

// tab opens a browser for a test, at a width, with script or without.
//
// A long test that only looks, or has accounts of its own, is parallel: these run two
// at a time after the others, which may change the app's address or restart it.
func tab(t *testing.T, width int64, script bool) context.Context {
	t.Helper()
	if err := sourceTouched(); err != nil {
		t.Fatal(err)
	}
	ctx, cancel, err := Tab(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancelTime := context.WithTimeout(ctx, 6*time.Minute)
	t.Cleanup(func() { cancelTime(); cancel() })
	steps := []chromedp.Action[chromedp.Void]{Screen(width, 800, false)}
	if !script {
		steps = append(steps, chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
			_, err := chromedp.Call(ctx, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
			return err
		}))
	}
	do(t, ctx, steps...)
	return ctx
}

func do(t *testing.T, ctx context.Context, steps ...chromedp.Action[chromedp.Void]) {
	t.Helper()
	if err := chromedp.Do(ctx, steps...); err != nil {
		t.Fatal(err)
	}
}

// read is the text of an element, waited for. One step of script finds and
// reads it: an element found in one step and read in the next may be gone when
// a page is followed by another in between.
func read(t *testing.T, ctx context.Context, selector string) string {
	t.Helper()
	script := fmt.Sprintf(`Array.from(document.querySelectorAll(%q), e => e.textContent)`, selector)
	var found []string
	var err error
	for range 600 {
		if found, err = chromedp.Run(ctx, chromedp.Evaluate[[]string](script)); err == nil && len(found) > 0 {
			return strings.Join(strings.Fields(found[0]), " ")
		}
		time.Sleep(50 * time.Millisecond)
	}
	t.Fatalf("%s: not on the page (%v)", selector, err)
	return ""
}
