/**
 * Points carried from one plate to the other: which holes both plates share, which of them serve as dowels that let the
 * plates go together one way only, and in which order to drill and pin.
 */

import { boundsOfOutline } from '../../geometry/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { GAUGE } from '../../tolerances.ts';
import { holesOf } from '../holes.ts';
import type { Hole } from '../marks.ts';
import { namer } from '../names.ts';
import { plateViewOf } from '../plateView.ts';

/** A hole that both plates have at one place, mm, as seen on the first. */
export interface SharedHole {
  /** Labels on the first and on the second plate. */
  readonly labels: readonly [string, string];
  readonly x: number;
  readonly y: number;
  readonly diameters: readonly [number, number];
  /** Brought to size with a reamer in either plate: a running hole, which is not pinned while there are others. */
  readonly isReamed: boolean;
}

/** A pin through both plates, mm. */
export interface Dowel {
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
}

/** How the holes of one plate are carried to the other. */
export interface TransferPlan {
  readonly shared: readonly SharedHole[];
  /** Two or three shared holes, farthest first; none when fewer than two are shared. */
  readonly dowels: readonly SharedHole[];
  /** Names of the registers and notches that both plates have at the same place. */
  readonly registers: readonly string[];
  readonly oneWay: boolean;
  /** The second plate's marked face shows the points mirrored against the first's. */
  readonly mirrored: boolean;
  /** What is done, in working order. */
  readonly steps: readonly TransferStep[];
}

/** One thing to do when holes are carried over; plates by their ids. */
export type TransferStep =
  | { readonly kind: 'mark'; readonly plates: readonly [string, string] }
  | { readonly kind: 'clamp'; readonly registers: readonly string[]; readonly mirrored: boolean }
  /** Too few holes are shared for dowels. */
  | { readonly kind: 'tooFew' }
  | { readonly kind: 'pin'; readonly hole: SharedHole; readonly isFirst: boolean }
  | { readonly kind: 'pinsFit'; readonly oneWay: boolean }
  /** Drilled through both, then opened in one plate where the diameters differ. */
  | { readonly kind: 'drill'; readonly hole: SharedHole; readonly openedIn?: string };

/** Play of a dowel in its hole that may let a wrong way go together, mm. */
const PLAY = 0.5;

/** The plan for carrying the holes of the first plate to the second. */
export function transferPlan(placed: PlacedMovement, from: string, to: string): TransferPlan {
  const [first, second] = [plateViewOf(placed.movement, from), plateViewOf(placed.movement, to)];
  const shared = sharedHoles(holesOf(placed, from), holesOf(placed, to));
  const fixings = shared.filter(({ isReamed }) => !isReamed);
  const dowels = chooseDowels(fixings.length >= 3 ? fixings : shared);
  const registers = sharedRegisters(placed.movement, from, to);
  const oneWay = fitsOneWay(dowels.map(asDowel));
  const mirrored = first.mirrored !== second.mirrored;
  const steps: readonly TransferStep[] = [
    { kind: 'mark', plates: [from, to] },
    { kind: 'clamp', registers, mirrored },
    ...(dowels.length < 2 ? [{ kind: 'tooFew' } as const] : []),
    ...dowels.map((hole, index) => ({ kind: 'pin', hole, isFirst: index === 0 }) as const),
    ...(dowels.length < 2 ? [] : [{ kind: 'pinsFit', oneWay } as const]),
    ...shared.filter((hole) => !dowels.includes(hole)).map((hole) => drillStep(hole, from, to)),
  ];
  return { shared, dowels, registers, oneWay, mirrored, steps };
}

function drillStep(hole: SharedHole, from: string, to: string): TransferStep {
  const [a, b] = hole.diameters;
  return { kind: 'drill', hole, ...(a === b ? {} : { openedIn: a > b ? from : to }) };
}

/** Registers and notches that lie over each other in both plates, by the name they have in the first. */
function sharedRegisters(movement: PlacedMovement['movement'], from: string, to: string): readonly string[] {
  const { openings } = movement;
  const name = namer(movement);
  const own = openings.filter(({ plate, kind }) => plate === from && kind !== 'opening');
  const others = openings.filter(({ plate, kind }) => plate === to && kind !== 'opening');
  return own.flatMap((one) => {
    const bounds = boundsOfOutline(one.outline);
    const isSame = (other: (typeof others)[number]) =>
      other.kind === one.kind &&
      boundsOfOutline(other.outline).every((edge, side) => Math.abs(edge - (bounds[side] ?? Number.NaN)) <= GAUGE);
    return others.some(isSame) ? [one.name ?? name(one.id)] : [];
  });
}

