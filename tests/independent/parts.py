"""Where every part of a scene is: its own placing, from docs/parts.md, with nothing of the program's code.

A part is a convex outline (corners, perhaps grown by a radius) in the side view of its body, over stretches of stations.
Body -1 is the room (out, up, absolute stations); body k is section k+1 (along, across, stations from the stair's middle).
"""
import math
from dataclasses import dataclass

import numpy as np

import geometry as geo

ROOM = -1
RISE = 0.250          # equal risers are no higher than this
SADDLE_WRAP = 0.7     # a saddle reaches this share of the pipe's radius to either side
RAIL_END = 0.100      # a handrail ends this far from either end of its section's side rails


@dataclass
class Part:
    """One outline of one body over stretches of stations [m]."""
    body: int
    kind: str
    name: str
    poly: np.ndarray
    stations: list
    radius: float = 0.0
    hinge: int = -1          # of a hinge, leaf, scab, spacer or pin: which joint, from 0
    only_pinned: bool = False
    thing: str = ''          # which thing of the room it belongs to

    def __post_init__(self):
        self.poly = geo.ccw(self.poly)      # distances go by outward normals


def box(a0, a1, b0, b1):
    return np.array([(a0, b0), (a1, b0), (a1, b1), (a0, b1)])


class Stair:
    """The stair's fixed measures: sections, hinges, casters, and the lean in which it stands."""

    def __init__(self, scene):
        s, rail, floor = scene['stair'], scene['rail'], scene['floor']
        self.s, self.lengths, self.front = s, s['sections'], s['front']
        self.thick, self.deep = s['rail']
        self.back = self.front - self.deep
        self.middle = (self.front + self.back) / 2
        self.half = s['width'] / 2
        self.starts = [sum(self.lengths[:k]) for k in range(len(self.lengths))]
        self.slack = s['hooks']['inside'] - rail['diameter'] / 2
        self.pivot = np.array([rail['at'][0], rail['at'][1] - self.slack])
        self.axle = (self.starts[-1] + s['casters']['along'], s['casters']['across'])
        self.wheel = s['casters']['diameter'] / 2
        self.floor, self.uneven, self.deck = floor['level'], floor['uneven'], scene['loft']['deck']
        self.lean = self.standing(self.pivot[1], self.floor)

    def axes(self):
        """Across of each hinge's axis."""
        return [self.front + h['offset'] if h['face'] == 'front' else self.back - h['offset'] for h in self.s['hinges']]

    def turns(self):
        """+1 where a fold adds to the lean of the section below, -1 where it takes from it."""
        return [1 if h['face'] == 'front' else -1 for h in self.s['hinges']]

    def standing(self, pivot_up, floor):
        """Lean in which the straight stair's axle stands a wheel's radius over the floor, by bisection."""
        a, c = self.axle

        def high(lean):
            return pivot_up - a * math.cos(lean) + c * math.sin(lean) - floor - self.wheel
        lo, hi = math.atan2(-c, a), math.radians(90)
        for _ in range(200):
            mid = (lo + hi) / 2
            lo, hi = (mid, hi) if high(mid) < 0 else (lo, mid)
        return (lo + hi) / 2

    def start_of_rail(self, k):
        return -self.s['above'] if k == 0 else 0.0

    def both(self, inner, outer):
        """Stretches from `inner` to `outer` on either side of the stair's middle."""
        return [(-outer, -inner), (inner, outer)]

    def side_stretches(self):
        return self.both(self.half - self.thick, self.half)

    def level(self):
        """Unit vectors of out and down in the working pose, in (along, across)."""
        return (np.array([math.sin(self.lean), math.cos(self.lean)]), np.array([math.cos(self.lean), -math.sin(self.lean)]))


def stair_parts(scene):
    """All prisms of the stair."""
    st = Stair(scene)
    parts = []
    for make in (rail_parts, tread_parts, lock_parts, hinge_parts, hook_parts, caster_parts, handrail_parts, extra_parts):
        parts += make(st)
    return parts


def rail_parts(st):
    out = []
    for k, long in enumerate(st.lengths):
        poly = box(st.start_of_rail(k), long, st.back, st.front)
        if k == len(st.lengths) - 1 and st.s['foot'] == 'level':
            slope = math.tan(st.lean)
            poly = np.array([(poly[0][0], st.back), (long + st.back * slope, st.back), (long + st.front * slope, st.front),
                             (poly[0][0], st.front)])
        out.append(Part(k, 'side rail', 'side rail', poly, st.side_stretches()))
    return out


