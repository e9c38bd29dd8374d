#!/usr/bin/python3
"""The second opinion's own tests, then the gallery and random scenes beside the dry fit.

usage: test_independent.py [--command stowpath] [--random 6] [--seed 1] [--play] [--jobs 1] [--poses 61]

Without a command only its own geometry is tested, against closed forms. `--random 1000 --poses 121` is the long campaign.
"""
import argparse
import glob
import math
import multiprocessing
import os
import sys
import tempfile
import unittest

import numpy as np

import compare
import geometry as geo
import kinematics
import parts
import random_scenes
import reader
import rules
import sample

HERE = os.path.dirname(os.path.abspath(__file__))
GALLERY = sorted(glob.glob(os.path.join(HERE, '..', '..', 'scenes', '*.yaml')))


def gallery(name):
    with open(os.path.join(HERE, '..', '..', 'scenes', name + '.yaml'), encoding='utf-8') as file:
        return reader.read_scene(file.read())


def side(a, b):
    n = max(len(a), len(b))
    return float(geo.side_distance(geo.padded([geo.ccw(a)], n), geo.padded([geo.ccw(b)], n))[0])


SQUARE = [(0, 0), (1, 0), (1, 1), (0, 1)]


class Distances(unittest.TestCase):
    def test_points_and_bars(self):
        self.assertAlmostEqual(side([(0, 0)], [(3, 4)]), 5)
        self.assertAlmostEqual(side([(0, 0), (2, 0)], [(1, 0.5)]), 0.5)

    def test_corner_to_corner(self):
        self.assertAlmostEqual(side(SQUARE, [(2, 3), (4, 3), (4, 5), (2, 5)]), math.hypot(1, 2))

    def test_depth_is_the_least_shift(self):
        self.assertAlmostEqual(side(SQUARE, [(0.7, -1), (3, -1), (3, 4), (0.7, 4)]), -0.3)
        self.assertAlmostEqual(side([(0.2, 0.4)], SQUARE), -0.2)

    def test_crossing_bars_overlap(self):
        self.assertAlmostEqual(side([(-1, 0), (1, 0)], [(0, -0.25), (0, 1)]), -0.25)

    def test_prisms_apart_both_ways(self):
        self.assertAlmostEqual(float(geo.combine(np.array(0.3), np.array(0.4))), 0.5)
        self.assertAlmostEqual(float(geo.combine(np.array(-0.3), np.array(-0.4))), -0.3)

    def test_least_gap_over_a_roll(self):
        self.assertAlmostEqual(float(geo.least_gap((-0.1, 0.1), (1, 1.2), 0.0, 0.5)), 0.4)
        self.assertAlmostEqual(float(geo.least_gap((-0.1, 0.1), (1, 1.2), 0.0, 3.0)), -0.2)

    def test_rope_past_a_box(self):
        p, q = np.array([[-1.0, 1.5, 0.0]]), np.array([[2.0, 1.5, 3.0]])
        d = geo.rope_to_prism(p, q, 0.01, np.array([SQUARE], float), 0.0, np.array([0.0]), np.array([9.0]), np.zeros(1), np.zeros(1))
        self.assertAlmostEqual(float(d[0]), 0.49, places=6)

    def test_rope_past_the_end_of_a_box(self):
        p, q = np.array([[-1.0, 0.5, 1.3]]), np.array([[2.0, 0.5, 1.3]])
        d = geo.rope_to_prism(p, q, 0.1, np.array([SQUARE], float), 0.0, np.array([0.0]), np.array([1.0]), np.zeros(1), np.zeros(1))
        self.assertAlmostEqual(float(d[0]), 0.2, places=6)

    def test_skew_ropes(self):
        p, q = np.array([[-1.0, 0, 0]]), np.array([[1.0, 0, 0]])
        a, b = np.array([[0.0, 0.3, -1]]), np.array([[0.0, 0.3, 1]])
        self.assertAlmostEqual(float(geo.rope_to_rope(p, q, a, b)[0]), 0.3)


