package golf

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// The most bytes that texts of a round may have. Common practice: far more than
// anybody says, and few enough to be shown.
const (
	MaxText  = 1000 // a name or a note in a file
	MaxLine  = 500  // a hole as it was typed
	MaxWord  = 200  // what is said of a shot
	MaxClub  = 40   // one club, as a form has it
	MaxClubs = 200  // the clubs of a bag
	MaxName  = 80   // a name in a form
	MaxNote  = 4000 // a note, or an answer to one

	MaxConditions = 300 // weather and greens of a round
	MaxHoleNote   = 500 // what a coach says of a hole
	MaxPractice   = 200 // what to practise, and what came of it
	MaxAddress    = 200 // an e-mail address
)

// emptyBraille is a letter of braille without a dot.
const emptyBraille = '\u2800'

// Sayable is the rule for names and other short texts: of at most so many bytes,
// in one line, and with nothing in them that no reader sees, which would make
// two different names look the same.
func Sayable(text string, most int) bool {
	return len(text) <= most && utf8.ValidString(text) && !strings.ContainsFunc(text, unseen)
}

// Cleaned makes of any text one that is sayable, and without spaces at its ends:
// what separates is a space, and what nobody sees is left out.
func Cleaned(text string, most int) string {
	if Sayable(text, most) {
		return strings.TrimSpace(text)
	}
	text = strings.Map(func(letter rune) rune {
		switch {
		case unicode.IsSpace(letter):
			return ' '
		case unseen(letter):
			return -1
		}
		return letter
	}, strings.ToValidUTF8(text, "?"))
	text = strings.TrimSpace(text)
	for len(text) > most {
		_, last := utf8.DecodeLastRuneInString(text)
		text = strings.TrimSpace(text[:len(text)-last])
	}
	return text
}

func unseen(letter rune) bool {
	return unicode.In(letter, unicode.Cc, unicode.Cf, unicode.Co, unicode.Zl, unicode.Zp, unicode.Other_Default_Ignorable_Code_Point) || letter == emptyBraille
}

// RoundName cleans the name of a round; one of which nothing is left is named
// after its day.
func RoundName(name string, day Date) string {
	if name = Cleaned(name, MaxText); name == "" {
		return day.String()
	}
	return name
}

// Names keeps the names of a file's rounds apart. The zero value is ready.
type Names struct{ seen map[string]bool }

// Distinct returns the name, with a number behind it when it was there before.
func (n *Names) Distinct(name string) string {
	if n.seen == nil {
		n.seen = map[string]bool{}
	}
	free := name
	for i := 2; n.seen[free]; i++ {
		number := " (" + strconv.Itoa(i) + ")"
		free = Cleaned(name, MaxText-len(number)) + number
	}
	n.seen[free] = true
	return free
}
