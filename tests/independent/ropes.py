"""The lines of a scene as true capsules in space: tackle, legs, spreader bar, led-off runs, hanging line, fold line."""
import math
from dataclasses import dataclass

import numpy as np

import parts


@dataclass
class Rope:
    """One straight run over a set of poses. `holds` names what each end is held by: ('point',), ('pick', i), ('lead', i),
    ('anchor', i) or None."""
    name: str
    kind: str           # tackle, leg, bar, led-off, hanging, fold line
    p: np.ndarray       # (n, 3): out, up, station
    q: np.ndarray
    radius: float
    ends: tuple = (None, None)
    order: int = 0      # of led-off and fold line runs


def shorten(p, q, by_p, by_q):
    """The run with its ends drawn in; a run that is shorter than that shrinks to its middle."""
    d = q - p
    long = np.linalg.norm(d, axis=-1, keepdims=True)
    n = d / np.maximum(long, 1e-12)
    a, b = np.minimum(by_p, long), np.minimum(by_q, long)
    over = np.maximum(a + b - long, 0) / 2
    return p + n * np.maximum(a - over, 0), q - n * np.maximum(b - over, 0)


def section_points(frames, k, along, across, station, offset):
    """A point of section k (from 0) in space, at poses `frames` and stations of the stair (n,)."""
    o, al, ac = frames
    side = o[:, k] + along * al[:, k] + across * ac[:, k]
    return np.column_stack([side, station + offset])


def hoist_ropes(scene, frames, station):
    """The hoist's line while it is hooked on, at the stair's stations (n,)."""
    h = scene['hoist']
    point = parts.ceiling_point(scene)
    if not point:
        return []
    n = len(station)
    c = np.tile(point, (n, 1))
    if h['rolls']:
        c[:, 2] += station - (h['home'] if h['home'] is not None else point[2])
    pick = h['pick']
    where = (-pick['spread'] / 2, pick['spread'] / 2) if pick['spread'] > 0 else (0.0,)
    picks = [section_points(frames, pick['section'] - 1, pick['along'], pick['across'], station, s) for s in where]
    if not h['spreader']:
        return [run_of(h, c, p, ('point',), ('pick', i)) for i, p in enumerate(picks)]
    return spread_ropes(h, c, picks, station)


def run_of(h, c, p, at_c, at_p):
    """The tackle, or the single part, from c to p: drawn in so that it ends there."""
    if h['parts'] > 1:
        r = h['block width'] / 2
        return Rope('tackle', 'tackle', *shorten(c, p, r, r), r, (at_c, at_p))
    r = h['diameter'] / 2
    return Rope('hoist line', 'tackle', *shorten(c, p, r, r), r, (at_c, at_p))


def spread_ropes(h, c, picks, station):
    sp = h['spreader']
    mid = sum(picks) / len(picks)
    side = c - mid
    share = sp['drop'] / np.maximum(np.hypot(side[:, 0], side[:, 1]), 1e-9)
    b = mid + side * share[:, None]
    half = np.array([0, 0, sp['length'] / 2])
    r = sp['thickness'] / 2
    out = [run_of(h, c, b, ('point',), None), Rope('spreader bar', 'bar', *shorten(b - half, b + half, r, r), r)]
    ends = (b - half, b + half) if len(picks) > 1 else (b,)
    d = h['diameter'] / 2
    return out + [Rope('spreader leg', 'leg', *shorten(e, p, d, d), d, (None, ('pick', i))) for i, (e, p) in enumerate(zip(ends, picks))]


def led_off(scene, n, station):
    """Runs from the ceiling point over the leads to the hand, the same at all n poses (for a hoist that rolls, the fall to
    the hand alone, riding along)."""
    h, point = scene['hoist'], parts.ceiling_point(scene)
    if not point:
        return []
    stops = [np.array(point)] + [np.array([x['out'], x['up'], x['station']]) for x in h['leads']]
    hand, r = np.array(parts.hand_point(scene)), h['diameter'] / 2
    if h['rolls']:
        stops = stops[:1]
        hand = hand if h['hand'] else np.array([point[0], min(point[1], scene['floor']['level'] + 1.2), point[2]])
    stops.append(hand)
    ride = (station - (h['home'] if h['home'] is not None else point[2]))[:, None] * [0, 0, 1] if h['rolls'] else 0.0
    out = []
    for i, (a, b) in enumerate(zip(stops, stops[1:])):
        if np.linalg.norm(b - a) < 1e-9:
            continue
        p, q = shorten(np.tile(a, (n, 1)) + ride, np.tile(b, (n, 1)) + ride, r, r)
        out.append(Rope(f'led-off run {i + 1}', 'led-off', p, q, r, (('lead', i), ('lead', i + 1)), i))
    return out


def hanging(scene, n, station, low):
    """The line and its blocks hanging plumb below the ceiling point, down to the height `low`."""
    h, point = scene['hoist'], parts.ceiling_point(scene)
    if not point or low >= point[1]:
        return []
    r = (h['block width'] if h['parts'] > 1 else h['diameter']) / 2
    c = np.tile(point, (n, 1)).astype(float)
    if h['rolls']:
        c[:, 2] += station - (h['home'] if h['home'] is not None else point[2])
    end = c.copy()
    end[:, 1] = low
    return [Rope('hanging line', 'hanging', *shorten(c, end, r, r), r, (('point',), None))]


def hangs_to(scene, chain):
    """The height down to which the line hangs: the pick's in the working pose unless the scene says [m]."""
    h = scene['hoist']
    if h['hangs to'] is not None:
        return h['hangs to']
    st, pick = chain.st, h['pick']
    along = st.starts[pick['section'] - 1] + pick['along']
    return st.pivot[1] - along * math.cos(st.lean) + pick['across'] * math.sin(st.lean)


def fold_ropes(scene, frames, station):
    line = scene['fold line']
    if not line:
        return []
    r = line['diameter'] / 2
    at = [section_points(frames, k - 1, a, b, station, line['station']) for k, a, b in line['ends']]
    return [Rope(f'fold line {i + 1}', 'fold line', *shorten(p, q, r, r), r, (('anchor', i), ('anchor', i + 1)), i)
            for i, (p, q) in enumerate(zip(at, at[1:])) if line['ends'][i] != line['ends'][i + 1]]
