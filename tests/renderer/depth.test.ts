/** The depth view without a window: both ways of driving, rings, and the zones of its rule. */
import { describe, expect, it } from 'vitest';
import { entryAt } from '../../renderer/depth/entryAt.ts';
import { drivenTurn, operatingRadii, pairDrawing } from '../../renderer/depth/pairPicture.ts';
import { scaleSpan, zonesOf } from '../../renderer/depth/scaleSpan.ts';
import type { RuleOf } from '../../solver/movement/schema.ts';
import { remarkWords, speakerOf } from '../../solver/words/index.ts';
import { movementOfFile } from '../support/movements.ts';

const movement = movementOfFile('tests/bench/scenes/planetShelf.json');
function ruleOf(id: string): RuleOf<'depth'> {
  const rule = movement.rules.find((each) => each.id === id);
  if (rule?.kind !== 'depth') throw new Error(`no depth ${id}`);
  return rule;
}
const look = (distance: number, otherDrives = false) => ({ distance, otherDrives });
const degrees = (angle: number): number => (angle * 180) / Math.PI;

describe('a depth looked at', () => {
  it('opens by the involute backlash and pressure angle', () => {
    const entry = entryAt(movement, ruleOf('sun-planet'), look(40.2));
    if (entry?.contact.kind !== 'contact') throw new Error('the pair does not touch');
    // 20 and 60 teeth of module 1 and 20°, 0.2 mm farther apart: 2 a (inv α′ − inv α) = 0.14903009137 mm and
    // α′ = 20.769022264°. Source: ISO 21771 formulas for operating pressure angle and backlash.
    expect(entry.contact.backlash.mean).toBeCloseTo(0.14903009137, 5);
    expect(degrees(entry.contact.pressureAngle.least)).toBeCloseTo(20.769022264, 3);
    expect(entry.verdict).toBe('runs');
  });

  it('binds when it is too deep, with the distance that cures it', () => {
    const entry = entryAt(movement, ruleOf('sun-planet'), look(39.9));
    expect(entry?.verdict).toBe('binds');
    const binding = entry?.remarks.find(({ kind }) => kind === 'binding');
    expect(binding && remarkWords(binding, speakerOf(movement)).remedy).toContain('40.000');
  });

  it('is driven by the other wheel at will, approach and recess changed about', () => {
    const [one, other] = [false, true].map((way) => entryAt(movement, ruleOf('sun-planet'), look(40.2, way)));
    expect([one?.driver, other?.driver]).toEqual(['sun-wheel', 'planet-wheel']);
    if (one?.contact.kind !== 'contact' || other?.contact.kind !== 'contact') {
      throw new Error('the pair does not touch');
    }
    expect(other.contact.approach).toBeCloseTo(one.contact.recess, 2);
    expect(other.contact.recess).toBeCloseTo(one.contact.approach, 2);
  });

  it('puts a wheel into its ring, whichever of the two drives', () => {
    const wheels = (['crank-wheel', 'ring-wheel'] as const).map((id) =>
      movement.wheels.find((wheel) => wheel.id === id),
    );
    const [crank, ring] = wheels;
    if (!crank || !ring) throw new Error('the scene has no ring');
    // Both pitch circles touch on +x: 9 and 30 about axes 21 apart.
    expect(operatingRadii(crank, ring, 21)).toEqual([9, 30]);
    expect(pairDrawing(crank, ring, movement, 21)?.driven.x).toBe(-21);
    expect(pairDrawing(ring, crank, movement, 21)?.driven.x).toBe(21);
    const drawing = pairDrawing(crank, ring, movement, 20.9);
    const entry = entryAt(movement, ruleOf('crank-ring'), look(20.9));
    if (!drawing || !entry || entry.contact.kind === 'none') throw new Error('the ring does not mesh');
    // In a ring both turn the same way, the ring by 18/60, apart from a little unevenness.
    const moved = drivenTurn(drawing, entry.contact, Math.PI) - drivenTurn(drawing, entry.contact, 0);
    expect(moved).toBeCloseTo((Math.PI * 18) / 60, 2);
  });
});

it('draws a lantern pinion by its trundles alone, so that the wheel between them is seen', () => {
  const [wheel] = movement.wheels;
  if (!wheel) throw new Error('the scene has no wheel');
  const lantern = { ...wheel, teeth: 8, form: 'lantern' as const, trundleDiameter: 1.4 };
  const drawing = pairDrawing(wheel, lantern, movement, 30);
  const radii = drawing?.driven.loops.map((loop) => (loop.kind === 'circle' ? loop.radius : 0)) ?? [];
  expect(radii).toHaveLength(8);
  for (const radius of radii) expect(radius).toBeCloseTo(0.7, 12);
});

describe('the rule of distances', () => {
  it.each([
    ['sun-planet', 40.1, 1],
    ['crank-ring', 20.9, -1],
  ] as const)('shows binding, running and parting in order: %s', (id, distance, open) => {
    const entry = entryAt(movement, ruleOf(id), look(distance));
    if (entry?.window.kind !== 'window') throw new Error('the pair has no window');
    const ends = scaleSpan(entry.window, [{ name: 'calculated', at: entry.calculated }], distance);
    const zones = zonesOf(entry.window, ends);
    expect(zones.map(({ kind }) => kind)).toEqual(['binds', 'runs', 'uneven', 'out of touch']);
    const lefts = zones.map(({ left }) => left * open);
    expect([...lefts].sort((a, b) => a - b)).toEqual(lefts);
    expect(zones.reduce((sum, { width }) => sum + width, 0)).toBeCloseTo(100, 6);
    expect(distance).toBeGreaterThan(ends[0]);
    expect(distance).toBeLessThan(ends[1]);
  });
});
