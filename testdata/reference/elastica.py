#!/usr/bin/env python3
"""The gunwales of the shipped boats as bent sticks, by a way of their own: the elastica
in arc length with pins at unknown lengths,

    x' = cos t   y' = sin t   t' = k   k' = V cos t

a bay between two pins at a time, its length and its shear V (over E I) unknown, solved
as one boundary-value problem by scipy's collocation; headings and curvatures pass on
from bay to bay, the ends are free. Lengths along the gunwale take in its rise: the
stock leans by the tilt and bends in that plane, and the edge-set is a parabola.
Source of the equations: A. E. H. Love, A Treatise on the Mathematical Theory of
Elasticity, the plane elastica.

Writes elastica.csv beside itself: half-breadth and length along the gunwale from
midship at every rib, and the push of every pin over E I, outward positive. Needs
Debian's python3-scipy; Go tests read the table.

    /usr/bin/python3 testdata/reference/elastica.py
"""
import csv
import pathlib

import numpy as np
from scipy.integrate import solve_bvp
from scipy.interpolate import PchipInterpolator

# Places in mm: the pins of the port gunwale from aft forward, the ends of the stock
# among them; the first rib from the middle, the pitch, and the ribs' number to either
# side; where the edge-set begins and what it rises to at stern and bow.
BOATS = {
    "brook": dict(x=[-1728.613846, -900, 0, 900, 1728.613846], y=[10, 276, 360, 276, 10],
                  ribs=[-1375 + 125 * i for i in range(23)], start=600, rise=(30, 30), tilt=10.5),
    "lake": dict(x=[-2104.407006, -1050, 0, 1050, 2104.407006], y=[11, 303.5, 386, 303.5, 11],
                 ribs=[-1690 + 130 * i for i in range(27)], start=800, rise=(42, 42), tilt=10.5),
    "river": dict(x=[-2423.805542, -1250, 0, 1250, 2412.763577], y=[12, 324, 425, 336, 12],
                  ribs=[-1960 + 140 * i for i in range(29)], start=620, rise=(40, 54), tilt=10.5),
}


def bend(px, py):
    """Solves all bays at once, in units of the whole length; returns states and params."""
    scale = px[-1] - px[0]
    x, y = (np.array(px) - px[0]) / scale, np.array(py) / scale
    n = len(x) - 1

    def fun(s, u, p):
        out = []
        for i in range(n):
            _, _, t, k = u[4 * i:4 * i + 4]
            out += [p[i] * np.cos(t), p[i] * np.sin(t), p[i] * k, p[i] * p[n + i] * np.cos(t)]
        return np.array(out)

    def bc(a, b, p):
        out = [a[3], b[-1]]
        for i in range(n):
            out += [a[4 * i] - x[i], a[4 * i + 1] - y[i], b[4 * i] - x[i + 1], b[4 * i + 1] - y[i + 1]]
            if i + 1 < n:
                out += [b[4 * i + 2] - a[4 * i + 6], b[4 * i + 3] - a[4 * i + 7]]
        return np.array(out)

    s = np.linspace(0, 1, 41)
    start = []
    for i in range(n):
        dx, dy = x[i + 1] - x[i], y[i + 1] - y[i]
        start += [x[i] + s * dx, y[i] + s * dy, 0 * s + np.arctan2(dy, dx), 0 * s]
    lengths = np.hypot(np.diff(x), np.diff(y))
    r = solve_bvp(fun, bc, s, np.array(start), p=np.concatenate([lengths, np.zeros(n)]), tol=1e-11, bc_tol=1e-12, max_nodes=200000)
    assert r.success, r.message
    return r, scale, n


def table(boat):
    px, py = boat["x"], boat["y"]
    r, scale, n = bend(px, py)
    xs, ys, slopes = [], [], []
    s = np.linspace(0, 1, 20001)
    u = r.sol(s)
    for i in range(n):
        cut = slice(None) if i == n - 1 else slice(0, -1)
        xs.append(px[0] + scale * u[4 * i][cut])
        ys.append(scale * u[4 * i + 1][cut])
        slopes.append(np.tan(u[4 * i + 2][cut]))
    x, y, slope = map(np.concatenate, (xs, ys, slopes))
    stern, bow = boat["rise"]
    run = np.where(x < 0, -px[0], px[-1]) - boat["start"]
    past = np.maximum(np.abs(x) - boat["start"], 0)
    up = 2 * np.where(x < 0, stern, bow) * past / run ** 2 * np.sign(x) - slope * np.tan(np.radians(boat["tilt"]))
    speed = np.sqrt(1 + slope ** 2 + up ** 2)
    along = np.concatenate([[0], np.cumsum(np.diff(x) * (speed[1:] + speed[:-1]) / 2)])
    # The points lie 0.1 mm apart: what the interpolation leaves is far below 0.001 mm.
    half, length = PchipInterpolator(x, y), PchipInterpolator(x, along)
    ribs = [("rib", q, half(q), length(q) - length(0)) for q in boat["ribs"]]
    shear = r.p[n:] / scale ** 2
    push = np.diff(np.concatenate([[0], shear, [0]]))
    return ribs, [("pin", q, b, p) for q, b, p in zip(px, py, push)]


def main():
    with open(pathlib.Path(__file__).with_name("elastica.csv"), "w", newline="") as f:
        w = csv.writer(f, lineterminator="\n")
        w.writerow(["boat", "what", "station_mm", "half_breadth_mm", "along_mm_or_push_per_mm2"])
        for name, boat in BOATS.items():
            ribs, pins = table(boat)
            for what, x, y, v in ribs:
                w.writerow([name, what, f"{x:.6f}", f"{y:.5f}", f"{v:.5f}"])
            for what, x, y, v in pins:
                w.writerow([name, what, f"{x:.6f}", f"{y:.5f}", f"{v:.8e}"])


if __name__ == "__main__":
    main()
