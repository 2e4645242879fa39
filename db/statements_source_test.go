package db_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// statement is the text of a statement in this package, and the name of the method,
// constant or variable that holds it.
type statement struct{ name, sql string }

var startsStatement = regexp.MustCompile(`^\s*(select|insert|update|delete|with|lock)\s`)

// source is the package as it is written, without its tests.
type source struct {
	files []*ast.File
	texts map[string]ast.Expr // constants and variables of the package
	funcs map[string]*ast.FuncDecl
}

func readSource(t *testing.T) source {
	t.Helper()
	s := source{texts: map[string]ast.Expr{}, funcs: map[string]*ast.FuncDecl{}}
	entries, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if !strings.HasSuffix(e.Name(), ".go") || strings.HasSuffix(e.Name(), "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), e.Name(), nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		s.files = append(s.files, file)
		for _, d := range file.Decls {
			switch d := d.(type) {
			case *ast.FuncDecl:
				if d.Recv == nil {
					s.funcs[d.Name.Name] = d
				}
			case *ast.GenDecl:
				s.readTexts(d)
			}
		}
	}
	return s
}

func (s source) readTexts(d *ast.GenDecl) {
	for _, spec := range d.Specs {
		if values, ok := spec.(*ast.ValueSpec); ok {
			for i, v := range values.Values {
				s.texts[values.Names[i].Name] = v
			}
		}
	}
}

// statements lists the statements of the package. It fails for a text that begins
// like a statement and is put together from parts it cannot read.
func (s source) statements(t *testing.T) []statement {
	t.Helper()
	var all []statement
	for _, file := range s.files {
		for _, d := range file.Decls {
			if f, ok := d.(*ast.FuncDecl); ok {
				all = append(all, s.within(t, f.Name.Name, f)...)
				continue
			}
			for _, spec := range d.(*ast.GenDecl).Specs {
				if values, ok := spec.(*ast.ValueSpec); ok {
					all = append(all, s.within(t, values.Names[0].Name, values)...)
				}
			}
		}
	}
	return all
}

func (s source) within(t *testing.T, name string, n ast.Node) []statement {
	t.Helper()
	var all []statement
	ast.Inspect(n, func(n ast.Node) bool {
		e, ok := n.(ast.Expr)
		if !ok || !startsStatement.MatchString(beginning(e)) {
			return true
		}
		sql, ok := s.text(e, nil)
		if !ok {
			t.Errorf("%s: a statement has a part that this test cannot read: %s", name, beginning(e))
		}
		all = append(all, statement{name, sql})
		return false
	})
	return all
}

// beginning is the first literal of a text, "" for anything else.
func beginning(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.BasicLit:
		if e.Kind == token.STRING {
			text, _ := strconv.Unquote(e.Value)
			return text
		}
	case *ast.BinaryExpr:
		return beginning(e.X)
	}
	return ""
}

// text works out a text that is put together from literals, constants, variables
// of the package, and functions that do nothing but return such a text.
func (s source) text(e ast.Expr, params map[string]string) (string, bool) {
	switch e := e.(type) {
	case *ast.BasicLit:
		return beginning(e), e.Kind == token.STRING
	case *ast.BinaryExpr:
		x, known := s.text(e.X, params)
		y, alsoKnown := s.text(e.Y, params)
		return x + y, known && alsoKnown && e.Op == token.ADD
	case *ast.Ident:
		if text, ok := params[e.Name]; ok {
			return text, true
		}
		if of, ok := s.texts[e.Name]; ok {
			return s.text(of, nil)
		}
	case *ast.CallExpr:
		return s.call(e, params)
	}
	return "", false
}

func (s source) call(e *ast.CallExpr, params map[string]string) (string, bool) {
	name, ok := e.Fun.(*ast.Ident)
	if !ok {
		return "", false
	}
	f, ok := s.funcs[name.Name]
	if !ok || len(f.Body.List) != 1 {
		return "", false
	}
	answer, ok := f.Body.List[0].(*ast.ReturnStmt)
	if !ok || len(answer.Results) != 1 {
		return "", false
	}
	given := map[string]string{}
	for _, field := range f.Type.Params.List {
		for _, param := range field.Names {
			if given[param.Name], ok = s.text(e.Args[len(given)], params); !ok {
				return "", false
			}
		}
	}
	return s.text(answer.Results[0], given)
}
