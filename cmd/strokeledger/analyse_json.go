package main

import (
	"bufio"
	"strconv"
	"unicode/utf8"

	"strokeledger/analysis"
	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
)

// jsonLayout writes the analyse result, version 1, round by round. The text is
// appended by hand: encoding/json takes three times as long over a season of
// shots as working them out does.
type jsonLayout struct {
	choice analysis.Choice
	first  bool
}

func newJSONLayout(choice analysis.Choice) *jsonLayout { return &jsonLayout{choice, true} }

func (j *jsonLayout) begin(w *bufio.Writer) {
	to := object(nil)
	to.integer("version", 1)
	to.key("baseline")
	inner := object(to.text)
	inner.string("kind", j.choice.Kind())
	if value, ok := j.choice.Value(); ok {
		inner.number("value", value)
	}
	to.text = inner.end()
	to.key("rounds")
	w.Write(append(to.text, '['))
}

func (j *jsonLayout) end(w *bufio.Writer) { w.WriteString("]}\n") }

// join puts a comma between two rounds.
func (j *jsonLayout) add(w *bufio.Writer, _ analysis.Statement) {
	if !j.first {
		w.WriteByte(',')
	}
	j.first = false
	w.WriteByte('\n')
}

func (j *jsonLayout) round(to []byte, r analysis.Statement) []byte {
	o := object(to)
	o.string("round", r.Round.ID)
	o.string("date", r.Round.Date.String())
	o.string("course", r.Round.Course)
	o.integer("holes", len(r.Round.Holes))
	o.integer("par", r.Round.Par())
	o.number("score", r.Account.Score)
	o.number("expected", r.Account.Expected)
	o.key("lost")
	o.text = lostJSON(o.text, r.Account.Lost)
	o.key("shots")
	o.text = shotsJSON(o.text, r)
	o.key("doubles")
	o.text = doublesJSON(o.text, r.Account.Doubles)
	if picked := r.Account.PickedUp(); len(picked) > 0 {
		o.integers("picked_up", picked)
	}
	return o.end()
}

func lostJSON(to []byte, s account.Split) []byte {
	o := object(to)
	o.number("tee", s.Tee)
	o.number("approach", s.Approach)
	o.number("short_game", s.ShortGame)
	o.number("putting", s.Putting)
	o.number("undetailed", s.Undetailed)
	o.number("course", s.Course)
	o.number("total", s.Total)
	return o.end()
}

func shotsJSON(to []byte, r analysis.Statement) []byte {
	to = append(to, '[')
	for i, h := range r.Account.Holes {
		for k, s := range h.Shots {
			if to[len(to)-1] != '[' {
				to = append(to, ',')
			}
			to = shotJSON(to, h.Number, k+1, r.Round.Holes[i].Shots[k], s)
		}
	}
	return append(to, ']')
}

func shotJSON(to []byte, hole, number int, shot golf.Shot, s account.Shot) []byte {
	unit := shot.WrittenUnit()
	o := object(to)
	o.integer("hole", hole)
	o.integer("shot", number)
	o.string("lie", shot.Lie.String())
	o.number("distance", unit.In(shot.Distance))
	o.string("unit", unit.String())
	o.integer("penalty", shot.Penalty)
	o.number("expected", s.Expected)
	o.number("after", s.After)
	o.number("lost", s.Lost)
	o.string("category", categoryKey(s.Band.Category))
	o.boolean("error", s.Error)
	o.boolean("trouble", s.Trouble)
	return o.end()
}

func doublesJSON(to []byte, doubles []account.Double) []byte {
	to = append(to, '[')
	for i, d := range doubles {
		if i > 0 {
			to = append(to, ',')
		}
		o := object(to)
		o.integer("hole", d.Hole)
		o.integer("par", d.Par)
		o.integer("score", d.Score)
		o.number("lost", d.Lost)
		o.string("kind", d.Kind.String())
		o.integer("root_shot", d.Root)
		o.string("root_category", categoryKey(d.RootCategory))
		o.integer("costliest_shot", d.Costliest)
		o.integers("chain", d.Chain)
		o.number("compounding", d.Compounding)
		to = o.end()
	}
	return append(to, ']')
}

// categoryKey is a part of the game as JSON names it.
func categoryKey(c golf.Category) string {
	if c == golf.ShortGame {
		return "short_game"
	}
	return c.String()
}

// jsonObject is an object being appended to a text.
type jsonObject struct {
	text  []byte
	empty bool
}

func object(to []byte) jsonObject { return jsonObject{append(to, '{'), true} }

func (o *jsonObject) end() []byte { return append(o.text, '}') }

func (o *jsonObject) key(name string) {
	if !o.empty {
		o.text = append(o.text, ',')
	}
	o.empty = false
	o.text = append(append(append(o.text, '"'), name...), '"', ':')
}

func (o *jsonObject) integer(name string, n int) {
	o.key(name)
	o.text = strconv.AppendInt(o.text, int64(n), 10)
}

func (o *jsonObject) number(name string, x float64) {
	o.key(name)
	o.text = strconv.AppendFloat(o.text, x, 'g', -1, 64)
}

func (o *jsonObject) boolean(name string, b bool) {
	o.key(name)
	o.text = strconv.AppendBool(o.text, b)
}

func (o *jsonObject) integers(name string, all []int) {
	o.key(name)
	o.text = append(o.text, '[')
	for i, n := range all {
		if i > 0 {
			o.text = append(o.text, ',')
		}
		o.text = strconv.AppendInt(o.text, int64(n), 10)
	}
	o.text = append(o.text, ']')
}

// string writes a text with the escapes that JSON asks for.
func (o *jsonObject) string(name, s string) {
	o.key(name)
	o.text = append(o.text, '"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			o.text = append(o.text, '\\', byte(r))
		case r < ' ':
			o.text = append(o.text, '\\', 'u', '0', '0', "0123456789abcdef"[r>>4], "0123456789abcdef"[r&15])
		default:
			o.text = utf8.AppendRune(o.text, r)
		}
	}
	o.text = append(o.text, '"')
}
