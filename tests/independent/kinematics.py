"""How the stair moves: its poses through every move, found by bisection and not by the program's closed forms.

A pose is (lean of section 1, folds) [rad]; the pivot is (out, up) [m]. Stations are treated apart, as nothing turns with
them. `shift` moves the pivot off its nominal place, as the hooks' play may; what stands on the floor then leans anew.
"""
import math
from dataclasses import dataclass
from typing import Callable

import numpy as np

from parts import Stair


@dataclass
class Segment:
    """A smooth piece of a move: `poses(u)` gives leans (n,) and folds (n, hinges) for u (n,) in [0, 1]."""
    index: int                  # which entry of the procedure, from 1
    kind: str
    poses: Callable
    pivot: np.ndarray
    stations: tuple             # least and greatest station meant, at u = 0
    stations_end: tuple         # the same at u = 1
    line_on: bool
    pinned: tuple
    state: str                  # standing, moving or parked
    on_floor: bool = False      # whether the casters stand on the floor all through
    leaves_floor: bool = False  # whether it begins on the floor and leaves it
    fixed: bool = False         # a single pose


class Chain:
    """The stair's linkage: where its sections are at leans and pivots given."""

    def __init__(self, scene, centres=None):
        self.st = Stair(scene)
        self.axes, self.turns = self.st.axes(), self.st.turns()
        self.centres = centres          # (mass, along, across) of each section, or None

    def leans(self, lean, folds):
        """Leans of all sections (n, sections)."""
        out = [np.asarray(lean, float)]
        for k, turn in enumerate(self.turns):
            out.append(out[-1] + turn * folds[:, k])
        return np.stack(out, -1)

    def frames(self, lean, folds, pivot):
        """Origins, along and across vectors of every section, each (n, sections, 2)."""
        leans = self.leans(lean, folds)
        al = np.stack([np.sin(leans), -np.cos(leans)], -1)
        ac = np.stack([np.cos(leans), np.sin(leans)], -1)
        origins = [np.broadcast_to(pivot, (len(leans), 2))]
        for k, h in enumerate(self.axes):
            axis = origins[k] + self.st.lengths[k] * al[:, k] + h * ac[:, k]
            origins.append(axis - h * ac[:, k + 1])
        return np.stack(origins, 1), al, ac

    def below(self, k, which):
        """The axle, or the centre of mass of all sections below hinge k, seen from the hinge's axis: (distance, the lower
        section's lean at which it is straight below). Folds further down are straight."""
        st, c = self.st, self.st.s['casters']
        point = (st.starts[-1] - st.starts[k + 1] + c['along'], c['across'])
        if which == 'centre':
            rows = [(m, a + st.starts[j] - st.starts[k + 1], b) for j, (m, a, b) in enumerate(self.centres) if j > k]
            total = sum(m for m, _, _ in rows)
            point = (sum(m * a for m, a, _ in rows) / total, sum(m * b for m, _, b in rows) / total)
        a, b = point[0], point[1] - self.axes[k]
        return math.hypot(a, b), -math.atan2(b, a)

    def upper(self, k, lean, folds):
        """Lean of the section above hinge k and height of the hinge's axis over the pivot, for leans (n,)."""
        f = np.tile(folds, (len(lean), 1))
        o, al, ac = self.frames(lean, f, np.zeros(2))
        return self.leans(lean, f)[:, k], (o[:, k] + self.st.lengths[k] * al[:, k] + self.axes[k] * ac[:, k])[:, 1]

    def dragged(self, k, lean, folds, pivot_up):
        """Fold of hinge k with which the axle stays a wheel's radius over the floor, for leans (n,); where the floor is out
        of reach, that at full stretch. The foot trails on the side that lessens the fold. Bisects the angle off plumb."""
        reach, plumb = self.below(k, 'axle')
        above, high = self.upper(k, lean, folds)
        room = pivot_up + high - self.st.floor - self.st.wheel      # the axis over the axle's height
        lo, hi = np.zeros(len(lean)), np.full(len(lean), math.pi / 2)
        for _ in range(60):
            mid = (lo + hi) / 2
            low = room - reach * np.cos(mid) < 0                    # the axle would be below where it must be
            lo, hi = np.where(low, mid, lo), np.where(low, hi, mid)
        return self.turns[k] * (plumb - above) - (lo + hi) / 2

    def stretched(self, k, lean, folds, pivot_up):
        """How far the floor is out of reach of the dragged foot [m]; negative while it is not."""
        reach, _ = self.below(k, 'axle')
        return pivot_up + self.upper(k, lean, folds)[1] - self.st.floor - self.st.wheel - reach

    def hanging(self, k, lean, folds):
        """Fold of hinge k at which the centre of mass of all below it is straight below its axis, for leans (n,)."""
        _, plumb = self.below(k, 'centre')
        return self.turns[k] * (plumb - self.upper(k, lean, folds)[0])


