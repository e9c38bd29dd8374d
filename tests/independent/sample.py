#!/usr/bin/python3
"""Samples every move of a scene densely and tells the least clearance of every pair that is judged, as JSON.

usage: sample.py SCENE [--command stowpath] [--within MM] [--play] [--without KIND,...]

A pair's clearance is refined between samples until its least value stands to within a hundredth of a millimetre or so; it is
never less than the true one by more than geometry.TOLERANCE. Pairs that stay farther apart than --within are not told.
"""
import argparse
import json
import subprocess
import sys
from dataclasses import dataclass

import numpy as np

import geometry as geo
import parts
import ropes
import rules
from kinematics import Course, seat_shifts
from reader import read_scene

POSES = 61     # samples of a segment, before each pair is looked at more closely


@dataclass
class Seen:
    """The least clearance of a pair in a move, and where."""
    a: str
    b: str
    clearance: float
    need: float
    touch: bool
    zone: bool
    lean: float
    folds: list
    station: float = None
    fixed: bool = False     # both stay where they are in the room

    def short(self):
        return self.clearance - self.need


STILL = {'led-off', 'hanging'}      # ropes that do not move, but with a hoist that rolls


class Pairs:
    """Pairs of outlines that are judged alike, as columns."""

    def __init__(self):
        self.rows = []

    def add(self, a, b, judged, zone=False):
        for pa in outlines(a, judged.cut and judged.cut[0], judged.cut and judged.cut[2]):
            for pb in outlines(b, judged.cut and judged.cut[1], judged.cut and judged.cut[2]):
                self.rows.append((a, b, pa, pb, judged, zone))


_cuts = {}


def outlines(part, centre, radius):
    """The part's outline, or the pieces of it outside of a disc in its own frame."""
    if centre is None:
        return [(part.poly, part.radius)]
    key = (id(part), centre, radius)
    if key not in _cuts:
        core = part.poly if part.radius == 0 else geo.inscribed(part.poly, part.radius)
        _cuts[key] = (part, [(p, 0.0) for p in geo.outside_disc(core, centre, radius)])
    return _cuts[key][1]


def parts_near(point, things, reach):
    """Things of which some point is within `reach` of a point (out, up, station), each with its distance."""
    out = []
    for t in things:
        d = geo.point_distance(np.array(point[:2]), t.poly) - t.radius
        gap = min(max(lo - point[2], point[2] - hi) for lo, hi in t.stations)
        far = float(geo.combine(np.array(d), np.array(gap)))
        if far <= reach:
            out.append((far, t))
    return out


class Sampler:
    def __init__(self, scene, centres=None, within=0.05, without=(), stretch=True):
        self.scene, self.centres, self.within, self.stretch = scene, centres, within, stretch
        keep = (lambda p: p.kind not in without and p.name not in without)
        self.without = without
        self.stair = [p for p in parts.stair_parts(scene) if keep(p)]
        self.room = [p for p in parts.room_parts(scene) if keep(p)]
        self.zones = [(z, when) for z, when in parts.zone_parts(scene) if keep(z)]
        for thing in self.room:
            thing.low, thing.high = thing.poly.min(0) - thing.radius, thing.poly.max(0) + thing.radius
        self.st = parts.Stair(scene)
        self.fixed = {}     # which thing of the room holds which point

    def run(self, shift=(0.0, 0.0)):
        """Seen pairs of every move: {(index, kind): {(a, b, touch): Seen}}."""
        course = Course(self.scene, self.centres, shift, self.stretch)
        out = {}
        for segment in course.run():
            move = out.setdefault((segment.index, segment.kind), {})
            for seen in Stretch(self, course.chain, segment).look():
                key = (seen.a, seen.b, seen.touch, seen.zone)
                if key not in move or seen.short() < move[key].short():
                    move[key] = seen
        return out


