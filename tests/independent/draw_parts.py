#!/usr/bin/python3
"""Draws docs/parts/*.svg, the dimensioned drawings of docs/parts.md, from this folder's own placing of parts.

usage: draw_parts.py [FOLDER]
"""
import math
import os
import sys

import numpy as np

import kinematics
import parts
import reader
import ropes
import rules

HERE = os.path.dirname(os.path.abspath(__file__))
STYLE = ('text{font-family:"DejaVu Sans",sans-serif;fill:#242a33}path,circle{fill:none;stroke:#242a33;stroke-linejoin:round}'
         '.wood{fill:#e8d5ae}.steel{fill:#cfd3d6}.soft{stroke:#5e5f5c}.chain{stroke:#5e5f5c;stroke-dasharray:9 3 2 3}'
         '.dim{stroke:#2f5d8a}.note{fill:#2f5d8a}.may{stroke:#b83227;stroke-dasharray:4 3}.zone{stroke:#2f5d8a;stroke-dasharray:6 4}')


class Sheet:
    """One drawing in metres, up upwards; written in millimetres of its own scale."""

    def __init__(self, name, title, wide=520):
        self.name, self.title, self.wide = name, title, wide
        self.items, self.points = [], []

    def poly(self, pts, kind='soft', closed=True):
        pts = [tuple(p) for p in pts]
        self.points += pts
        self.items.append(('path', pts, kind, closed))

    def line(self, a, b, kind='chain'):
        self.poly([a, b], kind, False)

    def circle(self, c, r, kind='soft'):
        self.points += [(c[0] - r, c[1] - r), (c[0] + r, c[1] + r)]
        self.items.append(('circle', tuple(c), r, kind))

    def part(self, place, part, kind=None):
        kind = kind or ('wood' if part.kind in ('side rail', 'tread', 'scab', 'spacer') else 'steel')
        pts = [place(p) for p in part.poly]
        if len(pts) == 1:
            self.circle(pts[0], part.radius, kind)
        elif len(pts) == 2:
            d = np.array(pts[1]) - np.array(pts[0])
            n = np.array([-d[1], d[0]]) / np.hypot(*d) * part.radius
            self.poly([pts[0] + n, pts[1] + n, pts[1] - n, pts[0] - n], kind)
        else:
            self.poly(pts, kind)

    def note(self, at, text, dx=0.0, dy=0.0):
        self.points.append((at[0] + dx, at[1] + dy))
        self.items.append(('note', tuple(at), text, (at[0] + dx, at[1] + dy)))

    def dim(self, a, b, text, off=0.0):
        """A dimension between two points, its line set off square to them."""
        a, b = np.array(a, float), np.array(b, float)
        d = (b - a) / max(np.hypot(*(b - a)), 1e-12)
        n = np.array([-d[1], d[0]]) * off
        self.points += [tuple(a + n), tuple(b + n)]
        self.items.append(('dim', a, b, n, text))

    def write(self, folder):
        p = np.array(self.points)
        lo, hi = p.min(0), p.max(0)
        size = max(hi - lo)
        scale = self.wide / size
        pad = 74
        w, h = (hi - lo) * scale + 2 * pad

        def at(q):
            return (q[0] - lo[0]) * scale + pad, h - ((q[1] - lo[1]) * scale + pad)
        x0, x1 = self.lettering(at, w)
        out = [f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{x0:.0f} 0 {x1 - x0:.0f} {h:.0f}" width="{x1 - x0:.0f}" height="{h:.0f}">',
               f'<title>{self.title}</title><style>{STYLE}</style>'
               f'<path d="M{x0:.0f} 0H{x1:.0f}V{h:.0f}H{x0:.0f}Z" style="fill:#faf5e9;stroke:none"/>']
        for item in self.items:
            out += getattr(self, 'svg_' + item[0])(at, scale, *item[1:])
        with open(os.path.join(folder, self.name + '.svg'), 'w', encoding='utf-8') as file:
            file.write('\n'.join(out + ['</svg>', '']))

    def lettering(self, at, wide):
        """From where to where the sheet has to reach for all its notes."""
        x0, x1 = 0.0, wide
        for item in self.items:
            if item[0] == 'note':
                (x, _), (u, _), long = at(item[1]), at(item[3]), 7.2 * len(item[2]) + 12
                x0, x1 = (min(x0, u - long), x1) if u < x else (x0, max(x1, u + long))
        return x0, x1

    @staticmethod
    def svg_path(at, scale, pts, kind, closed):
        return ['<path class="%s" d="M%s%s"/>' % (kind, 'L'.join('%.1f %.1f' % at(p) for p in pts), 'Z' if closed else '')]

    @staticmethod
    def svg_circle(at, scale, c, r, kind):
        return ['<circle class="%s" cx="%.1f" cy="%.1f" r="%.1f"/>' % (kind, *at(c), r * scale)]

    @staticmethod
    def svg_note(at, scale, p, text, q):
        (x, y), (u, v) = at(p), at(q)
        anchor = 'end' if u < x else 'start'
        return ['<path class="dim" d="M%.1f %.1fL%.1f %.1f"/>' % (x, y, u, v),
                '<text class="note" font-size="12" x="%.1f" y="%.1f" text-anchor="%s">%s</text>' % (u + (3 if u >= x else -3), v + 4, anchor, text)]

    @staticmethod
    def svg_dim(at, scale, a, b, n, text):
        (x, y), (u, v) = at(a + n), at(b + n)
        (x0, y0), (u0, v0) = at(a), at(b)
        turn = math.degrees(math.atan2(v - y, u - x))
        turn = turn - 180 if turn > 90 else turn + 180 if turn <= -90 else turn
        ends = ''.join('<circle class="dim" cx="%.1f" cy="%.1f" r="1.6" style="fill:#2f5d8a"/>' % p for p in ((x, y), (u, v)))
        return ['<path class="dim" style="stroke-width:.6" d="M%.1f %.1fL%.1f %.1fM%.1f %.1fL%.1f %.1fM%.1f %.1fL%.1f %.1f"/>' %
                (x0, y0, x, y, u0, v0, u, v, x, y, u, v), ends,
                '<text class="note" font-size="12" text-anchor="middle" transform="translate(%.1f %.1f) rotate(%.1f)" y="-4">%s</text>' %
                ((x + u) / 2, (y + v) / 2, turn, text)]