def tread_heights(st, deck):
    """Tops of the treads over the floor [m], from the lowest; the deck itself is no tread."""
    t, high = st.s['treads'], deck - st.floor
    rise, first = t['rise'], t['first']
    if rise is None:
        left = high - (first or 0.0)
        rise = left / math.ceil(left / RISE - 1e-9)
    first = rise if first is None else first
    n = math.ceil((high - first) / rise - 1e-9)
    return [first + i * rise for i in range(max(n, 0))]


def tread_parts(st):
    if not st.s['treads']:
        return []
    thick, deep = st.s['treads']['size']
    out_dir, down = st.level()
    parts = []
    for top in tread_heights(st, st.deck):
        across = st.front + st.s['treads']['overhang']
        along = (st.pivot[1] - (st.floor + top) + across * math.sin(st.lean)) / math.cos(st.lean)
        nose = np.array([along, across])
        poly = np.array([nose, nose - deep * out_dir, nose - deep * out_dir + thick * down, nose + thick * down])
        if poly[:, 0].min() < st.start_of_rail(0):
            continue
        k = sum(poly[:, 0].mean() >= s for s in st.starts[1:])
        inner = st.half - st.thick
        parts.append(Part(k, 'tread', 'tread', poly - [st.starts[k], 0], [(-inner, inner)]))
    return parts


def lock_parts(st):
    out = []
    for k, lock in enumerate(st.s['locks']):
        (thick, deep), long, end = lock['scab'], lock['length'], st.lengths[k]
        b0, b1 = st.middle - deep / 2, st.middle + deep / 2
        inner, outer = st.half + lock['spacer'], st.half + lock['spacer'] + thick
        out.append(Part(k, 'scab', 'scab', box(end - long / 2, end + long / 2, b0, b1), st.both(inner, outer), hinge=k))
        if lock['spacer'] > 0:
            out.append(Part(k, 'spacer', 'spacer block', box(end - long / 2, end, b0, b1), st.both(st.half, inner), hinge=k))
        at = np.array([[end + long / 4, st.middle]])
        low, head = st.half - st.thick, lock['head']
        out.append(Part(k, 'pin', 'lock pin', at, st.both(low, outer), lock['pin'] / 2, k, True))
        heads = st.both(outer, outer + head[1]) + st.both(low - head[1], low)
        out.append(Part(k, 'pin', 'lock pin head', at, heads, head[0] / 2, k, True))
    return out


def barrel(offset):
    """Radius of a hinge's barrel: it touches the face where it can, between 2 and 8 mm; 4 mm where it is let in."""
    return 0.004 if offset == 0 else min(max(offset, 0.002), 0.008)


def hinge_parts(st):
    out = []
    for k, (h, axis) in enumerate(zip(st.s['hinges'], st.axes())):
        out.append(Part(k, 'hinge', 'hinge', np.array([[st.lengths[k], axis]]), st.side_stretches(), barrel(h['offset']), k))
        long, thick = h['leaf']
        if thick <= 0 or h['offset'] < thick:
            continue
        c0, c1 = (st.front, st.front + thick) if h['face'] == 'front' else (st.back - thick, st.back)
        out.append(Part(k, 'leaf', 'hinge leaf', box(st.lengths[k] - long, st.lengths[k], c0, c1), st.side_stretches(), hinge=k))
        out.append(Part(k + 1, 'leaf', 'hinge leaf', box(0, long, c0, c1), st.side_stretches(), hinge=k))
    return out


E0, E1 = np.array([0.0, 1.0]), np.array([-1.0, 0.0])   # a hook's angle 0 (across) and a quarter turn on (up the section)


def hook_parts(st):
    h = st.s['hooks']
    polys = rod_hook(h) if h['shape'] == 'rod' else plate_hook(h)
    half = (h['rod'] if h['shape'] == 'rod' else h['thickness']) / 2
    where = [(c - half, c + half) for c in h['stations']]
    out = [Part(0, 'hook', name, poly, where, radius) for name, poly, radius in polys]
    if h['roller']:
        d = h['roller']['diameter'] / 2
        out.append(Part(0, 'hook', 'hook roller', roller(h), [(c - d, c + d) for c in h['stations']]))
    return out


