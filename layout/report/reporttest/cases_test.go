package reporttest

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"reflect"
	"testing"

	"ribwright/layout/report"
)

// TestAllKinds finds the kinds of blocks in the package's source: each must be in a
// case, or a writer may lack it unseen.
func TestAllKinds(t *testing.T) {
	files, err := filepath.Glob("../*.go")
	if err != nil {
		t.Fatal(err)
	}
	var decls []ast.Decl
	for _, name := range files {
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		decls = append(decls, f.Decls...)
	}
	said := map[string]bool{}
	for _, c := range Cases() {
		for _, b := range c.Report.Blocks {
			said[reflect.TypeOf(b).Name()] = true
		}
	}
	kinds := 0
	for _, d := range decls {
		if m, ok := d.(*ast.FuncDecl); ok && m.Name.Name == "block" && m.Recv != nil {
			kinds++
			if name := m.Recv.List[0].Type.(*ast.Ident).Name; !said[name] {
				t.Errorf("no case has a block %s", name)
			}
		}
	}
	if kinds < 7 {
		t.Errorf("%d kinds found, want 7 or more", kinds)
	}
}

// TestRows: a case is a report that its writers may rely on.
func TestRows(t *testing.T) {
	names := map[string]bool{}
	for _, c := range Cases() {
		if names[c.Name] {
			t.Errorf("two cases are named %s", c.Name)
		}
		names[c.Name] = true
		for _, b := range c.Report.Blocks {
			if table, ok := b.(report.Table); ok {
				for _, r := range table.Rows {
					if len(r) != len(table.Columns) {
						t.Errorf("%s: a row of %d cells under %d heads", c.Name, len(r), len(table.Columns))
					}
				}
			}
		}
	}
}
