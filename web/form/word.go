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

// word reads one word of a line: the tee, a shot, penalties of the last shot,
// or what ends the hole.
func (p *lineParser) word(text string) {
	h := &p.line.Hole
	if p.holed || h.PickedUp {
		if score, found := strings.CutPrefix(text, "="); found {
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
	body = strings.ToLower(body)
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
	}
	for rest != "" && len(p.line.Problems) == 0 {
		rest = p.after(rest)
	}
}

// start reads the lie and distance at the head of a word, and adds the shot. A
// word without them belongs to the last shot.
func (p *lineParser) start(body string) (rest string) {
	h := &p.line.Hole
	last := h.Shots[len(h.Shots)-1]
	lie, found := golf.Lie(0), false
	if body != "" {
		if lie, found = lieLetters[body[0]]; found {
			body = body[1:]
		}
	}
	about := strings.HasPrefix(body, "~")
	number, rest := leadingNumber(strings.TrimPrefix(body, "~"))
	switch {
	case number == "" && found && lie == golf.Tee && p.item == 0:
		return rest
	case number == "" && (found || about):
		p.problem("a lie without a distance", "a distance after the letter, as in r165")
		return ""
	case number == "":
		return rest
	case !found && last.Lie == golf.Tee:
		p.problem("no lie", lettersAllowed)
		return ""
	case !found:
		lie = last.Lie
	}
	x, err := strconv.ParseFloat(strings.Replace(number, ",", ".", 1), 64)
	if err != nil {
		p.problem("not a distance", "a number, as in r165")
		return ""
	}
	shot := golf.Shot{Lie: lie, About: about}
	shot.Unit, rest = p.unit(lie, rest)
	shot.Distance = shot.Unit.Of(x)
	if shot.Unit == lie.Unit() {
		shot.Unit = 0
	}
	if p.item == 0 && lie == golf.Tee {
		h.Shots[0] = shot
		p.line.Items[0].First = 0
		return rest
	}
	p.dropOpen = false
	h.Shots = append(h.Shots, shot)
	return rest
}

func (p *lineParser) unit(lie golf.Lie, rest string) (golf.Unit, string) {
	for _, u := range []struct {
		name string
		unit golf.Unit
	}{{"ft", golf.Feet}, {"yd", golf.Yards}, {"m", golf.Metres}, {"p", golf.Yards}} {
		if after, found := strings.CutPrefix(rest, u.name); found {
			return u.unit, after
		}
	}
	return p.units.of(lie), rest
}

// after reads one mark behind a shot: short side, a penalty, or the end.
func (p *lineParser) after(rest string) string {
	h := &p.line.Hole
	last := &h.Shots[len(h.Shots)-1]
	switch {
	case rest[0] == 's':
		number, more := leadingNumber(rest[1:])
		last.ShortSided = true
		if number != "" {
			green, err := strconv.ParseFloat(strings.Replace(number, ",", ".", 1), 64)
			if err != nil {
				p.problem("not yards of green", "yards after s, as in r20s4")
				return ""
			}
			last.GreenToWork, last.GreenKnown = golf.Yards.Of(green), true
		}
		return more
	case rest == "-":
		h.PickedUp = true
		p.dropOpen = false
		return ""
	case rest == "h":
		p.holed = true
		return ""
	case rest[0] == 'x':
		again := *last
		last.Penalty++
		again.ShortSided, again.GreenKnown, again.GreenToWork = last.ShortSided, last.GreenKnown, last.GreenToWork
		h.Shots = append(h.Shots, again)
		return rest[1:]
	case strings.HasPrefix(rest, "u2"):
		return p.drop(last, 2, rest[2:])
	case rest[0] == 'w' || rest[0] == 'u':
		return p.drop(last, 1, rest[1:])
	case rest[0] == 'd':
		return p.drop(last, 2, rest[1:])
	case rest[0] == '+':
		number, more := leadingNumber(rest[1:])
		if n, err := strconv.Atoi(number); err == nil && n >= 1 && n <= 9 {
			last.Penalty += n
			return more
		}
		p.problem("no penalty strokes", "1 to 9 after +, as in +2")
		return ""
	default:
		p.problem("not understood: "+rest, lettersAllowed)
		return ""
	}
}

// drop notes penalty strokes after which the ball is dropped elsewhere.
func (p *lineParser) drop(last *golf.Shot, strokes int, rest string) string {
	last.Penalty += strokes
	p.dropOpen = true
	return rest
}

func (p *lineParser) score(text string) int {
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > largestScore {
		p.problem("no score", "the strokes of the hole after =, as in =5")
		return 0
	}
	return n
}

// leadingNumber cuts digits with at most one decimal point or comma off the
// front of a text.
func leadingNumber(s string) (number, rest string) {
	i, point := 0, false
	for i < len(s) && (s[i] >= '0' && s[i] <= '9' || !point && i > 0 && (s[i] == '.' || s[i] == ',')) {
		point = point || s[i] == '.' || s[i] == ','
		i++
	}
	return s[:i], s[i:]
}

func count(n int) string { return strconv.Itoa(n) }