def rod_hook(h):
    ri, d, wrap = h['inside'], h['rod'], h['wrap']
    low, jog = jog_pieces(ri, d, h['offset'])
    out = [('hook shank', p, 0.0) for p in jog]
    out.append(('hook shank', box(low, low + h['shank'], ri + h['offset'], ri + h['offset'] + d), 0.0))
    out += [('hook bend', p, 0.0) for p in geo.ring((0, 0), ri, ri + d, 0, wrap, E0, E1)]
    u, t = E0 * math.cos(wrap) + E1 * math.sin(wrap), E1 * math.cos(wrap) - E0 * math.sin(wrap)
    if h['tip'] > 0:
        out.append(('hook tip', np.array([ri * u, (ri + d) * u, (ri + d) * u + h['tip'] * t, ri * u + h['tip'] * t]), 0.0))
    if h['end'] == 'pointed':
        a, b = ri * u + h['tip'] * t, (ri + d) * u + h['tip'] * t
        out.append(('hook point', np.array([a, b, (a + b) / 2 + d * t]), 0.0))
    return [(n, p, r) for n, p, r in out if len(geo.ccw(p)) > 2]


def jog_pieces(ri, d, offset):
    """Where the straight shank begins along, and the pieces of the jog above it: two bends of centre line 1.5 d, turned
    opposite ways by up to 45 degrees, a straight between them once both have turned as far."""
    if offset <= 0:
        return 0.0, []
    r = 1.5 * d
    turn = min(math.acos(max(1 - offset / (2 * r), -1)), math.pi / 4)
    straight = max(offset - 2 * r * (1 - math.cos(turn)), 0) / math.sin(turn)
    low = 2 * r * math.sin(turn) + straight * math.cos(turn)
    c = ri + d / 2
    first, last = np.array([0, c + r]), np.array([low, c + offset - r])
    out = geo.ring(first, d, 2 * d, 0, turn, (0, -1), (1, 0)) + geo.ring(last, d, 2 * d, 0, turn, (0, 1), (-1, 0))
    if straight > 1e-9:
        u, n = np.array([math.cos(turn), math.sin(turn)]), np.array([-math.sin(turn), math.cos(turn)])
        a = first + r * np.array([math.sin(turn), -math.cos(turn)])
        b = a + straight * u
        out.append(np.array([a - n * d / 2, b - n * d / 2, b + n * d / 2, a + n * d / 2]))
    return low, out


def plate_hook(h):
    out = [('hook bend', p, 0.0) for p in geo.ring((0, 0), h['inside'], h['inside'] + h['rim'], 0, h['wrap'], E0, E1)]
    return out + [('hook ' + p['name'], np.array(p['outline']), p['radius']) for p in h['parts']]


def roller(h):
    """A wheel seen from the side: its width along the bend's tangent, its diameter outward from the hook's circle."""
    w = h['roller']
    u = E0 * math.cos(w['at']) + E1 * math.sin(w['at'])
    t = E1 * math.cos(w['at']) - E0 * math.sin(w['at'])
    a = h['inside'] * u
    return np.array([a - t * w['width'] / 2, a + t * w['width'] / 2, a + t * w['width'] / 2 + u * w['diameter'],
                     a - t * w['width'] / 2 + u * w['diameter']])


def caster_parts(st):
    c = st.s['casters']
    k = len(st.lengths) - 1
    axle = np.array([c['along'], c['across']])
    wheels = rigid_wheel(c) if c['kind'] == 'rigid' else swivel_wheel(c)
    out_dir, down = st.level()
    out = []
    for wide, high, reach in wheels:
        poly = np.array([axle + i * wide * out_dir + j * high * down for i, j in ((1, 1), (1, -1), (-1, -1), (-1, 1))])
        out.append(Part(k, 'caster', 'caster', poly, [(s - reach, s + reach) for s in c['stations']]))
    return out + mount_parts(st, c, k)


def rigid_wheel(c):
    """(half width, half height, half reach along the rail) of boxes inside a wheel that rolls along the rail."""
    r = c['diameter'] / 2
    return [(c['width'] / 2, r * math.cos(a), r * math.sin(a)) for a in np.radians([3, 12, 24, 36, 48, 60, 72, 84])]


