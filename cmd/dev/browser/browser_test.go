package browser

import (
	"os"
	"path/filepath"
	"testing"
)

func TestAScriptThatStartsASnapIsNoBrowserWithoutTheSnap(t *testing.T) {
	folder := t.TempDir()
	snap := filepath.Join(folder, "snap")
	write := func(name, text string) string {
		path := filepath.Join(folder, name)
		if err := os.WriteFile(path, []byte(text), 0o755); err != nil {
			t.Fatal(err)
		}
		return path
	}
	wrapper := write("chromium-browser", "#!/bin/sh\nexec "+snap+" \"$@\"\n")
	script, program := write("script", "#!/bin/sh\nexec /usr/lib/chromium/chromium\n"), write("program", "\x7fELF")
	if !hollow(wrapper, snap) || hollow(script, snap) || hollow(program, snap) {
		t.Error("without the snap")
	}
	write("snap", "")
	if hollow(wrapper, snap) {
		t.Error("with the snap")
	}
}
