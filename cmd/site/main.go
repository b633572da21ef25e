// Command site writes the page with the engine inside as one HTML file, which needs no
// server: it opens from a disk, a mail or any web space.
package main

import (
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"ribwright/cmd/internal/page"
	"ribwright/cmd/site/tight"
)

func main() {
	out := flag.String("out", "out", "folder for the page; made when missing")
	flag.Parse()
	if err := write(*out); err != nil {
		fmt.Fprintln(os.Stderr, "site:", err)
		os.Exit(1)
	}
}

// write puts the page into a folder.
func write(folder string) error {
	engine, err := build()
	if err != nil {
		return err
	}
	start, err := page.Begin("", nil)
	if err != nil {
		return err
	}
	p, err := page.New(start, engine)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	place := filepath.Join(folder, "ribwright.html")
	if err := os.WriteFile(place, p.HTML, 0o644); err != nil {
		return err
	}
	fmt.Printf("%s\n  the page with its engine, %.1f MB, of it the engine %.1f MB compressed\n", place, float64(len(p.HTML))/1e6, float64(len(engine.Module))/1e6)
	return nil
}

// plain is where functions are not put into one another: what reads, tells and writes is not
// worth the room that copies of them take, a tenth of the engine. What works facts out is.
var plain = []string{
	"ribwright/layout/...", "ribwright/render/...", "ribwright/cmd/...",
	"ribwright/geometry/design", "ribwright/geometry/edition", "ribwright/geometry/finding", "ribwright/geometry/learn/...",
	"ribwright/geometry/marks", "ribwright/geometry/measure", "ribwright/geometry/outfit/...", "ribwright/geometry/shop/...",
	"ribwright/geometry/sizing", "ribwright/geometry/sizing/advice", "ribwright/geometry/sizing/family", "ribwright/geometry/sizing/nested", "ribwright/geometry/survey/...", "ribwright/geometry/wording",
	"ribwright/geometry/altered", "ribwright/geometry/body", "ribwright/geometry/fabric", "ribwright/geometry/sizing/formula",
	"ribwright/geometry/boat/fittings", "ribwright/geometry/boat/frame", "ribwright/geometry/boat/flotation", "ribwright/geometry/boat/inside", "ribwright/geometry/boat/joint",
	"ribwright/geometry/boat/aboard", "ribwright/geometry/boat/solid", "ribwright/geometry/boat/kit", "ribwright/geometry/boat/weight", "ribwright/geometry/boat/outside", "ribwright/geometry/boat/seat", "ribwright/geometry/boat/skin", "ribwright/geometry/water/awash",
	"ribwright/geometry/trial/afloat", "ribwright/geometry/trial/balance", "ribwright/geometry/trial/bend", "ribwright/geometry/trial/cargo", "ribwright/geometry/trial/edgeset", "ribwright/geometry/trial/flaw", "ribwright/geometry/trial/handwork", "ribwright/geometry/trial/laden", "ribwright/geometry/trial/pushed", "ribwright/geometry/trial/spreader", "ribwright/geometry/trial/stow", "ribwright/geometry/trial/swamped", "ribwright/geometry/trial/yardstick", "ribwright/geometry/wood/beam", "ribwright/geometry/wood/fasten", "ribwright/geometry/wood/grain", "ribwright/geometry/wood/timber",
	"archive/zip", "bufio", "bytes", "compress/...", "crypto/...", "encoding/...", "fmt", "hash/...", "html/...", "image/...", "io/...", "math/big", "math/rand/...", "net/...", "os/...", "path/...", "reflect", "regexp/...", "strconv", "strings", "time", "unicode/...", "github.com/...",
	"errors", "internal/bisect", "internal/byteorder", "internal/filepathlite", "internal/fmtsort", "internal/godebug", "internal/oserror", "internal/poll", "internal/reflectlite", "internal/runtime/atomic", "internal/runtime/math", "internal/saferio", "internal/strconv", "internal/stringslite", "internal/sync", "internal/syscall/unix", "internal/testlog", "iter", "maps", "runtime/debug", "sort", "sync/...", "syscall/...",
}

// keen is where they are put into one another all the same: sheets are laid and words are set
// by long searches that a person waits for, and so does a look with its hidden lines left out.
var keen = []string{"ribwright/geometry/boat/solid", "ribwright/layout/label", "ribwright/layout/lettering", "ribwright/layout/lines", "ribwright/layout/pattern", "ribwright/layout/sight", "ribwright/layout/tile"}

// build compiles the engine for browsers, with Go's own tools.
func build() (*page.Engine, error) {
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return nil, fmt.Errorf("the go command is needed to build the engine: %w", err)
	}
	runtime, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js"))
	if err != nil {
		return nil, err
	}
	dir, err := os.MkdirTemp("", "ribwright-site")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	file := filepath.Join(dir, "engine.wasm")
	args := []string{"build", "-trimpath", "-ldflags=-s -w"}
	for _, where := range plain {
		args = append(args, "-gcflags="+where+"=-l")
	}
	for _, where := range keen {
		args = append(args, "-gcflags="+where+"=") // the last word on a package holds
	}
	c := exec.Command("go", append(args, "-o", file, "ribwright/cmd/wasm")...)
	c.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if said, err := c.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("the engine does not build: %w\n%s", err, said)
	}
	module, err := os.ReadFile(file)
	if err != nil {
		return nil, err
	}
	return &page.Engine{Module: tight.Gzip(module), Runtime: string(runtime)}, nil
}
