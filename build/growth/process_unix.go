//go:build unix

package main

import (
	"os"
	"runtime"
	"syscall"
)

// peakOf is the most memory a process held, as the system counts it (wait4).
func peakOf(state *os.ProcessState) int64 {
	usage, ok := state.SysUsage().(*syscall.Rusage)
	if !ok {
		return 0
	}
	if runtime.GOOS == "darwin" {
		return usage.Maxrss // bytes there, kilobytes elsewhere
	}
	return usage.Maxrss * 1024
}
