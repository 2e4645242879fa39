package form

import (
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
)

const lettersAllowed = "f r b v g and the distance, as in r165; x w u after a shot"

// readItem reads one item of a line: a shot with what stands behind it, marks of
// the last shot, or the score.
func (p *lineParser) readItem(text string) {
	body, club, hasClub := strings.Cut(text, clubSign)
	body = lower(body)
	score, isScore := strings.CutPrefix(body, scoreSign)
	isScore = isScore && !hasClub
	switch {
	case p.over() && (!isScore || p.line.Checked > 0):
		p.problem("the hole was over", "nothing after h and - but the score, as in =5")
	case p.line.Checked > 0:
		p.problem("the score was the end", "the score last")
	case isScore:
		p.line.Checked = p.readScore(score)
	default:
		p.readShot(body, club, hasClub)
	}
}

// readShot reads a shot, if one stands there, the club, and the marks.
func (p *lineParser) readShot(body, club string, hasClub bool) {
	rest := p.readHead(body)
	if len(p.line.Problems) > 0 {
		return
	}
	if hasClub {
		p.lastShot().Club = club
		if strings.Contains(club, ",") {
			p.ask("Is “" + club + "” the name of a club? If a shot comes after the club, put a space before it.")
		}
	}
	for rest != "" && len(p.line.Problems) == 0 {
		rest = p.readMark(rest)
	}
}

// readScore reads the strokes of the hole behind "=".
func (p *lineParser) readScore(text string) int {
	n, err := strconv.Atoi(text)
	if err != nil || !digit(text[0]) || n < 1 || n > golf.MaxScoreOnly {
		p.missing("no score", "the strokes of the hole after =, as in =5", text == "")
		return 0
	}
	return n
}

// head is the lie and distance at the head of an item, as typed.
type head struct {
	lie    golf.Lie // 0 where none was typed
	about  bool
	number string
	unit   golf.Unit // 0 where none was typed

	numberEnd, unitEnd int // places within the item
}

// empty reports whether the item has no head: what stands in it belongs to the
// shot before.
func (h head) empty() bool { return h.lie == 0 && h.number == "" && !h.about }

// cutHead cuts the head off an item: f140, 140f, ~140, f140~, 140ydf.
func cutHead(body string) (h head, rest string) {
	rest = body
	h.cutAbout(&rest)
	h.lie, rest = leadingLie(rest)
	h.cutAbout(&rest)
	h.number, rest = leadingNumber(rest)
	h.numberEnd = len(body) - len(rest)
	if h.number == "" {
		return h, rest
	}
	h.cutAbout(&rest)
	h.unit, rest = leadingUnit(rest)
	h.unitEnd = len(body) - len(rest)
	h.cutAbout(&rest)
	if h.lie == 0 {
		h.lie, rest = leadingLie(rest)
		h.cutAbout(&rest)
	}
	return h, rest
}

func (h *head) cutAbout(rest *string) {
	left, found := strings.CutPrefix(*rest, aboutSign)
	*rest, h.about = left, h.about || found
}

// readHead reads the head of an item, adds the shot that it stands for, and
// returns what stands behind it.
func (p *lineParser) readHead(body string) (rest string) {
	h, rest := cutHead(body)
	switch {
	case h.empty():
		return rest
	case h.number == "" && !h.about && h.lie == golf.Tee && p.item == 0:
		return rest // the tee shot as the card has it
	case h.number == "":
		p.missing("a lie without a distance", "a distance after the letter, as in r165", rest == "")
		return ""
	case h.lie == 0 && p.lastShot().Lie == golf.Tee:
		p.missing("no lie", lettersAllowed, rest == "" && !p.spaceAtEnd())
		return ""
	}
	if h.lie == 0 {
		p.askOfNumber(h, rest)
		h.lie = p.lastShot().Lie
	}
	shot, err := h.shot(p.units)
	if err != nil {
		p.problem("not a distance", "a number, as in r165")
		return ""
	}
	p.keepUnit(h)
	p.addShot(shot)
	return rest
}

// shot is the shot of a head with a lie and a number.
func (h head) shot(units Units) (golf.Shot, error) {
	x, err := parseNumber(h.number)
	if err != nil {
		return golf.Shot{}, err
	}
	s := golf.Shot{Lie: h.lie, About: h.about, Unit: h.unit}
	if s.Unit == 0 {
		s.Unit = units.of(h.lie)
	}
	s.Distance = s.Unit.Of(x)
	if s.Unit == h.lie.Unit() {
		s.Unit = 0
	}
	return s, nil
}

// addShot adds a shot to the hole. A tee shot at the start of the line is in the
// place of the card's.
func (p *lineParser) addShot(s golf.Shot) {
	h := &p.line.Hole
	if p.item == 0 && s.Lie == golf.Tee {
		h.Shots[0] = s
		p.line.Items[0].First = 0
		return
	}
	p.askOfRepeat(s)
	p.behind = p.behind[:0]
	h.Shots = append(h.Shots, s)
}

// keepUnit keeps where the unit of a distance stands in the line, or would
// stand.
func (p *lineParser) keepUnit(h head) {
	at := p.packed[p.item].at
	behind := at[h.numberEnd-1] + 1
	unit := unitSpan{lie: h.lie, typed: h.unit, span: span{behind, behind}}
	if h.unit != 0 {
		unit.to = at[h.unitEnd-1] + 1
	}
	p.line.units = append(p.line.units, unit)
}

// spaceAtEnd reports whether the last item is finished by a space.
func (p *lineParser) spaceAtEnd() bool {
	last := p.line.Items[len(p.line.Items)-1]
	return last.From+len(last.Text) < len(p.line.Text)
}
