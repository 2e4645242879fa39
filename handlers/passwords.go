package handlers

import (
	_ "embed"
	"net/http"
	"net/url"
	"slices"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"
)

// PasswordMin is the fewest characters of a password, and PasswordMax the most
// bytes.
const (
	PasswordMin = 10
	PasswordMax = 200
)

// commonText lists passwords that many people choose, and words from which such
// passwords are made, one on each line. It was written down from general knowledge.
//
//go:embed passwords.txt
var commonText string

// common are those passwords, reduced by bare.
var common = sync.OnceValue(func() map[string]bool {
	all := map[string]bool{}
	for line := range strings.Lines(commonText) {
		all[bare(line)] = true
	}
	return all
})

// keyRows are keys that a finger runs along, in both directions: rows and columns of
// keyboards, the alphabet, the digits.
var keyRows = func() (both []string) {
	for _, row := range []string{
		"12345678901234567890", "qwertyuiop[]", "asdfghjkl;'", "zxcvbnm,./", "azertyuiop", "qsdfghjklm", "wxcvbn", "qwertzuiopü", "yxcvbnm", "!@#$%^&*()",
		"abcdefghijklmnopqrstuvwxyzabcdefghijklmnopqrstuvwxyz", "1qaz2wsx3edc4rfv5tgb6yhn7ujm8ik,9ol.0p;/", "qazwsxedcrfvtgbyhnujmikolp", "1q2w3e4r5t6y7u8i9o0p", "q1w2e3r4t5y6u7i8o9p0", "1a2b3c4d5e6f7g8h9i", "a1b2c3d4e5f6g7h8i9", "147258369", "789456123", "24680", "13579",
	} {
		back := []rune(row)
		slices.Reverse(back)
		both = append(both, row, string(back))
	}
	return both
}()

// What makes a password weak, in characters.
const (
	restMost      = 8 // at most so many besides one common word
	restOfTwo     = 4 // or besides two
	walkLeast     = 3 // the shortest run along keys that counts
	walkRestMost  = 3 // at most so many besides such runs
	distinctLeast = 4 // fewer different ones than this
	groupMost     = 6 // the longest group that, repeated, makes the whole
	contextLeast  = 3 // the shortest word about the owner that counts
)

// weakness says why a password is refused, empty if it is not. about is what a
// stranger knows about its owner, of which the password must not be made.
func weakness(password string, about []string) string {
	folded, known := strings.ToLower(password), aboutWords(about)
	owners := func(word string) bool { return known[word] }
	either := func(word string) bool { return known[word] || common()[word] }
	switch {
	case utf8.RuneCountInString(password) < PasswordMin:
		return "Too short. Allowed: 10 characters or more."
	case len(password) > PasswordMax:
		return "Too long. Allowed: up to 200 characters, fewer with accents or symbols."
	case repeats(folded) || distinct(folded) < distinctLeast:
		return "It repeats the same few characters. Use several unrelated words."
	case walks(folded):
		return "It follows the keyboard or the alphabet. Use several unrelated words."
	case madeOf(folded, owners):
		return "It is built from your name, your address or the name of this site. Use several words that have nothing to do with them."
	case madeOf(folded, either):
		return "Many people use this password or one like it. Use several unrelated words."
	}
	return ""
}

// bare is the letters and digits of a text, in lower case.
func bare(text string) string {
	return strings.Map(func(c rune) rune {
		if unicode.IsLetter(c) || unicode.IsDigit(c) {
			return unicode.ToLower(c)
		}
		return -1
	}, text)
}

// repeats reports whether a text is a short group of characters, repeated.
func repeats(text string) bool {
	all := []rune(text)
	for group := 1; group <= min(groupMost, len(all)/2); group++ {
		if slices.Equal(all[group:], all[:len(all)-group]) {
			return true
		}
	}
	return false
}

func distinct(text string) int {
	seen := map[rune]bool{}
	for _, c := range text {
		seen[c] = true
	}
	return len(seen)
}

// walks reports whether a text is little more than runs along keys.
func walks(text string) bool {
	all, rest := []rune(text), 0
	for i := 0; i < len(all); {
		if n := walkFrom(all[i:]); n >= walkLeast {
			i += n
			continue
		}
		rest++
		i++
	}
	return rest <= walkRestMost
}

// walkFrom is how many characters at the start are neighbours on one row of keys.
func walkFrom(all []rune) int {
	n := 0
	for n < len(all) && slices.ContainsFunc(keyRows, func(row string) bool { return strings.Contains(row, string(all[:n+1])) }) {
		n++
	}
	return n
}

// leet replaces characters with the letters that they look like. Some look like
// either of two letters, so there is more than one way.
var leet = []*strings.Replacer{
	strings.NewReplacer(),
	strings.NewReplacer("@", "a", "4", "a", "8", "b", "3", "e", "6", "g", "1", "i", "!", "i", "0", "o", "5", "s", "$", "s", "7", "t", "+", "t", "2", "z"),
	strings.NewReplacer("@", "a", "4", "a", "8", "b", "3", "e", "9", "g", "1", "l", "!", "i", "|", "l", "0", "o", "5", "s", "$", "s", "7", "t"),
}

// madeOf reports whether a text is one or two words with a few characters around
// them, or the same with digits in place of letters.
func madeOf(text string, words func(string) bool) bool {
	all := []rune(text)
	before, after := around(all)
	for i := 0; i <= before; i++ {
		for j := 0; j <= after && i+j < len(all); j++ {
			core := string(all[i : len(all)-j])
			for _, as := range leet {
				word := bare(as.Replace(core))
				if words(word) && i+j <= restMost || i+j <= restOfTwo && twoOf(word, words) {
					return true
				}
			}
		}
	}
	return false
}

// around is how many characters at either end are not letters.
func around(all []rune) (before, after int) {
	for before < len(all) && !unicode.IsLetter(all[before]) {
		before++
	}
	for after < len(all) && !unicode.IsLetter(all[len(all)-1-after]) {
		after++
	}
	return min(before, restMost), min(after, restMost)
}

// twoOf reports whether a text is two words, or the same word twice.
func twoOf(text string, words func(string) bool) bool {
	for i := 1; i < len(text); i++ {
		if words(text[:i]) && words(text[i:]) {
			return true
		}
	}
	return false
}

// aboutWords are the words in what a stranger knows about somebody.
func aboutWords(about []string) map[string]bool {
	words := map[string]bool{}
	add := func(text string) {
		if word := bare(text); len(word) >= contextLeast {
			words[word] = true
		}
	}
	for _, text := range about {
		add(text)
		local, _, _ := strings.Cut(text, "@")
		add(local)
		for word := range strings.FieldsFuncSeq(text, func(c rune) bool { return !unicode.IsLetter(c) && !unicode.IsDigit(c) }) {
			add(word)
		}
	}
	return words
}

// aboutPassword is what a stranger knows about the owner of a password: address,
// name and site.
func (s *server) aboutPassword(r *http.Request, email, name string) []string {
	host := r.Host
	if at, err := url.Parse(s.options.Address); err == nil && at.Host != "" {
		host = at.Host
	}
	host, _, _ = strings.Cut(host, ":")
	return []string{email, name, host, "Strokeledger"}
}
