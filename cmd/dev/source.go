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

// mostLines is the house's limit for source files.
const mostLines = 300

// sourceFaults looks at a package's own files: their length and that of their
// functions, of which longest is the most lines; comments on what is exported, and in the engine calls of the clock
// and of the global source of randomness.
func sourceFaults(p listed, longest int) ([]string, error) {
	var all []string
	files := token.NewFileSet()
	documented := false
	for _, name := range p.GoFiles {
		if strings.HasSuffix(name, "_templ.go") {
			continue
		}
		full := filepath.Join(p.Dir, name)
		source, err := os.ReadFile(full)
		if err != nil {
			return nil, err
		}
		parsed, err := parser.ParseFile(files, full, source, parser.ParseComments)
		if err != nil {
			return nil, err
		}
		documented = documented || parsed.Doc != nil
		where := strings.TrimPrefix(p.ImportPath, module+"/") + "/" + name
		if n := files.File(parsed.Pos()).LineCount(); n > mostLines {
			all = append(all, fmt.Sprintf("%s has %d lines; at most %d", where, n, mostLines))
		}
		all = append(all, fileFaults(where, files, parsed, longest, strings.HasPrefix(p.ImportPath, module+"/analysis"))...)
	}
	if !documented {
		all = append(all, p.ImportPath+" has no package comment")
	}
	return all, nil
}

func fileFaults(where string, files *token.FileSet, parsed *ast.File, longest int, engine bool) []string {
	var all []string
	add := func(at ast.Node, what string) {
		all = append(all, fmt.Sprintf("%s:%d: %s", where, files.Position(at.Pos()).Line, what))
	}
	for _, d := range parsed.Decls {
		switch d := d.(type) {
		case *ast.FuncDecl:
			if n := files.Position(d.End()).Line - files.Position(d.Pos()).Line + 1; n > longest {
				add(d, fmt.Sprintf("%s has %d lines; at most %d", d.Name.Name, n, longest))
			}
			if d.Name.IsExported() && d.Doc == nil && receiverExported(d) {
				add(d, d.Name.Name+" has no comment")
			}
		case *ast.GenDecl:
			for _, s := range d.Specs {
				if name, bare := uncommented(d, s); bare {
					add(s, name+" has no comment")
				}
			}
		}
	}
	if engine {
		ast.Inspect(parsed, func(n ast.Node) bool {
			if name := impureCall(n); name != "" {
				add(n, "the engine calls "+name)
			}
			return true
		})
	}
	return all
}

func receiverExported(d *ast.FuncDecl) bool {
	if d.Recv == nil {
		return true
	}
	t := d.Recv.List[0].Type
	if star, ok := t.(*ast.StarExpr); ok {
		t = star.X
	}
	id, ok := t.(*ast.Ident)
	return !ok || id.IsExported()
}

// uncommented reports an exported name that has no comment of its own, of its
// line or of its group.
func uncommented(d *ast.GenDecl, s ast.Spec) (string, bool) {
	switch s := s.(type) {
	case *ast.TypeSpec:
		return s.Name.Name, s.Name.IsExported() && s.Doc == nil && d.Doc == nil
	case *ast.ValueSpec:
		return s.Names[0].Name, s.Names[0].IsExported() && s.Doc == nil && s.Comment == nil && d.Doc == nil
	}
	return "", false
}

// impureCall names a call of the clock or of the global source of randomness.
func impureCall(n ast.Node) string {
	call, ok := n.(*ast.CallExpr)
	if !ok {
		return ""
	}
	f, ok := call.Fun.(*ast.SelectorExpr)
	if !ok {
		return ""
	}
	pkg, ok := f.X.(*ast.Ident)
	if !ok || pkg.Obj != nil {
		return ""
	}
	seeded := map[string]bool{"New": true, "NewPCG": true, "NewChaCha8": true, "NewZipf": true}
	switch {
	case pkg.Name == "time" && (f.Sel.Name == "Now" || f.Sel.Name == "Since" || f.Sel.Name == "Until"):
		return "time." + f.Sel.Name
	case pkg.Name == "rand" && !seeded[f.Sel.Name]:
		return "rand." + f.Sel.Name
	}
	return ""
}
