package layout_test

import (
	"cmp"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// A solver is a package of geometry with what in it works out facts. Names with a dot
// before them are methods.
type solver struct {
	pkg   string // under geometry
	names string
	why   string
}

// solvers are what no drawing, report or writer may use: each works out a fact, which
// is done once and handed over. What reads a fact at a place, as the height of a
// gunwale at a station, is none.
var solvers = []solver{
	{"boat/frame", "Build Corrections Reshaped .Sections", "builds every part of a boat; solves the ribs' sections anew"},
	{"boat/hull", "New Solve .Reshaped", "bends the gunwales and solves the sections"},
	{"altered", "Of", "gives a design other measures"},
	{"boat/joint", "Of Lashing", "works out the joints"},
	{"wood/fasten", "Single", "works out what a fastening bears"},
	{"boat/skin", "New Of Smooth ClearanceOf ProudRibs CureOf .Press", "lays the cloth over a frame and builds frames to find a cure"},
	{"boat/aboard", "New OfHull", "weighs the boat and takes people and gear aboard"},
	{"boat/weight", "Boat Cloth Crew Gear", "weighs the boat and who is aboard"},
	{"edition", "Compare Behave .Judge .Keep", "compares two editions and looks for one that keeps what is cut"},
	{"survey/fair", "Of", "fits a design to measured offsets"},
	{"survey/built", "NewFrame Read .AsItIs .HotFor", "judges a frame on the trestles and sets the ribs that remain"},
	{"survey/weighing", "Of", "finds what a boat weighs"},
	{"learn", "Of .Propose Rewrite", "learns from many builds"},
	{"learn/pool", "New", "draws readings together"},
	{"outfit", "NewShip Of One .Weights .PutAboard", "sizes and weighs the outfits"},
	{"outfit/sail", "New NewPlan Rigged Windage", "sizes sail, mast and leeboard"},
	{"outfit/pair", "New NewHulls", "floats two hulls as one and sizes the beams"},
	{"outfit/rowing", "New BodyOf ForSpan Short", "fits oars and seat to the rower"},
	{"water/float", "New .Balance .Settle .Sunk .Upright .Immerse .Answer .Freeboard .Righting .Capacity .Wetted .WetOffsets", "finds how a hull lies on the water, and its stability"},
	{"water/effort", "Friction Together .Waves .Even", "works out the resistance"},
	{"trial/afloat", "Run Goes Stands WithOutfits LooseRibs", "takes the boat out on paper"},
	{"trial/balance", "Of .Settle .Neutral .Trials .Alone .Fit .Answers .Choose .Rests .RibStress .RibStiffness .FreeRadius", "finds the balance of gunwales, ribs and cross pieces"},
	{"trial/bend", "Of", "judges every bend"},
	{"curve", "NewElastica", "bends a stick through pins"},
	{"trial/spreader", "Of", "bends the gunwales round their spreaders"},
	{"trial/edgeset", "Of .Cure", "lets the frame go in profile"},
	{"trial/pushed", "Of", "lets ribs come to rest"},
	{"trial/flaw", "Of New", "gives a frame faults and works out what they do"},
	{"trial/handwork", "Of", "works out what errors of hand work do to the boat"},
	{"trial/stow", "NewBoat Nest Plan Fit Drop Squeeze .Refit .Cures", "nests boats and looks for what would make them fit"},
	{"sizing/advice", "Rank .Take", "ranks the boats that would do"},
	{"shop/cutlist", "Pack .Make .Quick .Sticks .Finished .Rings", "plans the sawing"},
	{"shop/materials", "Count", "counts what is bought"},
	{"shop/hours", "Count Mortises Saved", "counts the work"},
	{"shop/cost", "Of Read", "prices a boat"},
	{"shop/fan", "Make Of", "fits the rays of a board"},
	{"sizing", "Size SizeAlike NewCase .Finish .Solve .Sweep .Try", "sizes boats"},
	{"wood/timber", "Shrink SquareTenon LeastMoisture Springback FormRadius SteamTime MoistureHours SoakShare", "works out what the wood does"},
}

// exempt are files that may: they are no part of the program.
var exempt = map[string]string{
	"render/eyes":       "reads finished sheets for tests, against patterns that it draws itself",
	"render/rendertest": "reads our own files for tests",
}

// owed are files that still do, with who will take it off them. No file may be added.
var owed = map[string]string{
	"layout/report/book/gather.go": "the book's facts are about to be worked out by the job",
}

// TestNobodySolves reads every file under layout and render: none names a solver of
// geometry. What they draw and write they are given, so that it is worked out once and
// no error of it is lost in a drawing.
func TestNobodySolves(t *testing.T) {
	functions, methods := map[string]string{}, map[string]string{}
	for _, s := range solvers {
		known := declared(t, "../geometry/"+s.pkg)
		for _, n := range strings.Fields(s.names) {
			name, isMethod := strings.CutPrefix(n, ".")
			if !known[n] {
				t.Errorf("geometry/%s has no %s: bring the list of solvers up to date", s.pkg, n)
			}
			if isMethod {
				methods[name] = cmp.Or(methods[name], s.why)
			} else {
				functions["ribwright/geometry/"+s.pkg+"."+name] = s.why
			}
		}
	}
	for _, root := range []string{"layout", "render"} {
		each(t, root, func(name string, f *ast.File) {
			for _, u := range uses(f, functions, methods) {
				t.Errorf("%s %s; hand the fact over instead", name, u)
			}
		})
	}
}

// TestSolversAreSeen: a file that solves in each way that Go has is found out.
func TestSolversAreSeen(t *testing.T) {
	src := `package p
import ("ribwright/geometry/trial/bend"; water "ribwright/geometry/water/float")
var of = bend.Of
func f(h *water.Hull) { h.Settle(l, 1); water.Level(2); bend.Passes(of) }`
	f, err := parser.ParseFile(token.NewFileSet(), "p.go", src, 0)
	if err != nil {
		t.Fatal(err)
	}
	got := uses(f, map[string]string{"ribwright/geometry/trial/bend.Of": "judges"}, map[string]string{"Settle": "floats"})
	want := []string{"uses bend.Of, which judges", "calls Settle, which floats"}
	if !slices.Equal(got, want) {
		t.Errorf("seen %q, want %q", got, want)
	}
}

// uses lists the solvers that a file names.
func uses(f *ast.File, functions, methods map[string]string) []string {
	imported := map[string]string{}
	for _, i := range f.Imports {
		at, _ := strconv.Unquote(i.Path.Value) // the parser has seen to it
		name := path.Base(at)
		if i.Name != nil {
			name = i.Name.Name
		}
		imported[name] = at
	}
	var out []string
	ast.Inspect(f, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.SelectorExpr:
			if x, ok := n.X.(*ast.Ident); ok && x.Obj == nil {
				if why, bad := functions[imported[x.Name]+"."+n.Sel.Name]; bad {
					out = append(out, fmt.Sprintf("uses %s.%s, which %s", x.Name, n.Sel.Name, why))
				}
			}
		case *ast.CallExpr:
			s, ok := n.Fun.(*ast.SelectorExpr)
			if !ok {
				break
			}
			if x, isName := s.X.(*ast.Ident); isName && x.Obj == nil && imported[x.Name] != "" {
				break
			}
			if why, bad := methods[s.Sel.Name]; bad {
				out = append(out, fmt.Sprintf("calls %s, which %s", s.Sel.Name, why))
			}
		}
		return true
	})
	return out
}

