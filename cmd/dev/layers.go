package main

import (
	"bufio"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path"
	"slices"
	"strconv"
	"strings"
)

const module = "strokeledger"

// layer is a row of the table "Who may import whom".
type layer struct {
	pkg        string
	may, never []string
}

// rules are what DEVELOPERS.md says of imports.
type rules struct {
	layers []layer
	homes  []layer // of libraries: pkg is the library, may are its homes

	longest map[string]int // the most lines of a function, by package; "*" for the others
}

const (
	onlyInTests   = "being imported outside tests"
	neverImported = "being imported"
)

// readRules reads the three tables of a DEVELOPERS.md.
func readRules(r io.Reader) (rules, error) {
	all := rules{longest: map[string]int{}}
	lines := bufio.NewScanner(r)
	table := ""
	for lines.Scan() {
		cells := strings.Split(strings.Trim(strings.TrimSpace(lines.Text()), "|"), "|")
		for i := range cells {
			cells[i] = strings.TrimSpace(cells[i])
		}
		switch {
		case !strings.HasPrefix(lines.Text(), "|"):
			table = ""
		case cells[0] == "package" || cells[0] == "library" || cells[0] == "functions of":
			table = cells[0]
		case strings.HasPrefix(cells[0], "---"):
		case table == "package" && len(cells) == 3:
			all.layers = append(all.layers, layer{cells[0], list(cells[1]), list(cells[2])})
		case table == "library" && len(cells) == 2:
			all.homes = append(all.homes, layer{cells[0], list(cells[1]), nil})
		case table == "functions of" && len(cells) == 2:
			n, err := strconv.Atoi(cells[1])
			if err != nil {
				return all, fmt.Errorf("how long functions of %s may be: %w", cells[0], err)
			}
			all.longest[cells[0]] = n
		}
	}
	if len(all.layers) == 0 || len(all.homes) == 0 || all.longest["*"] == 0 {
		return all, errors.New("the document has no table of packages, of libraries or of how long functions are")
	}
	return all, lines.Err()
}

// longestFunction is how many lines a function of a package may have.
func (r rules) longestFunction(importPath string) int {
	if n, own := r.longest[strings.TrimPrefix(importPath, module+"/")]; own {
		return n
	}
	return r.longest["*"]
}

func list(cell string) []string {
	var all []string
	for item := range strings.SplitSeq(cell, ",") {
		if item = strings.TrimSpace(item); item != "" && item != "nothing" {
			all = append(all, item)
		}
	}
	return all
}

// listed is a package as go list tells it.
type listed struct {
	ImportPath                         string
	Dir                                string
	Imports, TestImports, XTestImports []string
	GoFiles, TestGoFiles, XTestGoFiles []string
}

// tree lists the packages of the module.
func tree(root string) ([]listed, error) {
	c := exec.Command("go", "list", "-json", "./...")
	c.Dir, c.Stderr = root, os.Stderr
	out, err := c.Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w", err)
	}
	var all []listed
	d := json.NewDecoder(strings.NewReader(string(out)))
	for {
		var p listed
		if err := d.Decode(&p); err == io.EOF {
			return all, nil
		} else if err != nil {
			return nil, err
		}
		all = append(all, p)
	}
}

// broken lists every import that the rules forbid, and packages without a row.
func (r rules) broken(packages []listed) []string {
	var all []string
	for _, p := range packages {
		name := strings.TrimPrefix(p.ImportPath, module+"/")
		i := slices.IndexFunc(r.layers, func(l layer) bool { return l.pkg == name })
		if i < 0 {
			all = append(all, name+" has no row in the table")
			continue
		}
		for _, imported := range p.Imports {
			if why := r.forbids(r.layers[i], imported); why != "" {
				all = append(all, name+" imports "+imported+": "+why)
			}
		}
		for _, imported := range slices.Concat(p.TestImports, p.XTestImports) {
			if why := r.forbidsTests(imported); why != "" {
				all = append(all, "tests of "+name+" import "+imported+": "+why)
			}
		}
	}
	return all
}

// forbids says why a package may not import another, and "" when it may.
func (r rules) forbids(l layer, imported string) string {
	for _, home := range r.homes {
		if strings.HasPrefix(imported, home.pkg) && !matches(home.may, l.pkg) {
			return "that library lives in " + strings.Join(home.may, ", ")
		}
	}
	if slices.Contains(l.never, imported) {
		return "never"
	}
	ours, found := strings.CutPrefix(imported, module+"/")
	if !found {
		return ""
	}
	if why := r.forbidsTests(imported); why != "" {
		return why
	}
	if i := slices.IndexFunc(r.layers, func(other layer) bool { return other.pkg == ours }); i >= 0 && slices.Contains(r.layers[i].never, onlyInTests) {
		return "it is for tests"
	}
	if !matches(l.may, ours) {
		return "the table does not allow it"
	}
	return ""
}

// forbidsTests says why not even a test may import a package of ours.
func (r rules) forbidsTests(imported string) string {
	ours, _ := strings.CutPrefix(imported, module+"/")
	for _, l := range r.layers {
		if l.pkg == ours && slices.Contains(l.never, neverImported) {
			return "it may not be imported"
		}
	}
	return ""
}

func matches(patterns []string, name string) bool {
	return slices.ContainsFunc(patterns, func(p string) bool {
		ok, _ := path.Match(p, name)
		return ok || p == "*"
	})
}
