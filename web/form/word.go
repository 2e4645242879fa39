package form

import (
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
)

const (
	lettersAllowed = "f r b v g and the distance, as in r165; x w u after a shot"
	largestScore   = 99
)

var lieLetters = map[byte]golf.Lie{'t': golf.Tee, 'f': golf.Fairway, 'r': golf.Rough, 'b': golf.Bunker, 'v': golf.Recovery, 'g': golf.Green}

// unitNames are the units a distance may be typed in; p are paces of a yard.
var unitNames = map[string]golf.Unit{"ft": golf.Feet, "yd": golf.Yards, "m": golf.Metres, "p": golf.Yards}

// word reads one item of a line: the tee, a shot, penalties of the last shot,
// or what ends the hole.
func (p *lineParser) word(text string) {
	h := &p.line.Hole
	if p.holed || h.PickedUp {
		if score, found := strings.CutPrefix(text, "="); found && p.line.Checked == 0 {
			p.line.Checked = p.score(score)
			return
		}
		p.problem("the hole was over", "nothing after h and - but the score, as in =5")
		return
	}
	if p.line.Checked > 0 {
		p.problem("the score was the end", "the score last")
		return
	}
	body, club, hasClub := strings.Cut(text, "/")
	body = lower(body)
	if score, found := strings.CutPrefix(body, "="); found && !hasClub {
		p.line.Checked = p.score(score)
		return
	}
	rest := p.start(body)
	if len(p.line.Problems) > 0 {
		return
	}
	if hasClub {
		h.Shots[len(h.Shots)-1].Club = club
		if strings.Contains(club, ",") {
			p.ask("Is “" + club + "” the name of a club? If a shot comes after the club, put a space before it.")
		}
	}
	for rest != "" && len(p.line.Problems) == 0 {
		rest = p.after(rest)
	}
}

// distance is the lie and distance at the head of an item, as typed.
type distance struct {
	lie    golf.Lie // 0 where none was typed
	about  bool
	number string
	unit   golf.Unit // 0 where none was typed

	numberEnd, unitEnd int // places within the item
}

// readDistance reads the lie and distance at the head of an item: f140, 140f,
// ~140, f140~, 140ydf.
func readDistance(body string) (d distance, rest string) {
	rest = body
	about := func() {
		after, found := strings.CutPrefix(rest, "~")
		rest, d.about = after, d.about || found
	}
	about()
	d.lie, rest = leadingLie(rest)
	about()
	d.number, rest = leadingNumber(rest)
	d.numberEnd = len(body) - len(rest)
	if d.number == "" {
		return d, rest
	}
	about()
	for _, name := range []string{"ft", "yd", "m", "p"} {
		if after, found := strings.CutPrefix(rest, name); found {
			d.unit, rest = unitNames[name], after
			d.unitEnd = len(body) - len(rest)
			break
		}
	}
	about()
	if d.lie == 0 {
		d.lie, rest = leadingLie(rest)
		about()
	}
	return d, rest
}

// start reads the lie and distance at the head of an item, and adds the shot.
// An item without them belongs to the last shot.
func (p *lineParser) start(body string) (rest string) {
	h := &p.line.Hole
	last := h.Shots[len(h.Shots)-1]
	d, rest := readDistance(body)
	switch {
	case d.number == "" && !d.about && d.lie == golf.Tee && p.item == 0:
		return rest
	case d.number == "" && (d.lie != 0 || d.about):
		p.missing("a lie without a distance", "a distance after the letter, as in r165")
		p.mendable = p.mendable && rest == ""
		return ""
	case d.number == "":
		return rest
	case d.lie == 0 && last.Lie == golf.Tee:
		p.missing("no lie", lettersAllowed)
		p.mendable = p.mendable && rest == "" && !p.spaceAtEnd()
		return ""
	}
	if d.lie == 0 {
		p.askOfNumber(d, rest, last)
		d.lie = last.Lie
	}
	x, err := strconv.ParseFloat(strings.Replace(d.number, ",", ".", 1), 64)
	if err != nil {
		p.problem("not a distance", "a number, as in r165")
		return ""
	}
	shot := golf.Shot{Lie: d.lie, About: d.about, Unit: d.unit}
	if shot.Unit == 0 {
		shot.Unit = p.units.of(d.lie)
	}
	shot.Distance = shot.Unit.Of(x)
	if shot.Unit == d.lie.Unit() {
		shot.Unit = 0
	}
	p.note(d)
	if p.item == 0 && d.lie == golf.Tee {
		h.Shots[0] = shot
		p.line.Items[0].First = 0
		return rest
	}
	p.askOfRepeat(shot)
	p.line.Dropped, p.drops, p.mark = false, 0, 0
	h.Shots = append(h.Shots, shot)
	return rest
}

// note keeps where the unit of a distance stands in the line, or would stand.
func (p *lineParser) note(d distance) {
	at := p.packed[p.item].at
	unit := unitSpan{lie: d.lie, typed: d.unit, span: span{at[d.numberEnd-1] + 1, at[d.numberEnd-1] + 1}}
	if d.unit != 0 {
		unit.to = at[d.unitEnd-1] + 1
	}
	p.line.units = append(p.line.units, unit)
}

// spaceAtEnd reports whether the last item is finished by a space.
func (p *lineParser) spaceAtEnd() bool {
	last := p.line.Items[len(p.line.Items)-1]
	return last.From+len(last.Text) < len(p.line.Text)
}

func (p *lineParser) score(text string) int {
	n, err := strconv.Atoi(text)
	if digits, behind := leadingNumber(text); err != nil || digits == "" || behind != "" || n < 1 || n > largestScore {
		p.missing("no score", "the strokes of the hole after =, as in =5")
		p.mendable = p.mendable && text == ""
		return 0
	}
	return n
}

// leadingLie cuts the letter of a lie off the front of a text.
func leadingLie(s string) (golf.Lie, string) {
	if s != "" {
		if lie, found := lieLetters[s[0]]; found {
			return lie, s[1:]
		}
	}
	return 0, s
}

// leadingNumber cuts digits with at most one decimal point or comma off the
// front of a text.
func leadingNumber(s string) (number, rest string) {
	i, point := 0, false
	for i < len(s) && (digit(s[i]) || !point && i > 0 && (s[i] == '.' || s[i] == ',')) {
		point = point || s[i] == '.' || s[i] == ','
		i++
	}
	return s[:i], s[i:]
}
