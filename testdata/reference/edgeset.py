#!/usr/bin/env python3
"""A plain reference for geometry/trial/edgeset: the same plane frame by the displacement
method in numpy, put together another way: textbook stiffness matrices of beams turned
into place, stems as stiff ties (penalties) with movements of their own, all unknowns in
one full matrix. A boat of 4.9 m, unlike at its ends, whose shape is given by formulas so
that the Go test can draw it too. Needs Debian's python3-numpy; no test runs it; the Go
test holds the figures printed.

    /usr/bin/python3 testdata/reference/edgeset.py

Saved result:
    feet loose           sheer -33.0048 -49.8527 rocker -22.3172 -32.5958 depth -0.3614 thrust   -0.00 pull   3.72
    joined, ends turn    sheer   1.3779 -13.9565 rocker  -0.8854 -12.0663 depth -0.3545 thrust  121.27 pull  50.78
    joined, ends held    sheer  30.3788  16.8078 rocker  27.4564  18.6375 depth -0.3566 thrust  222.90 pull   3.27
"""
import math

import numpy as np

AFT, FORE, TOE_AFT, TOE_FORE, FROM = -2400.0, 2450.0, -2150.0, 2180.0, 900.0
BEND, STRETCH, KEEL_BEND, KEEL_STRETCH = 3.6e9, 2.4e7, 1.3e8, 8.0e6
CURVE = {-1: 3.0e-5, 1: 4.3e-5}
RIBS = [-1950.0 + 150 * i for i in range(27)]
LEVEL = 1050.0


def sheer(x):
    return 356 + 95 * (x / 2450) ** 2 + 10 * (x / 2450) ** 3


def rocker(x):
    return 40 * (max(0.0, abs(x) - 1050) / 1130) ** 2


def post(x):
    return 2.0 + 6.0 * (x / 2000) ** 2


def run(feet, ends):
    gun = sorted({AFT, FORE, -FROM, FROM, 0.0, *RIBS})
    keel = sorted({TOE_AFT, TOE_FORE, -LEVEL, LEVEL, 0.0, *RIBS})
    nodes = [("g", x, sheer(x)) for x in gun] + [("k", x, rocker(x)) for x in keel]
    at = {(c, x): 3 * i for i, (c, x, _) in enumerate(nodes)}
    n = 3 * len(nodes) + 6
    k, f, sticks = np.zeros((n, n)), np.zeros(n), {}

    def tie(stiff, *terms):
        v = np.zeros(n)
        for i, by in terms:
            v[i] += by
        return stiff * np.outer(v, v)

    def stick(c, x1, x2, h, ei, ea, more):
        nonlocal k
        z1, z2 = h(x1), h(x2)
        l = math.hypot(x2 - x1, z2 - z1)
        cos, sin = (x2 - x1) / l, (z2 - z1) / l
        m = np.zeros((6, 6))
        m[0, 0] = m[3, 3] = ea / l
        m[0, 3] = m[3, 0] = -ea / l
        b = ei / l**3 * np.array([[12, 6 * l, -12, 6 * l], [6 * l, 4 * l * l, -6 * l, 2 * l * l], [-12, -6 * l, 12, -6 * l], [6 * l, 2 * l * l, -6 * l, 4 * l * l]])
        m[np.ix_([1, 2, 4, 5], [1, 2, 4, 5])] += b
        t = np.zeros((6, 6))
        for o in (0, 3):
            t[o : o + 3, o : o + 3] = [[cos, sin, 0], [-sin, cos, 0], [0, 0, 1]]
        own = np.array([0, 0, ei * more, 0, 0, -ei * more])
        d = [at[c, x1] + i for i in range(3)] + [at[c, x2] + i for i in range(3)]
        k[np.ix_(d, d)] += t.T @ m @ t
        f[d] += t.T @ own
        sticks[c, x1] = (d, t, m)

    for x1, x2 in zip(gun, gun[1:]):
        mid = (x1 + x2) / 2
        stick("g", x1, x2, sheer, BEND, STRETCH, CURVE[1 if mid > 0 else -1] if abs(mid) > FROM else 0)
    for x1, x2 in zip(keel, keel[1:]):
        stick("k", x1, x2, rocker, KEEL_BEND, KEEL_STRETCH, 0)
    for x in RIBS:
        k += tie(post(x), (at["g", x] + 1, 1), (at["k", x] + 1, -1))
    far, turn = 1e9, 1e13
    for s, head, foot in ((n - 6, AFT, TOE_AFT), (n - 3, FORE, TOE_FORE)):
        g, q = at["g", head], at["k", foot]
        dx, dz = foot - head, rocker(foot) - sheer(head)
        k += tie(far, (g, 1), (s, -1)) + tie(far, (g + 1, 1), (s + 1, -1))
        k += tie(far, (q + 1, 1), (s + 1, -1), (s + 2, -dx))
        if ends:
            k += tie(turn, (g + 2, 1), (s + 2, -1))
        if feet:
            k += tie(far, (q, 1), (s, -1), (s + 2, dz)) + tie(turn, (q + 2, 1), (s + 2, -1))
    still = [at["k", 0.0], at["k", 0.0] + 1, at["k", 0.0] + 2] + ([] if feet else [at["g", 0.0]])
    k += sum(tie(far, (i, 1)) for i in still)
    u = np.linalg.solve(k, f)
    tip = (u[at["k", LEVEL] + 1] - u[at["k", -LEVEL] + 1]) / (2 * LEVEL)
    rise = lambda c, x: u[at[c, x] + 1] - u[at[c, 0.0] + 1] - tip * x
    d, t, m = sticks["k", 0.0]
    pull = max(post(x) * (u[at["g", x] + 1] - u[at["k", x] + 1]) for x in RIBS)
    return rise("g", AFT), rise("g", FORE), rise("k", TOE_AFT), rise("k", TOE_FORE), u[at["g", 0.0] + 1] - u[at["k", 0.0] + 1], (m @ t @ u[d])[0], pull


for name, feet, ends in (("feet loose", False, True), ("joined, ends turn", True, False), ("joined, ends held", True, True)):
    print("    %-20s sheer %8.4f %8.4f rocker %8.4f %8.4f depth %7.4f thrust %7.2f pull %6.2f" % ((name,) + run(feet, ends)))
