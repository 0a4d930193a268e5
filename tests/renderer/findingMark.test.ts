import { expect, it } from 'vitest';
import { findingMark } from '../../renderer/clearance/findingMark.ts';
import { sizesOf } from '../../renderer/state/derive/sizes.ts';
import { toScreen } from '../../renderer/state/view.ts';
import { checkMovement } from '../../solver/clearance/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { movementOfFile } from '../support/movements.ts';

const view = { centre: { x: 10, y: 20 }, scale: 4, width: 800, height: 600 };
/** The first distance of a balloon from its place less its radius (bench/balloons.ts), CSS pixels. */
const NEAREST_BALLOON = 44 - 11;

it('hatches both parts at their places and sizes, and draws the overlap between the nearest points', () => {
  const movement = movementOfFile('tests/fixtures/pillarFoulsWheel.json');
  const placed = plantMovement(movement);
  const sizes = sizesOf(movement);
  const [finding] = checkMovement(placed).filter(({ kind }) => kind === 'fouls');
  if (!finding) throw new Error('the pillar must foul');
  const mark = findingMark(finding, placed, sizes, view);
  expect(mark?.discs.map(({ part }) => part)).toEqual(finding.parts);
  const pillar = movement.posts.find(({ id }) => finding.parts.includes(id));
  const place = [...placed.places.values()].find(({ id }) => id === pillar?.id);
  const disc = mark?.discs.find(({ part }) => part === pillar?.id);
  expect(disc).toMatchObject(toScreen(view, place ?? { x: 0, y: 0 }));
  expect(disc?.r).toBeCloseTo(((pillar?.diameter ?? 0) / 2) * view.scale, 9);
  const length = Math.hypot((mark?.to.x ?? 0) - (mark?.from.x ?? 0), (mark?.to.y ?? 0) - (mark?.from.y ?? 0));
  expect(length).toBeCloseTo(-(finding.gap ?? 0) * view.scale, 6);
});

it('a finding without a gap has no mark', () => {
  const movement = movementOfFile('tests/fixtures/mixedModules.json');
  const placed = plantMovement(movement);
  const size = checkMovement(placed).find(({ kind }) => kind === 'size');
  expect(size && findingMark(size, placed, sizesOf(movement), view)).toBeUndefined();
});

it('the figure of a gap without length stands above its place, short of where any balloon stands', () => {
  const movement = movementOfFile('tests/fixtures/sharedLevel.json');
  const placed = plantMovement(movement);
  const found = checkMovement(placed).find(({ parts }) => parts.join(' ') === 'day-wheel day-driver');
  const mark = found && findingMark(found, placed, sizesOf(movement), view);
  if (!mark) throw new Error('it must be marked');
  expect(mark.to).toEqual(mark.from);
  expect(mark.figureAt.x).toBe(mark.from.x);
  // Half of the figure's height, 7 px, goes on top; it keeps inside the nearest edge of a balloon.
  const above = mark.from.y - mark.figureAt.y;
  expect(above).toBeGreaterThan(7);
  expect(above + 7).toBeLessThan(NEAREST_BALLOON);
});
