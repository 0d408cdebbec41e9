package main

import (
	"archive/tar"
	"archive/zip"
	"bytes"
	"compress/flate"
	"compress/gzip"
	"errors"
	"io"
	"io/fs"
	"slices"
	"strings"
	"time"
)

// file is one file of an archive.
type file struct {
	name    string
	content []byte
	runs    bool // it is a program
}

// mode is who may do what: everybody reads, the owner writes, programs run.
func (f file) mode() fs.FileMode {
	if f.runs {
		return 0o755
	}
	return 0o644
}

// pack puts the files into one folder of an archive of the kind that the system opens by
// itself, and returns how such a file ends. Files come by name, all have the date and no
// owner, so equal files are equal bytes.
func pack(t target, folder string, files []file, date time.Time) ([]byte, string, error) {
	files = slices.Clone(files)
	slices.SortFunc(files, func(a, b file) int { return strings.Compare(a.name, b.name) })
	if t.system == "windows" {
		packed, err := packZip(folder, files, date)
		return packed, ".zip", err
	}
	packed, err := packTar(folder, files, date)
	return packed, ".tar.gz", err
}

// packTar writes USTAR (POSIX.1-1988) in gzip, whose own head has no name and no time.
func packTar(folder string, files []file, date time.Time) ([]byte, error) {
	var out bytes.Buffer
	zipped, err := gzip.NewWriterLevel(&out, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	w := tar.NewWriter(zipped)
	for _, f := range files {
		err := w.WriteHeader(&tar.Header{Typeflag: tar.TypeReg, Name: folder + "/" + f.name, Size: int64(len(f.content)), Mode: int64(f.mode()),
			ModTime: date.Truncate(time.Second), Format: tar.FormatUSTAR})
		if err != nil {
			return nil, err
		}
		if _, err := w.Write(f.content); err != nil {
			return nil, err
		}
	}
	if err := errors.Join(w.Close(), zipped.Close()); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// packZip writes zip files' plain form: no extra fields beside the time.
func packZip(folder string, files []file, date time.Time) ([]byte, error) {
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	w.RegisterCompressor(zip.Deflate, func(to io.Writer) (io.WriteCloser, error) { return flate.NewWriter(to, flate.BestCompression) })
	for _, f := range files {
		head := &zip.FileHeader{Name: folder + "/" + f.name, Method: zip.Deflate, Modified: date.UTC()}
		head.SetMode(f.mode())
		entry, err := w.CreateHeader(head)
		if err != nil {
			return nil, err
		}
		if _, err := entry.Write(f.content); err != nil {
			return nil, err
		}
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// unpack reads an archive back, as whoever gets it will.
func unpack(t target, packed []byte) ([]file, error) {
	if t.system == "windows" {
		return unpackZip(packed)
	}
	plain, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		return nil, err
	}
	var files []file
	for r := tar.NewReader(plain); ; {
		head, err := r.Next()
		if errors.Is(err, io.EOF) {
			return files, nil
		}
		if err != nil {
			return nil, err
		}
		content, err := io.ReadAll(r)
		if err != nil {
			return nil, err
		}
		files = append(files, file{head.Name, content, head.Mode&0o100 != 0})
	}
}

func unpackZip(packed []byte) ([]file, error) {
	r, err := zip.NewReader(bytes.NewReader(packed), int64(len(packed)))
	if err != nil {
		return nil, err
	}
	var files []file
	for _, entry := range r.File {
		opened, err := entry.Open()
		if err != nil {
			return nil, err
		}
		content, err := io.ReadAll(opened)
		if err := errors.Join(err, opened.Close()); err != nil {
			return nil, err
		}
		files = append(files, file{entry.Name, content, entry.Mode()&0o100 != 0})
	}
	return files, nil
}
