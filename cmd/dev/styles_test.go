package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// names are class names or custom properties.
type names map[string]bool

func (n names) add(all ...string) {
	for _, name := range all {
		n[name] = true
	}
}

// styling is what sheets, pages and scripts name.
type styling struct {
	ruled   names // classes that a selector of a sheet names
	given   names // classes that a page or a script gives to a thing
	sought  names // classes by which a script finds things
	defined names // custom properties that a sheet sets
	read    names // custom properties that a sheet reads
}

func newStyling() styling {
	return styling{names{}, names{}, names{}, names{}, names{}}
}

// faults are what does not fit together.
func (s styling) faults() []string {
	var all []string
	report := func(from names, what string, wrong func(name string) bool) {
		for _, name := range slices.Sorted(maps.Keys(from)) {
			if wrong(name) {
				all = append(all, name+": "+what)
			}
		}
	}
	report(s.ruled, "a rule for a class that nothing has", func(name string) bool { return !s.given[name] })
	report(s.given, "a class that no rule and no script knows", func(name string) bool { return !s.ruled[name] && !s.sought[name] })
	report(s.sought, "a script looks for a class that nothing has", func(name string) bool { return !s.given[name] })
	report(s.defined, "a custom property that no rule reads", func(name string) bool { return !s.read[name] })
	report(s.read, "a custom property that no rule sets", func(name string) bool { return !s.defined[name] })
	for _, from := range []names{s.ruled, s.given} {
		report(from, "too short to say what it is", cryptic)
	}
	return all
}

// cryptic is a name of fewer than four letters, or with a word of one.
func cryptic(name string) bool {
	return len(name) < 4 || slices.ContainsFunc(strings.Split(name, "-"), func(word string) bool { return len(word) < 2 })
}

var (
	remark    = regexp.MustCompile(`(?s)/\*.*?\*/`)
	prelude   = regexp.MustCompile(`([^{};]*)\{`)
	ruledName = regexp.MustCompile(`\.([A-Za-z][\w-]*)`)
	setName   = regexp.MustCompile(`(--[a-z][\w-]*)\s*:`)
	readName  = regexp.MustCompile(`var\((--[a-z][\w-]*)`)
)

// sheet reads a file of styles.
func (s styling) sheet(text string) {
	text = remark.ReplaceAllString(text, "")
	for _, m := range prelude.FindAllStringSubmatch(text, -1) {
		if !strings.HasPrefix(strings.TrimSpace(m[1]), "@") {
			s.ruled.add(first(ruledName, m[1])...)
		}
	}
	s.defined.add(first(setName, text)...)
	s.read.add(first(readName, text)...)
}

// first is what the first group of a pattern finds in a text.
func first(pattern *regexp.Regexp, text string) []string {
	var all []string
	for _, m := range pattern.FindAllStringSubmatch(text, -1) {
		all = append(all, m[1])
	}
	return all
}

var (
	looks = regexp.MustCompile("(?:querySelector(?:All)?|closest|matches)\\((\"[^\"]*\"|'[^']*'|`[^`]*`)")
	asks  = regexp.MustCompile(`classList\.contains\("([^"]*)"`)
	gives = regexp.MustCompile(`(?:className = |classList\.(?:add|toggle)\()"([^"]*)"`)
)

// script reads a script.
func (s styling) script(text string) {
	for _, selector := range first(looks, text) {
		s.sought.add(first(ruledName, selector)...)
	}
	s.sought.add(first(asks, text)...)
	for _, list := range first(gives, text) {
		s.given.add(strings.Fields(list)...)
	}
}

// classed is what a page writes of itself.
var classed = regexp.MustCompile(`\bclass="([^"]*)"`)

