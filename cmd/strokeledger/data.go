package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"syscall"
)

// ownData is the data folder of the user who runs the program.
func ownData() (string, error) {
	if os.Geteuid() == 0 {
		return "/var/lib/strokeledger", nil
	}
	if named := os.Getenv("XDG_DATA_HOME"); named != "" {
		return filepath.Join(named, "strokeledger"), nil
	}
	home, err := os.UserHomeDir()
	if err != nil {
		return "", errors.New("there is no home folder; name a data folder with --data")
	}
	return filepath.Join(home, ".local", "share", "strokeledger"), nil
}

// addressFile is the file with the address of the app that runs on a data folder.
func addressFile(data string) string { return filepath.Join(data, "address") }

// lockData locks a data folder for this process. If another process has locked it,
// running is the address of that one.
func lockData(data string) (locked *os.File, running string, err error) {
	if err := os.MkdirAll(data, 0o711); err != nil {
		return nil, "", err
	}
	locked, err = os.OpenFile(filepath.Join(data, "lock"), os.O_CREATE|os.O_RDWR, 0o600)
	if err != nil {
		return nil, "", err
	}
	if err := syscall.Flock(int(locked.Fd()), syscall.LOCK_EX|syscall.LOCK_NB); err != nil {
		locked.Close()
		address, _ := os.ReadFile(addressFile(data))
		if len(address) == 0 {
			return nil, "", fmt.Errorf("the data folder %s is in use by another process that is starting or stopping", data)
		}
		return nil, string(address), nil
	}
	return locked, "", nil
}
