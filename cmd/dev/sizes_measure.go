package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strings"
)

// measured is how large the parts of a package are. Generated files are left out.
type measured struct {
	name       string // without the module
	fileLines  []int  // of each file that is not a test
	functions  []measuredFunction
	code       int // lines that are not empty, comments too
	comments   int // of these, lines with nothing but a comment, or a comment at their end
	tests      int // lines of its tests that are not empty
	bareFields int // exported fields of exported structs without a comment
}

type measuredFunction struct {
	name, at          string
	lines, parameters int
}

func (m measured) files() []int { return m.fileLines }

func (m measured) functionLines() []int {
	var all []int
	for _, f := range m.functions {
		all = append(all, f.lines)
	}
	return all
}

func (m measured) mostParameters() int {
	most := 0
	for _, f := range m.functions {
		most = max(most, f.parameters)
	}
	return most
}

func (m measured) commentShare() float64 { return ratio(m.comments, m.code) }
func (m measured) testRatio() float64    { return ratio(m.tests, m.code) }

func ratio(part, whole int) float64 {
	if whole == 0 {
		return 0
	}
	return float64(part) / float64(whole)
}

// measure reads the files of a package.
func measure(p listed) (measured, error) {
	m := measured{name: strings.TrimPrefix(p.ImportPath, module+"/")}
	for _, name := range p.GoFiles {
		source, err := os.ReadFile(filepath.Join(p.Dir, name))
		if err != nil {
			return m, err
		}
		if err := m.add(name, source); err != nil {
			return m, err
		}
	}
	for _, names := range [][]string{p.TestGoFiles, p.XTestGoFiles} {
		for _, name := range names {
			source, err := os.ReadFile(filepath.Join(p.Dir, name))
			if err != nil {
				return m, err
			}
			m.tests += fullLines(source)
		}
	}
	return m, nil
}

// add takes in one file that is not a test.
func (m *measured) add(name string, source []byte) error {
	files := token.NewFileSet()
	parsed, err := parser.ParseFile(files, name, source, parser.ParseComments)
	if err != nil {
		return err
	}
	if ast.IsGenerated(parsed) {
		return nil
	}
	m.fileLines = append(m.fileLines, files.File(parsed.Pos()).LineCount())
	m.code += fullLines(source)
	m.comments += commentLines(files, parsed)
	for _, d := range parsed.Decls {
		if f, ok := d.(*ast.FuncDecl); ok {
			m.functions = append(m.functions, measureFunction(files, f))
		}
	}
	m.bareFields += bareFields(parsed)
	return nil
}

func measureFunction(files *token.FileSet, f *ast.FuncDecl) measuredFunction {
	at := files.Position(f.Pos())
	return measuredFunction{
		name: f.Name.Name, at: fmt.Sprintf("%s:%d", filepath.Base(at.Filename), at.Line),
		lines:      files.Position(f.End()).Line - at.Line + 1,
		parameters: f.Type.Params.NumFields(),
	}
}

func fullLines(source []byte) int {
	n := 0
	for line := range strings.Lines(string(source)) {
		if strings.TrimSpace(line) != "" {
			n++
		}
	}
	return n
}

// commentLines counts the lines that hold a comment.
func commentLines(files *token.FileSet, parsed *ast.File) int {
	lines := map[int]bool{}
	for _, group := range parsed.Comments {
		for i := files.Position(group.Pos()).Line; i <= files.Position(group.End()).Line; i++ {
			lines[i] = true
		}
	}
	return len(lines)
}

// bareFields counts the exported fields of exported structs that have no
// comment of their own or of their line.
func bareFields(parsed *ast.File) int {
	n := 0
	ast.Inspect(parsed, func(node ast.Node) bool {
		t, ok := node.(*ast.TypeSpec)
		if !ok || !t.Name.IsExported() {
			return true
		}
		fields, ok := t.Type.(*ast.StructType)
		if !ok {
			return true
		}
		for _, f := range fields.Fields.List {
			if f.Doc != nil || f.Comment != nil {
				continue
			}
			for _, name := range f.Names {
				if name.IsExported() {
					n++
				}
			}
		}
		return true
	})
	return n
}
