package form

// Typed is a form that came back because something in it is not allowed.
type Typed struct {
	Form     string            // its name
	Of       int64             // the note or the assignment that it belongs to, 0 for none
	Values   map[string]string // as they were typed, by field
	Problems map[string]string // what is wrong, by field
}

// At returns what was typed into a form and what was wrong, if that is the form;
// otherwise nothing.
func (t Typed) At(form string, of int64) (values, problems map[string]string) {
	if t.Form != form || t.Of != of {
		return nil, nil
	}
	return t.Values, t.Problems
}

// The forms that may come back.
const (
	FormNote   = "note"
	FormLesson = "lesson"
	FormReply  = "reply"
	FormEdit   = "edit"
	FormAssign = "assign"
	FormTarget = "target"
	FormResult = "result"
	FormCard   = "card"
)
