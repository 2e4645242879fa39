package browser

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/shotsfile"
	"strokeledger/web/form"
)

// card84 is the round of 84 strokes that the design gives for measuring entry.
func card84(t *testing.T) golf.Round {
	t.Helper()
	file, err := os.Open("../../../testdata/shots/card84.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	for r, err := range shotsfile.NewReader(file, shotsfile.Limits{}).Rounds() {
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	t.Fatal("no round")
	return golf.Round{}
}

// lineField is the field that a hole is typed into, found as the style sheets find
// it: a selector in plain text is also found in addresses, as in /help#line-said.
const lineField = chromedp.CSS("#line")

// newcomer makes an account, adds the course of a round and begins it.
func newcomer(t *testing.T, ctx context.Context, name string, r golf.Round) {
	t.Helper()
	do(t, ctx, chromedp.Navigate(app.URL+"/join"),
		chromedp.SendKeys("#name", name), chromedp.SendKeys("#email", name+"@example.org"), chromedp.SendKeys("#password", "a long password"),
		Press("main form button"), chromedp.WaitReady("#target"), Press("main form button.main-button"), chromedp.WaitReady("a.button.main-button"),
		chromedp.Navigate(app.URL+"/courses/new"),
		chromedp.SendKeys("#name", "Course of "+name), chromedp.SetValue("#paste", cardText(r)),
		Press("main form button.main-button"), chromedp.WaitReady(".notice"), chromedp.Navigate(app.URL+"/courses"), chromedp.WaitReady("table"))
	link, err := chromedp.Run(ctx, chromedp.Attributes(fmt.Sprintf(`//a[text()="Course of %s"]`, name)))
	if err != nil {
		t.Fatal(err)
	}
	course := link["href"][strings.LastIndex(link["href"], "/")+1:]
	do(t, ctx, chromedp.Navigate(app.URL+"/rounds/new?course="+course), Press("main form button.main-button"), chromedp.WaitReady(lineField))
}

// cardText is the card of a round as a player may paste it.
func cardText(r golf.Round) string {
	var b strings.Builder
	for _, h := range r.Card() {
		fmt.Fprintf(&b, "%d %s yd\n", h.Par, form.WriteLength(h.Length, golf.Yards))
	}
	return b.String()
}

// statementSays checks that the statement adds up to the score and to what was
// lost against the target.
func statementSays(t *testing.T, ctx context.Context, score, lost string) {
	t.Helper()
	do(t, ctx, chromedp.WaitReady("table.statement-table"))
	if got := read(t, ctx, ".statement-table tfoot strong"); got != score {
		t.Errorf("score %s, want %s", got, score)
	}
	if got := read(t, ctx, ".statement-table tfoot .amount"); got != lost {
		t.Errorf("lost %s, want %s", got, lost)
	}
}

func TestNewcomerEntersARoundByLine(t *testing.T) {
	t.Parallel()
	for _, script := range []bool{true, false} {
		ctx, r := tab(t, 1280, script), card84(t)
		newcomer(t, ctx, map[bool]string{true: "ada", false: "bea"}[script], r)
		for i, h := range r.Holes {
			line := form.WriteLine(h, r.Card()[i], form.StandardUnits)
			typeHole(t, ctx, h.Number, line)
		}
		statementSays(t, ctx, "84", "+5.0")
	}
}

// typeHole types a hole's line on its page and ends it with the return key. A field
// that was found just as its page went is looked for again: nothing was typed then.
func typeHole(t *testing.T, ctx context.Context, number int, line string) {
	t.Helper()
	var err error
	for range 20 {
		if err = chromedp.Do(ctx, chromedp.WaitReady(fmt.Sprintf(`//h1[text()="Hole %d"]`, number)), chromedp.SendKeys(lineField, line+"\r")); err == nil {
			return
		}
		if !strings.Contains(err.Error(), "node with given id") {
			break
		}
	}
	t.Fatalf("hole %d: %v", number, err)
}

func TestNewcomerEntersARoundByPad(t *testing.T) {
	t.Parallel()
	for _, script := range []bool{true, false} {
		ctx, r := tab(t, 360, script), card84(t)
		newcomer(t, ctx, map[bool]string{true: "cleo", false: "dora"}[script], r)
		for i, h := range r.Holes {
			do(t, ctx, chromedp.WaitReady(fmt.Sprintf(`//h1[text()="Hole %d"]`, h.Number)))
			want := ""
			for _, key := range strings.Split(strings.ReplaceAll(padWritten(h, r.Card()[i]), " ", ""), "") {
				want = form.Press(want, key)
				do(t, ctx, Press(fmt.Sprintf(`button.pad-key[value=%q]`, key)), chromedp.WaitReady(lineField))
				waitValue(t, ctx, want)
			}
			do(t, ctx, Press(`button.pad-key[value="save"]`))
		}
		statementSays(t, ctx, "84", "+5.0")
	}
}

// padWritten is a line with a letter before every distance, as the pad writes it.
func padWritten(h golf.Hole, card golf.CardHole) string {
	var words []string
	last := ""
	for word := range strings.FieldsSeq(form.WriteLine(h, card, form.StandardUnits)) {
		if word[0] >= '0' && word[0] <= '9' {
			word = last + word
		}
		words, last = append(words, word), word[:1]
	}
	return strings.Join(words, " ")
}

// waitValue waits until the line is as the pad must have made it.
func waitValue(t *testing.T, ctx context.Context, want string) {
	t.Helper()
	var got string
	for range 200 {
		var err error
		if got, err = chromedp.Run(ctx, chromedp.Value(lineField)); err == nil && got == want {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	t.Fatalf("the line is %q, want %q", got, want)
}

func TestFaultsKeepWhatWasTyped(t *testing.T) {
	ctx := tab(t, 360, true)
	if err := SignIn(ctx, app); err != nil {
		t.Fatal(err)
	}
	path, err := FirstRound(ctx, app)
	if err != nil {
		t.Fatal(err)
	}
	do(t, ctx, chromedp.Navigate(app.URL+path+"/holes/1"), chromedp.Clear(lineField), chromedp.SendKeys(lineField, "r165 q24\r"), chromedp.WaitReady(".shot-rows .fault-words"))
	if got := read(t, ctx, ".fault-words"); !strings.Contains(got, "q24") || !strings.Contains(got, "Allowed") {
		t.Error(got)
	}
	if got, err := chromedp.Run(ctx, chromedp.Value(lineField)); err != nil || got != "r165 q24" {
		t.Errorf("%q, %v", got, err)
	}
}

// Two windows edit one hole: the second is told, and shown both.
func TestTwoWindowsOnOneHole(t *testing.T) {
	ctx := tab(t, 1280, true)
	if err := SignIn(ctx, app); err != nil {
		t.Fatal(err)
	}
	path, err := FirstRound(ctx, app)
	if err != nil {
		t.Fatal(err)
	}
	hole := app.URL + path + "/holes/2"
	other, cancel := chromedp.NewContext(ctx)
	defer cancel()
	do(t, ctx, chromedp.Navigate(hole))
	do(t, other, chromedp.Navigate(hole), chromedp.Clear(lineField), chromedp.SendKeys(lineField, "f150 g20 2\r"), chromedp.WaitReady(`//h1[text()!="Hole 2"]`))
	do(t, ctx, chromedp.Clear(lineField), chromedp.SendKeys(lineField, "r155 g30 3\r"), chromedp.WaitReady(".conflict-notice"))
	if got := read(t, ctx, ".version-table"); !strings.Contains(got, "f150 g20 2") || !strings.Contains(got, "r155 g30 3") {
		t.Error(got)
	}
	if got, err := chromedp.Run(ctx, chromedp.Value(lineField)); err != nil || got != "r155 g30 3" {
		t.Errorf("%q, %v", got, err)
	}
	do(t, ctx, Press(`button[value="mine"]`), chromedp.WaitReady(`//h1[text()!="Hole 2"]`), chromedp.Navigate(hole))
	waitValue(t, ctx, "r155 g30 3")
}

// A file is looked at, taken in and told as it is sent, with script and without.
func TestTakingInAFile(t *testing.T) {
	file, err := filepath.Abs("../../../testdata/shots/hand-86.csv")
	if err != nil {
		t.Fatal(err)
	}
	for _, script := range []bool{true, false} {
		ctx := tab(t, 360, script)
		name := map[bool]string{true: "gia", false: "hedy"}[script]
		do(t, ctx, chromedp.Navigate(app.URL+"/join"), chromedp.SendKeys("#name", name), chromedp.SendKeys("#email", name+"@example.org"),
			chromedp.SendKeys("#password", "a long password"), Press("main form button"), chromedp.WaitReady("#target"),
			Press("main form button.main-button"), chromedp.WaitReady("a.button.main-button"),
			chromedp.Navigate(app.URL+"/import"), chromedp.SetUploadFiles("#file", []string{file}), Press("main form button"), chromedp.WaitReady(`button[name="there"]`))
		if got := read(t, ctx, ".lede"); !strings.Contains(got, "1 round") {
			t.Error(got)
		}
		do(t, ctx, Press(`button[name="there"]`), chromedp.WaitReady("tbody a"), Press("tbody a"), chromedp.WaitReady("table.statement-table"))
		if got := read(t, ctx, ".statement-table tfoot strong"); got != "86" {
			t.Errorf("score %s", got)
		}
	}
}
