"""What may touch: a short list of its own, written from docs/method.md's table and not from the program's.

Every two parts that can move against each other are judged with a margin. A row here says of two parts that they are
built to touch: within a disc (about a joint, an axle, a knot), at certain times, and overlapping by so much at most.
Outside of the disc the margin holds again, for what is left of both parts there.
"""
import math
from dataclasses import dataclass

FIT = 0.00055        # overlap that a fit may have as drawn, bent rods' covers included [m]
NEAR_WOOD = 0.060    # a pick or an anchor holds in what is this near [m]
NEAR_ROOM = 0.100    # a ceiling point or a lead is fixed to the nearest thing within this [m]
FOOT_PLAY = 0.060    # a foot that leaves the floor has left it for good this far beyond its margin: play is not known here [m]
WOOD = ('side rail', 'scab', 'spacer')


@dataclass
class Judged:
    """How one pair is judged: it must keep `need` [m] (less than 0: may overlap by that). `cut` is (centre in the first
    part's frame, centre in the second's, radius): only what lies outside of that disc counts. `when` says at which poses."""
    need: float
    touch: bool = False
    cut: tuple = None
    when: str = 'always'    # always, below or above (of the fold at which a butted end is free), down or up (of the foot)
    hinge: int = -1


def room_margin(part, thing, scene):
    m = scene['margin']
    if part.kind == 'hook' and thing.kind in ('bracket', 'joint'):
        return m['hook']
    return m['default'] + (scene['floor']['uneven'] if thing.kind == 'floor' else 0.0)


def flush(thing, scene):
    """A joint no thicker than the pipe, to within the fit, is pipe to a hook."""
    return thing.kind == 'joint' and thing.radius <= scene['rail']['diameter'] / 2 + FIT


def against_room(part, thing, scene):
    """How a part of the stair is judged against a thing of the room."""
    margin = Judged(room_margin(part, thing, scene))
    if part.kind == 'hook' and (thing.kind in ('pipe', 'stop') or flush(thing, scene)):
        return [Judged(-FIT, touch=True)]
    if part.kind == 'caster' and thing.kind == 'floor':
        return [Judged(-FIT - scene['floor']['uneven'] - dig(scene), touch=True, when='down'),
                Judged(margin.need, when='up')]
    return [margin]


def dig(scene):
    """How deep the corner of a tilted wheel reaches below its upright lowest line, at the most [m]."""
    c = scene['stair']['casters']
    r = c['diameter'] / 2
    w = c['width'] / 2 if c['kind'] == 'rigid' else c['trail'] + r
    return math.hypot(r, w) - r


PARTED = math.radians(20.0)     # folded by more, butted ends have parted
ROOM = 0.010                    # left free round a hinge, beside the margin [m]
SQUARE = math.sqrt(2.0)         # the proof cuts by a square inscribed in its disc: in here more is let touch, never less


def hinge_disc(stair, k, scene):
    """Radius about hinge k's axis within which its barrel's two sections may be near it [m]."""
    from parts import barrel
    return SQUARE * (barrel(stair.s['hinges'][k]['offset']) + scene['margin']['self'] + ROOM)


def ends_disc(scene):
    """Radius about a hinge's axis within which the ends that it joins may be near each other, parted or not [m]."""
    return SQUARE * (scene['margin']['self'] + ROOM) / (2.0 * math.sin(PARTED / 2.0))


def free_fold(stair, k, scene):
    """The fold from which on the butted ends have to keep the margin outside of the disc [rad]."""
    return PARTED


def between_sections(a, b, stair, scene):
    """How two parts of different sections are judged; a's section is the upper one."""
    margin = Judged(scene['margin']['self'])
    k = a.body
    if b.body != k + 1 or b.kind not in ('side rail', 'leaf') or (b.kind == 'leaf' and b.hinge != k):
        return [margin]
    axis = stair.axes()[k]
    own = a.kind == 'side rail' or a.hinge == k
    about = lambda radius: ((stair.lengths[k], axis), (0.0, axis), radius)
    if a.kind == 'hinge' and own:
        return [Judged(margin.need, cut=about(hinge_disc(stair, k, scene)))]
    if a.kind in ('side rail', 'leaf', 'spacer') and own:
        return [Judged(-FIT, touch=True, when='below', hinge=k),
                Judged(margin.need, cut=about(ends_disc(scene)), when='above', hinge=k)]
    if a.kind == 'scab' and own and stair.s['locks'][k]['spacer'] < scene['margin']['self']:
        return [Judged(-FIT, touch=True)]
    if a.kind == 'pin' and own:
        return []                           # it runs through it, within its head's disc
    return [margin]


def block_reach(hoist):
    """How far from a knot or point its block, or the knot itself, reaches [m]."""
    return hoist['block length'] if hoist['parts'] > 1 else 6 * hoist['diameter']


def point_disc(scene):
    """About the ceiling point: tackle against what the point is fixed to, and against its own first led-off run [m]."""
    h = scene['hoist']
    radius = h['block width'] / 2 if h['parts'] > 1 else h['diameter'] / 2
    return block_reach(h) + scene['margin']['default'] + radius


def lead_disc(scene):
    h = scene['hoist']
    return 6 * h['diameter'] + scene['margin']['default'] + h['diameter'] / 2


def wood_depth(stair, across):
    """From a point on a section to the nearer face of the deepest board that it may lie in: side rails, or a scab [m]."""
    middle = (stair.front + stair.back) / 2
    scabs = [abs(lock['scab'][1] / 2 - abs(across - middle)) for lock in stair.s['locks'] or []]
    return max([min(abs(stair.front - across), abs(across - stair.back))] + scabs)


def pick_disc(scene, stair, leg):
    """About a pick: the rope that ends there against what holds it [m]."""
    h = scene['hoist']
    reach = 6 * h['diameter'] if leg else block_reach(h)
    thick = h['block width'] / 2 if h['parts'] > 1 and not leg else h['diameter'] / 2
    return reach + wood_depth(stair, h['pick']['across']) + scene['margin']['self'] + thick


def anchor_disc(scene, stair, across):
    d = scene['fold line']['diameter']
    return 6 * d + wood_depth(stair, across) + scene['margin']['self'] + d / 2
