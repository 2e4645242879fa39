package coach

import (
	"fmt"
	"math"

	"github.com/a-h/templ"

	"strokeledger/analysis"
	"strokeledger/analysis/practice"
	"strokeledger/web/chart"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// BesidePage is a player beside golfers of the same score.
type BesidePage struct {
	layout.Page
	At      string // which rounds; empty without any
	Lede    string // what stands out, or why nothing is said
	Others  string // who the others are, or why there are none
	Stands  string // what it stands on
	Caption string
	Axis    components.Axis
	Parts   []BesidePart // none with too few rounds
	Heads   []string     // of the columns of figures
	Back    components.Link
}

// BesidePart is a part of the game and its bands.
type BesidePart struct {
	Sum  string // names what the bands add up to, for those who check it
	Rows []BesideLine
}

// BesideLine is a row: a part first, then its bands.
type BesideLine struct {
	Part    bool
	Name    string
	Bar     chart.Bar
	Whisker chart.Whisker
	Figures []string // lost, usual, and what others lose where there are enough
	Between string   // where what is lost lies, 95 %
	Sure    string   // more or less than usual, and how sure; empty for what could be chance
	Clear   bool
}

// BesideInput is what the page is made of.
type BesideInput struct {
	Whose  paths.Whose
	Name   string // the player's
	Target float64
	Units  form.Units // of the reader
	Beside analysis.Beside
	Peers  analysis.Peers
}

// NewBesidePage makes the page.
func NewBesidePage(page layout.Page, in BesideInput) BesidePage {
	page.Title, page.Here = "Golfers of the same score", layout.Here(in.Whose, in.Whose.Plan())
	page.Foot = fmt.Sprintf("Strokes for 18 holes against %s golfer. Usual is what a golfer of the model loses who plays every part of the game equally well and has the same score. Clear and leaning are told by what is likely after the rounds, in which few strokes count for little.", words.A(in.Target))
	b := BesidePage{Page: page, Axis: components.NewAxis(partScale, words.Tick), Back: components.Link{At: in.Whose.Plan(), Name: "Practice plan"}}
	if !in.Whose.Own {
		b.Back = components.Link{At: in.Whose.Overview(), Name: "Back to the overview"}
	}
	if in.Beside.Thin.Any() {
		have := words.Spelled(in.Beside.Thin.Have)
		if in.Beside.Thin.Have == 0 {
			have = "none yet"
		}
		b.Lede = fmt.Sprintf("It takes %s rounds to say what is usual. There %s %s.", words.Spelled(in.Beside.Thin.Need), words.OneOrMany(in.Beside.Thin.Have, "is", "are"), have)
		return b
	}
	b.At = fmt.Sprintf("The last %s rounds, from %s: a score of %s.", words.Spelled(in.Beside.Rounds), words.ShortDay(in.Beside.First), words.Plain(math.Round(10*in.Beside.Level)/10))
	b.Caption = "Strokes a round, beside what is usual at the score"
	b.Heads = []string{in.who(), "Usual"}
	b.Others = fmt.Sprintf("Of other players here, fewer than %s have ten rounds or more and score %s, so their figures are not shown.", words.Spelled(analysis.PeersLeast), in.levels())
	if in.Peers.Count > 0 {
		b.Heads = append(b.Heads, "Others here")
		b.Others = fmt.Sprintf("Others here are %s who score %s, %s not among them: their last ten rounds, on average and without names. What they have is worked out once a day.", words.SpelledPlural(in.Peers.Count, "player", "players"), in.levels(), in.self())
	}
	b.rows(in)
	b.Lede = in.lede()
	return b
}

// who is the head of the player's column.
func (in BesideInput) who() string {
	if in.Whose.Own {
		return "You"
	}
	return "Loses"
}

func (in BesideInput) self() string {
	if in.Whose.Own {
		return "you"
	}
	return in.Name
}

// levels are those of the others.
func (in BesideInput) levels() string {
	return fmt.Sprintf("%s to %s", words.Plain(in.Peers.From), words.Plain(in.Peers.Below))
}

// rows fills in the parts and their bands, in tenths that add up in every column.
func (b *BesidePage) rows(in BesideInput) {
	for at := 0; at < len(in.Beside.Rows); {
		end := at + 1
		for end < len(in.Beside.Rows) && in.Beside.Rows[end].Category == in.Beside.Rows[at].Category {
			end++
		}
		b.Parts = append(b.Parts, in.besidePart(in.Beside.Rows[at:end]))
		at = end
	}
}

// besidePart words a part and its bands. A band of which every figure is 0.0 is left
// out.
func (in BesideInput) besidePart(rows []analysis.BesideRow) BesidePart {
	p := BesidePart{Sum: fmt.Sprintf("beside-%d", int(rows[0].Category))}
	var printed [][]float64 // by column, then row
	for _, of := range []func(analysis.BesideRow) (float64, bool){
		func(r analysis.BesideRow) (float64, bool) { return r.Lost, true }, func(r analysis.BesideRow) (float64, bool) { return r.Usual, true }, in.Peers.Lost,
	} {
		whole, ok := of(rows[0])
		if !ok {
			continue
		}
		var exact []float64
		for _, r := range rows[1:] {
			x, _ := of(r)
			exact = append(exact, x)
		}
		whole = figures.Tenth(whole)
		printed = append(printed, append([]float64{whole}, figures.Tenths(exact, whole)...))
	}
	for i, r := range rows {
		line, any := in.besideLine(r), i == 0
		for _, column := range printed {
			line.Figures = append(line.Figures, words.Signed(column[i], 1))
			any = any || figures.Tenth(column[i]) != 0
		}
		if line.Part = i == 0; any {
			p.Rows = append(p.Rows, line)
		}
	}
	return p
}

// besideLine words a row but for its figures.
func (in BesideInput) besideLine(r analysis.BesideRow) BesideLine {
	l := BesideLine{Name: in.lineName(r), Bar: partScale.Bar(r.Lost), Whisker: partScale.Whisker(r.Lost, r.Interval.Low, r.Interval.High),
		Between: words.Signed(r.Interval.Low, 1) + " to " + words.Signed(r.Interval.High, 1)}
	if r.Sure != practice.Usual {
		l.Sure, l.Clear = "less, "+r.Sure.String(), r.Sure == practice.Clear
		if r.More {
			l.Sure = "more, " + r.Sure.String()
		}
	}
	return l
}

// lede says what stands out: the band in which most more than usual is lost, clearly
// before leaning.
func (in BesideInput) lede() string {
	var most *analysis.BesideRow
	for i := range in.Beside.Rows {
		r := &in.Beside.Rows[i]
		if r.Sure == practice.Usual || !r.More || r.Whole() || r.Lost-r.Usual < leastLost {
			continue
		}
		if most == nil || r.Sure > most.Sure || r.Sure == most.Sure && r.Lost-r.Usual > most.Lost-most.Usual {
			most = r
		}
	}
	golfer := fmt.Sprintf("a golfer who scores %s", words.Plain(math.Round(in.Beside.Level)))
	if most == nil {
		if in.Whose.Own {
			return fmt.Sprintf("Nothing costs you clearly more than %s.", golfer)
		}
		return fmt.Sprintf("Nothing costs %s clearly more than %s.", in.Name, golfer)
	}
	who, lose := in.Name, "loses"
	if in.Whose.Own {
		who, lose = "You", "lose"
	}
	return fmt.Sprintf("%s %s more than %s here: %s, %s a round more, which is %s.", who, lose, golfer, lowerFirst(figures.RowName(most.Row, in.Units)), words.StrokeCount(figures.Tenth(most.Lost-most.Usual)), most.Sure)
}

// lineName names a part, or a band without its part.
func (in BesideInput) lineName(r analysis.BesideRow) string {
	if r.Whole() {
		return words.Capital(r.Category.String())
	}
	return words.Band(r.Band, in.Units)
}

// mark says what a figure adds up to: bands to their part, column by column.
func (p BesidePart) mark(l BesideLine, column int) templ.Attributes {
	name := fmt.Sprintf("%s-%d", p.Sum, column)
	if l.Part {
		return templ.Attributes{"data-sum": name}
	}
	return templ.Attributes{"data-part": name}
}