class Stretch:
    """One segment of a move, looked at."""

    def __init__(self, sampler, chain, segment):
        self.s, self.chain, self.seg, self.scene = sampler, chain, segment, sampler.scene
        n = 1 if segment.fixed else 25 if segment.on_floor and segment.state == 'standing' else POSES
        self.u = np.linspace(0, 1, n)
        self.within = sampler.within

    def look(self):
        yield from self.look_prisms()
        yield from RopeLook(self).look()

    # poses

    def frames(self, u):
        lean, folds = self.seg.poses(u)
        return self.chain.frames(lean, folds, self.seg.pivot)

    def span(self, u):
        """Least and greatest station meant at u (n,)."""
        a, b = np.array(self.seg.stations), np.array(self.seg.stations_end)
        s = a + (b - a) * u[:, None]
        return s[:, 0], s[:, 1]

    def place(self, body, poly, frames, rows):
        """Corners (rows, V, 2) of outlines `poly` (rows, V, 2) of bodies (rows,), at the poses `rows` of the frames."""
        o, al, ac = frames
        k = np.maximum(body, 0)
        world = o[rows, k][:, None, :] + poly[..., :1] * al[rows, k][:, None, :] + poly[..., 1:] * ac[rows, k][:, None, :]
        return np.where((body < 0)[:, None, None], poly, world)

    # prisms

    def pinned(self, part):
        return not part.only_pinned or self.seg.pinned[part.hinge]

    def pairs(self):
        out = Pairs()
        stair = [p for p in self.s.stair if self.pinned(p)]
        for i, a in enumerate(stair):
            for b in self.near(a):
                for judged in rules.against_room(a, b, self.scene):
                    out.add(a, b, judged)
            for b in stair[i + 1:]:
                if a.body != b.body:
                    p, q = (a, b) if a.body < b.body else (b, a)
                    for judged in rules.between_sections(p, q, self.s.st, self.scene):
                        out.add(p, q, judged)
            for zone, when in self.s.zones:
                if self.seg.state in when or ('hoist' in when and self.seg.line_on):
                    out.add(a, zone, rules.Judged(0.0), zone=True)
        return out.rows

    def near(self, part):
        """Things of the room that the part comes near in the side view, somewhere in the segment."""
        frames, n = self.frames(self.u), len(self.u)
        w = self.place(np.full(n, part.body), np.broadcast_to(part.poly, (n,) + part.poly.shape), frames, np.arange(n))
        step = np.abs(np.diff(w, axis=0)).max() if n > 1 else 0.0
        pad = self.within + part.radius + step
        lo, hi = w.min((0, 1)) - pad, w.max((0, 1)) + pad
        return [t for t in self.s.room if np.all(t.low <= hi) and np.all(t.high >= lo)]

    def look_prisms(self):
        rows = self.pairs()
        if not rows:
            return
        self.columns(rows)
        lower = self.lower_bounds()
        lower[np.ix_(self.sparse, np.arange(len(self.u)) % 6 != 0)] = np.inf
        self.mask_folds(lower)
        i, k = np.nonzero(lower < self.within)
        lower[lower >= self.within] = np.inf
        lower[i, k] = np.maximum(lower[i, k], self.clearances(i, self.u[k], geo.side_bound))
        yield from self.refined(rows, self.least_of(lower))

    def least_of(self, lower):
        """Clearances wherever a pair's least may be; elsewhere infinite. The bound's best pose is looked at first."""
        d = np.full(lower.shape, np.inf)
        ground = np.array([r[4].when in ('up', 'down') for r in self.rows])
        i = np.arange(len(lower))
        k = lower.argmin(1)
        i, k = i[np.isfinite(lower[i, k])], k[np.isfinite(lower[i, k])]
        d[i, k] = self.clearances(i, self.u[k])
        more = np.isfinite(lower) & (lower < d.min(1)[:, None]) & ~np.isfinite(d) | (np.isfinite(lower) & ground[:, None])
        i, k = np.nonzero(more)
        d[i, k] = self.clearances(i, self.u[k])
        self.mask_ground(d)
        return d

    def columns(self, rows):
        self.rows = rows
        wide = max(max(len(r[2][0]), len(r[3][0])) for r in rows)
        self.pa, self.pb = geo.padded([r[2][0] for r in rows], wide), geo.padded([r[3][0] for r in rows], wide)
        self.na, self.nb = np.array([len(r[2][0]) for r in rows]), np.array([len(r[3][0]) for r in rows])
        self.grow = np.array([r[2][1] + r[3][1] for r in rows])
        self.ba, self.bb = np.array([r[0].body for r in rows]), np.array([r[1].body for r in rows])
        self.need = np.array([r[4].need for r in rows])
        # a hook turns about the pipe that it touches: a few poses tell as much as many
        self.sparse = np.nonzero([r[0].kind == 'hook' and r[4].touch for r in rows])[0]
        cache, gaps = {}, []
        lo, hi = self.span(self.u)
        for r in rows:
            key = (id(r[0]), id(r[1]))
            if key not in cache:
                cache[key] = self.gap(r[0], r[1], lo, hi)
            gaps.append(cache[key])
        self.gaps = np.array(gaps)

    def gap(self, a, b, lo, hi):
        """Least gap along the rail (n,) over the stations meant."""
        if b.body >= 0:
            lo = hi = np.zeros(len(lo))
        ia, ib = np.array(a.stations)[:, None, None, :], np.array(b.stations)[None, :, None, :]
        still = np.ptp(lo) == np.ptp(hi) == 0
        lo, hi = (lo[:1], hi[:1]) if still else (lo, hi)
        least = geo.least_gap(np.moveaxis(ia, -1, 0), np.moveaxis(ib, -1, 0), lo, hi).min(axis=(0, 1))
        return np.full(len(self.u), least[0]) if still else least

    def lower_bounds(self):
        """For every pair and pose a distance that the true one is not less than."""
        frames = self.frames(self.u)
        n, k = len(self.rows), len(self.u)
        boxes = {}

        def bounds(part_poly, body):
            key = (id(part_poly), body)
            if key not in boxes:
                p = np.broadcast_to(part_poly, (k,) + part_poly.shape)
                w = self.place(np.full(k, body), p, frames, np.arange(k))
                boxes[key] = np.concatenate([w.min(1), w.max(1)], 1)
            return boxes[key]
        a = np.stack([bounds(r[2][0], r[0].body) for r in self.rows])
        b = np.stack([bounds(r[3][0], r[1].body) for r in self.rows])
        gap = np.maximum(np.maximum(b[..., :2] - a[..., 2:], a[..., :2] - b[..., 2:]), 0)
        side = np.hypot(gap[..., 0], gap[..., 1]) - self.grow[:, None]
        return geo.combine(side, self.gaps)

    def clearances(self, i, u, side=geo.side_distance):
        """Clearance of pairs i at u, entry by entry."""
        out = np.empty(len(i))
        most = np.maximum(self.na[i], self.nb[i])
        for limit in (4, 8, 64):
            here = np.nonzero((most <= limit) & (most > {4: 0, 8: 4, 64: 8}[limit]))[0]
            for part in np.array_split(here, len(here) // 20000 + 1):
                if len(part):
                    out[part] = self.exact(i[part], u[part], min(limit, self.pa.shape[1]), side)
        return out

    def exact(self, i, u, wide, measure):
        frames = self.frames(u)
        rows = np.arange(len(u))
        a = self.place(self.ba[i], self.pa[i][:, :wide], frames, rows)
        b = self.place(self.bb[i], self.pb[i][:, :wide], frames, rows)
        return geo.combine(measure(a, b) - self.grow[i], self.gap_at(i, u))

    def gap_at(self, i, u):
        if len(self.u) == 1:
            return self.gaps[i, 0]
        at = u * (len(self.u) - 1)
        k = np.minimum(at.astype(int), len(self.u) - 2)
        t = at - k
        return self.gaps[i, k] * (1 - t) + self.gaps[i, k + 1] * t

    def mask_folds(self, d):
        """Leaves out the folds at which a judgement does not hold."""
        folds = self.seg.poses(self.u)[1]
        for i, r in enumerate(self.rows):
            if r[4].when in ('below', 'above'):
                free = folds[:, r[4].hinge] >= rules.free_fold(self.s.st, r[4].hinge, self.scene)
                d[i, free if r[4].when == 'below' else ~free] = np.inf

    def holds(self):
        """Whether each judgement holds at each pose; the casters' at none, as theirs changes between poses."""
        ok = np.zeros((len(self.rows), len(self.u)))
        self.mask_folds(ok)
        ok[[r[4].when in ('up', 'down') for r in self.rows]] = np.inf
        return np.isfinite(ok)

    def mask_ground(self, d):
        """Leaves out the poses at which a judgement of the casters on the floor does not hold."""
        ground = [i for i, r in enumerate(self.rows) if r[4].when in ('up', 'down')]
        if ground:
            down = self.down(d, ground)
            for i in ground:
                d[i, ~down if self.rows[i][4].when == 'down' else down] = np.inf

    def down(self, d, ground):
        """Whether the casters may touch the floor at each pose: while they stand, and until they first are clear of it."""
        if self.seg.on_floor:
            return np.ones(len(self.u), bool)
        if not self.seg.leaves_floor:
            return np.zeros(len(self.u), bool)
        up = [i for i in ground if self.rows[i][4].when == 'up']
        clear = np.all([d[i] >= self.need[i] + rules.FOOT_PLAY for i in up], axis=0)
        return np.cumsum(clear) == 0

    def refined(self, rows, d):
        """Each pair's least value, looked for more closely about the best sample."""
        best = d.min(1)
        ids = np.nonzero(np.isfinite(best))[0]
        if not len(ids):
            return
        k = d[ids].argmin(1)
        u, value = self.u[k], best[ids]
        if len(self.u) > 1:
            near = self.worth(rows, ids, value)
            u[near], value[near] = self.zoom(ids[near], u[near], value[near], d, k[near])
        lean, folds = self.seg.poses(u)
        least = {}
        for j, i in enumerate(ids):
            a, b, _, _, judged, zone = rows[i]
            key = (a.name, b.name, judged.touch, zone)
            if key not in least or value[j] - judged.need < least[key].short():
                least[key] = Seen(a.name, b.name, float(value[j]), judged.need, judged.touch, zone, float(np.degrees(lean[j])),
                                  [float(f) for f in np.degrees(folds[j])])
        yield from least.values()

    def worth(self, rows, ids, value):
        """Those pairs whose best sample is not far from the best of all pairs of the same names."""
        best = {}
        for i, v in zip(ids, value):
            key = (rows[i][0].name, rows[i][1].name, rows[i][4].touch)
            best[key] = min(best.get(key, np.inf), v)
        sparse = set(self.sparse)
        return np.array([i not in sparse and v < best[(rows[i][0].name, rows[i][1].name, rows[i][4].touch)] + 0.015
                         for i, v in zip(ids, value)])

    def zoom(self, ids, u, value, d, k):
        if not len(ids):
            return u, value
        step = 1 / (len(self.u) - 1)
        lo, hi = np.maximum(u - step, 0), np.minimum(u + step, 1)
        # a neighbour at which the judgement does not hold ends the stretch that is looked at
        left, right = np.maximum(k - 1, 0), np.minimum(k + 1, len(self.u) - 1)
        special = np.array([self.rows[i][4].when != 'always' for i in ids])
        held = self.holds()
        lo = np.where(special & ~held[ids, left], u, lo)
        hi = np.where(special & ~held[ids, right], u, hi)
        for _ in range(3):
            grid = lo[:, None] + (hi - lo)[:, None] * np.linspace(0, 1, 13)
            c = self.clearances(np.repeat(ids, 13), grid.ravel()).reshape(-1, 13)
            j = c.argmin(1)
            rows = np.arange(len(ids))
            better = c[rows, j] < value
            u, value = np.where(better, grid[rows, j], u), np.minimum(value, c[rows, j])
            at = np.where(better, grid[rows, j], u)
            wide = (hi - lo) / 12
            lo, hi = np.maximum(lo, at - wide), np.minimum(hi, at + wide)
        return u, value


@dataclass
class Job:
    """A run of line against one stretch of one part: how much of either end of the run is left out, and what it must keep."""
    rope: int
    part: object
    stretch: tuple
    trim: tuple
    need: float
    zone: bool = False


class RopeLook:
    """Lines in one segment. Each family is looked at in the frame in which it is fixed along the rail."""

    def __init__(self, look):
        self.look_, self.s, self.scene, self.seg, self.chain = look, look.s, look.scene, look.seg, look.chain
        self.hoist = self.scene['hoist']
        self.st = self.s.st

    def look(self):
        for family, station, stair, room in self.families():
            yield from self.family(family, station, stair, room)
        yield from self.between()

    def families(self):
        """(function of frames and stations giving ropes, station at which it is placed, stretch that stair parts slide over
        against it, stretch that things of the room slide over against it)."""
        lo, hi = self.seg.stations
        lo, hi = min(lo, self.seg.stations_end[0]), max(hi, self.seg.stations_end[1])
        if self.scene['fold line'] and 'fold line' not in self.s.without:
            yield self.fold, 0.0, (0.0, 0.0), (-hi, -lo)
        if not self.hoist or not self.hoist['point']:
            return
        rolls, home = self.hoist['rolls'], self.home()
        if self.seg.line_on and 'tackle' not in self.s.without:
            if rolls:
                yield self.tackle, home, (home, home), (-(hi - home), -(lo - home))
            else:
                for s in sorted({lo, (lo + hi) / 2, hi}):
                    yield self.tackle, s, (s, s), (0.0, 0.0)
        fixed = ((home, home), (-(hi - home), -(lo - home))) if rolls else ((lo, hi), (0.0, 0.0))
        if 'led-off' not in self.s.without:
            yield self.led, home, *fixed
        if not self.seg.line_on and 'hanging' not in self.s.without:
            yield self.hang, home, *fixed

    def home(self):
        return self.hoist['home'] if self.hoist['home'] is not None else self.hoist['point']['station']

    def fold(self, frames, station):
        return ropes.fold_ropes(self.scene, frames, station)

    def tackle(self, frames, station):
        return ropes.hoist_ropes(self.scene, frames, station)

    def led(self, frames, station):
        return ropes.led_off(self.scene, len(station), station)

    def hang(self, frames, station):
        return ropes.hanging(self.scene, len(station), station, ropes.hangs_to(self.scene, self.chain))

    def at(self, make, u, station):
        return make(self.look_.frames(u), np.full(len(u), station))

    def family(self, make, station, stair, room):
        runs = self.at(make, np.array([0.0]), station)
        jobs = []
        for i, run in enumerate(runs):
            for part in [p for p in self.s.stair if self.look_.pinned(p)]:
                jobs += self.against_stair(i, run, part)
            if run.kind != 'hanging':
                for part in self.near(make, i, station):
                    jobs += self.against_room(i, run, part)
            if run.kind not in ('hanging', 'led-off'):
                for zone in self.scene_zones():
                    jobs += [Job(i, zone, s, (0.0, 0.0), 0.0, True) for s in zone.stations]
        if jobs:
            yield from self.sample(make, station, jobs, stair, room)

    def near(self, make, i, station):
        """Things of the room that run i comes near in the side view, somewhere in the segment."""
        run = self.at(make, self.look_.u, station)[i]
        ends = np.stack([run.p[:, :2], run.q[:, :2]], 1)
        step = np.abs(np.diff(ends, axis=0)).max() if len(ends) > 1 else 0.0
        pad = self.s.within + run.radius + step
        lo, hi = ends.min((0, 1)) - pad, ends.max((0, 1)) + pad
        return [t for t in self.s.room if np.all(t.low <= hi) and np.all(t.high >= lo)]

    def scene_zones(self):
        """The file's own zones that hold in this state; a line is at home where the hand pulls it."""
        return [z for z, when in self.s.zones if self.seg.state in when and 'hoist' not in when]

    def against_stair(self, i, run, part):
        trim = [0.0, 0.0]
        for e, end in enumerate(run.ends):
            if end and end[0] == 'pick' and part.body == self.hoist['pick']['section'] - 1 and self.holds(part, self.pick(end[1])):
                trim[e] = rules.pick_disc(self.scene, self.st, run.kind == 'leg')
            if end and end[0] == 'anchor':
                k, along, across = self.scene['fold line']['ends'][end[1]]
                if part.body == k - 1 and self.holds(part, (along, across, self.scene['fold line']['station'])):
                    trim[e] = rules.anchor_disc(self.scene, self.st, across)
        if run.kind == 'fold line' and all(self.scene['fold line']['ends'][e[1]][0] - 1 == part.body for e in run.ends):
            return []
        return [Job(i, part, s, tuple(trim), self.scene['margin']['self']) for s in part.stations]

    def pick(self, i):
        p = self.hoist['pick']
        return p['along'], p['across'], (-p['spread'] / 2 if i == 0 else p['spread'] / 2) if p['spread'] else 0.0

    def holds(self, part, point):
        return bool(parts_near(point, [part], rules.NEAR_WOOD))

    def against_room(self, i, run, part):
        trim = [0.0, 0.0]
        for e, end in enumerate(run.ends):
            if end and end[0] == 'point' and part.thing == self.fixed_to(parts.ceiling_point(self.scene)):
                trim[e] = rules.point_disc(self.scene)
            if end and end[0] == 'lead' and part.thing == self.fixed_to(self.stop(end[1])):
                trim[e] = rules.lead_disc(self.scene)
        return [Job(i, part, s, tuple(trim), self.scene['margin']['default']) for s in part.stations]

    def stop(self, i):
        """The ceiling point (0), a lead, or the hand."""
        stops = [parts.ceiling_point(self.scene)] + [(x['out'], x['up'], x['station']) for x in self.hoist['leads']]
        return stops[i] if i < len(stops) else parts.hand_point(self.scene)

    def fixed_to(self, point):
        """The thing of the room that a point hangs from: the nearest within reach."""
        if point not in self.s.fixed:
            self.s.fixed[point] = self.nearest(point)
        return self.s.fixed[point]

    def nearest(self, point):
        able = [p for p in self.s.room if p.kind in ('ceiling', 'wall', 'floor', 'loft', 'obstacle')]
        near = parts_near(point, able, rules.NEAR_ROOM)
        return min(near, key=lambda n: n[0])[1].thing if near else None

    def sample(self, make, station, jobs, stair, room):
        u = self.look_.u
        self.jobs = jobs
        wide = max(len(j.part.poly) for j in jobs)
        self.polys = geo.padded([j.part.poly for j in jobs], wide)
        self.body = np.array([j.part.body for j in jobs])
        slide = np.array([room if j.part.body < 0 else stair for j in jobs])
        low = self.bounds(make, station, u, slide)
        i, k = np.nonzero(low < self.s.within)
        d = np.full(low.shape, np.inf)
        if len(i):
            d[i, k] = self.exact(make, station, i, u[k], slide, 24)
        yield from self.least(make, station, u, d, slide)

    def trimmed(self, runs, i):
        """Ends of the runs of jobs i, one entry each, and whether anything is left of them."""
        rope = np.array([self.jobs[j].rope for j in i])
        trim = np.array([self.jobs[j].trim for j in i])
        n = np.arange(len(i))
        p, q = np.stack([r.p for r in runs])[rope, n], np.stack([r.q for r in runs])[rope, n]
        r = np.array([r.radius for r in runs])[rope]
        d = q - p
        long = np.linalg.norm(d, axis=1)
        # knots of a run that moves are measured in the side view, those of a fixed one along it
        moves = np.array([run.kind not in STILL for run in runs])[rope]
        aslant = long / np.maximum(np.linalg.norm(d[:, :2], axis=1), 1e-9)
        # the drawn run begins a radius inside of its true end
        cut = np.maximum(trim * np.where(moves, aslant, 1.0)[:, None] - r[:, None], 0) * (trim > 0)
        left = long - cut.sum(1) > 1e-6
        t = cut / np.maximum(long, 1e-12)[:, None]
        return p + d * t[:, :1], q - d * t[:, 1:], r, left

    def bounds(self, make, station, u, slide):
        n, k = len(self.jobs), len(u)
        runs = self.at(make, u, station)
        frames = self.look_.frames(u)
        boxes, low = {}, np.empty((n, k))
        for i, j in enumerate(self.jobs):
            key = id(j.part)
            if key not in boxes:
                w = self.look_.place(np.full(k, j.part.body), np.broadcast_to(j.part.poly, (k,) + j.part.poly.shape), frames, np.arange(k))
                boxes[key] = w.min(1) - j.part.radius, w.max(1) + j.part.radius
            a, b = boxes[key]
            run = runs[j.rope]
            s0, s1 = slide[i]
            lo, hi = np.column_stack([a, np.full(k, j.stretch[0] + s0)]), np.column_stack([b, np.full(k, j.stretch[1] + s1)])
            rlo, rhi = np.minimum(run.p, run.q) - run.radius, np.maximum(run.p, run.q) + run.radius
            low[i] = np.linalg.norm(np.maximum(np.maximum(lo - rhi, rlo - hi), 0), axis=1)
        return low

    def exact(self, make, station, i, u, slide, steps):
        out = np.empty(len(i))
        for part in np.array_split(np.arange(len(i)), len(i) // 20000 + 1):
            if not len(part):
                continue
            rows, uu = i[part], u[part]
            runs = self.at(make, uu, station)
            p, q, r, left = self.trimmed(runs, rows)
            poly = self.look_.place(self.body[rows], self.polys[rows], self.look_.frames(uu), np.arange(len(rows)))
            lo, hi = np.array([self.jobs[j].stretch for j in rows]).T
            grow = np.array([self.jobs[j].part.radius for j in rows])
            s0, s1 = slide[rows].T
            out[part] = np.where(left, geo.rope_to_prism(p, q, r, poly, grow, lo, hi, s0, s1, steps), np.inf)
        return out

    def least(self, make, station, u, d, slide):
        best = d.min(1)
        ids = np.nonzero(best < self.s.within)[0]
        if not len(ids):
            return
        at, value = u[d[ids].argmin(1)], best[ids]
        if len(u) > 1:
            at, value = self.zoom(make, station, ids, at, value, 1 / (len(u) - 1), slide)
        lean, folds = self.seg.poses(at)
        runs = self.at(make, np.array([0.0]), station)
        for n, i in enumerate(ids):
            j = self.jobs[i]
            still = runs[j.rope].kind in STILL and j.part.body < 0
            yield Seen(runs[j.rope].name, j.part.name, float(value[n]), j.need, False, j.zone, float(np.degrees(lean[n])),
                       [float(f) for f in np.degrees(folds[n])], station, still)

    def zoom(self, make, station, ids, at, value, step, slide):
        lo, hi = np.maximum(at - step, 0), np.minimum(at + step, 1)
        rows = np.arange(len(ids))
        for _ in range(3):
            grid = lo[:, None] + (hi - lo)[:, None] * np.linspace(0, 1, 9)
            c = self.exact(make, station, np.repeat(ids, 9), grid.ravel(), slide, 40).reshape(-1, 9)
            j = c.argmin(1)
            at = np.where(c[rows, j] < value, grid[rows, j], at)
            value = np.minimum(value, c[rows, j])
            wide = (hi - lo) / 8
            lo, hi = np.maximum(lo, at - wide), np.minimum(hi, at + wide)
        return at, value

    def between(self):
        """Lines against each other."""
        if self.seg.fixed:
            u = np.array([0.0])
        else:
            u = np.linspace(0, 1, 3 * len(self.look_.u))
        runs = []
        lo, hi = self.seg.stations
        s = np.full(len(u), self.home() if self.hoist and self.hoist['rolls'] and self.hoist['point'] else (lo + hi) / 2)
        frames = self.look_.frames(u)
        if 'fold line' not in self.s.without:
            runs += ropes.fold_ropes(self.scene, frames, s)
        if self.hoist and self.hoist['point']:
            if self.seg.line_on and 'tackle' not in self.s.without:
                runs += ropes.hoist_ropes(self.scene, frames, s)
            if 'led-off' not in self.s.without:
                runs += ropes.led_off(self.scene, len(u), s)
        lean, folds = self.seg.poses(u)
        for i, a in enumerate(runs):
            for b in runs[i + 1:]:
                seen = self.two_runs(a, b)
                if seen is None:
                    continue
                d, need = seen
                k = int(d.argmin())
                if d[k] < self.s.within:
                    yield Seen(a.name, b.name, float(d[k]), need, False, False, float(np.degrees(lean[k])),
                               [float(f) for f in np.degrees(folds[k])], float(s[k]), {a.kind, b.kind} <= STILL)

    def two_runs(self, a, b):
        kinds = {a.kind, b.kind}
        hoist = {'tackle', 'leg', 'bar', 'hanging'}
        if kinds <= hoist or kinds == {'fold line'}:
            return None
        ta, tb = [0.0, 0.0], [0.0, 0.0]
        need = self.scene['margin']['self'] if 'fold line' in kinds else self.scene['margin']['default']
        if kinds == {'led-off'}:
            if b.order == a.order + 1:
                ta[1] = tb[0] = rules.lead_disc(self.scene)
        elif kinds == {'tackle', 'led-off'}:
            led = a if a.kind == 'led-off' else b
            if led.order == 0 and 'point' in [e[0] for r in (a, b) for e in r.ends if e]:
                ta[0] = tb[0] = rules.point_disc(self.scene)
        p, q = drawn_in(a, ta)
        v, w = drawn_in(b, tb)
        left = (np.linalg.norm(q - p, axis=1) > 1e-6) & (np.linalg.norm(w - v, axis=1) > 1e-6)
        return np.where(left, geo.rope_to_rope(p, q, v, w) - a.radius - b.radius, np.inf), need


def drawn_in(run, trim):
    """The run beyond its knots. Those of a run that moves are measured in the side view, those of a fixed one along it."""
    way = run.q - run.p
    aslant = np.linalg.norm(way, axis=1) / np.maximum(np.linalg.norm(way[:, :2], axis=1), 1e-9)
    scale = 1.0 if run.kind in STILL else aslant[:, None]
    return ropes.shorten(run.p, run.q, *[np.maximum(t * scale - run.radius, 0.0) if t > 0 else 0.0 for t in trim])


def centres_of(command, path):
    """(mass, along, across) of each section, as the command weighs them: the docs give no densities."""
    text = subprocess.run([command, 'hoist', path, '--json'], capture_output=True, text=True).stdout
    try:
        return [(s['mass_kg'], *s['centre_m']) for s in json.loads(text)['masses']['sections']]
    except (ValueError, KeyError, TypeError):
        return None


def look_at(path, command='stowpath', within=0.05, play=False, without=(), stretch=True):
    """What is seen in every move of the scene at `path`; with `play`, also with the hooks' contact anywhere in its range."""
    scene = read_scene(open(path, encoding='utf-8').read())
    centres = centres_of(command, path) if needs_centres(scene) else None
    sampler = Sampler(scene, centres, within, without, stretch)
    nominal = sampler.run()
    shifted = [sampler.run(s) for s in seat_shifts(scene)] if play else []
    return scene, nominal, shifted


def needs_centres(scene):
    return any(kind == 'hang' for kind, _ in scene['procedure'])


def as_json(moves):
    return [{'index': i, 'kind': kind, 'pairs': [
        {'parts': [s.a, s.b], 'clearance_m': s.clearance, 'margin_m': s.need, 'may_touch': s.touch, 'zone': s.zone,
         'lean_deg': s.lean, 'folds_deg': s.folds} for s in sorted(pairs.values(), key=lambda s: s.clearance)]}
        for (i, kind), pairs in moves.items()]


def main():
    ask = argparse.ArgumentParser(description=__doc__.split('\n\n')[0])
    ask.add_argument('scene')
    ask.add_argument('--command', default='stowpath')
    ask.add_argument('--within', type=float, default=50.0, help='mm')
    ask.add_argument('--play', action='store_true')
    ask.add_argument('--without', default='')
    given = ask.parse_args()
    _, nominal, shifted = look_at(given.scene, given.command, given.within / 1000, given.play, given.without.split(','))
    json.dump({'moves': as_json(nominal), 'with_play': [as_json(m) for m in shifted]}, sys.stdout, indent=1)
    print()


if __name__ == '__main__':
    main()
