"""Reads a scene file into plain dictionaries in metres, radians and kilograms, by docs/scene-reference.md alone.

It checks nothing: a scene that the command refuses is of no use here. What stands in the file in the trade's measures
(9' 10-1/2", 3/8 in, 70 deg, 12 lb) is turned into SI by the key that it belongs to.
"""
import math
import re

import yaml

MM = 0.001
INCH = 0.0254
FOOT = 12 * INCH

# Dressed sizes of nominal lumber (thickness, width) [in], PS 20: below 2 in nominal 3/4 in thick, else half an inch less;
# wide boards lose a quarter more from 8 in nominal on.
PIPE_NPS = {'1/2': 0.840, '3/4': 1.050, '1': 1.315, '1-1/4': 1.660, '1-1/2': 1.900, '2': 2.375, '2-1/2': 2.875, '3': 3.5}

NUMBER = r'-?(?:\d+(?:\.\d+)?(?:-\d+/\d+| +\d+/\d+|/\d+)?|\.\d+)'


def number(text):
    """The number that `text` writes: 3, 2.5, 3/8, 5-1/2 or 5 1/2, with a sign."""
    text = text.strip()
    sign = -1 if text.startswith('-') else 1
    text = text.lstrip('+-').strip()
    mixed = re.fullmatch(r'(\d+)[- ]+(\d+)/(\d+)', text)
    if mixed:
        whole, top, bottom = map(int, mixed.groups())
        return sign * (whole + top / bottom)
    fraction = re.fullmatch(r'(\d+)/(\d+)', text)
    if fraction:
        return sign * int(fraction.group(1)) / int(fraction.group(2))
    return sign * float(text)


def length(value, unit):
    """A length [m]: a bare number is in `unit` (mm or in); text may carry its own units, feet before inches."""
    scale = MM if unit == 'mm' else INCH
    if isinstance(value, (int, float)):
        return value * scale
    text = value.strip()
    feet = re.fullmatch(r"(-?)\s*(" + NUMBER + r")\s*(?:'|ft)\s*(?:(" + NUMBER + r")\s*(?:\"|in)?)?", text)
    if feet:
        sign = -1 if feet.group(1) else 1
        inches = number(feet.group(3)) if feet.group(3) else 0.0
        return sign * (number(feet.group(2)) * FOOT + inches * INCH)
    own = re.fullmatch('(' + NUMBER + r')\s*(mm|cm|m|in|")', text)
    if own:
        return number(own.group(1)) * {'mm': MM, 'cm': 0.01, 'm': 1.0, 'in': INCH, '"': INCH}[own.group(2)]
    return number(text) * scale


def angle(value):
    """An angle [rad]: a number of degrees, or text with deg."""
    return math.radians(value if isinstance(value, (int, float)) else number(value.replace('deg', '').replace('°', '')))


def lumber(name):
    """Dressed (thickness, width) [m] of a nominal size such as 2x6."""
    thin, wide = (number(part) for part in re.fullmatch(r'\s*([\d./-]+)\s*x\s*([\d./-]+)\s*', name).groups())
    return dressed(min(thin, wide), False) * INCH, dressed(max(thin, wide), True) * INCH


def dressed(nominal, is_width):
    """Dressed inches of a nominal dimension of softwood."""
    if nominal < 2:
        return {1.0: 0.75, 1.25: 1.0, 1.5: 1.25}[nominal]
    if nominal < 7 or not is_width:
        return nominal - 0.5
    return nominal - 0.75


class Reader:
    """Lengths of one file, whose bare numbers are in its `units`."""

    def __init__(self, units):
        self.units = units

    def len(self, where, key, default=None):
        """The length at `key` [m]; the default is in metres already."""
        value = (where or {}).get(key)
        return default if value is None else length(value, self.units)

    def lens(self, values):
        return [length(v, self.units) for v in values]

    def pair(self, where, key, default=None):
        value = (where or {}).get(key)
        return default if value is None else self.lens(value)

    def points(self, values):
        return [tuple(self.lens(p)) for p in values]

    def place(self, where, keys):
        return {k: length(where[k], self.units) for k in keys}

    def by_system(self, mm, inches):
        """A default that is round in either system: millimetres, or inches."""
        return mm * MM if self.units == 'mm' else inches * INCH