class Course:
    """Walks through the procedure and gives its moves as segments, with the pivot `shift` off its nominal place."""

    def __init__(self, scene, centres=None, shift=(0.0, 0.0), stretch=True):
        self.scene, self.chain = scene, Chain(scene, centres)
        self.pivot = self.chain.st.pivot + np.array(shift)
        self.rail = rail_stations(scene)
        hoist = scene['hoist']
        self.within = hoist['within'] if hoist and stretch else 0.0
        self.rolls = bool(hoist and hoist['rolls'])
        self.home = hoist['home'] if hoist else None
        n = len(self.chain.axes)
        self.station, self.folds, self.pinned = None, np.zeros(n), [True] * n
        self.line_on, self.standing, self.grounded = False, True, True
        self.lean = self.stand()
        self.segments = []

    def stand(self, floor=0.0):
        st = self.chain.st
        return st.standing(self.pivot[1], st.floor + floor)

    def run(self):
        for i, (kind, what) in enumerate(self.scene['procedure'], 1):
            getattr(self, kind.replace(' ', '_'))(i, what)
        if not any(s.kind == 'roll' for s in self.segments):
            self.segments.insert(0, self.standing_roll(0, 'stand'))
        if not self.standing:
            self.still(len(self.scene['procedure']), 'park', 'parked')
        return self.segments

    def here(self):
        """The stations meant where the stair is, at home if it was never rolled."""
        if self.rolls:
            return self.rail
        at = self.station if self.station is not None else self.home
        if at is None:
            return self.rail
        return max(at - self.within, self.rail[0]), min(at + self.within, self.rail[1])

    def add(self, i, kind, poses, to=None, **more):
        where = self.here()
        self.segments.append(Segment(i, kind, poses, self.pivot, where, to or where, self.line_on, tuple(self.pinned),
                                     more.pop('state', 'moving'), **more))

    def still(self, i, kind, state, stations=None):
        lean, folds = self.lean, self.folds.copy()
        self.add(i, kind, lambda u: (np.full(len(u), lean), np.tile(folds, (len(u), 1))), state=state, fixed=True)
        if stations:
            self.segments[-1].stations = self.segments[-1].stations_end = stations

    def standing_roll(self, i, kind='roll'):
        lo, hi = self.stand(-self.chain.st.uneven), self.stand(self.chain.st.uneven)
        n = len(self.folds)
        return Segment(i, kind, lambda u: (lo + (hi - lo) * u, np.zeros((len(u), n))), self.pivot, self.rail, self.rail,
                       self.line_on, tuple(self.pinned), 'standing', on_floor=True)

    def roll(self, i, what):
        if self.standing:
            self.segments.append(self.standing_roll(i))
        else:
            self.still(i, 'roll', 'moving', self.rail)
        self.station = self.home if what == 'home' else what

    def straight(self, i, kind, lean, folds, to=None):
        lean0, folds0, folds1 = self.lean, self.folds.copy(), np.array(folds, float)
        self.add(i, kind, lambda u: (lean0 + (lean - lean0) * u, folds0 + (folds1 - folds0) * u[:, None]), to,
                 leaves_floor=self.grounded)
        self.lean, self.folds, self.standing, self.grounded = lean, folds1, False, False

    def lift(self, i, lean):
        self.straight(i, 'lift', lean, self.folds)

    def with_folds(self, targets):
        folds = self.folds.copy()
        for k, f in targets.items():
            folds[k] = f
        return folds

    def fold(self, i, targets):
        self.straight(i, 'fold', self.lean, self.with_folds(targets))

    def together(self, i, what):
        lean = self.lean if what['lean'] is None else what['lean']
        to = None
        if what['station'] is not None:
            before, self.station = self.station, what['station']
            to, self.station = self.here(), before
        self.straight(i, 'together', lean, self.with_folds(what['folds']), to)
        self.station = what['station'] if what['station'] is not None else self.station

    def joint(self):
        """The uppermost hinge whose pin is drawn."""
        return self.pinned.index(False)

    def set_fold(self, k, fold):
        folds = np.tile(self.folds, (len(fold), 1))
        folds[:, k] = fold
        return folds

    def dragging(self, i, kind, lean):
        """The foot on the floor from this lean to that one. Leans crowd where the lower part comes to full stretch."""
        k, lean0, base = self.joint(), self.lean, self.folds.copy()
        up, chain = self.pivot[1], self.chain

        def poses(u):
            a = lean - (lean - lean0) * (1 - u) ** 2
            folds = np.tile(base, (len(u), 1))
            folds[:, k] = chain.dragged(k, a, base, up)
            return a, folds
        self.add(i, kind, poses, on_floor=True)
        self.lean, self.folds, self.standing = lean, poses(np.array([1.0]))[1][0], False

    def drag(self, i, lean):
        self.dragging(i, 'drag', lean)

    def hang(self, i, lean):
        """The foot stays on the floor until the lower part is at full stretch or hangs plumb by its centre of mass; then it
        settles to that and is carried, its own lean kept."""
        k = self.joint()
        leave = self.leaving(k, lean) if self.grounded else self.lean
        if leave > self.lean + 1e-12:
            self.dragging(i, 'hang', leave)
        at, base, chain = self.lean, self.folds.copy(), self.chain
        f0, f1 = base[k], float(chain.hanging(k, np.array([at]), base)[0])

        def settle(u):
            folds = np.tile(base, (len(u), 1))
            folds[:, k] = f0 + (f1 - f0) * u
            return np.full(len(u), at), folds

        def carried(u):
            a = at + (lean - at) * u
            folds = np.tile(base, (len(u), 1))
            folds[:, k] = chain.hanging(k, a, base)
            return a, folds
        self.add(i, 'hang', settle, leaves_floor=self.grounded)
        if lean > at:
            self.add(i, 'hang', carried, leaves_floor=self.grounded)
        self.lean, self.folds = lean, carried(np.array([1.0]))[1][0]
        self.standing = self.grounded = False

    def leaving(self, k, last):
        """The lean at which the foot leaves the floor, by bisection."""
        def down(a):
            lean = np.array([a])
            if self.chain.stretched(k, lean, self.folds, self.pivot[1])[0] > 0:
                return False
            return self.chain.dragged(k, lean, self.folds, self.pivot[1])[0] < self.chain.hanging(k, lean, self.folds)[0]
        if down(last):
            return last
        lo, hi = self.lean, last
        for _ in range(60):
            mid = (lo + hi) / 2
            lo, hi = (mid, hi) if down(mid) else (lo, mid)
        return lo

    def pin(self, i, hinge):
        self.pinned[hinge - 1] = True

    def unpin(self, i, hinge):
        self.pinned[hinge - 1] = False

    def hook_on(self, i, what):
        self.line_on = True

    def hook_off(self, i, what):
        self.line_on = False


def rail_stations(scene):
    """Stations at which all hooks are on the pipe, between its stops [m]."""
    rail, h = scene['rail'], scene['stair']['hooks']
    half = (h['rod'] if h['shape'] == 'rod' else h['thickness']) / 2
    if h['roller']:
        half = max(half, h['roller']['diameter'] / 2)
    s0, s1 = rail['stations']
    wide, ends = rail['stops']['width'], rail['stops']['ends']
    left = s0 + (wide if ends in ('both ends', 'left') else 0)
    right = s1 - (wide if ends in ('both ends', 'right') else 0)
    return left + half - min(h['stations']), right - half - max(h['stations'])


def seat_shifts(scene):
    """Where the pivot may be off its nominal place [m]: the contact at angles t off the crown, within the seat range."""
    slack = Stair(scene).slack
    t = np.linspace(-1, 1, 5) * scene['stair']['hooks']['seat']
    return [(slack * math.sin(a), slack * (1 - math.cos(a))) for a in t if abs(a) > 1e-12]
