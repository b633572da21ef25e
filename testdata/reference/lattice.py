#!/usr/bin/env python3
"""A tube of half-circular ribs under straight gunwales, with straight battens forced into
a curve and lashed to them: how far the gunwale moves. An independent solution for
geometry/trial/balance: dense, every rib by its full matrix of flexibilities between the
places where something is tied to it (Castigliano, unit loads), every batten with its
own slopes. The saved result is lattice.csv.

    python3 testdata/reference/lattice.py > testdata/reference/lattice.csv
"""
import numpy as np

L, N = 3500.0, 11                       # mm, ribs
R, EI_RIB = 300.0, 8e6                  # mm, N mm2
EI_RAIL = 7700 * 38 * 19**3 / 12
MOE, WIDE, DEEP = 12000.0, 20.0, 12.0
ANGLES = [0.3, 0.6, 0.85]               # of the quarter circle
X = np.linspace(0, L, N + 2)


def drawn(j, x):
    """The line of batten j: outward and up, and their slopes."""
    k = np.pi / L
    a, b = 3.0 - j, 2.0 + j
    return ((a * np.sin(k * x), b * np.cos(2 * k * x) * (1 + x / L)),
            (a * k * np.cos(k * x), -2 * b * k * np.sin(2 * k * x) * (1 + x / L) + b * np.cos(2 * k * x) / L))


def rib(fast):
    """The stiffness of a half rib against moves of its head outward and of each batten
    outward and up, the head keeping its height."""
    n = 20000
    phi = (np.arange(n) + 0.5) * (np.pi / 2) / n
    ds = R * (np.pi / 2) / n
    y, z = R * np.sin(phi), R * (1 - np.cos(phi))
    m = [R - z]
    for a in ANGLES:
        p = a * np.pi / 2
        below = phi < p
        m.append(np.where(below, R * (1 - np.cos(p)) - z, 0))
        m.append(np.where(below, -(R * np.sin(p) - y), 0) + (R - y))
    m = np.array(m)
    f = m @ m.T * ds / EI_RIB
    if fast:
        turn = m.sum(axis=1) * ds / EI_RIB
        f = f - np.outer(turn, turn) / (R * np.pi / 2 / EI_RIB)
    return np.linalg.inv(f)


def beam(h):
    return np.array([[12, 6 * h, -12, 6 * h], [6 * h, 4 * h * h, -6 * h, 2 * h * h],
                     [-12, -6 * h, 12, -6 * h], [6 * h, 2 * h * h, -6 * h, 4 * h * h]]) / h**3


def solve(fast, cold, opened):
    nodes, per = N + 2, 2 + 4 * len(ANGLES)
    at = lambda i, k: i * per + k       # v, v', then for each batten y, y', z, z'
    K, load = np.zeros((nodes * per,) * 2), np.zeros(nodes * per)
    for i in range(nodes - 1):
        k = beam(X[i + 1] - X[i])
        rail = [at(i, 0), at(i, 1), at(i + 1, 0), at(i + 1, 1)]
        K[np.ix_(rail, rail)] += EI_RAIL * k
        for j, a in enumerate(ANGLES):
            s, c = np.sin(a * np.pi / 2), np.cos(a * np.pi / 2)
            off, along = MOE * WIDE * DEEP**3 / 12, MOE * DEEP * WIDE**3 / 12
            bend = np.array([[off * s * s + along * c * c, (along - off) * s * c],
                             [(along - off) * s * c, off * c * c + along * s * s]])
            idx = [at(i + e, 2 + 4 * j + 2 * d + p) for d in (0, 1) for e in (0, 1) for p in (0, 1)]
            big = np.kron(bend, k)
            u = []
            for d in (0, 1):
                for e in (0, 1):
                    place, slope = drawn(j, X[i + e])
                    u += [place[d], slope[d]]
            # On the stems the stick turns freely, whatever slope it is drawn with.
            loose = [q for q, (e, p) in enumerate([(e, p) for d in (0, 1) for e in (0, 1) for p in (0, 1)])
                     if p == 1 and ((i == 0 and e == 0) or (i == nodes - 2 and e == 1))]
            if loose:
                keep = [q for q in range(8) if q not in loose]
                big = big[np.ix_(keep, keep)] - big[np.ix_(keep, loose)] @ np.linalg.inv(big[np.ix_(loose, loose)]) @ big[np.ix_(loose, keep)]
                idx, u = [idx[q] for q in keep], [u[q] for q in keep]
            K[np.ix_(idx, idx)] += big
            if cold or 1 < i < nodes - 3:
                load[idx] -= big @ np.array(u)
    k = rib(fast)
    for i in range(1, N + 1):
        idx = [at(i, 0)] + [at(i, 2 + 4 * j + 2 * d) for j in range(len(ANGLES)) for d in (0, 1)]
        K[np.ix_(idx, idx)] += k
        if i == 4:
            # A free rib bent over as a level push at its head bends it.
            push = opened / 2 * EI_RIB / (np.pi * R**3 / 4)
            load[at(i, 0)] += push
    held = [at(0, 0), at(nodes - 1, 0)]
    for i in (0, nodes - 1):
        for j in range(len(ANGLES)):
            held += [at(i, 2 + 4 * j), at(i, 4 + 4 * j), at(i, 3 + 4 * j), at(i, 5 + 4 * j)]
    free = [q for q in range(nodes * per) if q not in held]
    u = np.zeros(nodes * per)
    u[free] = np.linalg.solve(K[np.ix_(free, free)], load[free])
    return [u[at(i, 0)] for i in range(1, N + 1)]


print("fast,cold,opened_mm," + ",".join(f"rib{i}_mm" for i in range(1, N + 1)))
for fast in (0, 1):
    for cold in (0, 1):
        for opened in (0, 8):
            print(f"{fast},{cold},{opened}," + ",".join(f"{v:.7f}" for v in solve(fast, cold, opened)))
