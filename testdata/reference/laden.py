#!/usr/bin/env python3
"""A canoe's half frame under what hangs on its gunwales, as geometry/trial/laden has it, solved whole:
every rib is cut into short straight sticks, none is condensed, and scipy solves all movements at
once. Straight sticks in space have the 12 by 12 stiffness of the textbooks (J. S. Przemieniecki,
Theory of Matrix Structural Analysis). laden-lake.json is the shipped design lake: its shape, woods
and beds in mm, N/mm2 and N/mm (go test ./geometry/trial/laden -run TestWhole -shape FILE writes it).

    cd testdata/reference; /usr/bin/python3 laden.py < laden-lake.json > laden.csv
"""
import json
import math
import sys

import numpy as np
from scipy.sparse import coo_matrix
from scipy.sparse.linalg import spsolve

PIECE = 1.5                     # mm of rib in one stick
G = 1 / 16.0                    # modulus of rigidity over that of elasticity


def torsion(a, b):
    """Saint-Venant's series for a rectangle."""
    a, b = max(a, b), min(a, b)
    s = sum(math.tanh(n * math.pi * a / (2 * b)) / n**5 for n in range(1, 60, 2))
    return a * b**3 * (1 / 3 - 64 * b / (math.pi**5 * a) * s)


class Whole:
    def __init__(self):
        self.n, self.i, self.j, self.v, self.load = 0, [], [], [], {}

    def dof(self):
        self.n += 1
        return self.n - 1

    def node(self, free, tied=None):
        """Six numbers, None where it is held; tied gives those of another node first."""
        return [tied[w] if tied and w in tied else (self.dof() if w in free else None) for w in range(6)]

    def add(self, dofs, k):
        for a, p in enumerate(dofs):
            for b, q in enumerate(dofs):
                if p is not None and q is not None and k[a, b]:
                    self.i.append(p), self.j.append(q), self.v.append(k[a, b])

    def spring(self, p, q, k):
        self.add([p, q], k * np.array([[1, -1], [-1, 1.0]]))

    def ground(self, p, k):
        self.add([p], np.array([[k]]))

    def solve(self):
        k = coo_matrix((self.v, (self.i, self.j)), shape=(self.n, self.n)).tocsc()
        f = np.zeros(self.n)
        for p, v in self.load.items():
            f[p] += v
        return spsolve(k, f)


def stick(p, q, up, moe, area, tall, flat, twist):
    """Stiffness in space, with what turns its movements into its own axes."""
    p, q = np.array(p, float), np.array(q, float)
    l = np.linalg.norm(q - p)
    on = (q - p) / l
    u = np.array(up, float)
    u = u - on * u.dot(on)
    u /= np.linalg.norm(u)
    r = np.array([on, u, np.cross(on, u)])
    k = np.zeros((12, 12))
    for i, v in ((0, moe * area / l), (3, G * moe * twist / l)):
        k[i, i] = k[i + 6, i + 6] = v
        k[i, i + 6] = k[i + 6, i] = -v
    for w, t, e, s in ((1, 5, moe * tall, 1), (2, 4, moe * flat, -1)):
        d = [w, t, w + 6, t + 6]
        m = e / l**3 * np.array([[12, s * 6 * l, -12, s * 6 * l], [s * 6 * l, 4 * l * l, -s * 6 * l, 2 * l * l],
                                 [-12, -s * 6 * l, 12, -s * 6 * l], [s * 6 * l, 2 * l * l, -s * 6 * l, 4 * l * l]])
        k[np.ix_(d, d)] += m
    turn = np.kron(np.eye(4), r)
    return turn.T @ k @ turn, k, turn, l


def pieces(rib):
    """Points of the half rib along it, with stops at bends and marks."""
    bends, total = rib['bends'], sum(b[1] for b in rib['bends'])
    stops, s = {0.0, total, *rib['marks']}, 0.0
    for b in bends:
        s += b[1]
        stops.add(min(s, total))
    stops = sorted(stops)
    along = [0.0]
    for a, b in zip(stops, stops[1:]):
        if b - a > 1e-9:
            n = math.ceil((b - a) / PIECE)
            along += [a + (b - a) * k / n for k in range(1, n + 1)]

    def at(s):
        y = z = a = 0.0
        for radius, length in bends:
            d = min(s, length)
            if radius:
                y += radius * (math.sin(a + d / radius) - math.sin(a))
                z += radius * (math.cos(a) - math.cos(a + d / radius))
                a += d / radius
            else:
                y, z = y + d * math.cos(a), z + d * math.sin(a)
            s -= d
            if s <= 0:
                break
        return y, z
    return along, [at(s) for s in along]


