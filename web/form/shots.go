package form

import (
	"fmt"
	"net/url"
	"strings"

	"strokeledger/analysis/golf"
)

// ShotDetails is the form that adds to the shots of a hole what its line leaves
// out.
type ShotDetails struct {
	Shots []ShotDetail // the shots that were played, in order
	Stale bool         // the form came from a page with another number of shots; Shots are those of now
}

// ShotDetail is what the form adds to one shot.
type ShotDetail struct {
	Club Text             // as the player calls it, may be empty
	Miss Field[golf.Miss] // where the shot finished
	Word Text             // the player's note, may be empty
}

// ParseShotDetails reads the details of the shots that were played: a field of
// each kind a shot.
func ParseShotDetails(v url.Values, played []golf.Shot) ShotDetails {
	clubs, misses, notes, n := v["club"], v["miss"], v["word"], len(played)
	if n == 0 || len(clubs) != n || len(misses) != n || len(notes) != n {
		d := ShotDetailsOf(played)
		d.Stale = true
		return d
	}
	d := ShotDetails{Shots: make([]ShotDetail, n)}
	for i := range n {
		d.Shots[i] = ShotDetail{shotClub(clubs[i]), shotMiss(misses[i]), ParseText(notes[i], golf.MaxWord)}
	}
	return d
}

// ShotDetailsOf is the form with the details that are stored.
func ShotDetailsOf(played []golf.Shot) ShotDetails {
	d := ShotDetails{Shots: make([]ShotDetail, len(played))}
	for i, s := range played {
		d.Shots[i] = ShotDetail{TextOf(s.Club), ChoiceOf(s.Miss), TextOf(s.Word)}
	}
	return d
}

// Sound reports whether nothing is wrong with the form.
func (d ShotDetails) Sound() bool {
	for _, s := range d.Shots {
		if !sound(s.Club, s.Miss, s.Word) {
			return false
		}
	}
	return !d.Stale
}

// AddTo puts the details into the shots that they were read for.
func (d ShotDetails) AddTo(shots []golf.Shot) {
	for i, s := range d.Shots {
		shots[i].Club, shots[i].Miss, shots[i].Word = s.Club.Value, s.Miss.Value, s.Word.Value
	}
}

// shotClub reads one club. It ends a shot of a line, so it has neither a space
// nor the sign before it.
func shotClub(text string) Text {
	f := ParseText(text, golf.MaxClub)
	if strings.ContainsAny(f.Text, " "+clubSign) || !f.Sound() {
		return refused[string](f.Text, fmt.Sprintf("Allowed: at most %d characters, without spaces or slashes.", golf.MaxClub))
	}
	return f
}

// shotMiss reads where a shot finished, empty for on target or not recorded.
func shotMiss(text string) Field[golf.Miss] {
	miss, err := golf.ParseMiss(text)
	if err != nil {
		return refused[golf.Miss](text, sentence(err))
	}
	return Field[golf.Miss]{Text: text, Value: miss}
}
