package form

import (
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"strokeledger/analysis/golf"
)

// The tables that lines are read by are the grammar of the package's comment.
func TestTablesAreTheGrammar(t *testing.T) {
	g := docGrammar(t, "line")
	marksThere, endings, letters, unitsThere := map[string]bool{}, map[string]bool{}, map[string]bool{}, map[string]bool{}
	for _, m := range marks {
		if m.ends {
			endings[m.written] = true
		} else {
			marksThere[m.written] = true
		}
	}
	for _, l := range lies {
		letters[string(l.letter)] = true
	}
	for _, u := range units {
		unitsThere[u.written] = true
	}
	for name, want := range map[string]map[string]bool{"mark": marksThere, "ending": endings, "lie": letters, "unit": unitsThere,
		"about": {aboutSign: true}, "score": {scoreSign: true}, "club": {clubSign: true}} {
		if diff := cmp.Diff(want, g.literals(name)); diff != "" {
			t.Errorf("%s (- table, + comment): %s", name, diff)
		}
	}
	for name := range g {
		if name != "line" && !g.uses(name) {
			t.Errorf("nothing in the grammar uses %s", name)
		}
	}
}

// Every mark is read as the table says: its strokes, its end, its drop, and what
// it must not stand behind.
func TestEveryMarkIsRead(t *testing.T) {
	for _, m := range marks {
		typed := m.written
		if m.number == mustNumber {
			typed += "3"
		}
		line := "f20" + typed
		if !m.ends {
			line += " g9"
		}
		l := ParseLine(line, par(4, 392), StandardUnits)
		penalty := m.penalty
		if m.number == mustNumber {
			penalty = 3
		}
		if !l.Sound() || l.Hole.Shots[1].Penalty != penalty || l.Ended != m.ends || m.means == "" {
			t.Errorf("%q (%s): %s, %v", line, m.means, tell(l.Hole), l.Problems)
		}
		if dropped := ParseLine("f20"+typed, par(4, 392), StandardUnits).Dropped; dropped != m.drop {
			t.Errorf("f20%s: dropped %t", typed, dropped)
		}
		for _, other := range marks {
			line := "f20" + other.written + typed + " g9"
			refused := slices.Contains(m.notBehind, other.written)
			if l := ParseLine(line, par(4, 392), StandardUnits); !other.ends && other.number != mustNumber && !m.ends && l.Sound() == refused {
				t.Errorf("%q: %v", line, l.Problems)
			}
		}
	}
}

// A mark that begins another comes after it in the table, or it would be read in
// the place of it.
func TestLongerMarksComeFirst(t *testing.T) {
	for i := range marks {
		if m, rest := leadingMark(marks[i].written); m != &marks[i] || rest != "" {
			t.Errorf("%q is read as %q", marks[i].written, m.written)
		}
	}
}

// Whatever the grammar makes is read; only what the comment says below it can be
// wrong with it.
func TestWhatTheGrammarMakesIsRead(t *testing.T) {
	g := docGrammar(t, "line")
	unread := []string{"not understood", "a lie without a distance", "not a distance", "not yards of green", "nothing but commas", "not a line of text"}
	sound := 0
	rapid.Check(t, func(t *rapid.T) {
		line := g.make(t, "line")
		if commaBetweenDigits(line) || commaInClub.MatchString(line) || len(line) > LongestLine {
			return // the comment says what those commas are
		}
		l := ParseLine(line, par(4, 392), StandardUnits)
		for _, p := range l.Problems {
			if slices.ContainsFunc(unread, func(what string) bool { return strings.HasPrefix(p.What, what) }) {
				t.Fatalf("%q: %+v", line, p)
			}
		}
		if l.Sound() {
			sound++
		}
	})
	if sound == 0 {
		t.Error("the grammar made no line that says a hole")
	}
}

// Whatever is read as a hole can be made by the grammar.
func TestWhatIsReadIsInTheGrammar(t *testing.T) {
	g := docGrammar(t, "line")
	for _, line := range slices.Concat(pieces, []string{"F 140 M, G 8 M", "f140~ g30 - = 5", "~f~140m~w r9/7i s 4", "x+ 2 f180 ,= 7", "t 385/d,x x f140\u00a0g3"}) {
		if l := ParseLine(line, par(4, 392), StandardUnits); l.Sound() && !g.matches("line", line) {
			t.Errorf("%q is read and not in the grammar", line)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		line := typing().Draw(t, "line")
		if l := ParseLine(line, par(4, 392), StandardUnits); l.Sound() && !g.matches("line", line) {
			t.Fatalf("%q is read as %s and is not in the grammar", line, tell(l.Hole))
		}
	})
	for _, line := range []string{"f140g30", "f140f", "=", "q", "f+", "f 140 mw", "f140 ~ g3"} {
		if g.matches("line", line) {
			t.Errorf("%q is in the grammar", line)
		}
	}
}