const asDowel = ({ x, y, diameters }: SharedHole): Dowel => ({ x, y, diameter: Math.min(...diameters) });

function sharedHoles(first: readonly Hole[], second: readonly Hole[]): readonly SharedHole[] {
  return first.flatMap((a) => {
    const b = second.find((each) => Math.hypot(each.x - a.x, each.y - a.y) <= GAUGE);
    return b
      ? [
          {
            labels: [a.label, b.label] as const,
            x: a.x,
            y: a.y,
            diameters: [a.diameter, b.diameter] as const,
            isReamed: a.finish === 'ream' || b.finish === 'ream',
          },
        ]
      : [];
  });
}

/** The farthest pair, and the third that makes the most unequal triangle with it. */
function chooseDowels(shared: readonly SharedHole[]): readonly SharedHole[] {
  const pair = farthestPair(shared);
  if (!pair) return [];
  let third: SharedHole | undefined;
  let best = 0;
  for (const hole of shared) {
    if (pair.includes(hole)) continue;
    const [a, b, c] = [apart(pair[0], pair[1]), apart(pair[0], hole), apart(pair[1], hole)];
    const unequal = Math.min(Math.abs(a - b), Math.abs(b - c), Math.abs(a - c));
    const height =
      Math.abs((pair[1].x - pair[0].x) * (hole.y - pair[0].y) - (pair[1].y - pair[0].y) * (hole.x - pair[0].x)) / a;
    const worth = Math.min(unequal, height);
    if (worth > best) {
      best = worth;
      third = hole;
    }
  }
  return third ? [...pair, third] : pair;
}

function farthestPair(shared: readonly SharedHole[]): readonly [SharedHole, SharedHole] | undefined {
  let pair: readonly [SharedHole, SharedHole] | undefined;
  let most = GAUGE;
  shared.forEach((a, index) => {
    for (const b of shared.slice(index + 1)) {
      if (apart(a, b) <= most) continue;
      most = apart(a, b);
      pair = [a, b];
    }
  });
  return pair;
}

const apart = (a: { x: number; y: number }, b: { x: number; y: number }): number => Math.hypot(a.x - b.x, a.y - b.y);

/**
 * Do dowels let a plate go on in one way only: not turned round, and not turned over?
 *
 * Any other way would carry the dowels onto each other with all distances and diameters kept within the play; and if all
 * stand on one line, turning the plate over about it keeps them all in place.
 */
export function fitsOneWay(dowels: readonly Dowel[], play = PLAY): boolean {
  if (dowels.length < 3 || areInLine(dowels, play)) return false;
  const order = dowels.map((_, index) => index);
  return permutations(order).every((other) => isSame(other, order) || !keepsAll(dowels, other, play));
}

function areInLine(dowels: readonly Dowel[], play: number): boolean {
  const [a, b, ...rest] = [...dowels].sort((p, q) => p.x - q.x || p.y - q.y);
  const end = rest.at(-1) ?? b;
  if (!a || !b || !end) return true;
  const length = apart(a, end);
  return [b, ...rest].every(
    (c) => Math.abs((end.x - a.x) * (c.y - a.y) - (end.y - a.y) * (c.x - a.x)) <= play * length,
  );
}

const isSame = (a: readonly number[], b: readonly number[]): boolean => a.every((value, index) => value === b[index]);

function keepsAll(dowels: readonly Dowel[], onto: readonly number[], play: number): boolean {
  return dowels.every((a, i) => {
    const image = dowels[onto[i] ?? 0];
    if (!image || Math.abs(a.diameter - image.diameter) > play) return false;
    return dowels.every((b, j) => {
      const other = dowels[onto[j] ?? 0];
      return other !== undefined && Math.abs(apart(a, b) - apart(image, other)) <= play;
    });
  });
}

function permutations(items: readonly number[]): readonly (readonly number[])[] {
  if (items.length <= 1) return [items];
  return items.flatMap((item) => permutations(items.filter((each) => each !== item)).map((rest) => [item, ...rest]));
}
