#!/usr/bin/python3
"""Writes random scenes that mostly stand and run: random_scenes.py FOLDER COUNT [SEED].

Both unit systems, 1 to 3 sections, hinges on both faces, all shapes of brackets and hooks, leads from none to three, lines
aslant, spreaders, handrails, swivels, guards, extras, obstacles at and about their margins. The same seed gives the same scenes.
"""
import math
import os
import random
import sys

import yaml


class Writer:
    """Writes millimetres in a file's own way."""

    def __init__(self, rng):
        self.inches = rng.random() < 0.4
        self.units = 'in' if self.inches else 'mm'

    def __call__(self, mm):
        if not self.inches:
            return round(mm, 1)
        sixteenths = round(mm / 25.4 * 16)
        sign, whole, rest = '-' if sixteenths < 0 else '', abs(sixteenths) // 16, abs(sixteenths) % 16
        if rest == 0:
            return int(f'{sign}{whole}')
        g = math.gcd(rest, 16)
        return f'{sign}{whole}-{rest // g}/{16 // g}' if whole else f'{sign}{rest // g}/{16 // g}'

    def mm(self, mm):
        """What is read back of a length that was written so [mm]."""
        return round(mm / 25.4 * 16) / 16 * 25.4 if self.inches else round(mm, 1)


