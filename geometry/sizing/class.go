package sizing

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"ribwright/geometry/body"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/sizing/formula"
)

// Builder is one row of a class.
type Builder struct {
	Line  int // of the file, 1 the first
	Name  string
	Use   string // the family
	Brief Brief
	Fault string // why the row cannot be used, "" when it can
}

// The bounds of a class.
const (
	maxClassFile = 16 << 20 // bytes
	maxBuilders  = 20000
)

// ReadClass reads a table of builders, one row each, under a header of column
// names: name, use, weight, stature, span, sex, posture, gear, waters,
// skill, longest_stick, wood, rib_wood, and the same with partner_ in front for who paddles in
// the bow. Cells carry their unit, or the column's name does: weight_kg,
// stature_cm. Commas, semicolons or tabs part the cells; decimal commas are read
// where cells are not parted by commas, or stand in quotes. defaults fill what
// is left out.
//
// A row that cannot be used is returned with its Fault. Errors: a file that is no
// such table.
func ReadClass(r io.Reader, defaults Brief, use string) ([]Builder, error) {
	data, err := io.ReadAll(io.LimitReader(r, maxClassFile+1))
	if err != nil {
		return nil, err
	}
	data = bytes.TrimPrefix(data, []byte("\uFEFF"))
	switch {
	case len(data) > maxClassFile:
		return nil, errors.New("is larger than 16 MB, so it is no class")
	case bytes.IndexByte(data, 0) >= 0 || !utf8.Valid(data):
		return nil, errors.New("is no UTF-8 text; save the table as CSV in UTF-8")
	case len(bytes.TrimSpace(data)) == 0:
		return nil, errors.New("is empty; the first row names the columns, as name,weight,stature")
	}
	c := csv.NewReader(bytes.NewReader(data))
	c.Comma, c.FieldsPerRecord, c.Comment = separator(data), -1, '#'
	c.TrimLeadingSpace = true
	header, err := c.Read()
	if err != nil {
		return nil, csvWords(err)
	}
	cols, err := columns(header)
	if err != nil {
		return nil, err
	}
	var out []Builder
	for {
		row, err := c.Read()
		if err == io.EOF {
			break
		}
		if err != nil {
			line := 0
			var bad *csv.ParseError
			if errors.As(err, &bad) {
				line = bad.StartLine
			}
			out = append(out, Builder{Line: line, Fault: csvWords(err).Error()})
		} else {
			line, _ := c.FieldPos(0)
			if b := (rowReader{cols, row, defaults, use}).builder(line); b != nil {
				out = append(out, *b)
			}
		}
		if len(out) > maxBuilders {
			return nil, fmt.Errorf("has more than %d rows; split it", maxBuilders)
		}
	}
	if len(out) == 0 {
		return nil, errors.New("has a header and no rows")
	}
	return out, nil
}

// csvWords puts the library's words into a builder's.
func csvWords(err error) error {
	switch {
	case errors.Is(err, csv.ErrQuote), errors.Is(err, csv.ErrBareQuote):
		return errors.New(`a quote stands where none should; double it inside a quoted cell, as "5' 6"""`)
	}
	return err
}

// separator finds what stands between the cells: what the header has most of.
func separator(data []byte) rune {
	first, _, _ := bytes.Cut(data, []byte("\n"))
	best, most := ',', 0
	for _, sep := range []rune{',', ';', '\t'} {
		if n := bytes.Count(first, []byte(string(sep))); n > most {
			best, most = sep, n
		}
	}
	return best
}

// column is one column of a class.
type column struct {
	name string // without its unit
	unit string // "" when the cells carry it
}

// columnNames lists the columns that are read.
func columnNames() []string {
	one := []string{"weight", "stature", "span", "sex", "posture"}
	out := []string{"name", "use", "gear", "waters", "skill", "longest_stick", "wood", "rib_wood"}
	out = append(out, one...)
	for _, n := range one {
		out = append(out, "partner_"+n)
	}
	return out
}

