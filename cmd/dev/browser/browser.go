// Package browser starts the app and a real Chromium to look at it: for the
// browser tests, which are in it, and for pictures of every page.
package browser

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"sync"
	"syscall"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
)

// Tab opens a Chromium with an empty profile and returns the context of its
// first tab. The caller cancels it.
func Tab(parent context.Context) (context.Context, context.CancelFunc, error) {
	profile, err := os.MkdirTemp("", "ledger-chromium-")
	if err != nil {
		return nil, nil, err
	}
	ctx, cancel, err := TabIn(parent, profile)
	return ctx, func() {
		cancel()
		os.RemoveAll(profile)
	}, err
}

// TabIn opens a Chromium with a profile that outlives it, as a phone's browser
// that is closed and opened again.
func TabIn(parent context.Context, profile string) (context.Context, context.CancelFunc, error) {
	path, err := Chromium()
	if err != nil {
		return nil, func() {}, err
	}
	allocator, cancelAllocator := chromedp.NewExecAllocator(parent, chromedp.ExecPath(path), chromedp.UserDataDir(profile), chromedp.Headless,
		chromedp.NoSandbox, chromedp.DisableGPU, chromedp.NoFirstRun, chromedp.Flag("disable-quic", true),
		chromedp.Flag("disable-background-networking", true), chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-sync", true))
	ctx, cancelTab := chromedp.NewContext(allocator)
	return ctx, func() {
		cancelTab()
		cancelAllocator()
	}, nil
}

// Chromium finds the browser, on the path or where macOS keeps it.
func Chromium() (string, error) {
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome", "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome"} {
		if path, err := exec.LookPath(name); err == nil && !hollow(path, snapped) {
			return path, nil
		}
	}
	return "", errors.New("no Chromium found; type: go run ./cmd/dev prepare")
}

// Screen sets the size of the page, 360 or 1280 px wide, and its light.
func Screen(width, height int64, dark bool) chromedp.Action[chromedp.Void] {
	light := "light"
	if dark {
		light = "dark"
	}
	return chromedp.Steps(
		chromedp.EmulateViewport(width, height),
		chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
			_, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: light}}})
			return err
		}),
	)
}

// snapped is Chromium as a snap.
const snapped = "/snap/bin/chromium"

// hollow is the script that Ubuntu's package brings in the place of a browser,
// when the snap that it starts is not there.
func hollow(path, snap string) bool {
	if _, err := os.Stat(snap); err == nil {
		return false
	}
	f, err := os.Open(path)
	if err != nil {
		return false
	}
	defer f.Close()
	head := make([]byte, 4096)
	n, _ := io.ReadFull(f, head)
	return bytes.HasPrefix(head[:n], []byte("#!")) && bytes.Contains(head[:n], []byte(snap))
}

// App is the program, running with its made-up club in a folder of its own.
type App struct {
	URL, Password string

	command *exec.Cmd
	folder  string
	signing sync.Mutex                      // held while somebody signs in
	cookies map[string]*network.CookieParam // of who has signed in, by address
}

var (
	address = regexp.MustCompile(`is at (http://\S+)`)
	signIn  = regexp.MustCompile(`sign in as .* password (\S+)`)
)

// startLimit is how long the program may take to say where it is.
const startLimit = 90 * time.Second

// Start builds the program from the source tree at root and starts it with the
// demo. The caller stops it.
func Start(root string) (*App, error) {
	folder, err := os.MkdirTemp("", "ledger-app-")
	if err != nil {
		return nil, err
	}
	if err := os.Chmod(folder, 0o755); err != nil {
		return nil, err
	}
	program := filepath.Join(folder, "strokeledger")
	build := exec.Command("go", "build", "-o", program, "./cmd/strokeledger")
	build.Dir = root
	if out, err := build.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("go build: %w: %s", err, out)
	}
	a := &App{folder: folder, cookies: map[string]*network.CookieParam{}}
	if err := a.begin(); err != nil {
		return nil, errors.Join(err, a.Stop())
	}
	return a, nil
}

// begin starts the program on the folder.
func (a *App) begin() error {
	a.command = exec.Command(filepath.Join(a.folder, "strokeledger"), "serve", "--demo", "--sign-up", "open", "--listen", "127.0.0.1:0", "--data", filepath.Join(a.folder, "data"))
	out, err := a.command.StdoutPipe()
	if err != nil {
		return err
	}
	log, err := os.Create(filepath.Join(a.folder, "log"))
	if err != nil {
		return err
	}
	defer log.Close()
	a.command.Stderr = log
	if err := a.command.Start(); err != nil {
		return err
	}
	return a.read(out)
}

// read waits until the program has said where it is and who may sign in.
func (a *App) read(out io.Reader) error {
	said := make(chan error, 1)
	go func() {
		lines := bufio.NewScanner(out)
		for lines.Scan() {
			if m := signIn.FindStringSubmatch(lines.Text()); m != nil {
				a.Password = m[1]
			}
			if m := address.FindStringSubmatch(lines.Text()); m != nil {
				a.URL = m[1]
				said <- nil
				return
			}
		}
		log, _ := os.ReadFile(filepath.Join(a.folder, "log"))
		said <- fmt.Errorf("the program ended: %s", log)
	}()
	select {
	case err := <-said:
		return err
	case <-time.After(startLimit):
		return fmt.Errorf("the program did not start within %s", startLimit)
	}
}

// Stop ends the program and removes its folder.
func (a *App) Stop() error {
	var err error
	if a.command != nil && a.command.Process != nil {
		a.command.Process.Signal(syscall.SIGTERM)
		err = a.command.Wait()
	}
	return errors.Join(err, os.RemoveAll(a.folder))
}
