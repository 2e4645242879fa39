package components

// Fact is one figure of the card, or one mark of the line, with its meaning.
type Fact struct {
	Name  string // what the figure or the mark is
	Value string // the figure, or what the mark means
}

// Link leads to another page, or to the same page with another choice.
type Link struct {
	Name string // what the reader clicks
	At   string // where it leads
	Here bool   // the page shows this choice already
}