def swivel_wheel(c):
    """The same inside all that a wheel sweeps which turns about an upright axis ahead of its axle."""
    r, out = c['diameter'] / 2, []
    for high in (0.05 * r, 0.4 * r, 0.7 * r, 0.95 * r):
        rho = c['trail'] + math.sqrt(r * r - high * high)
        out += [(rho * math.cos(a), high, rho * math.sin(a)) for a in np.radians([5, 30, 60, 85])]
    return out


def mount_parts(st, c, k):
    """Packing block and plate: squares as wide as the wheel is high, in the middle of the side rail, ending where their
    lowest corner is as low as the axle in the working pose."""
    d, out = c['diameter'], []
    corners = (st.middle - d / 2, st.middle + d / 2)
    end = c['along'] + min((b - c['across']) * math.tan(st.lean) for b in corners)
    sides = [(-1 if s < 0 else 1) for s in c['stations']]
    inner = st.half
    for name, thick in (('caster block', c['block']), ('caster plate', c['plate'])):
        if thick > 0:
            where = [(inner, inner + thick) if s > 0 else (-inner - thick, -inner) for s in sorted(set(sides))]
            out.append(Part(k, 'mount', name, box(end - d, end, *corners), where))
        inner += thick
    return out


def handrail_parts(st):
    h = st.s['handrails']
    if not h:
        return []
    r, out = h['diameter'] / 2, []
    mid = st.half - st.thick / 2
    sides = {'both': (-mid, mid), 'left': (-mid,), 'right': (mid,)}[h['sides']]
    where = [(s - r, s + r) for s in sides]
    for k, long in enumerate(st.lengths):
        a, b, high = st.start_of_rail(k) + RAIL_END + r, long - RAIL_END - r, st.front + h['height']
        if b <= a:
            continue
        out.append(Part(k, 'handrail', 'handrail', np.array([(a, high), (b, high)]), where, r))
        for i in range(int((b - a) / h['every'] + 1e-9) + 1):
            at = a + i * h['every']
            out.append(Part(k, 'handrail', 'handrail post', np.array([(at, st.front), (at, high)]), where, r))
    return out


def extra_parts(st):
    return [Part(e['section'] - 1, 'extra', e['name'], e['outline'], [tuple(e['stations'])], e['radius'])
            for e in st.s['extras']]


# The room

def room_parts(scene):
    out = shell(scene) + loft_parts(scene) + rail_things(scene) + bracket_parts(scene)
    for o in scene['obstacles']:
        out += obstacle_parts(o, scene)
    return out


def room_part(kind, name, poly, stations, radius=0.0, thing=''):
    return Part(ROOM, kind, name, poly, [tuple(s) for s in stations], radius, thing=thing or name)


def shell(scene):
    """Floor, walls and ceiling as half spaces."""
    r, f, low = scene['room'], geo.FAR, scene['floor']['level']
    x0, x1, y0, y1 = -f, r['depth'] + f, low - f, r['ceiling'] + f
    along = [(-f, r['length'] + f)]
    return [room_part('floor', 'floor', box(x0, x1, y0, low), along),
            room_part('ceiling', 'ceiling', box(x0, x1, r['ceiling'], y1), along),
            room_part('wall', 'back wall', box(x0, 0, y0, y1), along),
            room_part('wall', 'front wall', box(r['depth'], x1, y0, y1), along),
            room_part('wall', 'left side wall', box(x0, x1, y0, y1), [(-f, 0)]),
            room_part('wall', 'right side wall', box(x0, x1, y0, y1), [(r['length'], r['length'] + f)])]


def loft_parts(scene):
    loft, guard = scene['loft'], scene['loft']['guard']
    out = [room_part('loft', 'loft', box(0, loft['edge'], loft['deck'] - loft['thickness'], loft['deck']), [loft['stations']])]
    if guard:
        poly = box(guard['out'] - guard['thickness'], guard['out'], loft['deck'], loft['deck'] + guard['height'])
        out.append(room_part('guard', 'guard', poly, without(loft['stations'], guard['openings'])))
    return out