class DrawnFromInside(unittest.TestCase):
    def test_ring_pieces_lie_in_the_ring(self):
        for piece in geo.ring((0, 0), 0.024, 0.036, 0.3, 3.4, (0, 1), (-1, 0)):
            for i in range(len(piece)):
                for t in np.linspace(0, 1, 20):
                    r = np.hypot(*(piece[i] * (1 - t) + piece[i - 1] * t))
                    self.assertGreaterEqual(r, 0.024 - 1e-12)
                    self.assertLessEqual(r, 0.036 + 1e-12)

    def test_ring_pieces_reach_to_a_twentieth_of_a_millimetre(self):
        pieces = geo.ring((0, 0), 0.024, 0.036, 0, 3.4, (1, 0), (0, 1))
        for a in np.linspace(0, 3.4, 97):
            u = np.array([math.cos(a), math.sin(a)])
            for r in (0.02405, 0.030, 0.03595):
                self.assertLess(min(geo.point_distance(r * u, p) for p in pieces), 1e-9)

    def test_wheels_lie_in_their_cylinder(self):
        c = gallery('demo-cured')['stair']['casters']
        for wide, high, reach in parts.rigid_wheel(c):
            self.assertLessEqual(math.hypot(high, reach), c['diameter'] / 2 + 1e-12)
            self.assertLessEqual(wide, c['width'] / 2)

    def test_round_posts_lie_in_their_circle(self):
        scene = gallery('costume-loft')
        for p in parts.room_parts(scene):
            if p.name == 'hanging rod':
                post = scene['obstacles'][2]['post']
                x = np.abs(p.poly[:, 0] - post['out']).max()
                s = max(abs(v - post['station']) for v in p.stations[0])
                self.assertLessEqual(math.hypot(x, s), post['diameter'] / 2 + 1e-12)

    def test_what_is_left_of_a_disc_lies_outside(self):
        left = geo.outside_disc(np.array(SQUARE, float), (1.0, 0.5), 0.4)
        for piece in left:
            self.assertGreaterEqual(geo.point_distance(np.array([1.0, 0.5]), piece), 0.4 - 1e-9)
        self.assertLess(min(geo.point_distance(np.array([0.59, 0.5]), p) for p in left), 1e-9)


class Reading(unittest.TestCase):
    def test_lengths(self):
        for text, mm in (("9' 10-1/2\"", 3009.9), ('9ft 10-1/2in', 3009.9), ('3/8 in', 9.525), ('2.5 m', 2500), ('412 mm', 412), (900, 900)):
            self.assertAlmostEqual(reader.length(text, 'mm') * 1e3, mm)
        self.assertAlmostEqual(reader.length('-3-1/2', 'in'), -3.5 * 0.0254)

    def test_lumber(self):
        self.assertEqual([round(x / 0.0254, 3) for x in reader.lumber('2x6') + reader.lumber('1x4') + reader.lumber('2x10')],
                         [1.5, 5.5, 0.75, 3.5, 1.5, 9.25])


class Outlines(unittest.TestCase):
    def test_all_turn_left(self):
        for path in GALLERY:
            with open(path, encoding='utf-8') as file:
                scene = reader.read_scene(file.read())
            for p in parts.stair_parts(scene) + parts.room_parts(scene):
                if len(p.poly) > 2:
                    turns = [geo.cross(p.poly[i - 2], p.poly[i - 1], p.poly[i]) for i in range(len(p.poly))]
                    self.assertGreater(min(turns), -1e-15, f'{path}: {p.name}')

    def test_bounds_are_bounds(self):
        rng = np.random.default_rng(1)
        a = np.array([geo.padded([geo.hull(rng.normal(0, 1, (6, 2)))], 6)[0] for _ in range(300)])
        b = np.array([geo.padded([geo.hull(rng.normal(0, 1, (6, 2)) + rng.normal(0, 3, 2))], 6)[0] for _ in range(300)])
        bound, far = geo.side_bound(a, b), geo.side_distance(a, b)
        self.assertTrue(np.all(bound <= far + 1e-12))
        self.assertTrue(np.all(bound[bound < 0] == far[bound < 0]) and 30 < np.sum(bound < 0) < 270)


