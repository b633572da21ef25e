#!/usr/bin/env python3
"""Mass, place and height of the weight of a box afloat, from a scale, three freeboards
and an inclining, by scipy's least squares.

The box's hydrostatics are the closed forms of a wall-sided body, heel and trim apart; the
package under test floats polygons. Needs numpy and scipy (Debian's python3-scipy); no test runs it. Writes weighing.csv
beside itself, which geometry/survey/weighing is held to: a case a row.

    cd testdata/reference && /usr/bin/python3 weighing.py
"""
import numpy as np
from scipy.optimize import brentq, least_squares

L, B, SHEER, RHO = 4000.0, 500.0, 300.0, 1e-6  # mm, kg/mm3
AT = (-1500.0, 0.0, 1500.0)
WEIGHT = (15.0, 0.0, 160.0)  # kg, along, high
DISTANCE = 150.0
WORKED = (30.0, 10.0, 150.0)
OFF_WORKED = (0.08 * 30, 30.0, 25.0)


def afloat(m, x, z, inclined):
    """All the mass, its center, the draft amidships and the trim."""
    own, parts = np.array([m, x, z]), [(m, x, z)]
    if inclined:
        parts.append(WEIGHT)
    mass = sum(p[0] for p in parts)
    xg = sum(p[0] * p[1] for p in parts) / mass
    zg = sum(p[0] * p[2] for p in parts) / mass
    t = mass / (RHO * L * B)
    bml = L * L / 12 / t

    def lever(k):  # k: slope of the water in the box's axes
        xb, zb = bml * k, t / 2 + bml * k * k / 2
        return (xg - xb) + (zg - zb) * k

    k = brentq(lever, -0.02, 0.02, xtol=1e-15)
    return mass, xg, zg, t, k


def shows(p, case):
    m, x, z = p
    mass, xg, zg, t, k = afloat(m, x, z, case["angles"])
    out = [m, x, z]
    if case["scale"]:
        out.append(m)
    if case["freeboards"]:
        _, _, _, t0, k0 = afloat(m, x, z, None)
        out += [(SHEER - (t0 + k0 * s)) / np.hypot(1, k0) for s in AT]
    if case["angles"]:
        a = heel(case)
        bm = B * B / 12 / t
        zb = t / 2 + L * L / 12 / t * k * k / 2
        gm = bm + zb - zg
        out.append(mass * np.tan(a) * (gm + bm * np.tan(a) ** 2 / 2))
    return np.array(out)


def heel(case):
    a = np.radians(case["angles"])
    return (a[a > 0].mean() - a[a < 0].mean()) / 2


def reading(case):
    a = np.radians(case["angles"])
    p, s = a[a > 0], a[a < 0]
    free = len(a) - 2
    one = np.radians(0.25)
    if free > 0:
        one = max(one, np.sqrt((((p - p.mean()) ** 2).sum() + ((s - s.mean()) ** 2).sum()) / free))
    return one / 2 * np.sqrt(1 / len(p) + 1 / len(s))


def solve(case):
    seen, off = list(WORKED), list(OFF_WORKED)
    if case["scale"]:
        seen.append(case["scale"])
        off.append(np.hypot(0.15, 0.005 * case["scale"]))
    if case["freeboards"]:
        seen += case["freeboards"]
        off += [3.0] * 3
    if case["angles"]:
        a, da = heel(case), reading(case)
        moment = WEIGHT[0] * DISTANCE
        seen.append(moment)
        off.append(moment * np.sqrt(0.01**2 + (4 / DISTANCE) ** 2 + (da / (np.sin(a) * np.cos(a))) ** 2))
    seen, off = np.array(seen), np.array(off)
    r = least_squares(lambda p: (seen - shows(p, case)) / off, WORKED, x_scale=(1, 10, 10), xtol=1e-15, ftol=1e-15, gtol=1e-15)
    cov = np.linalg.inv(r.jac.T @ r.jac)
    return r.x, np.sqrt(np.diag(cov))


CASES = [
    dict(name="scale", scale=33.1, freeboards=None, angles=None),
    dict(name="freeboards", scale=0, freeboards=[276.0, 281.0, 287.5], angles=None),
    dict(name="inclining", scale=0, freeboards=None, angles=[3.9, -3.6, 4.1, -3.7]),
    dict(name="all", scale=33.1, freeboards=[279.5, 282.0, 286.0], angles=[3.9, -3.6, 4.1, -3.7]),
    dict(name="apart", scale=26.0, freeboards=[276.0, 280.5, 284.0], angles=[4.2, -3.9]),
]

if __name__ == "__main__":
    rows = ["name,scale,freeboards,angles,mass,along,high,mass_off,along_off,high_off"]
    for c in CASES:
        x, s = solve(c)
        words = lambda v: " ".join(map(str, v or []))
        rows.append(",".join([c["name"], str(c["scale"]), words(c["freeboards"]), words(c["angles"])] + [f"{v:.6f}" for v in [*x, *s]]))
    open("weighing.csv", "w").write("# written by weighing.py, numpy and scipy\n" + "\n".join(rows) + "\n")