def example(**changes):
    """The cured demo with changes, each 'a/b': value in metres."""
    with open(os.path.join(HERE, '..', '..', 'scenes', 'demo-cured.yaml'), encoding='utf-8') as file:
        scene = reader.read_scene(file.read())
    for path, value in changes.items():
        where = scene
        *keys, last = path.split('/')
        for key in keys:
            where = where[int(key) if key.isdigit() else key]
        where[last] = value
    return scene


def section_frame(p):
    """Along to the right, across upwards."""
    return np.array([p[0], p[1]])


def upright(scene):
    """Room coordinates of points of the straight stair in the working pose, along counted from the pivot."""
    st = parts.Stair(scene)
    al = np.array([math.sin(st.lean), -math.cos(st.lean)])
    ac = np.array([math.cos(st.lean), math.sin(st.lean)])
    return st, (lambda p, k=0: st.pivot + (p[0] + st.starts[k]) * al + p[1] * ac)


def stair_sheet():
    scene = example(**{'stair/casters/kind': 'rigid'})
    st, at = upright(scene)
    s = Sheet('stair', 'Sections, datum line and frames')
    for p in parts.stair_parts(scene):
        if p.kind in ('side rail', 'tread', 'caster', 'hook', 'mount'):
            s.part(lambda q, k=p.body: at(q, k), p)
    s.line(at((-0.2, 0)), at((3.55, 0)))
    s.line((0.7, 0), (3.1, 0), 'soft')
    s.dim(at((0, 0.07)), at((1.78, 0.07)), 'section 1', 0.16)
    s.dim(at((1.78, 0.07)), at((3.255, 0.07)), 'section 2', 0.16)
    s.dim(at((0, -0.07)), at((0.075, -0.07)), '- above pivot', -0.1)
    s.note(at((0, 0)), 'pivot = middle of the hooks\' circle', 0.35, 0.12)
    s.note(at((3.3, 0)), 'axle: wheel radius over the floor', -0.6, 0.18)
    s.note(at((1.0, 0)), 'datum line', -0.3, -0.2)
    return s


