package components

// Area is a labelled input of several lines, with what was typed and what was
// wrong.
type Area struct {
	Name, ID string // of the input in its form, and on the page
	Label    string // what is asked, over the input
	Value    string // what was typed
	Hint     string // what is allowed, may be empty
	Problem  string // what was wrong, empty when nothing
}

// Field is the input as a line of a summary needs it.
func (a Area) Field() Field {
	return Field{Name: a.Name, ID: a.ID, Label: a.Label, Hint: a.Hint, Problem: a.Problem}
}

// Described names what describes the input.
func (a Area) Described() string {
	return a.Field().Described()
}
