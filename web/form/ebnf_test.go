package form

import (
	"go/parser"
	"go/token"
	"strings"
	"testing"
)

// grammar is a grammar in the notation of ISO 14977, as far as the package's
// comment uses it: productions by name.
type grammar map[string]*term

// term is a part of a production: a literal, a name, a special sequence, a
// sequence or choice of others, one that may be left out, or one that may be
// repeated.
type term struct {
	kind  byte // '"' ? n , | [ {
	text  string
	parts []*term
}

// docGrammar is the grammar in the comment of the package that begins with a
// production.
func docGrammar(t testing.TB, first string) grammar {
	t.Helper()
	file, err := parser.ParseFile(token.NewFileSet(), "doc.go", nil, parser.ParseComments|parser.PackageClauseOnly)
	if err != nil {
		t.Fatal(err)
	}
	var block []string
	for line := range strings.Lines(file.Doc.Text()) {
		rule, inBlock := strings.CutPrefix(line, "\t")
		switch {
		case inBlock && (len(block) > 0 || strings.HasPrefix(rule, first+" ")):
			block = append(block, rule)
		case len(block) > 0:
			return readGrammar(t, strings.Join(block, ""))
		}
	}
	t.Fatalf("no grammar begins with %q", first)
	return nil
}

// grammarReader reads a grammar token by token.
type grammarReader struct {
	t      testing.TB
	tokens []string
}

func readGrammar(t testing.TB, text string) grammar {
	t.Helper()
	r := &grammarReader{t: t, tokens: grammarTokens(text)}
	g := grammar{}
	for len(r.tokens) > 0 {
		name := r.next()
		r.want("=")
		g[name] = r.choice()
		r.want(";")
	}
	return g
}

// grammarTokens cuts a grammar into words, literals, special sequences and signs.
func grammarTokens(text string) []string {
	var tokens []string
	for text = strings.TrimSpace(text); text != ""; text = strings.TrimSpace(text) {
		end := 1
		if text[0] == '"' || text[0] == '?' {
			end += strings.IndexByte(text[1:], text[0]) + 1
		} else if letter(text[0]) {
			for letter(text[end]) {
				end++
			}
		}
		tokens, text = append(tokens, text[:end]), text[end:]
	}
	return tokens
}

func letter(c byte) bool { return c >= 'a' && c <= 'z' }

func (r *grammarReader) next() string {
	if len(r.tokens) == 0 {
		r.t.Fatal("the grammar breaks off")
	}
	token := r.tokens[0]
	r.tokens = r.tokens[1:]
	return token
}

func (r *grammarReader) want(token string) {
	if got := r.next(); got != token {
		r.t.Fatalf("%q in the grammar, want %q", got, token)
	}
}

func (r *grammarReader) choice() *term   { return r.list("|", '|', r.sequence) }
func (r *grammarReader) sequence() *term { return r.list(",", ',', r.part) }

// list reads parts with a sign between them.
func (r *grammarReader) list(sign string, kind byte, part func() *term) *term {
	list := &term{kind: kind, parts: []*term{part()}}
	for len(r.tokens) > 0 && r.tokens[0] == sign {
		r.next()
		list.parts = append(list.parts, part())
	}
	return list
}

func (r *grammarReader) part() *term {
	token := r.next()
	switch token[0] {
	case '"', '?':
		text := token[1 : len(token)-1]
		if token[0] == '?' {
			text = strings.TrimSpace(text)
		}
		return &term{kind: token[0], text: text}
	case '(':
		inside := r.choice()
		r.want(")")
		return inside
	case '[':
		inside := r.choice()
		r.want("]")
		return &term{kind: '[', parts: []*term{inside}}
	case '{':
		inside := r.choice()
		r.want("}")
		return &term{kind: '{', parts: []*term{inside}}
	}
	if !letter(token[0]) {
		r.t.Fatalf("%q in the grammar is no name", token)
	}
	return &term{kind: 'n', text: token}
}

// literals are the literals a production begins its choices with.
func (g grammar) literals(name string) map[string]bool {
	found := map[string]bool{}
	for _, one := range g[name].parts {
		if first := one.parts[0]; first.kind == '"' {
			found[first.text] = true
		}
	}
	return found
}