def tread_sheet():
    scene = example(**{'stair/treads/overhang': 0.02})
    st, at = upright(scene)
    s = Sheet('tread', 'A tread')
    treads = [p for p in parts.stair_parts(scene) if p.kind == 'tread'][3:5]
    lo, hi = min(t.poly[:, 0].min() for t in treads) - 0.05, max(t.poly[:, 0].max() for t in treads) + 0.05
    s.poly([at(p) for p in parts.box(lo, hi, st.back, st.front)], 'wood')
    for t in treads:
        s.part(at, t)
    a, b = [max(t.poly, key=lambda q: q[1]) for t in treads]
    top = [max((at(q) for q in t.poly), key=lambda q: q[1] * 1e3 + q[0]) for t in treads]
    s.dim(top[0], (top[0][0], top[1][1]), 'rise', 0.1 if top[0][1] > top[1][1] else -0.1)
    s.dim(at((a[0], st.front)), at(a), 'overhang', 0.0)
    s.note(at(a), 'top front corner: square to the front face by the overhang', 0.05, 0.06)
    s.note(at((b[0], st.front)), 'front face', 0.09, -0.05)
    return s


def lock_sheet():
    scene = example()
    st = parts.Stair(scene)
    s = Sheet('lock', 'Scab, spacer block and lock pin')
    all_parts = parts.stair_parts(scene)
    for p in all_parts:
        if p.kind == 'side rail':
            s.poly([(x + st.starts[p.body], y) for x, y in np.clip(p.poly, [1.35 - st.starts[p.body], -9], [2.2 - st.starts[p.body], 9])], 'wood')
    for p in all_parts:
        if p.kind in ('scab', 'spacer', 'pin'):
            s.part(section_frame, p)
    # the same from above: along to the right, stations downwards
    y0, drop = -0.24, 1.0
    for p in all_parts:
        if p.kind in ('scab', 'spacer', 'pin') or p.kind == 'side rail':
            for lo, hi in p.stations:
                if lo < 0:
                    continue
                x = p.poly[:, 0] + st.starts[p.body] * (p.kind == 'side rail')
                a, b = max(x.min() - p.radius, 1.35), min(x.max() + p.radius, 2.2)
                kind = 'steel' if p.kind == 'pin' else 'wood'
                s.poly([(a, y0 - (lo - 0.23) * drop), (b, y0 - (lo - 0.23) * drop), (b, y0 - (hi - 0.23) * drop), (a, y0 - (hi - 0.23) * drop)], kind)
    j, half = st.lengths[0], scene['stair']['locks'][0]['length'] / 2
    s.dim((j - half, 0.07), (j + half, 0.07), 'length of the scab', 0.07)
    s.dim((j, -0.07), (j + half / 2, -0.07), 'a quarter of it', -0.05)
    s.note((j - 0.15, y0 - 0.07), 'spacer block: upper half only', -0.1, 0.05)
    s.note((j + half / 2, y0 - 0.132), 'pin and heads: from the rail\'s inner face to the scab\'s outer', 0.05, -0.06)
    s.note((2.15, y0 - 0.03), 'side rail', 0.08, 0.0)
    return s


def hinge_sheet():
    scene = example()
    st = parts.Stair(scene)
    s = Sheet('hinge', 'A hinge on the back face')
    for k in (0, 1):
        x0, x1 = (st.lengths[0] - 0.13, st.lengths[0]) if k == 0 else (st.lengths[0], st.lengths[0] + 0.13)
        s.poly(parts.box(x0, x1, st.back, st.back + 0.06), 'wood')
    for p in parts.hinge_parts(st):
        s.part(lambda q, k=p.body: (q[0] + st.starts[k], q[1]), p)
    axis = (st.lengths[0], st.axes()[0])
    s.circle(axis, rules.hinge_disc(st, 0, scene), 'may')
    s.dim((axis[0] + 0.04, st.back), (axis[0] + 0.04, axis[1]), 'offset', 0.0)
    s.dim((st.lengths[0] - 0.075, st.back - 0.003), (st.lengths[0], st.back - 0.003), 'leaf length', -0.03)
    s.note((axis[0] - 0.005, axis[1]), 'barrel: radius = offset, from 2 to 8 mm; 4 mm at offset 0', -0.03, -0.025)
    s.note((axis[0] + 0.0205, axis[1] - 0.0205), 'may touch within: 1.41 (barrel + margin.self + 10 mm)', 0.012, -0.02)
    s.note((st.lengths[0] + 0.1, st.back + 0.03), 'section 2', 0.02, 0.02)
    return s