// columns reads the header.
func columns(header []string) ([]column, error) {
	var out []column
	for _, h := range header {
		name := strings.ReplaceAll(strings.ToLower(strings.TrimSpace(h)), " ", "_")
		c := column{name: name}
		for _, u := range []string{"kg", "lb", "mm", "cm", "m", "in", "ft"} {
			if rest, ok := strings.CutSuffix(name, "_"+u); ok && slices.Contains(columnNames(), rest) {
				c = column{rest, u}
			}
		}
		if c.name != "" && !slices.Contains(columnNames(), c.name) {
			return nil, fmt.Errorf("has a column %q; accepted: %s, with a unit behind where the cells have none, as weight_kg", h, strings.Join(columnNames(), ", "))
		}
		if c.name != "" && slices.ContainsFunc(out, func(o column) bool { return o.name == c.name }) {
			return nil, fmt.Errorf("has two columns %q; keep one", c.name)
		}
		out = append(out, c)
	}
	for _, need := range []string{"name", "weight", "stature"} {
		if !slices.ContainsFunc(out, func(c column) bool { return c.name == need }) {
			return nil, fmt.Errorf("has no column %q; the first row names the columns, as name,weight_kg,stature_cm", need)
		}
	}
	return out, nil
}

// rowReader reads one row.
type rowReader struct {
	cols     []column
	row      []string
	defaults Brief
	use      string
}

// cell returns a cell's text without white space around, with the column's unit
// behind a bare number.
func (r rowReader) cell(name string) string {
	for i, c := range r.cols {
		if c.name != name || i >= len(r.row) {
			continue
		}
		text := strings.TrimSpace(r.row[i])
		if text != "" && c.unit != "" && strings.Trim(text, "0123456789.,-+") == "" {
			text += " " + c.unit
		}
		return text
	}
	return ""
}

// builder reads the row; nil when it is empty.
func (r rowReader) builder(line int) *Builder {
	if strings.TrimSpace(strings.Join(r.row, "")) == "" {
		return nil
	}
	b := &Builder{Line: line, Name: r.cell("name"), Use: r.use, Brief: r.defaults}
	if err := r.fill(b); err != nil {
		b.Fault = err.Error()
	}
	return b
}

func (r rowReader) fill(b *Builder) error {
	if len(r.row) > len(r.cols) {
		return fmt.Errorf("has %d cells under %d columns; put cells with commas in quotes", len(r.row), len(r.cols))
	}
	if b.Name == "" {
		return errors.New("has no name")
	}
	if use := strings.ToLower(r.cell("use")); use != "" {
		b.Use = use
	}
	b.Brief.Title = b.Name
	for _, v := range []struct {
		column string
		into   *string
	}{{"waters", &b.Brief.Waters}, {"skill", &b.Brief.Skill}, {"wood", &b.Brief.Wood}, {"rib_wood", &b.Brief.RibWood}} {
		if s := strings.ToLower(r.cell(v.column)); s != "" {
			*v.into = s
		}
	}
	if err := r.number("gear", formula.Mass, &b.Brief.Gear); err != nil {
		return err
	}
	if err := r.number("longest_stick", formula.Length, &b.Brief.LongestStick); err != nil {
		return err
	}
	p, err := r.paddler("")
	if err != nil {
		return err
	}
	b.Brief.Crew = []Paddler{p}
	if r.cell("partner_weight") != "" || r.cell("partner_stature") != "" {
		p, err := r.paddler("partner_")
		if err != nil {
			return fmt.Errorf("partner: %w", err)
		}
		b.Brief.Crew = append(b.Brief.Crew, p)
	}
	return nil
}

// number reads a cell with its unit; an empty one leaves the value as it is.
func (r rowReader) number(name string, d formula.Dim, into *float64) error {
	text := r.cell(name)
	if text == "" {
		return nil
	}
	if whole, part, ok := strings.Cut(text, ","); ok && !strings.Contains(text, ".") && part != "" {
		text = whole + "." + part
	}
	v, got, err := formula.Quantity(text)
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	if got != d {
		return fmt.Errorf("%s: %q is %s; accepted: %s, with its unit in the cell or in the column's name", name, text, got, d)
	}
	*into = v
	return nil
}

func (r rowReader) paddler(who string) (Paddler, error) {
	p := Paddler{Posture: family.Either}
	if who == "" {
		p.Name = r.cell("name")
	}
	for _, v := range []struct {
		column string
		dim    formula.Dim
		into   *float64
	}{{"weight", formula.Mass, &p.Weight}, {"stature", formula.Length, &p.Stature}, {"span", formula.Length, &p.Span}} {
		if err := r.number(who+v.column, v.dim, v.into); err != nil {
			return p, err
		}
	}
	if s := strings.ToLower(r.cell(who + "posture")); s != "" {
		p.Posture = s
	}
	switch s := strings.ToLower(r.cell(who + "sex")); s {
	case "":
	case "woman", "female", "f":
		p.Sex = body.Woman
	case "man", "male", "m":
		p.Sex = body.Man
	default:
		return p, fmt.Errorf("sex: %q; accepted: woman, man, or nothing", s)
	}
	return p, p.Check()
}
