package rendertest

import (
	"fmt"
	"unicode/utf16"
)

// Bookmark is an entry of a document's outline.
type Bookmark struct {
	Title string
	Page  int // from 1
	Level int // 0 at the top
}

// Bookmarks returns the outline in the order of reading; none when there is none.
func (f *PDF) Bookmarks() ([]Bookmark, error) {
	root, err := f.Catalogue()
	if err != nil {
		return nil, err
	}
	pages := map[int]int{}
	if err := f.number(root["Pages"], pages); err != nil {
		return nil, err
	}
	var out []Bookmark
	outline, _ := f.resolve(root["Outlines"]).(Dict)
	return out, f.bookmarks(outline["First"], 0, pages, &out)
}

// number counts the page objects in order.
func (f *PDF) number(v any, pages map[int]int) error {
	ref, _ := v.(Ref)
	node, ok := f.resolve(v).(Dict)
	if !ok {
		return fmt.Errorf("the page tree points at nothing")
	}
	if node["Type"] != Name("Pages") {
		pages[ref.Number] = len(pages) + 1
		return nil
	}
	kids, _ := f.resolve(node["Kids"]).([]any)
	for _, k := range kids {
		if err := f.number(k, pages); err != nil {
			return err
		}
	}
	return nil
}

func (f *PDF) bookmarks(v any, level int, pages map[int]int, out *[]Bookmark) error {
	for v != nil {
		node, ok := f.resolve(v).(Dict)
		if !ok {
			return fmt.Errorf("a bookmark points at nothing")
		}
		title := PlainText(node["Title"])
		dest, _ := f.resolve(node["Dest"]).([]any)
		if len(dest) == 0 {
			return fmt.Errorf("bookmark %q leads nowhere", title)
		}
		page, ok := dest[0].(Ref)
		if !ok || pages[page.Number] == 0 {
			return fmt.Errorf("bookmark %q leads to no page", title)
		}
		*out = append(*out, Bookmark{title, pages[page.Number], level})
		if err := f.bookmarks(node["First"], level+1, pages, out); err != nil {
			return err
		}
		v = node["Next"]
	}
	return nil
}

// PlainText reads a text string: UTF-16 behind its mark, or as it stands; "" for any other
// value.
//
// Source: ISO 32000-1, 7.9.2.2.
func PlainText(v any) string {
	s, _ := v.(string)
	if len(s) < 2 || s[:2] != "\xfe\xff" {
		return s
	}
	var units []uint16
	for i := 2; i+1 < len(s); i += 2 {
		units = append(units, uint16(s[i])<<8|uint16(s[i+1]))
	}
	return string(utf16.Decode(units))
}

// PageLabels returns what the catalogue calls each page that has a label of its
// own, by the page's number from 1.
func (f *PDF) PageLabels() (map[int]string, error) {
	root, err := f.Catalogue()
	if err != nil {
		return nil, err
	}
	labels, _ := f.resolve(root["PageLabels"]).(Dict)
	nums, _ := f.resolve(labels["Nums"]).([]any)
	out := map[int]string{}
	for i := 0; i+1 < len(nums); i += 2 {
		at, isNumber := nums[i].(float64)
		entry, isDict := f.resolve(nums[i+1]).(Dict)
		if !isNumber || !isDict {
			return nil, fmt.Errorf("page label %d is not a number with its words", i/2+1)
		}
		out[int(at)+1] = PlainText(entry["P"])
	}
	return out, nil
}