def hook_sheet(pointed):
    changes = {'stair/hooks/offset': 0.006, 'stair/hooks/end': 'pointed' if pointed else 'square', 'stair/hooks/tip': 0.008,
               'stair/hooks/shank': 0.06}
    scene = example(**changes)
    st = parts.Stair(scene)
    s = Sheet('hook', 'A bent rod in its section\'s frame')
    turn = (lambda q: np.array([q[1], -q[0]]))     # across to the right, along downwards
    for name, poly, _ in parts.rod_hook(scene['stair']['hooks']):
        s.poly([turn(q) for q in poly], 'steel')
    s.circle((0, 0), 0.024, 'chain')
    s.circle((0, st.slack), 0.0167, 'soft')
    s.line((0, 0), (0.05, 0))
    s.note((0, 0), 'pivot', -0.03, -0.03)
    s.note((0, st.slack), 'pipe', -0.012, -0.004)
    s.note((0.036, 0), 'angle 0; the jog begins here', 0.02, 0.01)
    s.note(turn((-0.024, 0)), 'crown: 90 degrees', 0.035, 0.025)
    s.dim((0, 0), (-0.024 * math.cos(math.radians(15)), -0.024 * math.sin(math.radians(15))), 'inside', 0.0)
    low = parts.jog_pieces(0.024, 0.012, 0.006)[0]
    s.dim((0.042, 0), (0.042, -low), 'jog', 0.014)
    s.dim((0.042, -low), (0.042, -low - 0.06), 'shank', 0.014)
    s.dim((0.024, -low - 0.06), (0.030, -low - 0.06), 'shank offset', -0.008)
    return s


def caster_sheet():
    scene = example(**{'stair/casters/kind': 'rigid'})
    st, at = upright(scene)
    s = Sheet('caster', 'A rigid caster in the working pose')
    k, c = 1, scene['stair']['casters']
    s.poly([at((x, y), k) for x, y in parts.box(1.34, 1.475, st.back, st.front)], 'wood')
    for p in parts.caster_parts(st):
        s.part(lambda q: at(q, k), p, 'soft' if p.kind == 'caster' else 'steel')
    axle = at((c['along'], c['across']), k)
    s.line((axle[0] - 0.1, 0), (axle[0] + 0.1, 0), 'soft')
    s.line((axle[0] - 0.13, axle[1]), (axle[0] + 0.09, axle[1]))
    s.dim((axle[0] + 0.016, 0), (axle[0] + 0.016, axle[1]), 'radius', -0.04)
    s.dim((axle[0] - 0.016, 0), (axle[0] + 0.016, 0), 'width', -0.025)
    s.note((axle[0] - 0.06, axle[1]), 'the plate\'s lowest corner is level with the axle', -0.04, -0.03)
    s.note(at((1.46, 0), k), 'plate: diameter by diameter, on the middle of the rail', -0.1, 0.08)
    return s


def handrail_sheet():
    scene = example(**{'stair/handrails': {'height': 0.4, 'diameter': 0.034, 'sides': 'both', 'every': 0.6}})
    st = parts.Stair(scene)
    s = Sheet('handrail', 'A handrail and its posts on section 1')
    for p in parts.stair_parts(scene):
        if p.body == 0 and p.kind in ('side rail', 'handrail'):
            s.part(section_frame, p)
    a, b = 0.075, st.lengths[0]
    s.dim((a, 0.487), (a + 0.1, 0.487), '100 mm', 0.06)
    s.dim((b - 0.1, 0.487), (b, 0.487), '100 mm', 0.06)
    s.dim((a + 0.117, 0.2), (a + 0.717, 0.2), 'post every', 0.0)
    s.dim((1.5, 0.07), (1.5, 0.47), 'height', 0.0)
    return s


def bracket_sheet(name, title, rail):
    scene = example()
    scene['rail']['brackets'].update(rail)
    s = Sheet(name, title)
    x, y = scene['rail']['at']
    low = y - 0.17
    for p in parts.bracket_parts(scene):
        q = p.poly.copy()
        q[:, 1] = np.maximum(q[:, 1], low)
        s.poly(q if len(q) > 1 else [], 'steel') if len(q) > 1 else s.circle(q[0], p.radius, 'steel')
    s.circle((x, y), scene['rail']['diameter'] / 2, 'soft')
    return s, scene, np.array([x, y])


def wall_saddle_sheet():
    s, scene, c = bracket_sheet('wall-saddle', 'A wall-saddle bracket', {
        'bend': 0.012, 'flat': 0.001, 'saddle heads': {'diameter': 0.008, 'height': 0.002, 'apart': 0.0, 'at': []},
        'plate heads': {'diameter': 0.012, 'height': 0.004, 'apart': 0.03, 'at': [-0.03, 0.03]}})
    b, r = scene['rail']['brackets'], scene['rail']['diameter'] / 2
    s.line((c[0] - b['projection'], c[1] - 0.13), (c[0] - b['projection'], c[1] + 0.02), 'soft')
    s.dim(c, c - [b['projection'], 0], 'projection', -0.03)
    s.dim(c + [0.035, 0], c + [0.035, -b['drop']], 'drop, with or without a flat', 0.0)
    s.dim(c + [-0.7 * r, -r - 0.001], c + [0.7 * r, -r - 0.001], '1.4 r', -0.012)
    s.note(c + [0.006, -r + 0.001 - 0.003], 'rod cut square under the saddle', 0.03, -0.012)
    s.note(c - [b['projection'] - 0.003, b['drop'] - 0.04], 'plate: its middle level with the arm', 0.02, 0.012)
    return s


