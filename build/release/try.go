package main

import (
	"bytes"
	"context"
	"debug/elf"
	"debug/macho"
	"debug/pe"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
)

// checkHeader reads the head of a program and sees that it is one for the target.
func checkHeader(program []byte, t target) error {
	r := bytes.NewReader(program)
	var found string
	switch t.system {
	case "linux":
		f, err := elf.NewFile(r)
		if err != nil {
			return err
		}
		found = map[elf.Machine]string{elf.EM_X86_64: "amd64", elf.EM_AARCH64: "arm64"}[f.Machine]
	case "darwin":
		f, err := macho.NewFile(r)
		if err != nil {
			return err
		}
		found = map[macho.Cpu]string{macho.CpuAmd64: "amd64", macho.CpuArm64: "arm64"}[f.Cpu]
	case "windows":
		f, err := pe.NewFile(r)
		if err != nil {
			return err
		}
		found = map[uint16]string{pe.IMAGE_FILE_MACHINE_AMD64: "amd64", pe.IMAGE_FILE_MACHINE_ARM64: "arm64"}[f.Machine]
	}
	if found != t.machine {
		return fmt.Errorf("the program's head is for %q", found)
	}
	return nil
}

// starter is what starts a program of the target here: nothing on its own system, an
// emulator when one is installed. Without either, ok is false.
func starter(t target) (command []string, ok bool) {
	if t == here() {
		return nil, true
	}
	var names []string
	switch {
	case t.system == "linux" && here().system == "linux":
		cpu := map[string]string{"amd64": "x86_64", "arm64": "aarch64"}[t.machine]
		names = []string{"qemu-" + cpu, "qemu-" + cpu + "-static"}
	case t == target{"windows", "amd64"}:
		names = []string{"wine64", "wine"}
	}
	for _, name := range names {
		if path, err := exec.LookPath(name); err == nil {
			return []string{path}, true
		}
	}
	return nil, false
}

// try unpacks the archive into an empty folder and starts the program there, far from any
// source: it must say its version, check the chart in it and make the site of it. The answer
// says what was done.
func try(ctx context.Context, t target, archive, folder, version string) (string, error) {
	packed, err := os.ReadFile(archive)
	if err != nil {
		return "", err
	}
	files, err := unpack(t, packed)
	if err != nil {
		return "", err
	}
	command, ok := starter(t)
	if !ok {
		return "not started here; its head is right", nil
	}
	dir, err := os.MkdirTemp("", "capspan-try-")
	if err != nil {
		return "", err
	}
	defer os.RemoveAll(dir)
	root, err := os.OpenRoot(dir)
	if err != nil {
		return "", err
	}
	defer root.Close()
	if err := root.Mkdir(folder, 0o755); err != nil {
		return "", err
	}
	for _, f := range files {
		if err := root.WriteFile(f.name, f.content, f.mode()); err != nil {
			return "", err
		}
	}
	run := func(args ...string) (string, error) {
		line := append(append(command[:len(command):len(command)], filepath.Join(dir, folder, t.program())), args...)
		said, err := output(ctx, dir, nil, line[0], line[1:]...)
		return string(said), err
	}
	if said, err := run("--version"); err != nil || said != version {
		return "", fmt.Errorf("--version says %q, want %q; %v", said, version, err)
	}
	if _, err := run("check"); err != nil {
		return "", err
	}
	if _, err := run("build", "--out", "site"); err != nil {
		return "", err
	}
	if _, err := root.Stat("site/identify/index.html"); err != nil {
		return "", fmt.Errorf("it built a site without the identify page: %w", err)
	}
	if len(command) > 0 {
		return "started under " + filepath.Base(command[0]) + ": version, check, build", nil
	}
	return "started: version, check, build", nil
}