// page reads a Go file of the web, which may be made from a template. A class
// stands in markup, in the list that a template makes for an attribute, in a
// field or variable or in what a function returns whose name ends in class or
// classes, or is handed over as a parameter of that name.
func (s styling) page(file *ast.File, takes map[string]int) {
	ast.Inspect(file, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.BasicLit:
			for _, list := range first(classed, literal(n)) {
				s.given.add(strings.Fields(list)...)
			}
		case *ast.CompositeLit:
			if list, ok := n.Type.(*ast.ArrayType); ok && isName(list.Elt, "any") {
				s.given.add(classList(n)...)
			}
		case *ast.KeyValueExpr:
			if namesClass(n.Key) {
				s.given.add(literals(n.Value)...)
			}
		case *ast.FuncDecl:
			if namesClass(n.Name) && n.Body != nil {
				s.given.add(literals(n.Body)...)
			}
		case *ast.AssignStmt:
			for i, to := range n.Lhs {
				if namesClass(to) && len(n.Lhs) == len(n.Rhs) {
					s.given.add(literals(n.Rhs[i])...)
				}
			}
		case *ast.CallExpr:
			if at, ok := takes[called(n)]; ok && at < len(n.Args) {
				s.given.add(literals(n.Args[at])...)
			}
		}
		return true
	})
}

// classList is what a template's list of classes holds: names, and names with a
// condition.
func classList(list *ast.CompositeLit) []string {
	var all []string
	for _, e := range list.Elts {
		if call, ok := e.(*ast.CallExpr); ok && called(call) == "KV" && len(call.Args) > 0 {
			e = call.Args[0]
		}
		if lit, ok := e.(*ast.BasicLit); ok {
			all = append(all, strings.Fields(literal(lit))...)
		}
	}
	return all
}

func isName(e ast.Expr, name string) bool {
	id, ok := e.(*ast.Ident)
	return ok && id.Name == name
}

// called is the name of the function of a call, without its package.
func called(call *ast.CallExpr) string { return lastName(call.Fun) }

func lastName(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name
	case *ast.SelectorExpr:
		return e.Sel.Name
	}
	return ""
}

func namesClass(e ast.Expr) bool {
	name := strings.ToLower(lastName(e))
	return strings.HasSuffix(name, "class") || strings.HasSuffix(name, "classes")
}

func literal(lit *ast.BasicLit) string {
	if lit.Kind != token.STRING {
		return ""
	}
	text, err := strconv.Unquote(lit.Value)
	if err != nil {
		return ""
	}
	return text
}

// literals are the words of every string in a piece of code.
func literals(n ast.Node) []string {
	var all []string
	ast.Inspect(n, func(n ast.Node) bool {
		if lit, ok := n.(*ast.BasicLit); ok {
			all = append(all, strings.Fields(literal(lit))...)
		}
		return true
	})
	return all
}

// takers adds the functions of a file that take a class, with the place of that
// parameter.
func takers(file *ast.File, all map[string]int) {
	for _, d := range file.Decls {
		f, ok := d.(*ast.FuncDecl)
		if !ok {
			continue
		}
		at := 0
		for _, list := range f.Type.Params.List {
			for _, name := range list.Names {
				if name.Name == "class" {
					all[f.Name.Name] = at
				}
				at++
			}
		}
	}
}

func TestSheetsPagesAndScriptsNameTheSameClasses(t *testing.T) {
	s := newStyling()
	for _, pattern := range []string{"*.css", "*.js"} {
		files, err := filepath.Glob("../../static/" + pattern)
		if err != nil || len(files) == 0 {
			t.Fatal(pattern, err)
		}
		for _, name := range files {
			text, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			if pattern == "*.css" {
				s.sheet(string(text))
			} else {
				s.script(string(text))
			}
		}
	}
	var pages []*ast.File
	takes := map[string]int{}
	err := filepath.WalkDir("../../web", func(path string, _ fs.DirEntry, err error) error {
		if err != nil || filepath.Ext(path) != ".go" || strings.HasSuffix(path, "_test.go") {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
		if err == nil {
			takers(file, takes)
			pages = append(pages, file)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range pages {
		s.page(file, takes)
	}
	for _, fault := range s.faults() {
		t.Error(fault)
	}
}
