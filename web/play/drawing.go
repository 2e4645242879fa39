package play

import (
	"regexp"
	"strings"

	"strokeledger/analysis/aim"
	"strokeledger/analysis/golf"
	"strokeledger/web/words"
)

// Drawing is a hole as rows of text draw it.
type Drawing struct {
	Picture aim.Picture // as far as the rows were understood
	Rows    []DrawnRow
	Said    []string // what is wrong with the whole
	sound   bool
}

// DrawnRow is a row as it was typed and as it was understood.
type DrawnRow struct {
	Number int
	Text   string
	Reads  string // empty for a row that is not understood
	Said   string // what is wrong with it
}

// ReadRows reads the rows of a hole's picture. Par and length are the card's.
func ReadRows(hole golf.CardHole, text string) Drawing {
	var d Drawing
	var faults aim.Faults
	d.Picture, faults = aim.ParseRows(hole.Par, hole.Length.Yards(), text)
	d.sound = len(faults) == 0
	said := map[int][]string{}
	for _, f := range faults {
		if f.Line == 0 {
			d.Said = append(d.Said, sentence(f.String()))
			continue
		}
		said[f.Line] = append(said[f.Line], sentence(f.What))
	}
	for i, line := range strings.Split(text, "\n") {
		line = strings.TrimSpace(line)
		if line != "" {
			d.Rows = append(d.Rows, DrawnRow{i + 1, printed(line), readsAs(hole, line), strings.Join(said[i+1], " ")})
		}
	}
	return d
}

// Sound reports whether nothing is wrong with the rows.
func (d Drawing) Sound() bool { return d.sound }

// File is the picture as it is kept and sent.
func (d Drawing) File() string { return string(d.Picture.Write()) }

// readsAs says how one row reads; empty when it does not.
func readsAs(hole golf.CardHole, row string) string {
	p, _ := aim.ParseRows(hole.Par, hole.Length.Yards(), row)
	switch {
	case len(p.Bends) > 0:
		return bendWords(p.Bends[0])
	case len(p.Fairway) > 0:
		return "Fairway " + widthWords(p.Fairway[0])
	case len(p.Zones) > 0:
		return zoneWords(p.Zones[0])
	case p.Green.Drawn():
		return greenWords(p.Green)
	}
	return ""
}

// hyphens are those that stand for a minus.
var hyphens = regexp.MustCompile(`(^|\s)-(\d)`)

// printed is the text of rows with real minus signs, which are read as hyphens are.
func printed(rows string) string { return hyphens.ReplaceAllString(rows, "$1−$2") }

func sentence(text string) string {
	return words.Capital(strings.TrimSuffix(text, ".")) + "."
}

// RowsOf are the rows of a picture that is kept or was sent as a file, or what is
// wrong with it.
func RowsOf(file string) (rows string, faults []string) {
	p, err := aim.Read([]byte(file))
	if err != nil {
		for text := range strings.SplitSeq(err.Error(), "\n") {
			faults = append(faults, sentence(text))
		}
		return "", faults
	}
	return p.Rows(), nil
}

// FileOf is a picture that was sent as a file, as it is kept; an empty one stays empty.
// sound is false when it cannot be used.
func FileOf(file string) (text string, sound bool) {
	if file == "" {
		return "", true
	}
	p, err := aim.Read([]byte(file))
	if err != nil {
		return "", false
	}
	return string(p.Write()), true
}

// PictureOf is a picture that is kept, with the par and length that its hole has now.
// drawn is false when there is none.
func PictureOf(hole golf.CardHole, file string) (p aim.Picture, drawn bool) {
	rows, faults := RowsOf(file)
	if file == "" || len(faults) > 0 {
		return aim.Picture{Par: hole.Par, Length: hole.Length.Yards()}, false
	}
	d := ReadRows(hole, rows)
	return d.Picture, d.sound
}
