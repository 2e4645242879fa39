package sample

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"golang.org/x/net/html"
)

// figure is a number as it is printed.
type figure struct {
	text   string
	amount milli
	unit   milli // one unit of its last digit
}

var (
	numbers  = regexp.MustCompile(`[+−-]?\d[\d,]*(?:\.\d+)?`)
	wonBack  = regexp.MustCompile(`^[\d.]+ won back$`)
	ofShots  = regexp.MustCompile(`([\d.]+) to play, (\d+) played(?:, (\d+) penalty strokes?)?, (?:([\d.]+) left|holed): (.+?)(?:; .*)?$`)
	ofScores = regexp.MustCompile(`([\d.]+) to play, (\d+) taken: (.+?)(?:; .*)?$`)
	ofRounds = regexp.MustCompile(`([\d.]+)(?: lost| won back)? on (\d+) holes? in .*that is ([\d.]+) for 18`)
	ofHits   = regexp.MustCompile(`(\d+) of (\d+) (?:chances|putts) in .*: (\d+)%`)
)

// read reads the one number of an element; ok is false where there is none.
func (a *adder) read(n *html.Node) (f figure, ok bool) {
	said := text(n)
	all := numbers.FindAllString(said, -1)
	if len(all) > 1 {
		a.fault("%q is marked, but holds %d numbers", said, len(all))
	}
	if len(all) != 1 {
		return f, false
	}
	if f = parsed(all[0]); wonBack.MatchString(said) {
		f.amount = -f.amount
	}
	return f, true
}

// parsed reads a number as it is printed.
func parsed(text string) figure {
	f := figure{text: text, unit: 1000}
	whole, decimals, _ := strings.Cut(strings.ReplaceAll(strings.TrimLeft(text, "+−-"), ",", ""), ".")
	for range decimals {
		f.unit /= 10
	}
	n, err := strconv.ParseInt(whole+decimals, 10, 64)
	if err != nil {
		panic("sample: " + err.Error())
	}
	f.amount = milli(n) * f.unit
	if strings.HasPrefix(text, "−") || strings.HasPrefix(text, "-") {
		f.amount = -f.amount
	}
	return f
}

var (
	totalClass = regexp.MustCompile(`(^|-)(sum|subtotal|carried|turn)(-|$)`)
	totalNames = []string{"All", "Total", "Sum", "Together", "All putts", "Score", "Out", "In"}
)

// named says why an element must be marked as a sum; empty when it need not be. It
// is a row at the foot of a table, or a row headed by the name of a total, or
// something whose class calls it a sum.
func named(n *html.Node) string {
	switch {
	case n.Data == "tr" && n.Parent != nil && n.Parent.Data == "tfoot" && !strings.Contains(attribute(n, "class"), "voucher-row"):
		return "the foot of a table"
	case n.Data == "tr" && slices.Contains(totalNames[:5], headOf(n)):
		return "the row " + headOf(n)
	case slices.ContainsFunc(strings.Fields(attribute(n, "class")), totalClass.MatchString):
		return "what is of class " + attribute(n, "class")
	}
	return ""
}

// headOf is the text of the cell that heads a row.
func headOf(row *html.Node) string {
	for n := range row.ChildNodes() {
		if n.Data == "th" {
			return text(n)
		}
	}
	return ""
}

// marked reports whether an element, something in it or something that it stands
// in carries a mark.
func marked(n *html.Node) bool {
	carries := func(n *html.Node) bool {
		return attribute(n, "data-part")+attribute(n, "data-sum")+attribute(n, "data-balance")+attribute(n, "data-mean") != ""
	}
	for around := n; around != nil; around = around.Parent {
		if carries(around) {
			return true
		}
	}
	for within := range n.Descendants() {
		if carries(within) {
			return true
		}
	}
	return false
}

// aside are the classes of what stands beside a figure without being part of it.
var aside = []string{"visually-hidden", "quiet", "cell-label", "unit-word"}

// text is what a reader sees of an element, without what stands beside its figure.
func text(n *html.Node) string {
	var b strings.Builder
	var write func(n *html.Node)
	write = func(n *html.Node) {
		for c := range n.ChildNodes() {
			switch {
			case c.Type == html.TextNode:
				b.WriteString(c.Data)
			case c.Data == "svg" || slices.ContainsFunc(strings.Fields(attribute(c, "class")), func(class string) bool { return slices.Contains(aside, class) }):
			default:
				write(c)
			}
		}
	}
	write(n)
	return strings.Join(strings.Fields(b.String()), " ")
}

func attribute(n *html.Node, name string) string {
	for _, a := range n.Attr {
		if a.Key == name {
			return a.Val
		}
	}
	return ""
}
