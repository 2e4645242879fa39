package components

// Area is a labelled input of several lines, with what was typed and what was
// wrong.
type Area struct {
	Name, ID, Label, Value string
	Hint                   string // what is allowed, may be empty
	Problem                string // what was wrong, empty when nothing
}

// described names what describes the input.
func (a Area) described() string {
	return Field{Name: a.Name, ID: a.ID, Hint: a.Hint, Problem: a.Problem}.described()
}
