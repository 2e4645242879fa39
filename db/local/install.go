package local

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"os/user"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"syscall"
)

// owner is the user the server runs as; the zero value is the user of this
// process.
type owner struct {
	credential *syscall.Credential
	uid, gid   int
}

func ownerOf() (owner, error) {
	if os.Geteuid() != 0 {
		return owner{}, nil
	}
	for _, name := range []string{"postgres", "nobody"} {
		u, err := user.Lookup(name)
		if err != nil {
			continue
		}
		uid, err1 := strconv.Atoi(u.Uid)
		gid, err2 := strconv.Atoi(u.Gid)
		if err := errors.Join(err1, err2); err != nil {
			return owner{}, err
		}
		return owner{&syscall.Credential{Uid: uint32(uid), Gid: uint32(gid)}, uid, gid}, nil
	}
	return owner{}, errors.New("postgres refuses to run as root, and there is no user postgres or nobody")
}

func (o owner) own(path string) error {
	if o.credential == nil {
		return nil
	}
	return os.Chown(path, o.uid, o.gid)
}

// has reports whether a file belongs to us or to the user that the server runs as.
func (o owner) has(info os.FileInfo) bool {
	stat, ok := info.Sys().(*syscall.Stat_t)
	return ok && (int(stat.Uid) == os.Geteuid() || (o.credential != nil && int(stat.Uid) == o.uid))
}

// makeData creates the data folder with initdb, in a folder beside it that is renamed
// when complete, so that an interrupted start leaves nothing half made. Unless the
// flags say otherwise initdb syncs its files to the disk: a power cut after the
// first start must not find them empty.
func (p place) makeData(flags []string) error {
	if _, err := os.Stat(p.data); err == nil {
		return sameMajor(p.bin, p.data)
	}
	left, err := filepath.Glob(p.data + ".new*")
	if err != nil {
		return err
	}
	for _, folder := range left {
		os.RemoveAll(folder) // an initdb that is still ending may write there; a later start removes the rest
	}
	fresh, err := os.MkdirTemp(filepath.Dir(p.data), filepath.Base(p.data)+".new-")
	if err != nil {
		return err
	}
	if err := p.owner.own(fresh); err != nil {
		return err
	}
	initdb := exec.Command(filepath.Join(p.bin, "initdb"), append([]string{"-D", fresh, "-U", "ledger", "-A", "trust", "-E", "UTF8", "--locale=C"}, flags...)...)
	initdb.Dir = filepath.Dir(p.data)
	initdb.SysProcAttr = childOf(p.owner.credential, syscall.SIGKILL)
	var out strings.Builder
	initdb.Stdout, initdb.Stderr = &out, &out
	running, err := begin(initdb)
	if err != nil {
		return err
	}
	if <-running.exited; running.err != nil {
		return fmt.Errorf("initdb: %w: %s", running.err, lastLine(out.String()))
	}
	if err := os.Rename(fresh, p.data); err != nil {
		return err
	}
	return syncFolder(filepath.Dir(p.data))
}

// syncFolder makes the names in a folder survive a power cut.
func syncFolder(folder string) error {
	f, err := os.Open(folder)
	if err != nil {
		return err
	}
	defer f.Close()
	return f.Sync()
}

func lastLine(s string) string {
	lines := strings.Split(strings.TrimSpace(s), "\n")
	return lines[len(lines)-1]
}

// sameMajor refuses a data folder that another major version of Postgres created.
func sameMajor(bin, data string) error {
	made, err := os.ReadFile(filepath.Join(data, "PG_VERSION"))
	if err != nil {
		return err
	}
	out, err := exec.Command(filepath.Join(bin, "postgres"), "--version").Output()
	if err != nil {
		return err
	}
	want, got := strings.TrimSpace(string(made)), strings.Fields(string(out))
	if len(got) < 3 || strings.Split(got[2], ".")[0] != want {
		return fmt.Errorf("the data folder %s was created by Postgres %s, and this is %s", data, want, strings.TrimSpace(string(out)))
	}
	return nil
}

// binaries finds the folder of initdb and postgres. It looks in PG_BIN, in the
// folders of Debian and Homebrew, the newest version first, and in PATH.
func binaries() (string, error) {
	if named := os.Getenv("PG_BIN"); named != "" {
		if both(named) {
			return named, nil
		}
		return "", fmt.Errorf("PG_BIN is %q, which has no initdb or no postgres", named)
	}
	var found []string
	for _, pattern := range []string{"/usr/lib/postgresql/*/bin", "/opt/homebrew/opt/postgresql*/bin", "/usr/local/opt/postgresql*/bin"} {
		folders, _ := filepath.Glob(pattern)
		slices.SortFunc(folders, func(a, b string) int { return major(b) - major(a) })
		found = append(found, folders...)
	}
	if name, err := exec.LookPath("initdb"); err == nil {
		found = append(found, filepath.Dir(name))
	}
	for _, folder := range found {
		if both(folder) {
			return folder, nil
		}
	}
	return "", ErrMissing
}

func both(folder string) bool {
	_, err1 := os.Stat(filepath.Join(folder, "initdb"))
	_, err2 := os.Stat(filepath.Join(folder, "postgres"))
	return err1 == nil && err2 == nil
}

// major is the number in the path of a folder, 0 if there is none.
func major(folder string) int {
	n, _ := strconv.Atoi(strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' {
			return r
		}
		return -1
	}, folder))
	return n
}