def hoop(w, boat, rib, keel, marks, head):
    """Half a rib between the nodes given; head is the node of its own head."""
    along, places = pieces(rib)
    t, wide, moe = rib['thick'], boat['rib_wide'], boat['rib_moe']
    nodes = []
    for k, s in enumerate(along):
        if k == 0:
            nodes.append(w.node({4}, {0: keel[0], 2: keel[2]}))
        elif k == len(along) - 1:
            nodes.append(head)
        else:
            on = [m for m, at in zip(marks, rib['marks']) if abs(at - s) < 1e-9]
            nodes.append(w.node({3, 4, 5}, {i: on[0][i] for i in range(3)}) if on else w.node(set(range(6))))
    out = []
    for k in range(1, len(nodes)):
        p, q = [(rib['x'], *places[i]) for i in (k - 1, k)]
        up = np.cross((1, 0, 0), np.array(q) - np.array(p))
        kk, own, turn, l = stick(p, q, up, moe, wide * t, wide * t**3 / 12, t * wide**3 / 12, torsion(wide, t))
        w.add(nodes[k - 1] + nodes[k], kk)
        out.append((nodes[k - 1] + nodes[k], own, turn))
    return out


def head_holds(boat, rib):
    """How a rib's head holds against being turned about x, and about y and z, while all else stands."""
    w = Whole()
    none = [None] * 6
    head = w.node({3, 4, 5})
    hoop(w, boat, rib, none, [none] * len(rib['marks']), head)
    k = coo_matrix((w.v, (w.i, w.j)), shape=(w.n, w.n)).tocsc()
    give = np.array([spsolve(k, np.eye(1, w.n, p).ravel())[head[3:]] for p in head[3:]])
    return np.linalg.inv(give)


