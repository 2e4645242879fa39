package notes

import (
	"fmt"

	"strokeledger/web/words"
)

// Phrase is something that a coach writes again and again.
type Phrase struct {
	ID   int64
	Body string
}

// PhraseKey is a button that puts a phrase into what is being written.
type PhraseKey struct {
	ID   string // as the form sends it
	Name string // its beginning
	Body string
}

// PhraseKeys are the buttons of some phrases.
func PhraseKeys(all []Phrase) []PhraseKey {
	var keys []PhraseKey
	for _, p := range all {
		keys = append(keys, PhraseKey{fmt.Sprint(p.ID), words.Excerpt(p.Body), p.Body})
	}
	return keys
}
