package formula

import (
	"regexp"
	"slices"
	"strings"

	"ribwright/geometry/wording"
)

type form int8

const (
	valueForm  form = iota
	checkForm       // must be true
	guessForm       // the start of a value found afloat
	limitsForm      // how far a search may go
)

var forms = map[string]form{"check": checkForm, "guess": guessForm, "limits": limitsForm}

// statement is what a file says of a name, or a value given from outside.
type statement struct {
	form    form
	told    bool // a value for the page of reasons
	afloat  bool // found by floating the boat
	name    string
	at      Place
	body    *node  // nil for a value given from outside
	written string // the formula as it stands in the file, on one line
	reason  string // what follows #
	kind    Kind   // of a value, found by the check
	uses    []int  // slots of the values that a value uses, each once, in the order of the formula
}

// replaces reports whether two statements say the same of the same name, so that one counts.
func (s *statement) replaces(o statement) bool { return s.form == o.form && s.name == o.name }

type parser struct {
	text   string
	toks   []token
	nodes  *int // counted over all files
	depth  int
	remark []string
	out    []statement
	uses   []token
}

// parse reads one file. nodes counts over all files, so that many files are
// bounded together.
func parse(src Source, nodes *int) (list []statement, uses []token) {
	src.Text = strings.ReplaceAll(strings.TrimPrefix(src.Text, "\uFEFF"), "\r\n", "\n")
	p := &parser{text: src.Text, toks: scan(src), nodes: nodes}
	for len(p.toks) > 0 {
		p.statement()
	}
	return p.out, p.uses
}

func (p *parser) fail(at Place, format string, args ...any) { refuse(at, "", format, args...) }

// peek returns the next token that is no remark, collecting remarks on the way.
func (p *parser) peek() token {
	for p.toks[0].kind == remarkToken {
		p.remark = append(p.remark, strings.TrimSpace(strings.TrimLeft(p.toks[0].text, "#")))
		p.toks = p.toks[1:]
	}
	return p.toks[0]
}

func (p *parser) take() token {
	t := p.peek()
	p.toks = p.toks[1:]
	return t
}

// comes reports whether a sign or a word comes next.
func (p *parser) comes(text string) bool {
	t := p.peek()
	return (t.kind == signToken || t.kind == wordToken) && t.text == text
}

// need takes a sign or a word that must come next.
func (p *parser) need(text, why string) {
	if !p.comes(text) {
		p.fail(p.peek().at, "%s stands where %q should; %s", shown(p.peek()), text, why)
	}
	p.take()
}

func shown(t token) string {
	switch t.kind {
	case stopToken:
		return "the end of the statement"
	case textToken:
		return `the text "` + wording.Clip(t.text, 30) + `"`
	}
	return `"` + wording.Clip(t.text, 30) + `"`
}

func (p *parser) statement() {
	t := p.peek()
	if t.kind == stopToken { // an empty line, or a remark of its own
		p.toks, p.remark = p.toks[1:], nil
		return
	}
	p.remark = nil
	if len(p.out) >= maxStatements {
		p.fail(t.at, "more than %d statements; that is no family of boats", maxStatements)
	}
	if t.kind != wordToken {
		p.fail(t.at, "%s stands where a name should; a statement reads NAME = FORMULA", shown(t))
	}
	if t.text == "use" {
		p.use()
		return
	}
	s := statement{form: forms[t.text], told: t.text == "tell"}
	if s.told || s.form != valueForm {
		p.take()
	}
	name := p.take()
	if name.kind != wordToken {
		p.fail(name.at, "%s stands where a name should", shown(name))
	}
	p.checkName(name)
	s.name, s.at = name.text, name.at
	p.need("=", "a statement reads NAME = FORMULA")
	from := p.peek().from
	s.body = p.formula()
	end := p.peek()
	if end.kind != stopToken {
		p.fail(end.at, "%s comes after the formula has ended; put an operator between, or begin the next statement on a new line without white space in front", shown(end))
	}
	s.written = oneLine(p.text[from:end.from])
	p.toks = p.toks[1:]
	s.reason = strings.Join(p.remark, " ")
	p.out = append(p.out, s)
}

// oneLine puts a formula that goes over several lines on one, without remarks.
func oneLine(text string) string {
	var words []string
	for line := range strings.SplitSeq(text, "\n") {
		formula, _, _ := strings.Cut(line, "#")
		words = append(words, strings.Fields(formula)...)
	}
	return strings.Join(words, " ")
}

// checkName refuses names that could be taken for something else.
func (p *parser) checkName(t token) {
	switch {
	case slices.ContainsFunc(units(), func(u unit) bool { return u.word == t.text }):
		p.fail(t.at, "%q is a unit and can name no value", t.text)
	case isKeyword(t.text), findFunction(t.text) != nil:
		p.fail(t.at, "%q is a word of the formulas and can name no value", t.text)
	case strings.ToLower(t.text) != t.text:
		p.fail(t.at, "%q has capitals; names are written in small letters", wording.Clip(t.text, 40))
	case len(t.text) > 60:
		p.fail(t.at, "the name has %d letters; accepted: up to 60", len(t.text))
	}
}

func (p *parser) use() {
	p.take()
	t := p.take()
	if t.kind != textToken {
		p.fail(t.at, `%s stands where a file in quotes should, as use "pack"`, shown(t))
	}
	if end := p.peek(); end.kind != stopToken {
		p.fail(end.at, "%s comes after the file to use; begin a new line", shown(end))
	}
	if len(p.out) > 0 {
		p.fail(t.at, "use stands before every other statement")
	}
	p.uses = append(p.uses, t)
}

// braced finds what a reason shows.
var braced = regexp.MustCompile(`\{([^}]*)\}`)
