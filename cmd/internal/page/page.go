// Package page is the page in the browser: one set of sources, put together as one HTML
// file. A server on this machine hands it out and answers it, or it carries the engine
// within itself and needs no one.
package page

import (
	"bytes"
	"crypto/sha256"
	"embed"
	"encoding/base64"
	"encoding/json"
	"errors"
	"fmt"
	"html"
	"strings"
)

//go:embed source
var source embed.FS

// Engine is the engine as a browser runs it.
type Engine struct {
	Module  []byte // WebAssembly, compressed with gzip
	Runtime string // what Go wants in a browser, wasm_exec.js
}

// Start is what the page shows first.
type Start struct {
	Name  string          `json:"name"`  // a shipped design's or a file's
	Text  string          `json:"text"`  // of the file; "" for a shipped design
	First json.RawMessage `json:"first"` // the answer that draws it
}

// scripts are the parts of the one script, in their order.
var scripts = [...]string{"engine.js", "state.js", "draw.js", "beside.js", "standing.js", "words.js", "people.js", "measures.js", "paper.js", "blocks.js", "shop.js", "bench.js", "card.js", "editions.js", "learn.js", "eye.js", "outfits.js", "main.js"}

// Page is the page, and what a browser may do on it.
type Page struct {
	HTML   []byte
	Policy string // its content security policy
}

// New puts the page together. A nil engine asks the server that handed it out.
//
// Errors: a source or an engine that would end the element that holds it.
func New(start Start, engine *Engine) (Page, error) {
	parts := map[string]string{}
	script := "\"use strict\";\n(() => {\n"
	for _, name := range scripts {
		script += read(name)
	}
	parts["SCRIPT"], parts["STYLE"] = script+"})();\n", read("page.css")
	first, err := json.Marshal(start) // marks of HTML come out as escapes
	if err != nil {
		return Page{}, err
	}
	parts["START"], parts["ENGINE"], parts["WORKER"] = string(first), "", ""
	asks := "'self'"
	if engine != nil {
		asks = "'none'"
		parts["ENGINE"] = base64.StdEncoding.EncodeToString(engine.Module)
		parts["WORKER"] = engine.Runtime + "\n" + read("worker.js")
	}
	for name, text := range parts {
		if low := strings.ToLower(text); strings.Contains(low, "</script") || strings.Contains(low, "</style") || strings.Contains(low, "<!--") {
			return Page{}, errors.New("the page's " + strings.ToLower(name) + " would end its own element")
		}
	}
	policy := fmt.Sprintf("default-src 'none'; script-src %s 'wasm-unsafe-eval'; worker-src blob:; style-src %s; img-src data: blob:; connect-src %s; base-uri 'none'; form-action 'none'",
		sum(parts["SCRIPT"]), sum(parts["STYLE"]), asks)
	parts["POLICY"] = html.EscapeString(policy)
	return Page{filled(read("page.html"), parts), policy + "; frame-ancestors 'none'"}, nil
}

// filled puts each part in the place that has its name between two signs: @NAME@.
func filled(frame string, parts map[string]string) []byte {
	var out bytes.Buffer
	for i, piece := range strings.Split(frame, "@") {
		if text, ok := parts[piece]; ok && i%2 == 1 {
			piece = text
		}
		out.WriteString(piece)
	}
	return out.Bytes()
}

// sum is how a policy names a script or a style by its bytes.
func sum(text string) string {
	s := sha256.Sum256([]byte(text))
	return "'sha256-" + base64.StdEncoding.EncodeToString(s[:]) + "'"
}

// read returns an embedded source.
func read(name string) string {
	data, err := source.ReadFile("source/" + name)
	if err != nil {
		panic(err) // it was there when the program was built
	}
	return string(data)
}