def without(stretch, holes):
    """What is left of a stretch without the holes."""
    left, at = [], stretch[0]
    for a, b in sorted(holes):
        if a > at:
            left.append((at, min(a, stretch[1])))
        at = max(at, b)
    if at < stretch[1]:
        left.append((at, stretch[1]))
    return [s for s in left if s[1] > s[0]]


def rail_things(scene):
    rail = scene['rail']
    centre, (s0, s1), stops = [rail['at']], rail['stations'], rail['stops']
    out = [room_part('pipe', 'pipe', centre, [(s0, s1)], rail['diameter'] / 2)]
    ends = {'both ends': (0, 1), 'left': (0,), 'right': (1,), 'none': ()}[stops['ends']]
    where = [[(s0, s0 + stops['width']), (s1 - stops['width'], s1)][i] for i in ends]
    if where:
        out.append(room_part('stop', 'rail stop', centre, where, stops['diameter'] / 2))
    for at, diameter, long in rail['joints']:
        out.append(room_part('joint', 'pipe joint', centre, [(at - long / 2, at + long / 2)], diameter / 2))
    return out


def bracket_parts(scene):
    rail, b = scene['rail'], scene['rail']['brackets']
    pieces = {'wall-saddle': wall_saddle, 'strap': strap, 'post-mounted': post_mounted, 'outline': outline_bracket}[b['shape']](scene)
    half = max(hi for _, _, where, _ in pieces for _, hi in where)
    stations = b['at'] or repeated(b, half, rail['stations'])
    return [room_part('bracket', 'bracket ' + name, poly, [(s + lo, s + hi) for s in stations for lo, hi in where], radius, 'bracket')
            for name, poly, where, radius in pieces]


def repeated(b, half, stretch):
    n = int((stretch[1] - half - b['first']) / b['every'] + 1e-9)
    return [b['first'] + i * b['every'] for i in range(n + 1)]


def spread(at, half):
    return [(a - half, a + half) for a in at]


def saddle_pieces(scene):
    """The saddle and its heads; returns them and the height of the saddle's underside."""
    rail, b = scene['rail'], scene['rail']['brackets']
    (x, y), r, (long, thick) = rail['at'], rail['diameter'] / 2, b['saddle']
    top = y - r + b['flat']
    out = [('saddle', box(x - SADDLE_WRAP * r, x + SADDLE_WRAP * r, top - thick, top), spread([0], long / 2), 0.0)]
    heads = b['saddle heads']
    if heads:
        d = heads['diameter'] / 2
        out.append(('screw head', box(x - d, x + d, top - thick - heads['height'], top - thick), spread(pairs(heads['apart']), d), 0.0))
    return out, top - thick


def pairs(apart):
    return [0.0] if apart == 0 else [-apart / 2, apart / 2]


def arm_pieces(scene, under, start):
    """The arm: a rod level from `start`, an elbow, and up to the saddle's underside, cut square there."""
    rail, b = scene['rail'], scene['rail']['brackets']
    (x, y), d = rail['at'], b['arm']
    low, where = y - b['drop'], spread([0], d / 2)
    big = b['bend'] + d / 2 if b['bend'] > 0 else 0.0
    out = [('arm', box(x - d / 2, x + d / 2, low + big, under), where, 0.0)] if under > low + big else []
    if b['bend'] > 0:
        out += [('arm', p, where, 0.0) for p in geo.ring((x - big, low + big), b['bend'], b['bend'] + d, 0, math.pi / 2, (1, 0), (0, -1))]
    else:
        out.append(('arm', np.array([(x, low)]), where, d / 2))
    if x - big > start:
        out.append(('arm', box(start, x - big, low - d / 2, low + d / 2), where, 0.0))
    return out


def wall_saddle(scene):
    rail, b = scene['rail'], scene['rail']['brackets']
    out, under = saddle_pieces(scene)
    wide, high, thick = b['plate']
    face, low = rail['at'][0] - b['projection'], rail['at'][1] - b['drop']
    out += arm_pieces(scene, under, face + thick)
    out.append(('plate', box(face, face + thick, low - high / 2, low + high / 2), spread([0], wide / 2), 0.0))
    heads = b['plate heads']
    if heads:
        d = heads['diameter'] / 2
        out += [('screw head', box(face + thick, face + thick + heads['height'], low + at - d, low + at + d),
                 spread(pairs(heads['apart']), d), 0.0) for at in heads['at']]
    return out