def run(boat, case):
    w = Whole()
    share, cloth, ground = case
    g, keel = boat['gunwale'], boat['keel']
    sticks = {0: (keel['moe'], keel['wide'], keel['deep'], True), -1: (g['moe'], g['wide'], g['deep'], True)}

    def run_on(i, last, p, node, q):
        if i == 0:
            kk = stick(p, q, (0, 0, 1), keel['moe'], keel['wide'] * keel['deep'], keel['wide'] * keel['deep']**3 / 12,
                       keel['deep'] * keel['wide']**3 / 12, torsion(keel['wide'], keel['deep']))
        elif i == 4:
            o = boat['outwale']
            kk = stick(p, q, (0, math.sin(g['tilt']), math.cos(g['tilt'])), g['moe'], g['wide'] * g['deep'],
                       g['wide'] * g['deep']**3 / 12 + o['moe'] / g['moe'] * o['wide'] * o['deep']**3 / 12,
                       g['deep'] * g['wide']**3 / 12 + o['moe'] / g['moe'] * o['deep'] * o['wide']**3 / 12, torsion(g['wide'], g['deep']))
        else:                   # stringers pull and push alone
            s = boat['stringer']
            kk = stick(p, q, (0, 0, 1), s['moe'], s['wide'] * s['deep'], 0, 0, 0)
        w.add(last + node, kk[0])
        return kk

    def stem(end):
        st = boat['stems'][end]
        on = [w.node({0, 2, 4} if i or end else {2, 4}) for i in range(5)]
        for i in range(1, 5):
            s = st
            w.add(on[i - 1] + on[i], stick(st['at'][i - 1], st['at'][i], (1, 0, 1), s['moe'], s['wide'] * s['deep'],
                                           s['wide'] * s['deep']**3 / 12, s['deep'] * s['wide']**3 / 12, torsion(s['wide'], s['deep']))[0])
        ends = [w.node({4}, {0: on[0][0], 2: on[0][2]})] + on[1:4] + [w.node({4, 5}, {0: on[4][0], 2: on[4][2]})]
        return on, ends, [tuple(p) for p in st['at']]

    row, last, lastp = stem(0)
    rowp = lastp[:]
    lastp = lastp[:]
    rails, ribs = [], []

    def cover(row, rowp, new, newp):
        long = newp[0][0] - rowp[0][0]
        girth = sum(math.dist(a, b) for r in (rowp, newp) for a, b in zip(r, r[1:])) / 2
        rise = (rowp[4][2] - rowp[0][2] + newp[4][2] - newp[0][2]) / 2
        form = [(row[4][0], .5), (new[4][0], .5), (row[0][0], -.5), (new[0][0], -.5)] + \
            [(n[2], s * rise / 2 / long) for n, s in ((new[0], 1), (new[4], 1), (row[0], -1), (row[4], -1))]
        b = np.array([f[1] for f in form])
        w.add([f[0] for f in form], cloth * long / girth * np.outer(b, b))

    for place in boat['places']:
        p = tuple(place['at'])
        node = w.node(set(range(6)) - ({1} if place['cross'] else set()))
        rail = run_on(4, last[4], lastp[4], node, p)
        rails.append((lastp[4], p, last[4] + node, rail))
        last[4], lastp[4] = node, p
        for way, force in ((1, place['out']), (2, place['up'])):
            if node[way] is not None:
                w.load[node[way]] = w.load.get(node[way], 0) + force
        if place['rib'] < 0:
            continue
        rib = boat['ribs'][place['rib']]
        along, places = pieces(rib)
        at = [places[0]] + [places[min(range(len(along)), key=lambda k: abs(along[k] - m))] for m in rib['marks']]
        at = [(rib['x'], y, z + rib['keel_z']) for y, z in at]
        new = [w.node({0, 2, 4})] + [w.node({0, 1, 2}) for _ in rib['marks']]
        for i in range(4):
            run_on(i, last[i], lastp[i], new[i], at[i])
            last[i], lastp[i] = new[i], at[i]
            w.ground(new[i][2], rib['ground' if ground else 'afloat'][i])
        if share == 1:
            own = node
        else:
            own = w.node({3, 4, 5}, {i: node[i] for i in range(3)})
            k = head_holds(boat, rib)
            by = share / (1 - share)
            w.spring(own[3], node[3], by * k[0, 0])
            w.spring(own[4], node[4], by * k[1, 1])
            w.spring(own[5], node[5], by * (k[2, 2] - (1 - share) * k[1, 2]**2 / k[1, 1]))
        hooped = hoop(w, boat, rib, new[0], new[1:], own)
        ribs.append((rib, hooped))
        newp = at + [p]
        cover(row, rowp, new + [node], newp)
        row, rowp = new + [node], newp
    on, ends, points = stem(1)
    for i in range(5):
        rail = run_on(i, last[i], lastp[i], ends[i], points[i])
    rails.append((lastp[4], points[4], last[4] + ends[4], rail))
    cover(row, rowp, on, points)
    u = w.solve()

    def forces(dofs, own, turn):
        return own @ turn @ np.array([0 if d is None else u[d] for d in dofs])
    stress = []
    for rib, hooped in ribs:
        t, wide, most = rib['thick'], boat['rib_wide'], 0
        for dofs, own, turn in hooped:
            f = forces(dofs, own, turn)
            for e in (0, 6):
                most = max(most, abs(f[e]) / (wide * t) + abs(f[e + 5]) / (wide * t**2 / 6) + abs(f[e + 4]) / (t * wide**2 / 6))
        stress.append(most)
    curves = {}
    for p, q, dofs, (kk, own, turn, l) in rails:
        d = turn @ np.array([0 if k is None else u[k] for k in dofs])
        up, side = (d[7] - d[1]) / l, (d[2] - d[8]) / l
        curves[q[0]] = ((-6 * up + 2 * d[5] + 4 * d[11]) / l, (-6 * side + 2 * d[4] + 4 * d[10]) / l, (d[6] - d[0]) / l)
    return stress, curves


def main():
    boat = json.load(sys.stdin)
    cases = [(0, 0, False), (0.5, 4, False), (1, 15, False), (0.5, 4, True)]
    done = [run(boat, c) for c in cases]
    print('what,at_mm,' + ','.join('heads %g cloth %g %s' % (h, c, 'aground' if g else 'afloat') for h, c, g in cases))
    for i, rib in enumerate(boat['ribs']):
        print('rib,%.3f,' % rib['x'] + ','.join('%.5f' % s[i] for s, _ in done))
    for place in boat['places']:
        for k, what in enumerate(('tall', 'flat', 'long')):
            x = place['at'][0]
            print('%s,%.3f,' % (what, x) + ','.join('%.6e' % c[x][k] for _, c in done))


main()
