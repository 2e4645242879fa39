package coach

import (
	"fmt"

	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/notes"
	"strokeledger/web/paths"
)

// PhrasesPage lists the phrases of a coach.
type PhrasesPage struct {
	layout.Page
	Lede  string
	Rows  []PhraseRow
	Body  components.Area // of a new one
	Wrong components.Summary
}

// PhraseRow is one phrase.
type PhraseRow struct {
	Body   []notes.Paragraph
	Remove string // where the form that removes it is sent
}

// NewPhrasesPage makes the page; typed is a new phrase as it came back.
func NewPhrasesPage(page layout.Page, all []notes.Phrase, typed form.Text) PhrasesPage {
	page.Title, page.Here = "Phrases", paths.Coaching
	page.Foot = "Only you can read your phrases. They stand under what you write to a pupil."
	p := PhrasesPage{Page: page, Lede: "What you write again and again, to put into a note with one tap."}
	for _, a := range all {
		p.Rows = append(p.Rows, PhraseRow{notes.Paragraphs(a.Body), fmt.Sprintf("%s/%d/remove", paths.Phrases, a.ID)})
	}
	p.Body = components.FilledArea(components.Area{Name: "body", ID: "phrase", Label: "A new phrase"}, typed)
	p.Wrong = components.Summed(p.Body.Field())
	return p
}
