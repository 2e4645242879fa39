package statement

import (
	"fmt"

	"strokeledger/analysis/golf"
	"strokeledger/web/figures"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// YearBookPage is a year of rounds as a booklet, a page a month.
type YearBookPage struct {
	layout.Page
	Heading string            // “The book of 2026”
	Of      string            // whose it is
	Lede    string            // what the year came to
	Book    figures.RoundBook // without a month when there is no round
	Back    string            // address of the list
}

// YearBookInput is what the booklet is made of.
type YearBookInput struct {
	Whose  paths.Whose
	Name   string // the player's
	Year   int
	Rounds []figures.ListedRound // of the year, the latest first
	Cut    bool                  // not all of them were read, for there are too many
}

// NewYearBookPage makes the booklet.
func NewYearBookPage(page layout.Page, in YearBookInput) YearBookPage {
	page.Title, page.Here, page.BodyClass = fmt.Sprintf("The book of %d", in.Year), paths.Rounds, "year-book"
	if !in.Whose.Own {
		page.Here = layout.Here(in.Whose, paths.Rounds)
	}
	p := YearBookPage{Page: page, Heading: page.Title, Of: in.Name, Back: in.Whose.Rounds(), Lede: fmt.Sprintf("No rounds in %d.", in.Year)}
	if len(in.Rounds) == 0 {
		return p
	}
	p.Book = figures.NewRoundBook(figures.BookInput{Whose: in.Whose, Rounds: in.Rounds, First: golf.Date{Year: in.Year, Month: 1, Day: 1}, Forward: true, Cut: in.Cut})
	p.Lede = words.Capital(words.SpelledPlural(len(in.Rounds), "round", "rounds"))
	if last := p.Book.Months[len(p.Book.Months)-1].Carried; last.Name != "" {
		p.Lede += fmt.Sprintf(", in all %s against the target", last.Over)
	}
	p.Lede += "."
	return p
}