def board(r, where, size_key='lumber'):
    """(thickness, width) [m] of a board given by its nominal size or its measures."""
    return tuple(r.lens(where['size'])) if 'size' in where else lumber(where[size_key])


def is_none(value):
    return value is None or value == 'none'


def read_room(d, r):
    room = d['room']
    return {k: r.len(room, k) for k in ('length', 'depth', 'ceiling')}


def read_loft(d, r):
    loft = d['loft']
    out = {k: r.len(loft, k) for k in ('edge', 'deck', 'thickness')}
    out['stations'] = r.pair(loft, 'stations')
    guard = loft.get('guard')
    out['guard'] = guard and {
        'height': r.len(guard, 'height', r.by_system(1070, 42)), 'thickness': r.len(guard, 'thickness', r.by_system(40, 1.5)),
        'out': r.len(guard, 'out', out['edge']), 'openings': [r.lens(o) for o in guard.get('openings', [])]}
    return out


def read_solid(thing, r):
    """Outline, radius and stations of an obstacle or a zone; a post instead where it is one."""
    out = {'name': thing['name'], 'radius': r.len(thing, 'radius', 0.0), 'stations': r.pair(thing, 'stations')}
    if 'box' in thing:
        (x0, x1), (y0, y1) = r.pair(thing['box'], 'out'), r.pair(thing['box'], 'up')
        out['outline'] = [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]
    elif 'outline' in thing:
        out['outline'] = r.points(thing['outline'])
    else:
        post = thing['post']
        out['post'] = {k: r.len(post, k) for k in ('out', 'station', 'diameter')}
        out['post']['size'] = r.pair(post, 'size')
        out['up'] = r.pair(thing, 'up')
    return out


def read_rail(d, r):
    rail = d['rail']
    pipe = rail['pipe']
    if isinstance(pipe, str):
        diameter = PIPE_NPS[pipe.replace('NPS', '').strip()] * INCH
    else:
        diameter = r.len(pipe, 'diameter')
    out = {'diameter': diameter, 'at': (r.len(rail['at'], 'out'), r.len(rail['at'], 'up')), 'stations': r.pair(rail, 'stations')}
    out['stops'] = read_stops(rail.get('stops', 'both ends'), r, diameter)
    out['joints'] = read_joints(rail.get('joints', 'none'), r, diameter)
    out['brackets'] = read_brackets(rail['brackets'], r)
    return out


def read_stops(stops, r, diameter):
    keys = stops if isinstance(stops, dict) else {'ends': stops}
    return {'ends': keys.get('ends', 'both ends'), 'diameter': r.len(keys, 'diameter', diameter + 0.020),
            'width': r.len(keys, 'width', 0.020)}


def read_joints(joints, r, diameter):
    """Each joint as (station, diameter of its coupling, its length)."""
    wide, long = diameter + 0.008, 0.050
    if is_none(joints):
        return []
    if isinstance(joints, dict):
        return [(a, r.len(joints, 'diameter', wide), r.len(joints, 'length', long)) for a in r.lens(joints['at'])]
    return [(r.len(j, 'at'), r.len(j, 'diameter', wide), r.len(j, 'length', long)) if isinstance(j, dict)
            else (length(j, r.units), wide, long) for j in joints]


def read_brackets(b, r):
    out = {'shape': b.get('shape', 'wall-saddle'), 'tab': b.get('tab', 'up'), 'arc': angle(b.get('arc', 360))}
    for key in ('first', 'every', 'projection', 'drop', 'arm'):
        out[key] = r.len(b, key)
    for key in ('bend', 'flat'):
        out[key] = r.len(b, key, 0.0)
    for key in ('at', 'saddle', 'plate', 'strap'):
        out[key] = r.pair(b, key)
    for key in ('saddle heads', 'plate heads'):
        heads = b.get(key)
        out[key] = heads and {'diameter': r.len(heads, 'diameter'), 'height': r.len(heads, 'height'),
                              'apart': r.len(heads, 'apart', 0.0), 'at': r.lens(heads.get('at', []))}
    post = b.get('post')
    out['post'] = post and {'size': r.pair(post, 'size'), 'above': r.len(post, 'above', 0.040), 'foot': r.len(post, 'foot')}
    out['parts'] = [{'name': p['name'], 'outline': r.points(p['outline']), 'radius': r.len(p, 'radius', 0.0),
                     'width': r.len(p, 'width')} for p in b.get('parts', [])]
    return out


