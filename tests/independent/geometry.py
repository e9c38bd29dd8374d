"""Distances of prisms along the rail and of ropes, many at a time with numpy. Metres.

Every part is a convex outline in the side view, perhaps grown by a radius, times a stretch of stations; ropes are true
capsules in space. What is curved is drawn from INSIDE: corners lie on the true curve or within it, so a distance that is
found here is never less than the true one by more than TOLERANCE, which is what rounding takes.
"""
import math

import numpy as np

TOLERANCE = 1e-6   # what is drawn or rounded here may stand out of the true part by at most this [m]
FAR = 200.0        # half spaces reach this far beyond the room [m]


def rot(a):
    """Unit vectors (along, across) in (out, up) of a section at the lean `a`: along points down and out."""
    return np.array([math.sin(a), -math.cos(a)]), np.array([math.cos(a), math.sin(a)])


def ccw(points):
    """The corners in counter-clockwise order, without repeats."""
    p = [np.asarray(q, float) for q in points]
    p = [q for i, q in enumerate(p) if i == 0 or np.hypot(*(q - p[i - 1])) > 1e-9]
    if len(p) > 1 and np.hypot(*(p[0] - p[-1])) < 1e-9:
        p.pop()
    p = np.array(p)
    if len(p) > 2:
        x, y = p[:, 0], p[:, 1]
        if np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1)) < 0:
            p = p[::-1]
    return p


def clip(poly, normal, level):
    """The part of a convex polygon (CCW) where normal . x >= level; fewer than 3 corners when nothing is left."""
    out = []
    d = poly @ normal - level
    for i in range(len(poly)):
        j = (i + 1) % len(poly)
        if d[i] >= 0:
            out.append(poly[i])
        if (d[i] > 0 > d[j]) or (d[i] < 0 < d[j]):
            out.append(poly[i] + (poly[j] - poly[i]) * d[i] / (d[i] - d[j]))
    return np.array(out)


def inscribed(core, radius, n=24):
    """A polygon inside a convex outline grown by a radius (n corners a turn)."""
    core = ccw(core)
    if radius <= 0:
        return core
    dirs = np.array([[math.cos(2 * math.pi * i / n), math.sin(2 * math.pi * i / n)] for i in range(n)])
    return hull((core[:, None, :] + radius * dirs[None, :, :]).reshape(-1, 2))


def hull(points):
    """Convex hull, CCW (monotone chain)."""
    p = sorted(map(tuple, points))

    def half(seq):
        out = []
        for q in seq:
            while len(out) > 1 and cross(out[-2], out[-1], q) <= 1e-18:
                out.pop()
            out.append(q)
        return out[:-1]
    return np.array(half(p) + half(p[::-1]))


def cross(a, b, c):
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def ring(centre, inner, outer, start, sweep, e0, e1, step=math.radians(5)):
    """Convex pieces inside the sector of a ring about `centre`, from the angle `start` over `sweep`, angle 0 along e0
    and a quarter turn along e1. Outer corners lie on the outer circle; inner edges touch the inner one from outside."""
    n = max(1, math.ceil(abs(sweep) / step))
    half = abs(sweep) / n / 2
    e0, e1, centre = np.asarray(e0, float), np.asarray(e1, float), np.asarray(centre, float)
    near = inner / math.cos(half)
    pieces = []
    for i in range(n):
        a, b = start + sweep * i / n, start + sweep * (i + 1) / n
        u, v = e0 * math.cos(a) + e1 * math.sin(a), e0 * math.cos(b) + e1 * math.sin(b)
        if near < outer:
            pieces.append(ccw([centre + near * u, centre + outer * u, centre + outer * v, centre + near * v]))
    return pieces


def outside_disc(poly, centre, radius, n=32):
    """Convex pieces of a convex polygon that lie wholly outside a disc; all of it that one of n tangents cuts off."""
    centre = np.asarray(centre, float)
    d = np.hypot(*(poly - centre).T)
    if len(poly) < 3:
        return [poly] if segment_distance(centre, poly) >= radius else []
    if d.max() <= radius:
        return []
    if point_distance(centre, poly) >= radius:
        return [poly]
    pieces = []
    for i in range(n):
        u = np.array([math.cos(2 * math.pi * i / n), math.sin(2 * math.pi * i / n)])
        piece = clip(poly, u, u @ centre + radius)
        if len(piece) > 2:
            pieces.append(ccw(piece))
    return [p for p in pieces if len(p) > 2]


def segment_distance(point, ends):
    a, b = ends[0], ends[-1]
    ab = b - a
    t = 0.0 if ab @ ab == 0 else min(max((point - a) @ ab / (ab @ ab), 0), 1)
    return float(np.hypot(*(point - a - t * ab)))


def point_distance(point, poly):
    """Signed distance of a point to a convex polygon."""
    return float(side_distance(np.array([[point]]), np.array([poly]))[0])


