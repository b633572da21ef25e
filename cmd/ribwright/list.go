package main

import (
	"bufio"
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
)

// listName is the file in a folder that says which of its files the program made.
const listName = "ribwright.txt"

// list is what a folder's list says.
type list struct {
	read  bool   // there is one
	whole bool   // all of its files were written
	key   string // of what the files were made from
	made  []made
}

// made is a file that the program made, with the SHA-256 sum of its bytes.
type made struct{ sum, name string }

func (l list) names() []string {
	var out []string
	for _, m := range l.made {
		out = append(out, m.name)
	}
	return out
}

// The lines of a list besides its files.
const (
	listHead  = "# Files here that ribwright made, with their SHA-256 sums. It replaces or removes\n# these alone, and only while they are as it made them. Keep this list with them.\n"
	keyMark   = "# made from "
	wholeMark = "# complete"
)

// write writes the list as programs that check sums read one.
func (l list) write(w io.Writer) error {
	var b bytes.Buffer
	b.WriteString(listHead)
	if l.key != "" {
		b.WriteString(keyMark + l.key + "\n")
	}
	if l.whole {
		b.WriteString(wholeMark + "\n")
	}
	for _, m := range l.made {
		fmt.Fprintf(&b, "%s  %s\n", m.sum, m.name)
	}
	_, err := w.Write(b.Bytes())
	return err
}

// readList reads a list; false where there is none, or a file that is something else.
func readList(path string) (l list, ok bool) {
	if info, err := os.Lstat(path); err != nil || !info.Mode().IsRegular() {
		return list{}, false
	}
	data, err := readFile(path)
	rest, ours := strings.CutPrefix(string(data), listHead)
	if err != nil || !ours {
		return list{}, false
	}
	lines := bufio.NewScanner(strings.NewReader(rest))
	for lines.Scan() {
		line := lines.Text()
		if key, ok := strings.CutPrefix(line, keyMark); ok {
			l.key = key
			continue
		}
		if line == wholeMark {
			l.whole = true
			continue
		}
		sum, name, ok := strings.Cut(line, "  ")
		if !ok || filepath.Base(name) != name || !filepath.IsLocal(name) { // nothing outside the folder is ever taken for ours
			return list{}, false
		}
		l.made = append(l.made, made{sum, name})
	}
	l.read = lines.Err() == nil
	return l, l.read
}

func sum(data []byte) string {
	s := sha256.Sum256(data)
	return hex.EncodeToString(s[:])
}

func sumOfFile(path string) (string, error) {
	file, err := os.Open(path)
	if err != nil {
		return "", err
	}
	defer file.Close()
	s := sha256.New()
	if _, err := io.Copy(s, file); err != nil {
		return "", err
	}
	return hex.EncodeToString(s.Sum(nil)), nil
}
