package job

import (
	"fmt"
	"testing"

	"ribwright/geometry/marks"
	"ribwright/render/rendertest"
)

// boatDrawn is all that is measured of a boat.
type boatDrawn struct {
	*offPaper
	heads  map[string]float64            // the ribs' heads over the baseline, mm
	shapes map[string]rendertest.Outline // sawn outlines, by part and quantity as compare names them
	bars   []rendertest.Box              // where no scarf may lie
	ink    map[string]*inked
}

// measureAll measures a boat out of its sheets and its book.
func measureAll(t *testing.T, d drawn, b bookPDF) *boatDrawn {
	t.Helper()
	out := &boatDrawn{&offPaper{t, map[marks.Name]markRead{}}, map[string]float64{}, map[string]rendertest.Outline{}, nil, map[string]*inked{}}
	for _, s := range d.Sheets {
		for _, v := range s.Views {
			if out.ink[v.Drawing.Name] == nil {
				out.ink[v.Drawing.Name] = d.ink(v.Drawing.Name)
			}
		}
	}
	out.book(b)
	pieces := map[string]string{}
	for name, k := range out.ink {
		if isThwart(name) {
			pieces[name] = k.title(3.2)
		}
	}
	for name, k := range out.ink {
		out.pattern(name, k, pieces)
	}
	for rib, head := range out.heads {
		out.put("rib "+rib, "keel height", 0, head-out.get("rib "+rib, "depth", 0), toWhole+drawnWithin)
	}
	out.bookBends(b)
	for name, k := range out.ink {
		for _, l := range k.unread() {
			t.Errorf("pattern %s: nobody reads the %s line from %.2f to %.2f", name, l.pen, l.Pieces[0].From, l.Pieces[len(l.Pieces)-1].To)
		}
	}
	return out
}

func isThwart(name string) bool {
	var n int
	_, err := fmt.Sscanf(name, "thwart-%d", &n)
	return err == nil
}

// sawn keeps the outline of a part at an end, or at both where they are alike.
func (m *boatDrawn) sawn(l *inkLine, part string, ends ...string) {
	for _, end := range ends {
		m.shapes[end+part+"|outline"] = l.Outline
	}
}

// pattern reads one pattern.
func (m *boatDrawn) pattern(name string, k *inked, pieces map[string]string) {
	var n int
	var rail string
	switch name {
	case "mortises":
		m.strip(k, pieces)
		m.bars = k.bars()
	case "ribs":
		m.ribStick(k)
	case "body":
		m.body(k, m.heads)
	case "battens":
		m.battens(k)
	case "middle-ply":
		m.middlePly(k)
	case "stems":
		m.sawn(m.stem(k, "bow", "stern"), " stem", "bow", "stern")
	case "stem-bow":
		m.sawn(m.stem(k, "bow"), " stem", "bow")
	case "stem-stern":
		m.sawn(m.stem(k, "stern"), " stem", "stern")
	case "breasthooks":
		m.sawn(m.hook(k, "bow", "stern"), " breasthook", "bow", "stern")
	case "breasthook-bow":
		m.sawn(m.hook(k, "bow"), " breasthook", "bow")
	case "breasthook-stern":
		m.sawn(m.hook(k, "stern"), " breasthook", "stern")
	default:
		if _, err := fmt.Sscanf(name, "thwart-%d", &n); err == nil {
			part := fmt.Sprintf("thwart %d", n)
			m.shapes[part+"|outline"] = m.thwart(k, part)
		} else if _, err := fmt.Sscanf(name, "seat-%d-%s", &n, &rail); err == nil {
			part := fmt.Sprintf("seat %d", n)
			if rail == "cheek" {
				m.shapes[part+"|outline, cheek"] = largest(k.take("cut", func(l *inkLine) bool { return true })).Outline
			} else {
				m.hanger(k, part, rail)
			}
		} else {
			m.t.Errorf("nobody reads the pattern %s", name)
		}
	}
}
