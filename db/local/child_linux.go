package local

import "syscall"

// childOf gives a process a group of its own, so that a Ctrl-C at the terminal
// reaches only us, and sends it a signal when we die however we die.
func childOf(c *syscall.Credential, whenWeDie syscall.Signal) *syscall.SysProcAttr {
	return &syscall.SysProcAttr{Setpgid: true, Credential: c, Pdeathsig: whenWeDie}
}