def read_stair(d, r):
    s = d['stair']
    rails = s['side rails']
    out = {'width': r.len(s, 'width'), 'rail': board(r, rails), 'front': r.len(rails, 'front face'),
           'foot': rails.get('foot', 'square'), 'sections': r.lens(s['sections']), 'above': r.len(s, 'above pivot', 0.0)}
    out['hinges'] = [{'face': h.get('face', 'back'), 'offset': r.len(h, 'offset'), 'limit': angle(h.get('limit', 180)),
                      'leaf': r.pair(h, 'leaf', [r.by_system(75, 3), r.by_system(3, 0.125)])} for h in s.get('hinges') or []]
    out['locks'] = read_locks(s.get('locks'), r)
    treads = s.get('treads')
    out['treads'] = None if is_none(treads) else {
        'size': board(r, treads), 'rise': None if treads.get('rise', 'equal') == 'equal' else r.len(treads, 'rise'),
        'first': r.len(treads, 'first'), 'overhang': r.len(treads, 'overhang', 0.0)}
    out['hooks'] = read_hooks(s['hooks'], r)
    out['casters'] = read_casters(s['casters'], r)
    hand = s.get('handrails')
    out['handrails'] = None if is_none(hand) else {
        'height': r.len(hand, 'height'), 'diameter': r.len(hand, 'diameter'), 'sides': hand.get('sides', 'both'),
        'every': r.len(hand, 'post every', r.by_system(1200, 48))}
    out['extras'] = [{'name': e['name'], 'section': e.get('section', 1), 'outline': r.points(e['outline']),
                      'radius': r.len(e, 'radius', 0.0), 'stations': r.pair(e, 'stations')} for e in s.get('extras') or []]
    return out


def read_locks(locks, r):
    if is_none(locks):
        return []
    out = []
    for lock in locks:
        pin = r.len(lock, 'pin')
        out.append({'scab': board(r, lock, 'scab'), 'length': r.len(lock, 'length'), 'spacer': r.len(lock, 'spacer', 0.0),
                    'pin': pin, 'head': r.pair(lock, 'pin head', [1.8 * pin, 0.6 * pin])})
    return out


def read_hooks(h, r):
    roller = h.get('roller')
    return {'shape': h.get('shape', 'rod'), 'stations': r.lens(h['stations']), 'rod': r.len(h, 'rod'), 'inside': r.len(h, 'inside'),
            'shank': r.len(h, 'shank', 0.0), 'offset': r.len(h, 'shank offset', 0.0), 'wrap': angle(h['wrap']),
            'tip': r.len(h, 'tip', 0.0), 'end': h.get('end', 'square'), 'rim': r.len(h, 'rim'), 'thickness': r.len(h, 'thickness'),
            'parts': [{'name': p['name'], 'outline': r.points(p['outline']), 'radius': r.len(p, 'radius', 0.0)}
                      for p in h.get('parts', [])],
            'roller': roller and {'diameter': r.len(roller, 'diameter'), 'width': r.len(roller, 'width'),
                                  'at': angle(roller.get('at', 90))},
            'seat': angle(h.get('seat range', 30))}


def read_casters(c, r):
    diameter = r.len(c, 'diameter')
    return {'diameter': diameter, 'width': r.len(c, 'width'), 'along': r.len(c, 'along'), 'across': r.len(c, 'across', 0.0),
            'stations': r.lens(c['stations']), 'plate': r.len(c, 'plate', 0.0), 'block': r.len(c, 'block', 0.0),
            'kind': c.get('kind', 'rigid'), 'trail': r.len(c, 'trail', 0.4 * diameter)}


