package sizing

import (
	"bytes"
	"cmp"
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
	Gear  bool   // the row says how much gear is carried
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
	for len(out) <= maxBuilders {
		row, err := c.Read()
		switch {
		case err == io.EOF && len(out) == 0:
			return nil, errors.New("has a header and no rows")
		case err == io.EOF:
			return out, nil
		case err != nil:
			b := Builder{Fault: csvWords(err).Error()}
			if bad := (*csv.ParseError)(nil); errors.As(err, &bad) {
				b.Line = bad.StartLine
			}
			out = append(out, b)
		case strings.TrimSpace(strings.Join(row, "")) != "":
			line, _ := c.FieldPos(0)
			cells := cellsOf(cols, row)
			b := Builder{Line: line, Name: cells["name"], Use: use, Brief: defaults}
			if len(row) > len(cols) {
				err = fmt.Errorf("has %d cells under %d columns; put cells with commas in quotes", len(row), len(cols))
			} else {
				err = cells.fill(&b)
			}
			if err != nil {
				b.Fault = err.Error()
			}
			out = append(out, b)
		}
	}
	return nil, fmt.Errorf("has more than %d rows; split it", maxBuilders)
}

// csvWords puts the library's words into a builder's.
func csvWords(err error) error {
	if errors.Is(err, csv.ErrQuote) || errors.Is(err, csv.ErrBareQuote) {
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
	return []string{"name", "use", "gear", "waters", "skill", "longest_stick", "wood", "rib_wood", "weight", "stature", "span", "sex", "posture",
		"partner_weight", "partner_stature", "partner_span", "partner_sex", "partner_posture"}
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

// cells are the texts of a row by column, without white space around, with the
// column's unit behind a bare number.
type cells map[string]string

func cellsOf(cols []column, row []string) cells {
	out := cells{}
	for i, c := range cols[:min(len(cols), len(row))] {
		text := strings.TrimSpace(row[i])
		if text != "" && c.unit != "" && strings.Trim(text, "0123456789.,-+") == "" {
			text += " " + c.unit
		}
		out[c.name] = text
	}
	return out
}

func (r cells) lower(name string) string { return strings.ToLower(r[name]) }

func (r cells) fill(b *Builder) error {
	if b.Name == "" {
		return errors.New("has no name")
	}
	b.Use = cmp.Or(r.lower("use"), b.Use)
	b.Brief.Title = b.Name
	for _, v := range []struct {
		column string
		into   *string
	}{{"waters", &b.Brief.Waters}, {"skill", &b.Brief.Skill}, {"wood", &b.Brief.Wood}, {"rib_wood", &b.Brief.RibWood}} {
		*v.into = cmp.Or(r.lower(v.column), *v.into)
	}
	if err := cmp.Or(r.number("gear", formula.Mass, &b.Brief.Gear), r.number("longest_stick", formula.Length, &b.Brief.LongestStick)); err != nil {
		return err
	}
	b.Gear = r["gear"] != ""
	p, err := r.paddler("")
	if err != nil {
		return err
	}
	p.Name = b.Name
	b.Brief.Crew = []Paddler{p}
	if r["partner_weight"] != "" || r["partner_stature"] != "" {
		p, err := r.paddler("partner_")
		if err != nil {
			return fmt.Errorf("partner: %w", err)
		}
		b.Brief.Crew = append(b.Brief.Crew, p)
	}
	return nil
}

// number reads a cell with its unit; an empty one leaves the value as it is.
func (r cells) number(name string, d formula.Dim, into *float64) error {
	text := r[name]
	if text == "" {
		return nil
	}
	if whole, part, ok := strings.Cut(text, ","); ok && !strings.Contains(text, ".") && part != "" {
		text = whole + "." + part
	}
	if strings.Contains(text, ";") {
		return fmt.Errorf("%s: %q holds a semicolon, and other signs part the cells of the first row; part all rows alike", name, text)
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

func (r cells) paddler(who string) (Paddler, error) {
	p := Paddler{Posture: cmp.Or(r.lower(who+"posture"), family.Either)}
	if err := cmp.Or(r.number(who+"weight", formula.Mass, &p.Weight), r.number(who+"stature", formula.Length, &p.Stature),
		r.number(who+"span", formula.Length, &p.Span)); err != nil {
		return p, err
	}
	switch s := r.lower(who + "sex"); s {
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
