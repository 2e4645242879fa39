//go:build !linux

package local

import (
	"fmt"
	"os/exec"
	"strconv"
	"strings"
)

// processes lists the living Postgres processes of this machine with ps, which does
// not know in which folder they work.
func processes() ([]process, error) {
	out, err := exec.Command("ps", "-axww", "-o", "pid=,ppid=,stat=,lstart=,command=").Output()
	if err != nil {
		return nil, fmt.Errorf("ps: %w", err)
	}
	var all []process
	for line := range strings.Lines(string(out)) {
		if p, ok := readLine(line); ok && isPostgres(p.command) {
			all = append(all, p)
		}
	}
	return all, nil
}

// readLine reads pid, parent, state, the five words of the start and the
// command.
func readLine(line string) (p process, ok bool) {
	var words [8]string
	rest := line
	for i := range words {
		rest = strings.TrimLeft(rest, " ")
		if words[i], rest, ok = strings.Cut(rest, " "); !ok {
			return p, false
		}
	}
	var err1, err2 error
	p.pid, err1 = strconv.Atoi(words[0])
	p.parent, err2 = strconv.Atoi(words[1])
	p.began, p.command = strings.Join(words[3:], " "), strings.TrimSpace(rest)
	return p, err1 == nil && err2 == nil && !strings.HasPrefix(words[2], "Z")
}