def post_sheet():
    s, scene, c = bracket_sheet('post-mounted', 'A post-mounted bracket', {
        'shape': 'post-mounted', 'post': {'size': (0.044, 0.066), 'above': 0.03, 'foot': None}, 'bend': 0.014, 'projection': 0.07})
    b = scene['rail']['brackets']
    s.dim(c, c - [b['projection'], 0], 'projection', -0.03)
    s.dim(c - [b['projection'] + 0.03, b['drop']], c - [b['projection'] + 0.03, b['drop'] - 0.03], 'above', 0.03)
    s.note(c - [b['projection'] + 0.02, 0.16], 'down to foot, or the floor', 0.05, 0.0)
    return s


def strap_sheet():
    s, scene, c = bracket_sheet('strap', 'A strap of 145 degrees, its tab to the wall', {
        'shape': 'strap', 'strap': (0.030, 0.003), 'tab': 'wall', 'arc': math.radians(145), 'plate': (0.06, 0.07, 0.004), 'projection': 0.08})
    r = scene['rail']['diameter'] / 2
    s.dim(c, c - [0.08, 0], 'projection', -0.04)
    s.line(c - [r + 0.02, 0], c + [0.02, 0])
    s.note(c + [-r - 0.02, 0.0], 'tab: its middle level with the pipe\'s', 0.0, -0.035)
    s.note(c + [0, -r - 0.003], 'band: from the tab over wall side and underside', 0.02, -0.015)
    return s


def hoist_sheet():
    scene = example()
    scene['hoist'].update(spreader={'length': 0.5, 'drop': 0.25, 'thickness': 0.04})
    scene['hoist']['pick']['spread'] = 0.4
    st, at = upright(scene)
    chain = kinematics.Chain(scene)
    frames = chain.frames(np.array([st.lean]), np.zeros((1, 1)), st.pivot)
    station = np.array([scene['hoist']['home']])
    s = Sheet('hoist', 'The line from its dead end to the hand')
    for p in parts.stair_parts(scene):
        if p.kind in ('side rail', 'tread'):
            s.part(lambda q, k=p.body: at(q, k), p)
    for run in ropes.hoist_ropes(scene, frames, station) + ropes.led_off(scene, 1, station):
        a, b = run.p[0, :2], run.q[0, :2]
        d = (b - a) / max(np.hypot(*(b - a)), 1e-9)
        n = np.array([-d[1], d[0]]) * run.radius
        s.poly([a + n - d * run.radius, b + n + d * run.radius, b - n + d * run.radius, a - n - d * run.radius], 'steel')
    zone = [z for z, _ in parts.zone_parts(scene) if z.name == 'where the hand pulls'][0]
    s.poly(zone.poly, 'zone')
    point, hand = parts.ceiling_point(scene), parts.hand_point(scene)
    s.note(point[:2], 'ceiling point', -0.5, 0.1)
    s.note(hand[:2], 'hand: 1.2 m over the floor', -0.9, -0.2)
    s.note((zone.poly[0][0], 1.8), 'where the hand pulls: 0.6 by 0.6 by 2 m', -0.5, 0.2)
    s.note((2.1, 2.5), 'tackle: a tube as wide as the blocks', 0.4, 0.1)
    s.note((1.9, 1.63), 'spreader bar at its drop from the picks; legs', -0.5, 0.3)
    s.line((0.7, 0), (4.6, 0), 'soft')
    return s


SHEETS = (stair_sheet, tread_sheet, lock_sheet, hinge_sheet, lambda: hook_sheet(True), caster_sheet, handrail_sheet, wall_saddle_sheet,
          post_sheet, strap_sheet, hoist_sheet)


def main():
    folder = sys.argv[1] if len(sys.argv) > 1 else os.path.join(HERE, '..', '..', 'docs', 'parts')
    os.makedirs(folder, exist_ok=True)
    for make in SHEETS:
        make().write(folder)


if __name__ == '__main__':
    main()