// Every card that its grammar makes is read without a complaint about its form.
func TestWhatTheGrammarOfACardMakesIsRead(t *testing.T) {
	g := docGrammar(t, "card")
	read := 0
	rapid.Check(t, func(t *rapid.T) {
		text := g.make(t, "card")
		for _, problem := range PasteCard(text, golf.Yards).Problems {
			if !strings.Contains(problem, "more than 18 holes") && !strings.HasPrefix(problem, "There is no line") && !ambiguousCard(text) {
				t.Fatalf("%q: %s", text, problem)
			}
		}
		if PasteCard(text, golf.Yards).Card.Holes > 0 {
			read++
		}
	})
	if read == 0 {
		t.Error("the grammar made no card that has a hole")
	}
	for _, text := range []string{"Hole\tPar\n1. 4 392 5\n", "4,392\n5;481,5 m;1\n", "#3: 3 158 Yards\n"} {
		if !g.matches("card", text) || len(PasteCard(text, golf.Yards).Problems) > 0 {
			t.Errorf("%q: %v", text, PasteCard(text, golf.Yards).Problems)
		}
	}
}

// ambiguousCard reports whether the comment's rules decide how a card is cut: for
// a comma, or for lines with a position among lines without.
func ambiguousCard(text string) bool {
	lines := cardLines(text)
	least := 2 // par and length
	if numberedHoles(lines) {
		least++
	}
	return strings.Contains(text, ",") ||
		slices.ContainsFunc(lines, func(l cardLine) bool { return len(l.words) < least || len(l.words) > least+1 })
}

// uses reports whether a production of the grammar has the name of another.
func (g grammar) uses(name string) bool {
	var within func(x *term) bool
	within = func(x *term) bool { return x.kind == 'n' && x.text == name || slices.ContainsFunc(x.parts, within) }
	return slices.ContainsFunc(slices.Collect(maps.Values(g)), within)
}

// make draws a text that a production makes.
func (g grammar) make(t *rapid.T, name string) string {
	var b strings.Builder
	g.write(t, &b, g[name])
	return b.String()
}

func (g grammar) write(t *rapid.T, b *strings.Builder, x *term) {
	times := 1
	switch x.kind {
	case '"':
		b.WriteString(x.text)
	case '?':
		b.WriteString(rapid.SampledFrom(special[x.text].samples).Draw(t, x.text))
	case 'n':
		g.write(t, b, g[x.text])
	case '|':
		g.write(t, b, x.parts[rapid.IntRange(0, len(x.parts)-1).Draw(t, "choice")])
		times = 0
	case '[':
		times = rapid.IntRange(0, 1).Draw(t, "there")
	case '{':
		times = rapid.IntRange(0, 2).Draw(t, "times")
	}
	for range times {
		for _, part := range x.parts {
			g.write(t, b, part)
		}
	}
}

// special are the special sequences: whether a letter is one, and some that are.
var special = map[string]struct {
	is      func(rune) bool
	samples []string
}{
	"white space":                             {unicode.IsSpace, []string{" ", " ", "\u00a0"}},
	"any character but white space":           {func(r rune) bool { return !unicode.IsSpace(r) }, []string{"7", "i", "é", "-", ","}},
	"any character but a digit or a line end": {func(r rune) bool { return !unicode.IsDigit(r) && r != '\n' }, []string{"P", " ", "é"}},
	"tab":      {func(r rune) bool { return r == '\t' }, []string{"\t"}},
	"line end": {func(r rune) bool { return r == '\n' }, []string{"\n"}},
}

// matches reports whether a production makes the text, in any letter case.
func (g grammar) matches(name, text string) bool {
	return g.ends(g[name], lower(text), map[int]bool{0: true})[len(text)]
}

// ends are the places where a term can end that begins at one of some places.
func (g grammar) ends(x *term, text string, begins map[int]bool) map[int]bool {
	found := map[int]bool{}
	switch x.kind {
	case '"', '?':
		for at := range begins {
			r, size := utf8.DecodeRuneInString(text[at:])
			if x.kind == '?' && size > 0 && special[x.text].is(r) {
				found[at+size] = true
			} else if x.kind == '"' && strings.HasPrefix(text[at:], x.text) {
				found[at+len(x.text)] = true
			}
		}
	case 'n':
		return g.ends(g[x.text], text, begins)
	case ',':
		found = begins
		for _, part := range x.parts {
			found = g.ends(part, text, found)
		}
	case '|':
		for _, part := range x.parts {
			maps.Copy(found, g.ends(part, text, begins))
		}
	case '[':
		maps.Copy(found, begins)
		maps.Copy(found, g.ends(x.parts[0], text, begins))
	case '{':
		maps.Copy(found, begins)
		for last := 0; last < len(found); {
			last = len(found)
			maps.Copy(found, g.ends(x.parts[0], text, maps.Clone(found)))
		}
	}
	return found
}

// commaInClub finds a comma that belongs to the name of a club.
var commaInClub = regexp.MustCompile(`/[^\s\x{a0}]*,`)

func commaBetweenDigits(line string) bool {
	for i := 1; i < len(line)-1; i++ {
		if line[i] == ',' && digit(line[i-1]) && digit(line[i+1]) {
			return true
		}
	}
	return false
}
