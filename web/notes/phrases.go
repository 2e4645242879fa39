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

// Offer puts the keys of a coach's phrases under the reply to a note whose last word is
// another's. Under the others they would only make a page long: there is nothing to
// answer.
func (c Card) Offer(n Note, keys []PhraseKey) Card {
	if c.Reply.At != "" && !n.lastWordMine() {
		c.Reply.Phrases = keys
	}
	return c
}

// lastWordMine reports whether the reader wrote last.
func (n Note) lastWordMine() bool {
	if last := len(n.Replies) - 1; last >= 0 {
		return n.Replies[last].Mine
	}
	return n.Mine
}

// PhraseKeys are the buttons of some phrases.
func PhraseKeys(all []Phrase) []PhraseKey {
	var keys []PhraseKey
	for _, p := range all {
		keys = append(keys, PhraseKey{fmt.Sprint(p.ID), words.Excerpt(p.Body), p.Body})
	}
	return keys
}
