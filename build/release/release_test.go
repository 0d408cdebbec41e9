package main

import (
	"archive/tar"
	"archive/zip"
	"bytes"
	"compress/gzip"
	"context"
	"encoding/binary"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

var (
	invented = []file{{"README.md", []byte("# Invented\n"), false}, {"capspan", bytes.Repeat([]byte("invented program "), 5000), true},
		{"LICENCES.txt", []byte("none, it is invented\n"), false}}
	day = time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)
)

// Equal files are equal bytes, in whatever order and time zone they come, and are read back
// by the archive's own rules: by name, with the date, with nobody's name.
func TestPack(t *testing.T) {
	for _, target := range []target{{"linux", "amd64"}, {"windows", "arm64"}} {
		first, suffix, err := pack(target, "capspan-1.2.3", invented, day)
		if err != nil {
			t.Fatal(err)
		}
		turned := []file{invented[2], invented[1], invented[0]}
		second, _, err := pack(target, "capspan-1.2.3", turned, day.In(time.FixedZone("elsewhere", 5*3600)))
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(first, second) {
			t.Errorf("%s: the same files made two archives", target)
		}
		later, _, err := pack(target, "capspan-1.2.3", invented, day.Add(24*time.Hour))
		if err != nil || bytes.Equal(first, later) {
			t.Errorf("%s: the date is not in the archive; %v", target, err)
		}
		back, err := unpack(target, first)
		if err != nil || len(back) != len(invented) {
			t.Fatalf("%s: %d files came back; %v", target, len(back), err)
		}
		if suffix == ".zip" {
			checkZip(t, first)
		} else {
			checkTar(t, first)
		}
	}
}

func checkTar(t *testing.T, packed []byte) {
	t.Helper()
	plain, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		t.Fatal(err)
	}
	if !plain.ModTime.IsZero() || plain.Name != "" {
		t.Errorf("the head of gzip tells %s and %q", plain.ModTime, plain.Name)
	}
	var got []string
	for r := tar.NewReader(plain); ; {
		head, err := r.Next()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		got = append(got, head.Name+" "+head.FileInfo().Mode().String())
		if !head.ModTime.Equal(day) || head.Uid != 0 || head.Gid != 0 || head.Uname+head.Gname != "" {
			t.Errorf("%s tells of its maker: %+v", head.Name, head)
		}
	}
	want := "capspan-1.2.3/LICENCES.txt -rw-r--r--, capspan-1.2.3/README.md -rw-r--r--, capspan-1.2.3/capspan -rwxr-xr-x"
	if strings.Join(got, ", ") != want {
		t.Errorf("got %s\nwant %s", strings.Join(got, ", "), want)
	}
}

func checkZip(t *testing.T, packed []byte) {
	t.Helper()
	r, err := zip.NewReader(bytes.NewReader(packed), int64(len(packed)))
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, entry := range r.File {
		got = append(got, entry.Name+" "+entry.Mode().String())
		if !entry.Modified.Equal(day) {
			t.Errorf("%s is dated %s", entry.Name, entry.Modified)
		}
	}
	want := "capspan-1.2.3/LICENCES.txt -rw-r--r--, capspan-1.2.3/README.md -rw-r--r--, capspan-1.2.3/capspan -rwxr-xr-x"
	if strings.Join(got, ", ") != want {
		t.Errorf("got %s\nwant %s", strings.Join(got, ", "), want)
	}
}

// heads are the first bytes of programs with nothing in them, by the published forms: ELF
// (System V gABI), Mach-O (its loader.h), PE (Microsoft's PE format).
func heads() map[target][]byte {
	elf := func(machine uint16) []byte {
		b := make([]byte, 64)
		copy(b, "\x7fELF\x02\x01\x01")
		binary.LittleEndian.PutUint16(b[16:], 2) // executable
		binary.LittleEndian.PutUint16(b[18:], machine)
		binary.LittleEndian.PutUint32(b[20:], 1)
		binary.LittleEndian.PutUint16(b[52:], 64)
		return b
	}
	macho := func(cpu uint32) []byte {
		b := make([]byte, 32)
		binary.LittleEndian.PutUint32(b, 0xfeedfacf)
		binary.LittleEndian.PutUint32(b[4:], cpu)
		binary.LittleEndian.PutUint32(b[12:], 2)
		return b
	}
	pe := func(machine uint16) []byte {
		b := make([]byte, 64+4+20)
		copy(b, "MZ")
		binary.LittleEndian.PutUint32(b[60:], 64)
		copy(b[64:], "PE\x00\x00")
		binary.LittleEndian.PutUint16(b[68:], machine)
		return append(b, make([]byte, 64)...)
	}
	return map[target][]byte{
		{"linux", "amd64"}: elf(62), {"linux", "arm64"}: elf(183),
		{"darwin", "amd64"}: macho(0x01000007), {"darwin", "arm64"}: macho(0x0100000c),
		{"windows", "amd64"}: pe(0x8664), {"windows", "arm64"}: pe(0xaa64),
	}
}

