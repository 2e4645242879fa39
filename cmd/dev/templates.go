package main

import (
	"bufio"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// unshown lists the templates of web that no page of the gallery shows, as
// "web/site/front_templ.go: View". It runs the tests of web/sample and looks
// which of the generated functions they ran.
func unshown(root string) ([]string, error) {
	profile, err := os.CreateTemp("", "templates-*.out")
	if err != nil {
		return nil, err
	}
	defer os.Remove(profile.Name())
	defer profile.Close()
	c := exec.Command("go", "test", "-coverprofile", profile.Name(), "-coverpkg", module+"/web/...", module+"/web/sample")
	c.Dir = root
	if out, err := c.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("%s: %w\n%s", join(c.Args), err, out)
	}
	ran, err := ranLines(profile)
	if err != nil {
		return nil, err
	}
	var all []string
	files, err := filepath.Glob(filepath.Join(root, "web", "*", "*_templ.go"))
	if err != nil {
		return nil, err
	}
	for _, name := range files {
		source, err := os.ReadFile(name)
		if err != nil {
			return nil, err
		}
		short, err := filepath.Rel(root, name)
		if err != nil {
			return nil, err
		}
		idle, err := idleTemplates(short, source, ran[filepath.ToSlash(short)])
		if err != nil {
			return nil, err
		}
		all = append(all, idle...)
	}
	return all, nil
}

// ranLines reads from a profile on which lines pieces of code begin that ran, by
// file.
func ranLines(r io.Reader) (map[string][]int, error) {
	all := map[string][]int{}
	lines := bufio.NewScanner(r)
	for lines.Scan() {
		file, rest, found := strings.Cut(lines.Text(), ".go:")
		if !found {
			continue // the first line
		}
		var line, column, endLine, endColumn, statements, times int
		if _, err := fmt.Sscanf(rest, "%d.%d,%d.%d %d %d", &line, &column, &endLine, &endColumn, &statements, &times); err != nil {
			return nil, fmt.Errorf("line %q of the profile: %w", lines.Text(), err)
		}
		if times > 0 {
			name := strings.TrimPrefix(file, module+"/") + ".go"
			all[name] = append(all[name], line)
		}
	}
	return all, lines.Err()
}

// idleTemplates lists the templates of a generated file that did not run: only
// the first line of such a function did, at most, which makes a component
// without showing it.
func idleTemplates(name string, source []byte, ran []int) ([]string, error) {
	files := token.NewFileSet()
	parsed, err := parser.ParseFile(files, name, source, 0)
	if err != nil {
		return nil, err
	}
	var idle []string
	for _, d := range parsed.Decls {
		f, ok := d.(*ast.FuncDecl)
		if !ok {
			continue
		}
		first, last, shown := files.Position(f.Pos()).Line, files.Position(f.End()).Line, false
		for _, line := range ran {
			shown = shown || line > first && line <= last
		}
		if !shown {
			idle = append(idle, name+": "+receiverName(f)+f.Name.Name)
		}
	}
	return idle, nil
}

// receiverName is the type of a method with a dot, nothing for a function.
func receiverName(f *ast.FuncDecl) string {
	if f.Recv == nil {
		return ""
	}
	if id, ok := f.Recv.List[0].Type.(*ast.Ident); ok {
		return id.Name + "."
	}
	return ""
}