class Moving(unittest.TestCase):
    def test_working_lean(self):
        st = parts.Stair(gallery('demo-cured'))
        a, c = st.axle
        want = math.acos((st.pivot[1] - st.floor - st.wheel) / math.hypot(a, c)) - math.atan2(c, a)
        self.assertAlmostEqual(st.lean, want, places=12)

    def test_dragged_foot_stays_down(self):
        scene = gallery('demo-cured')
        chain = kinematics.Chain(scene)
        st = chain.st
        lean = np.radians([31.0, 35.0, 40.0])
        folds = chain.dragged(0, lean, np.zeros(1), st.pivot[1])[:, None]
        o, al, ac = chain.frames(lean, folds, st.pivot)
        c = st.s['casters']
        axle = o[:, 1] + c['along'] * al[:, 1] + c['across'] * ac[:, 1]
        np.testing.assert_allclose(axle[:, 1], st.floor + st.wheel, atol=1e-9)
        self.assertTrue(np.all(np.diff(axle[:, 0]) != 0))

    def test_hang_leaves_the_floor_at_full_stretch(self):
        course = kinematics.Course(gallery('demo-cured'), [(19.9, 1.089, 0.0005), (14.05, 0.8025, 0.0001)])
        hangs = [s for s in course.run() if s.kind == 'hang']
        self.assertTrue(hangs[0].on_floor and not hangs[1].on_floor)
        lean, folds = hangs[0].poses(np.array([1.0]))
        reach, plumb = course.chain.below(0, 'axle')
        self.assertAlmostEqual(float(lean[0] - folds[0, 0]), plumb, places=5)

    def test_a_hinge_keeps_both_sections_on_its_axis(self):
        chain = kinematics.Chain(gallery('three-section'))
        lean, folds = np.array([0.4, 1.0]), np.array([[0.3, 1.0], [2.0, 2.9]])
        o, al, ac = chain.frames(lean, folds, np.array([1.0, 3.0]))
        for k, h in enumerate(chain.axes):
            np.testing.assert_allclose(o[:, k] + chain.st.lengths[k] * al[:, k] + h * ac[:, k], o[:, k + 1] + h * ac[:, k + 1])


class Placing(unittest.TestCase):
    def test_treads_share_the_rise(self):
        st = parts.Stair(gallery('demo-cured'))
        tops = parts.tread_heights(st, 2.950)
        self.assertEqual(len(tops), 11)
        self.assertAlmostEqual(tops[0], 2.950 / 12)

    def test_noses_lie_on_the_front_face(self):
        scene = gallery('demo-cured')
        for p in parts.stair_parts(scene):
            if p.kind == 'tread':
                self.assertAlmostEqual(p.poly[:, 1].max(), scene['stair']['front'], places=9)

    def test_caster_plate_ends_level_with_the_axle(self):
        scene = gallery('demo-cured')
        st = parts.Stair(scene)
        plate = [p for p in parts.stair_parts(scene) if p.name == 'caster plate'][0]
        c = scene['stair']['casters']
        up = -(plate.poly[:, 0] - c['along']) * math.cos(st.lean) + (plate.poly[:, 1] - c['across']) * math.sin(st.lean)
        self.assertAlmostEqual(up.min(), 0, places=9)

    def test_jog_sets_the_shank_off(self):
        low, pieces = parts.jog_pieces(0.019, 0.010, 0.006)
        self.assertAlmostEqual(low, 0.018, places=9)      # two bends of 15 mm, each by acos(0.8)
        self.assertAlmostEqual(max(p[:, 1].max() for p in pieces), 0.019 + 0.010 + 0.006, places=4)

    def test_free_fold_opens_the_margin_at_the_disc(self):
        scene = gallery('demo-cured')
        st = parts.Stair(scene)
        r, fold = rules.ends_disc(scene) / math.sqrt(2), rules.free_fold(st, 0, scene)
        self.assertAlmostEqual(2 * r * math.sin(fold / 2), scene['margin']['self'] + rules.ROOM)


