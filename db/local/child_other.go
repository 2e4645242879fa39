//go:build !linux

package local

import "syscall"

// childOf gives a process its own group, so that Ctrl-C at the terminal reaches only
// us. Only Linux can signal it when we die.
func childOf(c *syscall.Credential, _ syscall.Signal) *syscall.SysProcAttr {
	return &syscall.SysProcAttr{Setpgid: true, Credential: c}
}
