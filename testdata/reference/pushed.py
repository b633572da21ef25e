#!/usr/bin/env python3
"""An independent solution for ribs that are only pushed into their mortises: the
elastica of given length, level at the keel, to the head at (half-breadth, depth),
hinged there or clamped with 2 deg of slack. The section that gives the length is solved
here too. First a boundary-value solution by collocation, begun from the section, then
shooting with an integrator of eighth order; numpy and scipy (Debian's python3-scipy).
Writes pushed.csv beside itself, which geometry/trial/pushed is held to: places at 20
equal steps of the length, lengths in mm, and the forces over the stiffness in bending.

    /usr/bin/python3 testdata/reference/pushed.py
"""
import csv
import os

import numpy as np
from scipy.integrate import solve_bvp, solve_ivp
from scipy.optimize import fsolve

# name, half-breadth and depth in mm, bottom turn in deg, bilge radius in mm, flare and
# topside curve in deg.
CASES = [
    ("lake midship", 386.0, 310.0, 17, 120, 9, 0),
    ("lake end", 142.0, 340.0, 27, 100, 3.1, 0),
    ("brook midship", 360.0, 285.0, 16, 115, 10, 0),
    ("river midship", 425.0, 340.0, 15, 130, 9, 0),
    ("river end", 157.0, 377.0, 26, 106, 5.2, 0),
    ("tumblehome", 400.0, 330.0, 14, 110, -9, 16),
    ("flat bottom, flare", 350.0, 280.0, 0, 70, 14, 0),
    ("hardly bent", 190.0, 420.0, 20, 150, 20, 0),
]
SLACK = np.radians(2)


def chord(length, heading, turn):
    return length * np.sinc(turn / 2 / np.pi) * np.array([np.cos(heading + turn / 2), np.sin(heading + turn / 2)])


def section(b, d, bottom, bilge, flare, top):
    """Lengths and turns of bottom, bilge and topside."""
    bottom, flare, top = np.radians([bottom, flare, top])
    shoulder = np.pi / 2 - flare - top
    want = np.array([b, d])
    m = np.column_stack([chord(1, 0, bottom), chord(1, shoulder, top)])
    low, up = np.linalg.solve(m, want - chord(bilge * (shoulder - bottom), bottom, shoulder - bottom))
    if low >= bilge * bottom and low >= 0:
        return [(low, bottom), (bilge * (shoulder - bottom), shoulder - bottom), (up, top)]
    m = np.column_stack([chord(1, 0, shoulder), chord(1, shoulder, top)])
    low, up = np.linalg.solve(m, want)
    return [(low, shoulder), (up, top)]


def headings(pieces, s):
    ends = np.cumsum([0] + [p[0] for p in pieces])
    return np.interp(s, ends, np.cumsum([0] + [p[1] for p in pieces]))


def rest(b, d, length, start, held):
    """x, y, heading, curvature at 21 places and the two forces, lengths over length."""
    end = np.array([b, d]) / length

    def bent(s, q, f):
        x, y, t, k = q
        return np.array([np.cos(t), np.sin(t), k, -(f[0] * np.sin(t) + f[1] * np.cos(t))])

    def edges(a, z, f):
        last = z[3] if held is None else z[2] - held
        return np.array([a[0], a[1], a[2], z[0] - end[0], z[1] - end[1], last])

    s = np.linspace(0, 1, 201)
    t = start(s * length)
    x = np.concatenate([[0], np.cumsum((np.cos(t[1:]) + np.cos(t[:-1])) / 2 / 200)])
    y = np.concatenate([[0], np.cumsum((np.sin(t[1:]) + np.sin(t[:-1])) / 2 / 200)])
    first = solve_bvp(bent, edges, s, np.array([x, y, t, np.gradient(t, s)]), p=[0.0, 0.0], tol=1e-9, max_nodes=100000)
    assert first.success, first.message

    def shoot(u, places=None):
        return solve_ivp(lambda s, q: bent(s, q, u[1:]), (0, 1), [0, 0, 0, u[0]], method="DOP853", rtol=1e-12, atol=1e-13, t_eval=places).y

    u = fsolve(lambda u: edges(np.zeros(4), shoot(u)[:, -1], u[1:])[3:], [first.sol(0)[3], *first.p], xtol=1e-13)
    q = shoot(u, np.linspace(0, 1, 21))
    assert np.allclose(q[:2, -1], end, atol=1e-9), (q[:2, -1], end)
    return q, u[1:]


def main():
    rows = []
    for name, b, d, bottom, bilge, flare, top in CASES:
        pieces = section(b, d, bottom, bilge, flare, top)
        length = sum(p[0] for p in pieces)
        start = lambda s: headings(pieces, s)
        wanted = np.pi / 2 - np.radians(flare)
        q, f = rest(b, d, length, start, None)
        lean = np.clip(q[2, -1] - wanted, -SLACK, SLACK)
        for heads, (q, f) in (("hinged", (q, f)), ("clamped", rest(b, d, length, start, wanted + lean))):
            print(f"{name}, {heads}: length {length:.3f}, flare {90 - np.degrees(q[2, -1]):.3f} for {flare}")
            for i in range(21):
                rows.append([name, b, d, bottom, bilge, flare, top, heads, f"{f[0] / length**2:.9e}", f"{f[1] / length**2:.9e}",
                             f"{i / 20:.2f}", f"{q[0, i] * length:.5f}", f"{q[1, i] * length:.5f}", f"{np.degrees(q[2, i]):.5f}"])
    with open(os.path.join(os.path.dirname(__file__), "pushed.csv"), "w", newline="") as out:
        w = csv.writer(out, lineterminator="\n")
        w.writerow("case,half_breadth_mm,depth_mm,bottom_turn_deg,bilge_radius_mm,flare_deg,topside_curve_deg,heads,push_per_mm2,lift_per_mm2,share,x_mm,y_mm,heading_deg".split(","))
        w.writerows(rows)


if __name__ == "__main__":
    main()
