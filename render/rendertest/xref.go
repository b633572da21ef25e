package rendertest

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"
)

// readTables follows the cross-reference tables from the last one back through
// /Prev (ISO 32000-1, 7.5.4 to 7.5.6); the newest entry of an object counts.
func (f *PDF) readTables() error {
	mark := bytes.LastIndex(f.src, []byte("startxref"))
	if mark < 0 || !bytes.HasSuffix(bytes.TrimSpace(f.src), []byte("%%EOF")) {
		return fmt.Errorf("the file does not end with startxref and %%%%EOF")
	}
	fields := strings.Fields(string(f.src[mark:]))
	if len(fields) != 3 {
		return fmt.Errorf("something stands between startxref and the end")
	}
	at, err := strconv.Atoi(fields[1])
	seen := map[int]bool{}
	for err == nil {
		if at < 0 || at >= len(f.src) || seen[at] {
			return fmt.Errorf("a cross-reference table at byte %d cannot be", at)
		}
		seen[at] = true
		f.Sections++
		var trailer Dict
		if trailer, err = f.readTable(at); err != nil {
			return err
		}
		if f.Trailer == nil {
			f.Trailer = trailer
		}
		prev, ok := trailer["Prev"].(float64)
		if !ok {
			return f.checkSize()
		}
		at = int(prev)
	}
	return err
}

// readTable reads one table and returns its trailer.
func (f *PDF) readTable(at int) (Dict, error) {
	s := &scanner{src: f.src, pos: at, refs: true}
	if s.word() != "xref" {
		return nil, fmt.Errorf("no cross-reference table at byte %d", at)
	}
	for {
		s.skip()
		w := s.word()
		if w == "trailer" {
			break
		}
		s.skip()
		first, err1 := strconv.Atoi(w)
		count, err2 := strconv.Atoi(s.word())
		if err1 != nil || err2 != nil {
			return nil, fmt.Errorf("the cross-reference table at byte %d is broken", at)
		}
		s.skip()
		for i := range count {
			if s.pos+20 > len(f.src) {
				return nil, fmt.Errorf("the cross-reference table at byte %d does not end", at)
			}
			if err := f.readEntry(first+i, string(f.src[s.pos:s.pos+20])); err != nil {
				return nil, err
			}
			s.pos += 20
		}
	}
	v, err := s.value()
	trailer, ok := v.(Dict)
	if err != nil || !ok {
		return nil, fmt.Errorf("the trailer of the table at byte %d is broken: %v", at, err)
	}
	return trailer, nil
}

// readEntry reads the 20 bytes of one entry and looks whether its object stands
// there.
func (f *PDF) readEntry(number int, entry string) error {
	var offset, generation int
	var kind byte
	if _, err := fmt.Sscanf(entry, "%010d %05d %c", &offset, &generation, &kind); err != nil || strings.TrimRight(entry[18:], " \r\n") != "" {
		return fmt.Errorf("the cross-reference entry of object %d is broken: %q", number, entry)
	}
	if kind == 'f' {
		return nil
	}
	head := fmt.Sprintf("%d %d obj", number, generation)
	if s := (&scanner{src: f.src, pos: offset}); offset >= len(f.src) || !s.starts(head) {
		return fmt.Errorf("object %d does not stand at byte %d, where the cross-reference table says", number, offset)
	}
	if _, newer := f.offsets[number]; !newer {
		f.offsets[number] = offset
	}
	return nil
}

// checkSize looks whether /Size is one more than the highest object number.
func (f *PDF) checkSize() error {
	highest := 0
	for n := range f.offsets {
		highest = max(highest, n)
	}
	if size, _ := f.Trailer["Size"].(float64); int(size) != highest+1 {
		return fmt.Errorf("/Size is %v with %d as the highest object", f.Trailer["Size"], highest)
	}
	return nil
}