def read_hoist(d, r):
    h = d.get('hoist')
    if is_none(h):
        return None
    line, pick = h['line'], h['pick']
    diameter, parts = r.len(line, 'diameter'), line.get('parts', 1)
    blocks = line.get('blocks') or {}
    leads = line.get('leads') or ([line['lead']] if line.get('lead') else [])
    point = h.get('ceiling point')
    spreader = h.get('spreader')
    xyz = ('out', 'up', 'station')
    return {
        'point': None if is_none(point) else r.place(point, xyz), 'home': r.len(h, 'home'), 'rolls': bool(h.get('rolls', False)),
        'within': r.len(h, 'home within', r.by_system(10, 0.375)), 'parts': parts, 'diameter': diameter,
        'pick': {'section': pick.get('section', 1), 'along': r.len(pick, 'along'), 'across': r.len(pick, 'across', 0.0),
                 'spread': r.len(pick, 'spread', 0.0)},
        'block length': r.len(blocks, 'length', 15 * diameter), 'block width': r.len(blocks, 'width', 7 * diameter),
        'leads': [r.place(p, xyz) for p in leads], 'hand': r.place(line['hand'], xyz) if line.get('hand') else None,
        'hangs to': r.len(line, 'hangs to'),
        'spreader': spreader and {'length': r.len(spreader, 'length'), 'drop': r.len(spreader, 'drop'),
                                  'thickness': r.len(spreader, 'thickness', r.by_system(40, 1.5))},
        'pulled by': 'hand' if h.get('pulled by', 'hand') == 'hand' else next(iter(h['pulled by']))}


def read_fold_line(d, r):
    f = d.get('fold line')
    if is_none(f):
        return None
    ends = [f['from']] + list(f['through'])
    return {'ends': [(e['section'], r.len(e, 'along'), r.len(e, 'across')) for e in ends], 'diameter': r.len(f, 'diameter'),
            'station': r.len(f, 'station', 0.0)}


def read_move(entry, r):
    """One step of the procedure as (kind, what), angles in radians and stations in metres."""
    kind, what = next(iter(entry.items()))
    if kind == 'roll':
        return kind, 'home' if what == 'home' else length(what, r.units)
    if kind == 'lift':
        return kind, angle(what)
    if kind in ('drag', 'hang'):
        return kind, angle(what['lean'] if isinstance(what, dict) else what)
    if kind == 'fold':
        if isinstance(what, dict):
            return kind, {what.get('hinge', 1) - 1: angle(what['to'])}
        return kind, dict(enumerate(angle(a) for a in (what if isinstance(what, list) else [what])))
    if kind == 'together':
        folds = what.get('fold')
        folds = folds if isinstance(folds, list) else [] if folds is None else [folds]
        return kind, {'station': r.len(what, 'station'), 'lean': None if 'lean' not in what else angle(what['lean']),
                      'folds': dict(enumerate(angle(a) for a in folds))}
    return kind, what


def read_scene(text):
    """The scene that `text` writes, as nested dictionaries [m, rad]."""
    d = yaml.safe_load(text)
    r = Reader(d['units'])
    margin, floor = d.get('margin') or {}, d.get('floor') or {}
    zones = [dict(read_solid(z, r), when=states(z.get('when', 'always'))) for z in d.get('keep clear') or []]
    return {'name': d.get('name', ''), 'units': d['units'],
            'margin': {'default': r.len(margin, 'default', r.by_system(12, 0.5)), 'hook': r.len(margin, 'hook', r.by_system(3, 0.125)),
                       'self': r.len(margin, 'self', r.by_system(3, 0.125))},
            'room': read_room(d, r), 'loft': read_loft(d, r), 'obstacles': [read_solid(o, r) for o in d.get('obstacles') or []],
            'floor': {'level': r.len(floor, 'level', 0.0), 'uneven': r.len(floor, 'uneven', 0.0)}, 'zones': zones,
            'rail': read_rail(d, r), 'stair': read_stair(d, r), 'hoist': read_hoist(d, r), 'fold line': read_fold_line(d, r),
            'procedure': [read_move(e, r) for e in d.get('procedure') or []]}


def states(when):
    names = when if isinstance(when, list) else [when]
    return {'standing', 'moving', 'parked'} if 'always' in names else set(names)
