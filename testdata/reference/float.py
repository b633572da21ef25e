#!/usr/bin/env python3
"""A plain reference for the righting levers and the wave resistance, in numpy and
scipy, on the same discretisation as the Go benchmarks: a parabolic hull of 4.8 m by
0.72 m, 0.3 m deep, 41 stations of 21 points, 120 kg at (-40, 0, 250) mm, 18 angles
with free trim; and the same form with 0.12 m of draft on a grid of 61 by 15, 20
speeds. Needs Debian's python3-scipy; no test runs it. Prints times and values, some
of which the Go tests hold themselves to.

    /usr/bin/python3 testdata/reference/float.py
"""
import time

import numpy as np
from scipy.optimize import fsolve

G = 9.80665


def hull(stations=41, points=21, l=4800.0, b=720.0, t=300.0):
    x = np.linspace(-l / 2, l / 2, stations)
    z = np.linspace(0, t, points)
    half = b / 2 * np.outer(1 - (2 * x / l) ** 2, 1 - (1 - z / t) ** 2)
    y = np.concatenate([half, -half[:, ::-1]], axis=1)
    zz = np.tile(np.concatenate([z, z[::-1]]), (stations, 1))
    w = np.ones(stations)
    w[1:-1:2], w[2:-1:2] = 4, 2
    return x, y, zz, w * (x[1] - x[0]) / 3


def immersed(h, heel, trim, rise):
    """Volume and its first moments under the plane, by clipping every edge."""
    x, y, z, w = h
    up = np.array([np.sin(trim), np.sin(heel) * np.cos(trim), np.cos(heel) * np.cos(trim)])
    flat = np.hypot(up[1], up[2])
    ny, nz = up[1] / flat, up[2] / flat
    d = ((rise - up[0] * x) / flat)[:, None]
    py, pz = y - d * ny, z - d * nz
    qy, qz = np.roll(py, -1, 1), np.roll(pz, -1, 1)
    hp, hq = ny * py + nz * pz, ny * qy + nz * qz
    with np.errstate(divide="ignore", invalid="ignore"):
        s = hp / (hp - hq)
    cross = (hp < 0) != (hq < 0)
    my, mz = py + np.where(cross, s, 0) * (qy - py), pz + np.where(cross, s, 0) * (qz - pz)
    ay, az = np.where(hp < 0, py, my), np.where(hp < 0, pz, mz)
    by, bz = np.where(hq < 0, qy, my), np.where(hq < 0, qz, mz)
    wet = (hp < 0) | (hq < 0)
    c = np.where(wet, ay * bz - az * by, 0)
    area = c.sum(1) / 2
    fy, fz = (c * (ay + by)).sum(1) / 6, (c * (az + bz)).sum(1) / 6
    fy, fz = fy + area * d[:, 0] * ny, fz + area * d[:, 0] * nz
    return (w * area).sum(), np.array([(w * area * x).sum(), (w * fy).sum(), (w * fz).sum()]), up


def gz(h, mass, g, heels, density=1000.0):
    want, start, out = mass / density * 1e9, np.array([80.0, 0.0]), []
    for heel in heels:
        def off(p):
            v, m, up = immersed(h, heel, p[1], p[0])
            ahead = np.array([np.cos(p[1]), -np.sin(p[1]) * np.sin(heel), -np.sin(p[1]) * np.cos(heel)])
            return [v / want - 1, (ahead @ m - v * (ahead @ g)) / want / 1000]
        start = fsolve(off, start, xtol=1e-12)
        v, m, _ = immersed(h, heel, start[1], start[0])
        port = np.array([0, np.cos(heel), -np.sin(heel)])
        out.append(port @ g - port @ m / v)
    return np.array(out)


def waves(y, length, depth, density, u):
    """Michell's integral over exact integrals of hats, l = cosh v, Gauss panels."""
    n, m = y.shape
    hx, hz, k0 = length / (n - 1), depth / (m - 1), G / u**2
    mid = -length / 2 + hx * (np.arange(n - 1) + 0.5)
    node, weight = np.polynomial.legendre.leggauss(5)
    total, v = 0.0, 0.0
    quiet = 0
    while np.cosh(v) < 80:
        width = min(0.25, 4 / (k0 * length * np.sinh(v) + np.sqrt(k0 * length * 2)))
        part = 0.0
        for c, wt in zip(node, weight):
            l = np.cosh(v + width * (1 + c) / 2)
            a = k0 * l * l * hz
            e = np.exp(-a)
            row = np.full(m, (1 - e) ** 2 / a**2)
            row[0], row[-1] = (a - 1 + e) / a**2, (1 - e - a * e) / a**2
            row[1:] = row[1:] * np.exp(-a * np.arange(m - 1))
            g = y @ row * hz
            s = np.sinc(k0 * l * hx / 2 / np.pi)
            z = (np.diff(g) * np.exp(1j * k0 * l * mid)).sum() * s
            part += wt * abs(z) ** 2 * l * l
        part *= width / 2
        total += part
        left = part * np.cosh(v) / (4 * np.sinh(v + width) * width)
        quiet = quiet + 1 if left < 1e-5 * total and np.cosh(v) > 3 else 0
        if quiet > 8:
            break
        v += width
    return 4 * density * G * G / (np.pi * u * u) * total


def timed(f, repeat=5):
    best = 1e9
    for _ in range(repeat):
        t = time.perf_counter()
        r = f()
        best = min(best, time.perf_counter() - t)
    return r, best


if __name__ == "__main__":
    h = hull()
    heels = np.radians(2.5 * np.arange(1, 19))
    v, t = timed(lambda: gz(h, 120.0, np.array([-40.0, 0, 250.0]), heels))
    print(f"GZ of 18 angles: {t * 1e3:.1f} ms")
    for a, b in zip(np.degrees(heels), v):
        print(f"  {a:5.1f} deg {b:12.6f} mm")
    x, d = np.linspace(-1, 1, 61), np.linspace(0, 1, 15)
    y = 0.36 * np.outer(1 - x**2, 1 - d**2)
    speeds = (2.5 + 0.5 * np.arange(20)) / 3.6
    r, t = timed(lambda: [waves(y, 4.8, 0.12, 999.1026, u) for u in speeds], 2)
    print(f"waves at 20 speeds: {t * 1e3:.1f} ms")
    for u, n in zip(speeds, r):
        print(f"  {u * 3.6:5.1f} km/h {n:10.5f} N")