// each parses every file of a room but tests and those that may solve.
func each(t *testing.T, root string, look func(name string, f *ast.File)) {
	t.Helper()
	seen := 0
	err := filepath.WalkDir(filepath.Join("..", root), func(file string, d fs.DirEntry, err error) error {
		name := strings.TrimPrefix(filepath.ToSlash(file), "../")
		switch {
		case err != nil:
			return err
		case d.IsDir() && exempt[name] != "":
			return fs.SkipDir
		case !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") || owed[name] != "":
			return nil
		}
		f, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
		if err == nil {
			seen++
			look(name, f)
		}
		return err
	})
	if err != nil || seen < 20 {
		t.Fatalf("%s: %d files read, %v", root, seen, err)
	}
}

// declared lists the functions of a package, methods with a dot before them.
func declared(t *testing.T, dir string) map[string]bool {
	t.Helper()
	out := map[string]bool{}
	files, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		if !strings.HasSuffix(file.Name(), ".go") || strings.HasSuffix(file.Name(), "_test.go") {
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), filepath.Join(dir, file.Name()), nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range f.Decls {
			if d, ok := d.(*ast.FuncDecl); ok && d.Recv == nil {
				out[d.Name.Name] = true
			} else if ok {
				out["."+d.Name.Name] = true
			}
		}
	}
	return out
}
