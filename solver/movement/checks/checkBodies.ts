/** Bodies that contradict themselves: heights upside down, bores smaller than pivots, sizes given twice, pipes in a ring. */
import type { Movement } from '../schema.ts';
import type { Report } from './fault.ts';

/** Reports what is wrong within arbors, posts, wheels and plates. */
export function checkBodies(movement: Movement, report: Report): void {
  checkArbors(movement, report);
  checkPipes(movement, report);
  movement.posts.forEach((post, index) => {
    checkHeights(post.levels, ['posts', index, 'levels'], post.id, report);
    post.heads?.forEach((head, i) => {
      checkHeights(head, ['posts', index, 'heads', i], post.id, report);
    });
    if (post.slidesAbout === post.id) {
      report({
        path: ['posts', index, 'slidesAbout'],
        id: post.id,
        found: `“${post.id}”, the post itself`,
        expected: 'another point to slide about',
        remedy: 'name the centre of the circle that it slides along',
      });
    }
  });
  movement.plates.forEach((plate, i) => {
    checkHeights(plate.levels, ['plates', i, 'levels'], plate.id, report);
  });
  movement.walls.forEach((wall, i) => {
    checkHeights(wall.levels, ['walls', i, 'levels'], wall.id, report);
  });
  checkWheels(movement, report);
  checkCrossings(movement, report);
}

/** Lower and upper end of a part above the marked face of the base plate, mm. */
type Heights = { readonly from?: number; readonly to?: number };

function checkHeights(
  heights: Heights | undefined,
  path: readonly (string | number)[],
  id: string,
  report: Report,
): void {
  const { from, to } = heights ?? {};
  if (from === undefined || to === undefined || from < to) return;
  report({
    path,
    id,
    found: `from ${from} to ${to}`,
    expected: 'the lower height first, and some height between the two',
    remedy: from > to ? 'exchange the two' : 'correct one of the two',
  });
}

function checkArbors(movement: Movement, report: Report): void {
  movement.arbors.forEach((arbor, index) => {
    const { id } = arbor;
    const path = ['arbors', index] as const;
    checkHeights(arbor.levels, [...path, 'levels'], id, report);
    arbor.collars.forEach((collar, i) => {
      checkHeights(collar, [...path, 'collars', i], id, report);
    });
    arbor.swept?.forEach((swept, i) => {
      checkHeights(swept, [...path, 'swept', i], id, report);
      if (swept.nearest < swept.farthest) return;
      report({
        path: [...path, 'swept', i, 'nearest'],
        id,
        found: `${swept.nearest}, with the farthest at ${swept.farthest}`,
        expected: 'a nearest distance from the axis that is smaller than the farthest',
        remedy: 'exchange the two, or leave “nearest” out where it begins at the axis',
      });
    });
    arbor.bearings.forEach((bearing, i) => {
      if (bearing.bore < bearing.pivot) {
        report({
          path: [...path, 'bearings', i, 'bore'],
          id,
          found: `a bore of ${bearing.bore} for a pivot of ${bearing.pivot}`,
          expected: 'a bore at least as large as its pivot',
          remedy: 'enlarge the bore or reduce the pivot',
        });
      }
      if (bearing.outer !== undefined && bearing.outer <= bearing.bore) {
        report({
          path: [...path, 'bearings', i, 'outer'],
          id,
          found: `an outer diameter of ${bearing.outer} around a bore of ${bearing.bore}`,
          expected: 'an outer diameter larger than the bore',
          remedy: 'correct one of the two',
        });
      }
    });
    if (arbor.pipeBore !== undefined && arbor.pipeBore >= arbor.diameter) {
      report({
        path: [...path, 'pipeBore'],
        id,
        found: `a bore of ${arbor.pipeBore} in a pipe of ${arbor.diameter}`,
        expected: 'a bore smaller than the pipe’s own diameter',
        remedy: 'correct “pipeBore” or “diameter”',
      });
    }
    if (arbor.ridesOn === undefined && (arbor.pipeBore !== undefined || arbor.turns === 'withArbor')) {
      report({
        path: [...path, arbor.pipeBore === undefined ? 'turns' : 'pipeBore'],
        id,
        found: 'a pipe that rides on nothing',
        expected: '“ridesOn” with the arbor that runs in the pipe',
        remedy: 'add “ridesOn”, or remove this field',
      });
    }
  });
}

