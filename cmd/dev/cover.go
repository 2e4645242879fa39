package main

import (
	"bufio"
	"fmt"
	"io"
	"maps"
	"os"
	"path"
	"slices"
	"strings"
)

// coverBar is the share of statements that tests of handlers and of every
// package of web must run, at least.
const coverBar = .85

// coverProfile is what go test writes.
const coverProfile = "build/cover.out"

// coverage is how many statements of a package there are, and how many of them
// its own tests ran.
type coverage struct{ all, run int }

func (c coverage) share() float64 { return ratio(c.run, c.all) }

// cover runs the tests of every package but those of cmd/dev, which run the
// built program, and prints how much of each they ran.
func cover() error {
	if err := prepareParts(runParts, thisMachine()); err != nil {
		return err
	}
	packages, err := tree(".")
	if err != nil {
		return err
	}
	args := []string{"test", "-timeout", "14m", "-coverprofile", coverProfile}
	for _, p := range packages {
		if !inside(p.ImportPath, module+"/cmd/dev") {
			args = append(args, p.ImportPath)
		}
	}
	if err := os.MkdirAll(path.Dir(coverProfile), 0o755); err != nil {
		return err
	}
	if err := command("go", args...); err != nil {
		return err
	}
	profile, err := os.Open(coverProfile)
	if err != nil {
		return err
	}
	defer profile.Close()
	covered, err := readProfile(profile)
	if err != nil {
		return err
	}
	if low := printCover(os.Stdout, covered); low > 0 {
		return fmt.Errorf("%d packages are below the bar of %.0f %%", low, 100*coverBar)
	}
	return nil
}

// readProfile counts a profile by package. What templates generate is left out.
func readProfile(r io.Reader) (map[string]coverage, error) {
	all := map[string]coverage{}
	lines := bufio.NewScanner(r)
	for lines.Scan() {
		if strings.HasPrefix(lines.Text(), "mode:") {
			continue
		}
		file, rest, _ := strings.Cut(lines.Text(), ":")
		var span string
		var statements, times int
		if _, err := fmt.Sscan(rest, &span, &statements, &times); err != nil {
			return nil, fmt.Errorf("line %q of the profile: %w", lines.Text(), err)
		}
		if strings.HasSuffix(file, "_templ.go") {
			continue
		}
		name := strings.TrimPrefix(path.Dir(file), module+"/")
		c := all[name]
		c.all += statements
		if times > 0 {
			c.run += statements
		}
		all[name] = c
	}
	return all, lines.Err()
}

// printCover writes a line a package and returns how many are below the bar.
func printCover(w io.Writer, covered map[string]coverage) int {
	low := 0
	for _, name := range slices.Sorted(maps.Keys(covered)) {
		note := ""
		if c := covered[name]; barred(name) && c.share() < coverBar {
			low++
			note = fmt.Sprintf("  below %.0f %%", 100*coverBar)
		}
		fmt.Fprintf(w, "%5.1f %%  %s%s\n", 100*covered[name].share(), name, note)
	}
	return low
}

// barred reports the packages that the bar is for.
func barred(name string) bool { return name == "handlers" || inside(name, "web") }
