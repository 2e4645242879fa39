package components

// Fact is one figure of the card, or one mark of the line, with its meaning.
type Fact struct{ Name, Value string }

// Link is a choice of spans that is one click away.
type Link struct {
	Name, At string
	Here     bool
}