// A program is taken for its own target and for no other.
func TestCheckHeader(t *testing.T) {
	for of, program := range heads() {
		for asked := range heads() {
			if err := checkHeader(program, asked); (err == nil) != (of == asked) {
				t.Errorf("a program for %s, taken for %s: %v", of, asked, err)
			}
		}
	}
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	program, err := os.ReadFile(self)
	if err != nil {
		t.Fatal(err)
	}
	if err := checkHeader(program, here()); err != nil {
		t.Errorf("this very program: %v", err)
	}
}

// An archive whose program does not do what a release must is not passed.
func TestTryRefuses(t *testing.T) {
	if here().system == "windows" {
		t.Fatal("the invented programs are shell scripts")
	}
	for _, c := range []struct{ script, want string }{
		{"#!/bin/sh\necho capspan 0, chart none\n", "--version says"},
		{"#!/bin/sh\n[ \"$1\" = check ] && exit 1\necho capspan 1, chart x\n", "check: exit status 1"},
		{"#!/bin/sh\necho capspan 1, chart x\n", "without the identify page"},
	} {
		dir := t.TempDir()
		packed, suffix, err := pack(here(), "invented", []file{{"capspan", []byte(c.script), true}}, day)
		if err != nil {
			t.Fatal(err)
		}
		archive := filepath.Join(dir, "invented"+suffix)
		if err := os.WriteFile(archive, packed, 0o644); err != nil {
			t.Fatal(err)
		}
		if _, err := try(context.Background(), here(), archive, "invented", "capspan 1, chart x\n"); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: got %v, want %q", c.script, err, c.want)
		}
	}
}

// Whatever is compiled in has its licence in the text, and each comes once.
func TestLicences(t *testing.T) {
	r := &release{root: "../.."}
	text, err := r.licences(context.Background(), target{"linux", "amd64"})
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"SPDX: MIT", "SPDX: CC0-1.0", "github.com/evanw/esbuild v", "golang.org/x/net v", "The Go standard library, go1",
		", ftoa/internal/fast/LICENSE_V8\n", ", internal/xxhash/LICENSE.txt\n", "Redistribution and use in source and binary forms"} {
		if !strings.Contains(string(text), want) {
			t.Errorf("the licences lack %q", want)
		}
	}
	if n := strings.Count(string(text), ", internal/xxhash/LICENSE.txt\n"); n != 1 {
		t.Errorf("one licence stands there %d times", n)
	}
	if strings.Contains(string(text), "gonum") {
		t.Error("what only tests need is named")
	}
}

func TestParse(t *testing.T) {
	r, err := parse([]string{"-version", "1.2.3", "-targets", "linux/arm64,darwin/arm64", "-paper", "letter,a4"}, io.Discard)
	if err != nil {
		t.Fatal(err)
	}
	if len(r.targets) != 2 || strings.Join(r.papers, " ") != "a4 letter" {
		t.Errorf("got %v and %v", r.targets, r.papers)
	}
	for want, args := range map[string][]string{
		"is none of linux":     {"-targets", "plan9/amd64"},
		"is none of a4":        {"-paper", "a3"},
		"asks for anything":    {"-targets", "none", "-paper", "none"},
		`"now" is not a flag`:  {"now"},
		"letters, digits":      {"-version", "../1"},
		"flag provided but no": {"-fast"},
	} {
		if _, err := parse(args, io.Discard); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v: got %v, want %q", args, err, want)
		}
	}
}

// Nothing is written over what somebody has there.
func TestEmptyFolder(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "new", "one")
	for range 2 {
		if err := emptyFolder(dir); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.WriteFile(filepath.Join(dir, "mine"), nil, 0o644); err != nil {
		t.Fatal(err)
	}
	if err := emptyFolder(dir); err == nil || !strings.Contains(err.Error(), "is not empty") {
		t.Errorf("got %v", err)
	}
}