/** Names of a ring that are told; a longer one says how many there are. */
const RING_TOLD = 6;

/** A pipe may ride on a pipe, but the chain must end on an arbor. Each ring is told once, at its first pipe. */
function checkPipes(movement: Movement, report: Report): void {
  const ridesOn = new Map<string, string>();
  for (const arbor of movement.arbors) if (arbor.ridesOn !== undefined) ridesOn.set(arbor.id, arbor.ridesOn);
  /** What was looked at, with the arbor from which it was reached; each is looked at once. */
  const seenFrom = new Map<string, string>();
  movement.arbors.forEach((arbor) => {
    let id: string | undefined = arbor.id;
    for (; id !== undefined && !seenFrom.has(id); id = ridesOn.get(id)) seenFrom.set(id, arbor.id);
    if (id !== undefined && seenFrom.get(id) === arbor.id) reportRing(movement, ridesOn, id, report);
  });
}

/** Tells the ring that `start` is part of, at the pipe of it that the document names first. */
function reportRing(movement: Movement, ridesOn: ReadonlyMap<string, string>, start: string, report: Report): void {
  const ring = [start];
  for (let id = ridesOn.get(start); id !== undefined && id !== start; id = ridesOn.get(id)) ring.push(id);
  const members = new Set(ring);
  const index = movement.arbors.findIndex(({ id }) => members.has(id));
  const first = movement.arbors[index]?.id ?? start;
  const turned = [...ring.slice(ring.indexOf(first)), ...ring.slice(0, ring.indexOf(first)), first];
  const told = ring.length > RING_TOLD ? [...turned.slice(0, RING_TOLD), '…'] : turned;
  report({
    path: ['arbors', index, 'ridesOn'],
    id: first,
    found:
      ring.length === 1
        ? `“${first}”, the arbor itself`
        : `${ring.length} pipes that ride on each other in a ring: ${told.join(' on ')}`,
    expected: 'a chain of pipes that ends on an arbor',
    remedy: 'remove “ridesOn” from the one that stands on its own pivots',
  });
}

const SIZES = ['module', 'diametralPitch', 'circularPitch'] as const;

function checkWheels(movement: Movement, report: Report): void {
  movement.wheels.forEach((wheel, index) => {
    const given = SIZES.filter((way) => Object.hasOwn(wheel.size, way));
    if (given.length > 1) {
      report({
        path: ['wheels', index, 'size'],
        id: wheel.id,
        found: `the size in ${given.length} ways: ${given.join(' and ')}`,
        expected: 'one of module, diametralPitch or circularPitch',
        remedy: 'keep the one that the cutter is marked with',
      });
    }
    checkHeights(wheel.hub, ['wheels', index, 'hub'], wheel.id, report);
  });
}

function checkCrossings(movement: Movement, report: Report): void {
  for (const list of ['arbors', 'posts', 'marks'] as const) {
    movement[list].forEach(({ id, crossing }, index) => {
      if (crossing === undefined) return;
      const own = crossing.from === id ? 'from' : crossing.to === id ? 'to' : undefined;
      if (own === undefined && crossing.from !== crossing.to) return;
      report({
        path: [list, index, 'crossing', own ?? 'to'],
        id,
        found: own === undefined ? `“${crossing.to}” at both ends` : 'the point itself',
        expected: 'a line between two other points',
        remedy: 'record the side again, or remove “crossing”',
      });
    });
  }
}
