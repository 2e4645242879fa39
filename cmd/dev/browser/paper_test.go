package browser

import (
	"context"
	"regexp"
	"testing"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// papers are the two sizes of paper that people have, in inches.
var papers = map[string][2]float64{"A4": {8.27, 11.69}, "letter": {8.5, 11}}

var pdfPage = regexp.MustCompile(`/Type\s*/Page\b`)

// sheets is how many sheets a page takes on paper of a size in inches.
func sheets(t *testing.T, ctx context.Context, path string, paper [2]float64) (n int) {
	t.Helper()
	do(t, ctx, chromedp.Navigate(app.URL+path), chromedp.WaitReady("main"), chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		printed, err := chromedp.Call(ctx, page.PrintToPDF, page.PrintToPDFParams{PaperWidth: paper[0], PaperHeight: paper[1]})
		if err == nil {
			n = len(pdfPage.FindAll(printed.Data, -1))
		}
		return err
	}))
	return n
}

// What is taken along to practise is one sheet: the plan, the card for the bag, and
// the sheet of every drill. A long statement takes more, so that sheets are counted at
// all.
func TestPracticeIsOneSheet(t *testing.T) {
	ctx := tab(t, 1280, true)
	if err := SignIn(ctx, app); err != nil {
		t.Fatal(err)
	}
	both := []string{"/players/2/plan", "/players/2/run-out?distance=23&edge=17&lie=fairway&speed=medium&slope=level", "/players/2/drills/up-and-down"}
	var short []string // on the shorter paper alone
	for _, drill := range []string{"start-line", "ladder", "lag", "round-the-hole", "chip-fairway", "chip-rough", "bunker", "wedge-ladder", "approach", "corridor", "short-side", "back-into-play"} {
		short = append(short, "/players/2/drills/"+drill)
	}
	for name, paths := range map[string][]string{"A4": both, "letter": append(both, short...)} {
		for _, path := range paths {
			if n := sheets(t, ctx, path, papers[name]); n != 1 {
				t.Errorf("%s on %s: %d sheets", path, name, n)
			}
		}
	}
	if n := sheets(t, ctx, "/help", papers["A4"]); n < 2 {
		t.Errorf("the help is counted as %d sheets", n)
	}
}