def padded(polys, n):
    """Corners of several polygons in one array, the last corner repeated up to n."""
    out = np.empty((len(polys), n, 2))
    for i, p in enumerate(polys):
        out[i, :len(p)] = p
        out[i, len(p):] = p[-1]
    return out


def side_distance(a, b):
    """Signed distance of convex outlines a (N, n, 2) and b (N, m, 2): negative is the least shift that frees them."""
    apart = np.minimum(corners_to_edges(a, b), corners_to_edges(b, a))
    along = np.maximum(separation(a, b), separation(b, a))
    return np.where(np.isfinite(along) & (along < 0), along, apart)     # two points have no edges to part them


def side_bound(a, b):
    """A side view's distance that the true one is not less than, and that it is where negative."""
    return np.maximum(separation(a, b), separation(b, a))


def corners_to_edges(p, q):
    """Least distance of corners of p to edges of q, row by row."""
    a, d = q, np.roll(q, -1, axis=1) - q
    dd = np.maximum((d * d).sum(-1), 1e-30)
    w = p[:, :, None, :] - a[:, None, :, :]
    t = np.clip((w * d[:, None]).sum(-1) / dd[:, None], 0, 1)
    return np.sqrt((((w - t[..., None] * d[:, None]) ** 2).sum(-1)).min(axis=(1, 2)))


def separation(a, b):
    """Greatest over a's edges of how far b stands beyond them; -inf where a has no edge."""
    d = np.roll(a, -1, axis=1) - a
    long = np.hypot(d[..., 0], d[..., 1])
    n = np.stack([d[..., 1], -d[..., 0]], -1) / np.maximum(long, 1e-30)[..., None]
    beyond = ((b[:, None, :, :] - a[:, :, None, :]) * n[:, :, None, :]).sum(-1).min(-1)
    return np.where(long > 1e-9, beyond, -np.inf).max(-1)


def combine(d, gap):
    """Clearance of two prisms from their side view's distance and their gap along the rail, both signed."""
    return np.where((d > 0) & (gap > 0), np.hypot(np.maximum(d, 0), np.maximum(gap, 0)), np.maximum(d, gap))


def least_gap(ia, ib, s0, s1):
    """Least gap of the stretches ia + s (s in [s0, s1]) and ib; negative where they overlap."""
    s = np.clip((ib[0] + ib[1] - ia[0] - ia[1]) / 2, s0, s1)
    return np.maximum(ib[0] - ia[1] - s, ia[0] + s - ib[1])


def golden(f, n, steps=40):
    """Least value over t in [0, 1] of n convex functions f(t) at once."""
    g = (math.sqrt(5) - 1) / 2
    lo, hi = np.zeros(n), np.ones(n)
    x, y = hi - g * (hi - lo), lo + g * (hi - lo)
    fx, fy = f(x), f(y)
    best = np.minimum(np.minimum(f(lo), f(hi)), np.minimum(fx, fy))
    for _ in range(steps):
        left = fx < fy
        hi, lo = np.where(left, y, hi), np.where(left, lo, x)
        x2, y2 = hi - g * (hi - lo), lo + g * (hi - lo)
        x, y = x2, y2
        fx, fy = f(x), f(y)
        best = np.minimum(best, np.minimum(fx, fy))
    return best


def rope_to_prism(p, q, r, poly, radius, lo, hi, s0, s1, steps=40):
    """Clearance of capsules (p, q (N, 3) as out, up, station, radius r) to prisms: outlines poly (N, n, 2) grown by radius,
    over stations lo + s to hi + s with s anywhere in [s0, s1] (N). The signed distance of a point to a convex body is convex
    along the line."""
    def at(t):
        x = p + (q - p) * t[:, None]
        s = np.clip(x[:, 2] - (lo + hi) / 2, s0, s1)
        gap = np.maximum(lo + s - x[:, 2], x[:, 2] - hi - s)
        return combine(side_distance(x[:, None, :2], poly) - radius, gap) - r
    return golden(at, len(p), steps)


def rope_to_rope(p, q, a, b):
    """Distance of the segments p-q and a-b (N, 3)."""
    u, v = q - p, b - a
    ends = [point_segment(p, a, b), point_segment(q, a, b), point_segment(a, p, q), point_segment(b, p, q)]
    best = np.min(ends, axis=0)
    n = np.cross(u, v)
    nn = (n * n).sum(-1)
    safe = np.maximum(nn, 1e-30)
    w = a - p
    s, t = (np.cross(w, v) * n).sum(-1) / safe, (np.cross(w, u) * n).sum(-1) / safe
    inner = (nn > 1e-18) & (s > 0) & (s < 1) & (t > 0) & (t < 1)
    return np.where(inner, np.abs((w * n).sum(-1)) / np.sqrt(safe), best)


def point_segment(x, a, b):
    d = b - a
    t = np.clip(((x - a) * d).sum(-1) / np.maximum((d * d).sum(-1), 1e-30), 0, 1)
    return np.sqrt(((x - a - t[:, None] * d) ** 2).sum(-1))