def strap(scene):
    """A band round the pipe and its tab. Drawn with the tab to the wall; turned by a quarter where it goes up."""
    rail, b = scene['rail'], scene['rail']['brackets']
    r, (wide, thick), arc = rail['diameter'] / 2, b['strap'], b['arc']
    c, (away, side) = np.array(rail['at']), (((0, 1), (-1, 0)) if b['tab'] == 'up' else ((-1, 0), (0, -1)))
    away, side = np.array(away, float), np.array(side, float)
    where = spread([0], wide / 2)
    out = [('band', p, where, 0.0) for p in geo.ring(c, r, r + thick, 0, arc, away, side)]
    tab = thick if arc > math.radians(359.99) else thick / 2
    plate = b['plate']
    end = b['projection'] - (plate[2] if plate else 0.0)

    def bar(a0, a1, b0, b1):
        return np.array([c + a * away + s * side for a, s in ((a0, b0), (a1, b0), (a1, b1), (a0, b1))])
    out.append(('tab', bar(r, end, -tab, tab), where, 0.0))
    if plate:
        out.append(('plate', bar(end, b['projection'], -plate[1] / 2, plate[1] / 2), spread([0], plate[0] / 2), 0.0))
    return out


def post_mounted(scene):
    rail, b = scene['rail'], scene['rail']['brackets']
    (x, y), post = rail['at'], b['post']
    foot = scene['floor']['level'] if post['foot'] is None else post['foot']
    out, under = saddle_pieces(scene)
    deep, wide = post['size']
    if b['projection'] is None:
        return out + [('post', box(x - deep / 2, x + deep / 2, foot, under), spread([0], wide / 2), 0.0)]
    face, top = x - b['projection'], y - b['drop'] + post['above']
    out += arm_pieces(scene, under, face)
    out.append(('post', box(face - deep, face, foot, top), spread([0], wide / 2), 0.0))
    return out


def outline_bracket(scene):
    c = np.array(scene['rail']['at'])
    return [(p['name'], np.array(p['outline']) + c, spread([0], p['width'] / 2), p['radius']) for p in scene['rail']['brackets']['parts']]


def obstacle_parts(o, scene):
    if 'post' not in o:
        return [room_part('obstacle', o['name'], o['outline'], [o['stations']], o['radius'])]
    p = o['post']
    y0, y1 = o['up'] or (scene['floor']['level'], scene['room']['ceiling'])
    if p['size']:
        a, s = p['size']
        return [room_part('obstacle', o['name'], box(p['out'] - a / 2, p['out'] + a / 2, y0, y1), spread([p['station']], s / 2))]
    r = p['diameter'] / 2
    return [room_part('obstacle', o['name'], box(p['out'] - r * math.cos(a), p['out'] + r * math.cos(a), y0, y1),
                      spread([p['station']], r * math.sin(a))) for a in np.radians(np.arange(2, 90, 4))]


def zone_parts(scene):
    """Keep-clear zones, with the hand's room, as (part, the states in which it must be empty)."""
    out = [(room_part('zone', z['name'], z['outline'], [z['stations']], thing=z['name']), z['when']) for z in scene['zones']]
    h = scene['hoist']
    if h and hand_point(scene) and h['pulled by'] in ('hand', 'crank winch'):
        x, _, s = hand_point(scene)
        low = scene['floor']['level']
        name = 'where the hand pulls' if h['pulled by'] == 'hand' else 'where the crank is turned'
        out.append((room_part('zone', name, box(x - 0.3, x + 0.3, low, low + 2.0), [(s - 0.3, s + 0.3)]), {'hoist', 'parked'}))
    return out


def ceiling_point(scene):
    h = scene['hoist']
    return h and h['point'] and (h['point']['out'], h['point']['up'], h['point']['station'])


def hand_point(scene):
    """(out, up, station) of the hand: 1.2 m over the floor below the last lead, or level with it where that is lower."""
    h = scene['hoist']
    if not ceiling_point(scene):
        return None
    if h['hand']:
        return (h['hand']['out'], h['hand']['up'], h['hand']['station'])
    last = h['leads'][-1] if h['leads'] else h['point']
    return (last['out'], min(scene['floor']['level'] + 1.2, last['up']), last['station'])
