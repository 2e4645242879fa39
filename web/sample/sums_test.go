package sample

import (
	"strings"
	"testing"
)

// Whatever stands in a column or a row with its total adds up as it is printed, on
// every page in every state.
func TestWhatIsPrintedAddsUp(t *testing.T) {
	checked := map[string]int{}
	for _, p := range Pages() {
		var page strings.Builder
		if err := p.View.Render(t.Context(), &page); err != nil {
			t.Fatal(err)
		}
		sums := SumsOf(page.String())
		checked[p.Subject+"/"+p.Name] += sums.Checked
		for _, fault := range sums.Faults {
			t.Errorf("%s: %s", p.At(), fault)
		}
	}
	for _, name := range []string{"entry/hole", "entry/course", "statement/round", "statement/card", "statement/rounds", "statement/year-book", "months/comparison", "coach/report", "coach/squad", "site/front"} {
		if checked[name] == 0 {
			t.Errorf("%s has no sum", name)
		}
	}
}

// The test above can fail: each of these pages has one fault, and it is found.
func TestWhatDoesNotAddUpIsFound(t *testing.T) {
	for name, page := range map[string]string{
		"a sum":                         `<p data-part="a">+1.4</p><p data-part="a">−0.3</p><b data-sum="a">+1.2</b>`,
		"a balance":                     `<p data-part="a">79.1</p><i data-part="a">+0.4</i><b data-balance="a">79.4</b><i data-sum="a">79.5</i>`,
		"a difference":                  `<p data-part="-a">2.0</p><p data-part="a">1.4</p><b data-sum="a">−0.5</b>`,
		"a mean":                        `<p data-part="a">84</p><p data-part="a">87</p><b data-mean="a">85.6</b>`,
		"a sum without parts":           `<b data-sum="a">1</b>`,
		"parts without a sum":           `<b data-part="a">1</b>`,
		"two numbers":                   `<b data-part="a">1 of 2</b><b data-sum="a">0</b>`,
		"a foot without a mark":         `<table><tbody><tr><th>x</th><td>1</td></tr></tbody><tfoot><tr><th>Score</th><td>1</td></tr></tfoot></table>`,
		"a row of a sum without a mark": `<table><tr><th>All</th><td>1</td></tr></table>`,
		"a class of a sum":              `<p class="chain-sum">+1.20</p>`,
		"a working":                     `<p class="working-line">4.14 to play, 1 played, 3.65 left: 0.52 lost</p>`,
		"a working with a penalty":      `<p class="working-line">4.14 to play, 1 played, 1 penalty stroke, 3.65 left: 0.51 lost</p>`,
		"strokes won back":              `<p class="working-line">2.85 to play, 1 played, holed: 1.85 lost</p>`,
		"a score":                       `<p class="working-line">4.30 to play, 7 taken: 2.60 lost</p>`,
		"a share":                       `<p class="working-line">12 of 27 chances in 3 rounds: 45%</p>`,
		"a count":                       `<p class="working-line">11 on 54 holes in 3 rounds: that is 3.6 for 18 holes</p>`,
		"a working of rounds":           `<p class="working-line">8.43 lost on 54 holes in 3 rounds: that is 2.9 for 18 holes</p>`,
	} {
		if found := SumsOf(page).Faults; len(found) != 1 {
			t.Errorf("%s: %q", name, found)
		}
	}
	fine := `<p data-part="a"><span class="visually-hidden">Working of hole 6, </span>+1.4</p><p data-part="a">−0.3 <span class="quiet">target 79</span></p>
		<table><tfoot><tr><th>Score</th><td data-sum="a">+1.1</td></tr></tfoot></table><p data-part="b">84</p><p data-part="b">87</p><b data-mean="b">85.5</b><b data-sum="b">171</b>
		<p class="working-line">4.14 to play, 1 played, 1 penalty stroke, 3.65 left: 1.51 lost; +1.6 here, so that the tenths add up</p><p class="working-line">2.85 to play, 1 played, 1.85 left: nothing lost</p>
		<p class="working-line">2.85 to play, 1 played, holed: 1.85 won back</p><p class="working-line">8.43 lost on 54 holes in 3 rounds: that is 2.8 for 18 holes</p>`
	if got := SumsOf(fine); len(got.Faults) > 0 || got.Checked != 7 {
		t.Errorf("%+v", got)
	}
}