class Draw:
    """One random scene, measure by measure; everything here is in millimetres and degrees."""

    def __init__(self, seed):
        self.rng = random.Random(seed)
        self.w = Writer(self.rng)
        self.name = f'Random scene {seed}'

    def chance(self, p):
        return self.rng.random() < p

    def between(self, a, b):
        return self.rng.uniform(a, b)

    def scene(self):
        w, rng = self.w, self.rng
        self.site()
        self.body()
        out = {'stowpath': 1, 'name': self.name, 'units': w.units,
               'margin': {'default': w(self.between(6, 14)), 'hook': w(self.between(2, 4)), 'self': w(self.between(1.6, 4))},
               'room': {'length': w(self.length), 'depth': w(self.depth), 'ceiling': w(self.ceiling)}, 'loft': self.loft(),
               'rail': self.rail(), 'stair': self.stair(), 'obstacles': self.obstacles(),
               'floor': {'level': w(self.floor), 'uneven': w(rng.choice([0, 2, 4]))}}
        if self.chance(0.4):
            out['keep clear'] = [self.zone()]
        if self.hoisted:
            out['hoist'] = self.hoist()
        if self.sections > 1 and self.chance(0.5):
            out['fold line'] = self.fold_line()
        out['procedure'] = self.procedure()
        return out

    def site(self):
        self.length, self.deck = self.between(4500, 8000), self.between(2200, 3600)
        self.depth, self.ceiling = self.between(4500, 6000), self.deck + self.between(900, 1600)
        self.edge, self.floor = self.between(420, 1100), self.rng.choice([0, 0, 0, -50, 40])
        self.pipe = self.rng.choice([('NPS 3/4', 1.05 * 25.4), ('NPS 1', 1.315 * 25.4), ('NPS 1-1/4', 1.66 * 25.4), ('NPS 1-1/2', 1.9 * 25.4), (None, 30.0)])
        self.proj = self.between(60, 95)
        self.out, self.up = self.edge + self.proj, self.deck - self.between(30, 60)

    def body(self):
        w = self.w
        self.sections = self.rng.choice([1, 1, 2, 2, 2, 3])
        self.hoisted = self.sections > 1 or self.chance(0.5)
        self.deep, self.thick = self.rng.choice([(139.7, 38.1), (139.7, 38.1), (95, 32), (110, 28)])
        self.front = w.mm(self.deep / 2 + self.between(-8, 8))
        self.wheel = w.mm(self.between(28, 45))
        self.ri = w.mm(self.pipe[1] / 2 + self.between(1.2, 9))
        lean, back = math.radians(self.between(14, 32)), self.deep - self.front
        total = (self.up - (self.ri - self.pipe[1] / 2) - self.floor - self.wheel) / math.cos(lean)
        self.lean = math.degrees(lean)
        below = (back * math.sin(lean) - self.wheel + self.between(18, 40)) / math.cos(lean)
        self.past = w.mm(max(below, -0.3 * self.wheel))
        long = total - self.past
        shares = {1: [1.0], 2: [self.between(0.5, 0.58)], 3: [self.between(0.37, 0.42), self.between(0.31, 0.34)]}[self.sections]
        shares = [1.0] if self.sections == 1 else shares + [1 - sum(shares)]
        self.lengths = [w.mm(long * s) for s in shares]
        self.width = w.mm(self.between(400, 640))
        self.home = w.mm(self.between(0.35, 0.65) * self.length)

    def loft(self):
        w = self.w
        out = {'edge': w(self.edge), 'deck': w(self.deck), 'thickness': w(self.between(50, 280)), 'stations': [w(150), w(self.length - 150)]}
        if self.chance(0.3):
            a = self.between(300, 900)
            out['guard'] = {'height': w(1000), 'thickness': w(40), 'out': w(self.edge - self.between(0, 60)),
                            'openings': [[w(a), w(self.length - a)]]}
        return out

    def rail(self):
        w = self.w
        out = {'pipe': self.pipe[0] or {'diameter': f'{self.pipe[1]} mm', 'wall': '2.6 mm'},
               'at': {'out': w(self.out), 'up': w(self.up)}, 'stations': [w(220), w(self.length - 220)],
               'stops': self.rng.choice(['both ends', 'both ends', 'both ends', 'left', {'ends': 'both ends', 'diameter': w(70), 'width': w(15)}]),
               'joints': 'none', 'brackets': self.brackets()}
        if self.chance(0.25):
            out['joints'] = {'at': [w(self.length / 2)], 'diameter': f'{self.pipe[1] / 25.4 + 1e-5:.5f} in', 'length': w(60)}
        return out

    def brackets(self):
        w, r = self.w, self.pipe[1] / 2
        shape = self.rng.choice(['wall-saddle', 'wall-saddle', 'wall-saddle', 'strap', 'post-mounted', 'outline'])
        b = {'first': w(self.between(300, 480)), 'every': w(self.between(800, 1300)), 'shape': shape}
        arm, drop = self.between(9, 15), r + self.between(28, 48)
        if shape in ('wall-saddle', 'post-mounted'):
            b.update(drop=w(drop), arm=w(arm), saddle=[w(self.between(30, 50)), w(self.between(1.6, 4))])
            if self.chance(0.4):
                b['bend'] = w(self.between(6, 14))
            if self.chance(0.3):
                b['flat'] = w(1)
            if self.chance(0.3):
                b['saddle heads'] = {'diameter': w(8), 'height': w(2), 'apart': w(self.rng.choice([0, 24]))}
        if shape == 'wall-saddle':
            b.update(projection=w(self.proj), plate=[w(60), w(90), w(6)])
            if self.chance(0.3):
                b['plate heads'] = {'diameter': w(12), 'height': w(4), 'apart': w(30), 'at': [w(-30), w(30)]}
        if shape == 'post-mounted':
            b['post'] = {'size': [w(44), w(66)], 'above': w(self.between(20, 60))}
            b['projection'] = w(self.proj)
        if shape == 'strap':
            arc = self.rng.choice([120, 140, 150])
            b.update(projection=w(self.proj), strap=[w(30), w(3)], tab='wall', arc=arc, plate=[w(60), w(70), w(4)])
        if shape == 'outline':
            b['parts'] = [{'name': 'arm', 'outline': [[w(-self.proj), w(-drop)], [w(0), w(-drop)]], 'radius': w(arm / 2), 'width': w(arm)},
                          {'name': 'riser', 'outline': [[w(-6), w(-drop)], [w(6), w(-drop)], [w(6), w(-r - 3.2)], [w(-6), w(-r - 3.2)]], 'width': w(12)},
                          {'name': 'cradle', 'outline': [[w(-12), w(-r - 4)], [w(12), w(-r - 4)], [w(12), w(-r)], [w(-12), w(-r)]], 'width': w(40)}]
        self.bracket = shape
        return b

    def stair(self):
        w = self.w
        out = {'width': w(self.width), 'side rails': {'front face': w(self.front)}, 'sections': [w(x) for x in self.lengths],
               'above pivot': w(-(self.ri + self.between(55, 75)))}
        out['side rails'].update({'lumber': '2x6'} if self.thick > 38 else {'size': [w(self.thick), w(self.deep)]})
        if self.chance(0.25):
            out['side rails']['foot'] = 'level'
        if self.sections > 1:
            out['hinges'], out['locks'] = self.joints()
        if self.chance(0.8):
            out['treads'] = {'size': [w(30), w(self.deep * self.between(0.85, 1))], 'rise': self.rng.choice(['equal', w(230), w(250)]),
                             'overhang': w(self.rng.choice([0, 0, -10, 12]))}
        out['hooks'] = self.hooks()
        out['casters'] = self.casters()
        if self.chance(0.2):
            out['handrails'] = {'height': w(self.between(60, 300)), 'diameter': w(self.between(24, 40)),
                                'sides': self.rng.choice(['both', 'left', 'right']), 'post every': w(self.between(500, 1200))}
        if self.chance(0.4):
            out['extras'] = [self.extra(i) for i in range(self.rng.choice([1, 1, 2]))]
        return out

    def joints(self):
        w, rng = self.w, self.rng
        first = 'back' if self.chance(0.85) else 'front'
        faces = [first] if self.sections == 2 else [first, 'front' if first == 'back' or self.chance(0.5) else 'back']
        if self.sections == 3 and self.chance(0.2):
            faces = ['back', 'back']
        self.faces = faces
        hinges = [{'face': f, 'offset': w(rng.choice([4, 12, 14, 18, 22])), 'limit': rng.choice([176, 178, 180])} for f in faces]
        for h in hinges:
            if self.chance(0.3):
                h['leaf'] = [w(self.between(40, 100)), w(self.rng.choice([2, 3]))]
        locks = []
        for _ in faces:
            lock = {'size': [w(self.between(20, 38)), w(self.deep * self.between(0.7, 1))], 'length': w(self.between(300, 600)),
                    'spacer': w(rng.choice([0, 30, 44])), 'pin': w(rng.choice([8, 10, 12]))}
            locks.append(lock)
        return hinges, locks

    def hooks(self):
        w, rng = self.w, self.rng
        rod = self.between(9, 14)
        reach = self.width / 2 - self.thick / 2
        h = {'stations': [w(-reach), w(reach)], 'inside': w(self.ri), 'wrap': rng.choice([150, 165, 175, 180, 185, 190, 200])}
        if self.bracket == 'strap':
            h['wrap'] = rng.choice([110, 120, 130])
        if self.chance(0.75):
            h.update(rod=w(rod), shank=w(self.between(110, 180)))
            if self.chance(0.3):
                h['shank offset'] = w(self.between(2, 8))
            if self.chance(0.25):
                h['tip'] = w(self.between(2, 12))
            if self.chance(0.25):
                h['end'] = 'pointed'
        else:
            a, b = self.ri, self.ri + 30
            h.update(shape='plate', rim=w(12), thickness=w(8),
                     parts=[{'name': 'shank', 'outline': [[w(0), w(a)], [w(160), w(a)], [w(160), w(b)], [w(0), w(b)]]}])
            if self.chance(0.4):
                h['roller'] = {'diameter': w(24), 'width': w(10), 'at': 90}
        if self.chance(0.3):
            h['seat range'] = rng.choice([5, 15, 40])
        return h

    def casters(self):
        w = self.w
        width = self.between(20, 34)
        off = self.width / 2 + width / 2 + self.between(8, 22)
        c = {'diameter': w(2 * self.wheel), 'width': w(width), 'along': w(self.lengths[-1] + self.past), 'across': w(self.between(-6, 6)),
             'stations': [w(-off), w(off)], 'plate': w(self.rng.choice([0, 3, 6]))}
        if self.chance(0.2):
            c['block'] = w(4)
        if self.chance(0.25):
            c['kind'] = 'swivel'
            if self.chance(0.5):
                c['trail'] = w(self.between(10, 35))
        return c

    def extra(self, i):
        w = self.w
        k = self.rng.randrange(self.sections)
        a = self.between(0.25, 0.7) * self.lengths[k]
        long, deep = self.between(20, 150), self.between(6, 60)
        if self.chance(0.5):
            c0, c1 = self.front, self.front + deep
        else:
            c0, c1 = self.front - self.deep - deep, self.front - self.deep
        s = self.between(-0.4, 0.3) * self.width
        return {'name': f'extra {i + 1}', 'section': k + 1, 'outline': [[w(a), w(c0)], [w(a + long), w(c0)], [w(a + long), w(c1)], [w(a), w(c1)]],
                'stations': [w(s), w(s + self.between(15, 90))], 'mass': '0.5 kg'}

    def obstacles(self):
        w, out = self.w, []
        if self.chance(0.6):
            out.append({'name': 'bench', 'box': {'out': [w(0), w(self.edge * self.between(0.4, 0.95))], 'up': [w(self.floor), w(900)]},
                        'stations': [w(300), w(self.length - 600)]})
        for i in range(self.rng.randrange(4)):
            x, y, s = self.between(self.out, self.depth - 200), self.between(500, self.ceiling - 300), self.between(300, self.length - 500)
            kind = self.rng.randrange(4)
            if kind == 0:
                o = {'box': {'out': [w(x), w(x + self.between(20, 250))], 'up': [w(y), w(y + self.between(20, 250))]}}
            elif kind == 1:
                o = {'outline': [[w(x), w(y)], [w(x + 150), w(y + self.between(-60, 90))]], 'radius': w(self.between(4, 40))}
            elif kind == 2:
                o = {'outline': [[w(x), w(y)], [w(x + 200), w(y)], [w(x + 60), w(y + 170)]]}
            else:
                out.append({'name': f'post {i + 1}', 'post': {'out': w(x), 'station': w(s), 'diameter': w(self.between(30, 140))},
                            'up': [w(self.floor), w(y)]})
                continue
            out.append({'name': f'thing {i + 1}', **o, 'stations': [w(s), w(s + self.between(50, 900))]})
        return out

    def zone(self):
        w = self.w
        x, s = self.between(200, 2500), self.between(300, self.length / 2)
        return {'name': 'zone', 'when': self.rng.choice(['always', 'standing', 'moving', 'parked', ['standing', 'parked']]),
                'box': {'out': [w(x), w(x + 800)], 'up': [w(self.floor), w(self.between(300, 2000))]}, 'stations': [w(s), w(s + 1500)]}

    def hoist(self):
        w, rng = self.w, self.rng
        pick = {'section': 1, 'along': w(self.lengths[0] * self.between(0.8, 0.97) if self.sections > 1 else self.lengths[0] * self.between(0.6, 0.8)),
                'across': w(self.between(-20, 20))}
        x = self.out + self.lengths[0] * (self.between(0.75, 1.0) if self.sections > 1 else self.between(0.5, 0.75))
        self.point = (min(x, self.depth - 150), self.ceiling - self.between(5, 40), self.home + rng.choice([0, 0, 0, 60, -90]))
        line = {'parts': rng.choice([1, 2, 4]), 'sheaves': 'ball', 'diameter': w(rng.choice([6, 8, 10])), 'strength': '8 kN'}
        if line['parts'] > 1 and self.chance(0.3):
            line['blocks'] = {'length': w(self.between(60, 130)), 'width': w(self.between(30, 60))}
        line.update(self.leads())
        out = {'ceiling point': {'out': w(self.point[0]), 'up': w(self.point[1]), 'station': w(self.point[2])}, 'home': w(self.home),
               'pick': pick, 'line': line, 'pulled by': rng.choice(['hand', {'crank winch': {'drum': w(60), 'ratio': 10, 'crank': w(250)}},
                                                                  {'powered winch': {'drum': w(60), 'ratio': 40}}])}
        if self.chance(0.35):
            pick['spread'] = w(self.width * self.between(0.5, 0.9))
            if self.chance(0.6):
                out['spreader'] = {'length': w(self.width * self.between(0.5, 0.9)), 'drop': w(self.between(120, 300)), 'mass': '1 kg'}
                if self.chance(0.4):
                    out['spreader']['thickness'] = w(30)
        if self.chance(0.3):
            out['home within'] = w(rng.choice([0, 5, 20]))
        return out

    def leads(self):
        w, n = self.w, self.rng.choice([0, 0, 1, 1, 2, 3])
        high = self.ceiling - self.between(30, 120)
        stops = [(self.depth - self.between(60, 300), high, self.point[2] + self.rng.choice([0, 0, 150, -260])),
                 (self.depth - self.between(40, 90), high - 60, self.point[2] + self.between(300, 900)),
                 (self.depth - self.between(40, 90), self.floor + 1500, self.point[2] + self.between(950, 1100))]
        rows = [{'out': w(x), 'up': w(y), 'station': w(s)} for x, y, s in stops[:n]]
        out = {} if n == 0 else {'lead': rows[0]} if n == 1 else {'leads': rows}
        if self.chance(0.8 if n == 0 else 0.2):     # a fall straight down from the ceiling point is mostly in the stair's way
            out['hand'] = {'out': w(self.depth - 350), 'up': w(self.floor + 1200), 'station': w(self.point[2] + self.rng.choice([0, 500, 900]))}
        return out

    def fold_line(self):
        w, back = self.w, self.front - self.deep
        c = back + 15 if self.faces[0] == 'back' else self.front - 15
        return {'from': {'section': 1, 'along': w(self.lengths[0] * 0.15), 'across': w(c)},
                'through': [{'section': 2, 'along': w(self.lengths[1] * 0.85), 'across': w(c)}], 'diameter': w(8)}

    def procedure(self):
        rng = self.rng
        if not self.hoisted:
            return [] if self.chance(0.3) else [{'roll': self.w(self.home)}]
        start = [{'roll': 'home'}, {'hook on': 'hoist'}]
        high = rng.choice([70, 80, 85, 88, 90])
        if self.sections == 1:
            return start + [{'lift': high}]
        if self.faces[0] == 'front' or self.chance(0.1):
            return start + [{'lift': high}]
        moves = start + [{'unpin': 1}, {'drag': {'lean': round(self.lean * self.between(1.05, 1.3))}}, {'hang': rng.choice([66, 70, 74])}]
        folded = rng.choice([150, 165, 170, 174, 176])
        if self.sections == 3:
            self.second = rng.choice([160, 172, 176]) if self.chance(0.8) else 0
            moves += [{'unpin': 2}, {'fold': {'hinge': 2, 'to': self.second}}] if self.second else []
            moves += [{'fold': {'hinge': 1, 'to': min(folded, 172)}}]
        else:
            moves += [{'fold': folded}]
        if self.chance(0.3):
            return moves + [{'together': {'lean': high, 'fold': folded if self.sections == 2 else [min(folded, 172), self.second]}}]
        return moves + [{'lift': high}]


def write(folder, count, seed=1):
    """Scenes as files; their paths."""
    os.makedirs(folder, exist_ok=True)
    out = []
    for i in range(count):
        path = os.path.join(folder, f'random-{seed + i}.yaml')
        with open(path, 'w', encoding='utf-8') as file:
            yaml.safe_dump(Draw(seed + i).scene(), file, sort_keys=False, default_flow_style=None, width=140)
        out.append(path)
    return out


if __name__ == '__main__':
    write(sys.argv[1], int(sys.argv[2]), int(sys.argv[3]) if len(sys.argv) > 3 else 1)