def seen(text_from, text_to, moves=1, centres=None):
    """What is seen in the cured demo with a piece of its text (or several) replaced, and only its first moves done."""
    with open(os.path.join(HERE, '..', '..', 'scenes', 'demo-cured.yaml'), encoding='utf-8') as file:
        text = file.read()
    for old, new in [(text_from, text_to)] if isinstance(text_from, str) else zip(text_from, text_to):
        assert old in text
        text = text.replace(old, new)
    scene = reader.read_scene(text)
    scene['procedure'] = scene['procedure'][:moves]
    out = {}
    for pairs in sample.Sampler(scene, centres).run().values():
        for s in pairs.values():
            out[s.a, s.b] = min(out.get((s.a, s.b), 9.0), s.clearance)
    return out


class Sees(unittest.TestCase):
    """Kinds of contact that a proof once left out, each in a scene made for it."""

    def test_a_joist_on_the_led_off_line(self):
        joist = "  - {name: joist, box: {out: [3400, 3500], up: [3900, 4080]}, stations: [4000, 4350]}\n"
        self.assertLess(seen('floor: {level', joist + 'floor: {level')['led-off run 1', 'joist'], 0)

    def test_the_fall_from_the_last_lead_to_the_hand(self):
        duct = "  - {name: duct, box: {out: [4540, 4560], up: [4000, 4100]}, stations: [5000, 5050]}\n"
        self.assertLess(seen('floor: {level', duct + 'floor: {level')['led-off run 2', 'duct'], 0)

    def test_the_fold_line_in_a_tread(self):
        self.assertLess(seen(('station: 261', 'across: -100'), ('station: 0', 'across: -60'))['fold line 1', 'tread'], 0)

    def test_a_room_that_is_not_as_deep_as_the_stair(self):
        self.assertLess(seen('depth: 4600', 'depth: 1200')['side rail', 'front wall'], -1.0)

    def test_a_beam_near_the_ceiling_point_against_the_whole_line(self):
        beam = "  - {name: beam, box: {out: [2400, 2537], up: [3300, 4100]}, stations: [3900, 4400]}\n"
        self.assertLess(seen('floor: {level', beam + 'floor: {level', 4)['tackle', 'beam'], 0)

    def test_the_line_over_its_own_lead(self):
        self.assertLess(seen('{out: 4550, up: 4060, station: 4170}', '{out: 2420, up: 3400, station: 4170}', 4)
                        ['tackle', 'led-off run 1'], 0)


def one(job):
    path, command, play = job
    return path, compare.compare(path, command, play)


def beside(paths, command, play, jobs):
    """Compares scene by scene; how many ran, how many failed."""
    ran = failed = pairs = 0
    work = [(p, command, play) for p in paths]
    with multiprocessing.Pool(jobs) as pool:
        for path, (faults, notes, count) in pool.imap(one, work):
            if faults is None:
                continue
            ran, failed, pairs = ran + 1, failed + bool(faults), pairs + count
            for line in faults:
                print(f'{os.path.basename(path)}: {line}', flush=True)
    print(f'{ran} of {len(paths)} scenes ran, {pairs} pairs were seen, {failed} scenes have a pair closer than proven')
    return ran, failed


def main():
    ask = argparse.ArgumentParser(description=__doc__.split('\n\n')[0])
    ask.add_argument('--command')
    ask.add_argument('--random', type=int, default=6)
    ask.add_argument('--seed', type=int, default=1)
    ask.add_argument('--play', action='store_true')
    ask.add_argument('--jobs', type=int, default=1)
    ask.add_argument('--poses', type=int, default=sample.POSES)
    given = ask.parse_args()
    sample.POSES = given.poses
    own = unittest.main(argv=[sys.argv[0]], exit=False).result
    if not given.command:
        return 0 if own.wasSuccessful() else 1
    _, bad = beside(GALLERY, given.command, given.play, given.jobs)
    with tempfile.TemporaryDirectory() as folder:
        paths = random_scenes.write(folder, given.random, given.seed)
        ran, worse = beside(paths, given.command, given.play, given.jobs)
    return 0 if own.wasSuccessful() and not bad and not worse and ran >= 0.8 * given.random else 1


if __name__ == '__main__':
    sys.exit(main())
