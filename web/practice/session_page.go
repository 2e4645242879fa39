package practice

import (
	"fmt"
	"strings"

	"strokeledger/analysis"
	"strokeledger/web/layout"
	"strokeledger/web/words"
)

// SessionPage is where a session that is kept is changed.
type SessionPage struct {
	layout.Page
	Heading string
	Form    *SessionForm
	Drill   string // address of the drill
	Name    string // of the drill
}

// NewSessionPage makes the page.
func NewSessionPage(page layout.Page, in DrillInput) SessionPage {
	page.Title, page.Here = "Change a session", layout.Here(in.Whose, in.Whose.Lessons())
	return SessionPage{Page: page, Heading: "Change a session, " + in.DrillFor.Name, Drill: in.Whose.Drill(in.Key), Name: in.DrillFor.Name,
		Form: newSessionForm(in.DrillFor, *in.Form, in.Units, in.Day)}
}

// KeptText says what another window saved of a session.
func KeptText(k analysis.DrillSession) string {
	counted, of := k.Made()
	text := fmt.Sprintf("This session was already saved, on %s", words.ShortDay(k.Day))
	if of > 0 {
		text += fmt.Sprintf(" with %d of %d", counted, of)
	}
	return strings.TrimSuffix(text, ".") + ". What you typed is below and says something else."
}
