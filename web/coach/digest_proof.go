package coach

import (
	"fmt"
	"strings"
	"time"
	"unicode"

	"strokeledger/web/words"
)

// ProofInput is what a letter is made of that asks an address to confirm that mail about
// notices may go there.
type ProofInput struct {
	Name  string // of the account that asks
	Site  string // its address
	Daily bool   // or weekly
	Link  string // where the reader starts the mail
	Until time.Time
}

// NewProof words the letter. Whoever makes an account chooses its name, and could have
// anything sent to anybody in it, so it stands there only if it looks like a name.
func NewProof(in ProofInput) Digest {
	who, often := "An account", "week"
	if aName(in.Name) {
		who = fmt.Sprintf("The account “%s”", in.Name)
	}
	if in.Daily {
		often = "day"
	}
	text := fmt.Sprintf(`%s on %s asked for mail to this address: once a %s at most, with what is new between coach and pupil.

If that was you, open this page and press “Start the mail”:
%s

The link works once, until %s. No mail comes before that.

If it was not you, you need do nothing, and no mail comes. Somebody may have mistyped an address. If you say so on the same page, no letter like this comes for 90 days.
`, who, in.Site, often, in.Link, words.Moment(in.Until))
	return Digest{Subject: "Strokeledger: confirm your address", Text: text}
}

// longestName is how many letters of a name are let into a letter to a stranger.
const longestName = 40

// aName reports whether a text is one that people have for a name, and no mail program
// makes a link of.
func aName(text string) bool {
	letters := []rune(text)
	if len(letters) == 0 || len(letters) > longestName || strings.Contains(strings.ToLower(text), "www") {
		return false
	}
	for i, c := range letters {
		last := i == len(letters)-1
		switch {
		case unicode.IsLetter(c), unicode.IsMark(c), c == ' ', c == '-', c == '\'', c == '’':
		case c == '.' && (last || letters[i+1] == ' '):
		default:
			return false
		}
	}
	return true
}
