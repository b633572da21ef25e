"""Reads a cutter's DXF with a reader of others and measures it.

No remark may come from the audit, the units must be millimetres, the header's
extents those of what is drawn, every line to cut closed, and the square in SCALE
100 mm each way.
"""
import sys

import ezdxf
from ezdxf import bbox, recover

path = sys.argv[1]
doc, auditor = recover.readfile(path)
if auditor.errors or auditor.fixes:
    sys.exit(f"{path}: {[str(e.message) for e in auditor.errors + auditor.fixes][:5]}")
doc = ezdxf.readfile(path)
auditor = doc.audit()
if auditor.errors or auditor.fixes:
    sys.exit(f"{path}: {[str(e.message) for e in auditor.errors + auditor.fixes][:5]}")
if doc.dxfversion != "AC1009" or doc.units != 4:
    sys.exit(f"{path}: release {doc.dxfversion}, units {doc.units}, want AC1009 and 4, millimetres")
space = doc.modelspace()
# Curves are measured by chords; 0.001 mm is far below what is asked.
box = bbox.extents(space, flatten=0.001)
low, high = doc.header["$EXTMIN"], doc.header["$EXTMAX"]
off = max(abs(a - b) for a, b in zip([*low[:2], *high[:2]], [box.extmin.x, box.extmin.y, box.extmax.x, box.extmax.y]))
if off > 0.02:
    sys.exit(f"{path}: the header's extents are {off:.4f} mm off")
cut = list(space.query('*[layer=="CUT"]'))
for e in cut:
    if e.dxftype() != "CIRCLE" and not (e.dxftype() == "POLYLINE" and e.is_closed):
        sys.exit(f"{path}: an open {e.dxftype()} in CUT")
squares = [bbox.extents([e]) for e in space.query('POLYLINE[layer=="SCALE"]') if e.is_closed]
if not any(abs(s.size.x - 100) < 0.001 and abs(s.size.y - 100) < 0.001 for s in squares):
    sys.exit(f"{path}: no square of 100 mm in SCALE")
kinds = sorted({e.dxftype() for e in space})
print(f"{path.rsplit('/', 1)[-1]}: {len(cut)} outlines, {', '.join(kinds)}, no remark")
