#!/usr/bin/python3
"""Lays what is seen here beside what `stowpath dryfit` proves, for one scene or several.

usage: compare.py [--command stowpath] [--play] [--without KIND,...] SCENE...

It fails where a pair is seen closer than the proof's "at least", or where a move is called clear although a pair is seen
without its margin, overlapping deeper than a fit, or in a keep-clear zone. What the proof sees closer than this program is
told as a note: something may be drawn there that is not drawn here.
"""
import argparse
import json
import subprocess
import sys

from sample import look_at

TOLERANCE = 1e-5     # a pair has to be seen this much closer than proven before it counts [m]
ARCS = 2.5e-4        # covers from outside there, pieces from inside here, and "at most" lies 0.1 mm over "at least" [m]
REACH = 0.06         # pairs farther apart than this are not looked at, unless the proof says more [m]


def dry_fit(command, path):
    """The dry fit as the command tells it, or None with its words where it refuses the scene."""
    done = subprocess.run([command, 'dryfit', path, '--json', '--no-remedies'], capture_output=True, text=True)
    return (json.loads(done.stdout), '') if done.returncode in (0, 1) else (None, done.stderr or done.stdout)


def told(seen):
    return (f'{seen.a} and {seen.b} {seen.clearance * 1e3:.3f} mm at lean {seen.lean:.3f}, folds '
            f'{[round(f, 3) for f in seen.folds]}')


def closer_than_proven(pairs, move):
    """What is seen closer than the move's "at least". Depths are not compared: a thing drawn in several pieces is as deep in
    another as its deepest piece, here and there, and a move that meets something is not called clear anyway."""
    least = move['clearance_at_least_m']
    if least < 0:
        return []
    return [f'seen closer than proven ({least * 1e3:.3f} mm): {told(s)}' for s in pairs
            if not s.touch and not s.zone and s.clearance < least - TOLERANCE]


def short_though_clear(pairs, move, how=''):
    if move['verdict'] != 'clear':
        return []
    return [f'called clear{how}, {s.need * 1e3:.2f} mm wanted: {told(s)}' for s in pairs if s.short() < -TOLERANCE]


def unseen(pairs, move):
    """A note where the proof knows of a closer pair than any seen here."""
    judged = [s.clearance for s in pairs if not s.touch and not s.zone]
    most = move['clearance_at_most_m']
    if 0 < most < REACH - ARCS and min(judged, default=1e9) > most + ARCS:
        return [f"not seen here: {' and '.join(move['closest']['parts'])} {most * 1e3:.3f} mm at lean {move['closest']['lean_deg']:.3f}"]
    return []


def compare(path, command='stowpath', play=False, without=(), stretch=True):
    """(faults, notes, how many pairs were looked at); None for the faults where the scene does not run."""
    fit, words = dry_fit(command, path)
    if fit is None:
        return None, [words.strip()], 0
    moves = {(m['index'], m['kind']): m for m in fit['moves']}
    reach = min(max([REACH] + [m['clearance_at_least_m'] + 0.005 for m in fit['moves']]), 0.25)
    _, nominal, shifted = look_at(path, command, reach, play, without, stretch)
    faults, notes, count = [], [], 0
    for key, seen in nominal.items():
        # What stays where it is in the room is looked at once by the program, and at no move.
        move, pairs = moves.get(key), [s for s in seen.values() if not s.fixed]
        count += len(pairs)
        where = f'move {key[0]} {key[1]}'
        if move is None:
            notes.append(f'{where}: not in the dry fit')
            continue
        wide = [s for m in shifted for s in m.get(key, {}).values()]
        faults += [f'{where}: {t}' for t in closer_than_proven(pairs, move) + short_though_clear(pairs, move)
                   + short_though_clear(wide, move, ' with the hooks off their crown')]
        notes += [f'{where}: {t}' for t in unseen(pairs, move)]
    notes += [f'move {k[0]} {k[1]}: not sampled here' for k in moves if k not in nominal]
    return sorted(set(faults)), notes, count


def main():
    ask = argparse.ArgumentParser(description=__doc__.split('\n\n')[0])
    ask.add_argument('scenes', nargs='+')
    ask.add_argument('--command', default='stowpath')
    ask.add_argument('--play', action='store_true')
    ask.add_argument('--without', default='', help='kinds or names of parts and lines to leave out, by commas')
    ask.add_argument('--notes', action='store_true')
    given = ask.parse_args()
    failed = False
    for path in given.scenes:
        faults, notes, count = compare(path, given.command, given.play, [w for w in given.without.split(',') if w])
        print(f'{path}: ' + ('does not run' if faults is None else f'{len(faults)} faults, {count} pairs'))
        for line in (faults or []) + (notes if given.notes or faults is None else []):
            print('  ' + line)
        failed = failed or faults is None or bool(faults)
    return 1 if failed else 0


if __name__ == '__main__':
    sys.exit(main())
