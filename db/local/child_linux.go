package local

import "syscall"

// childOf gives a process its own group, so that Ctrl-C at the terminal reaches only
// us, and has it signalled when we die, however that happens.
func childOf(c *syscall.Credential, whenWeDie syscall.Signal) *syscall.SysProcAttr {
	return &syscall.SysProcAttr{Setpgid: true, Credential: c, Pdeathsig: whenWeDie}
}
