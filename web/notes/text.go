package notes

import (
	"net/url"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Paragraph is a paragraph or a list of a text.
type Paragraph struct {
	List  bool     // every line is an item of a list
	Lines []string // without hyphens; at least one
}

// Paragraphs reads plain text: a blank line ends a paragraph, and lines that
// begin with a hyphen and a space are a list. Blank text has none.
func Paragraphs(text string) []Paragraph {
	var all []Paragraph
	begin := true
	for line := range strings.Lines(text) {
		line = strings.TrimSpace(line)
		item, list := strings.CutPrefix(line, "- ")
		if line == "" {
			begin = true
			continue
		}
		if begin || all[len(all)-1].List != list {
			all = append(all, Paragraph{List: list})
		}
		last := &all[len(all)-1]
		last.Lines, begin = append(last.Lines, item), false
	}
	return all
}

// Piece is a part of a line: plain text, or a link that somebody typed.
type Piece struct {
	Text string
	At   string // where it leads; empty for plain text
}

// Pieces takes a line apart at its links. Only those that begin with https:// are
// links; punctuation at the end belongs to the sentence.
func Pieces(line string) []Piece {
	var all []Piece
	for line != "" {
		from := strings.Index(line, "https://")
		if from < 0 {
			return append(all, Piece{Text: line})
		}
		end := len(line)
		if i := strings.IndexFunc(line[from:], unicode.IsSpace); i >= 0 {
			end = from + i
		}
		link := strings.TrimRight(line[from:end], ".,;:!?)]}>'\"’”")
		end = from + len(link)
		if from > 0 {
			all = append(all, Piece{Text: line[:from]})
		}
		piece := Piece{Text: link}
		if at, err := url.Parse(link); err == nil && at.Scheme == "https" && at.Host != "" && at.User == nil {
			piece.At = at.String()
		}
		all, line = append(all, piece), line[end:]
	}
	return all
}

// HeadLines is how many printed lines say who wrote a note, or what to practise.
const HeadLines = 2

// Lines is how many printed lines a note takes, with its replies, where a line
// holds so many letters.
func (c Card) Lines(letters int) int {
	n := HeadLines
	count := func(all []Paragraph) {
		for _, p := range all {
			for _, l := range p.Lines {
				n += 1 + utf8.RuneCountInString(l)/letters
			}
		}
	}
	count(c.Body)
	for _, r := range c.Replies {
		n++
		count(r.Body)
	}
	return n
}
