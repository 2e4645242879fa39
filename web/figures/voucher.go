package figures

import (
	"fmt"
	"math"

	"strokeledger/analysis/account"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/words"
)

// Voucher says how a figure comes about: the figure opens one line in pencil, which
// leads on to what it is made of. On paper it is a note.
type Voucher struct {
	Name    string // of the figure: Tee, November
	Span    string // that it is of, where figures of several stand in a row; empty elsewhere
	Working string // how it comes about; empty where nothing is known of that
	At      string // address of the shots or holes that it is made of; empty for none
	What    string // names what is there: 33 shots
}

// standsOn says on how much a figure of a column stands: 54 holes in 3 rounds.
func standsOn(c *compare.Column) string {
	return fmt.Sprintf("%s in %s", words.Plural(int(math.Round(c.Detail)), "hole", "holes"), words.Plural(len(c.Rounds), "round", "rounds"))
}

// InRow says of which span the figure is, for a row that has several.
func (v Voucher) InRow(in ComparisonInput, column int) Voucher {
	if v.Working != "" {
		v.Span = words.Capital(ShortSpanName(in, column))
	}
	return v
}

// nameOf names a figure with the span that it is of.
func nameOf(in ComparisonInput, what string, column int) string {
	return fmt.Sprintf("%s, %s", what, SpanName(in, column))
}

// perHoles is the working of an amount over several holes, as it is printed for 18.
func perHoles(said string, amount float64, c *compare.Column, printed float64) string {
	each := 18 * amount / c.Detail
	return WithNote(fmt.Sprintf("%s on %s: that is %.1f for 18 holes", said, standsOn(c), math.Abs(Tenth(each))), SharedOut(each, printed))
}

// LossVoucher is that of what a row lost in a column, as it is printed; without a
// working where no shot was played.
func LossVoucher(in ComparisonInput, column, k int, printed float64) Voucher {
	c := &in.Sheet.Columns[column]
	if k >= len(in.Sheet.Rows) || k >= len(c.Cells) || c.Cells[k].Shots == 0 || c.Detail == 0 {
		return Voucher{}
	}
	lost := LostTogether(c.ShotsOf(in.Sheet.Rows[k]))
	return Voucher{Name: nameOf(in, rowName(in, k), column), Working: perHoles(LostWords(lost), lost, c, printed),
		At: behindRow(in, column, k), What: words.Plural(c.Cells[k].Shots, "shot", "shots")}
}

// rowName names a row of a comparison.
func rowName(in ComparisonInput, k int) string {
	switch row := in.Sheet.Rows[k]; {
	case row.Category == 0:
		return "All"
	case row.Band == (account.Band{}):
		return words.Capital(row.Category.String())
	default:
		return words.Band(row.Band, in.Units)
	}
}

// LostOn is what a shot or a hole lost, as it is printed, and how that comes about.
func LostOn(b compare.Behind) (lost float64, working string) {
	hole := b.Round.Account.Holes[b.Hole]
	switch {
	case b.Shot >= 0:
		w := WorkingOf(hole.Shots[b.Shot])
		return w.Lost(), w.String()
	case len(hole.Shots) > 0:
		return WorkingOf(hole.Shots...).Lost(), OfHole(hole.Shots)
	}
	return ScoreLost(hole), OfScore(hole)
}

// LostTogether is what shots or holes lost, as whoever adds up their printed losses
// finds it.
func LostTogether(all []compare.Behind) float64 {
	sum := 0
	for _, b := range all {
		lost, _ := LostOn(b)
		sum += hundredths(lost)
	}
	return float64(sum) / 100
}

// CountVoucher is that of a measure in a column, as it is written.
func CountVoucher(in ComparisonInput, column int, count Count, written float64) Voucher {
	c, w := &in.Sheet.Columns[column], WriterOf(count.Measure)
	v := Voucher{Name: nameOf(in, count.Name, column), At: BehindCount(in, column, count.Measure), What: "the holes"}
	cell := c.Measures[w.K]
	amount := cell.Mean * c.Detail / 18
	switch {
	case !cell.Known || c.Detail == 0 && !w.Share:
		return Voucher{}
	case w.Share:
		v.Working = fmt.Sprintf("%s chances in %s: %s", hits(cell), words.Plural(len(c.Rounds), "round", "rounds"), w.Write(cell.Mean))
	case count.Measure == "compounding":
		v.Working = perHoles(LostWords(amount), amount, c, written)
	default:
		v.Working = perHoles(fmt.Sprintf("%.0f", math.Round(amount)), amount, c, written)
	}
	return v
}

// LevelVoucher is that of the level that a part plays to in a column.
func LevelVoucher(in ComparisonInput, column int, part golf.Category) Voucher {
	c := &in.Sheet.Columns[column]
	if int(part) >= len(c.Cells) {
		return Voucher{}
	}
	v := Voucher{Name: nameOf(in, words.Capital(part.String()), column), At: behindRow(in, column, int(part)), What: words.Plural(c.Cells[part].Shots, "shot", "shots")}
	if v.At != "" {
		v.Working = fmt.Sprintf("A golfer of this level would lose nothing with these shots on average, on %s", standsOn(c))
	}
	return v
}

// MovedVoucher is that of a change: the figure now and the one before, as printed.
func MovedVoucher(in ComparisonInput, what string, p Pair, before, now float64) Voucher {
	return Voucher{Name: what + ", change", Working: fmt.Sprintf("%s in %s, %s in %s", words.Signed(now, 1), p.NowName, words.Signed(before, 1), p.BeforeName)}
}
