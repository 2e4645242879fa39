//go:build !linux

package local

import "syscall"

// childOf gives the server a process group of its own, so that a Ctrl-C at the
// terminal reaches only us.
func childOf(c *syscall.Credential) *syscall.SysProcAttr {
	return &syscall.SysProcAttr{Setpgid: true, Credential: c}
}
