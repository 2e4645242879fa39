//go:build !linux

package local

import "syscall"

// childOf gives a process a group of its own, so that a Ctrl-C at the terminal
// reaches only us. The signal for our own death is known to Linux alone.
func childOf(c *syscall.Credential, _ syscall.Signal) *syscall.SysProcAttr {
	return &syscall.SysProcAttr{Setpgid: true, Credential: c}
}
