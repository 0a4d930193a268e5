import { describe, expect, it } from 'vitest';
import { checkMovement, gapBetween, remediesFor } from '../../solver/clearance/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { arborAt, sceneOf, wheelOf } from './scenes.ts';
import { wordsOf } from './wordsOf.ts';

/** A wheel beside a sliding post: the post stands on a circle of 40 about the arbor A. */
function postScene(angleDeg: number, more: object = {}) {
  const a = arborAt('A', 0, 0, { levels: { from: 30, to: 31 } });
  const b = arborAt('B', 35, 0, { levels: { from: 0, to: 2 } });
  const angle = (angleDeg * Math.PI) / 180;
  const at = [40 * Math.cos(angle), 40 * Math.sin(angle)];
  return sceneOf({
    arbors: [a.arbor, b.arbor],
    rules: [a.rule, b.rule],
    wheels: [wheelOf('b', 'B', 30, 0)],
    posts: [{ id: 'P', name: 'post P', at, diameter: 6, levels: { from: -5, to: 15 }, slidesAbout: 'A' }],
    ...more,
  });
}

describe('remedies', () => {
  it('slide a post along its circle to the nearest place that keeps the gap, and say by how much', () => {
    const placed = plantMovement(postScene(20));
    const [finding] = checkMovement(placed);
    if (!finding) throw new Error('the scene must foul');
    const [slide] = remediesFor(placed, finding);
    // |P − B| = 15 + 3 + 0.5 at the cure: cos θ = (40² + 35² − 18.5²)/(2·40·35).
    const cured = (Math.acos((1600 + 1225 - 18.5 ** 2) / 2800) * 180) / Math.PI;
    const says = slide && wordsOf(placed.movement).cure(slide);
    expect(says).toBe(`Turn post P by +${(cured - 20).toFixed(1)}° about A: gap 0.500 mm`);
    expect(slide?.gapAfter).toBeCloseTo(0.5, 5);
    const after = plantMovement(slide?.movement ?? placed.movement);
    expect(checkMovement(after)).toEqual([]);
    expect(
      gapBetween(after, finding.parts[0] ?? (finding.key as never), finding.parts[1] ?? (finding.key as never))?.gap,
    ).toBeCloseTo(0.5, 5);
  });

  it('are not offered where they would only move the trouble elsewhere', () => {
    // A wheel of 60 at the same level all round the circle but for the place of the first one: nowhere is safe.
    const a = arborAt('A', 0, 0, { levels: { from: 0, to: 20 } });
    const movement = sceneOf({
      arbors: [a.arbor],
      rules: [a.rule],
      wheels: [wheelOf('a', 'A', 84, 0)],
      posts: [{ id: 'P', at: [40, 0], diameter: 6, levels: { from: -5, to: 15 }, slidesAbout: 'A' }],
    });
    const placed = plantMovement(movement);
    const [finding] = checkMovement(placed);
    if (!finding) throw new Error('the scene must foul');
    const offered = remediesFor(placed, finding).map(wordsOf(movement).cure);
    expect(offered.some((says) => says.startsWith('Turn'))).toBe(false);
    // The wheel can still be moved clear of the post in height.
    expect(offered.some((says) => says.startsWith('Move a (a) up by 15.3'))).toBe(true);
  });

  it('top a wheel that is only a little too large, thin one that is a little too thick', () => {
    const [a, b] = [arborAt('A', 0, 0), arborAt('B', 35.3, 0)];
    const beside = plantMovement(
      sceneOf({
        arbors: [a.arbor, b.arbor],
        rules: [a.rule, b.rule],
        wheels: [wheelOf('a', 'A', 40, 0), wheelOf('b', 'B', 30, 0)],
      }),
    );
    const [tight] = checkMovement(beside);
    if (!tight) throw new Error('the scene must be too close');
    expect(remediesFor(beside, tight).map(wordsOf(beside.movement).cure)).toContain(
      'Top a (a) to 39.600 mm over the tips: gap 0.500 mm',
    );

    const over = plantMovement(
      sceneOf({
        arbors: [a.arbor, b.arbor],
        rules: [a.rule, b.rule],
        wheels: [wheelOf('a', 'A', 60, 0), wheelOf('b', 'B', 40, 2.1)],
      }),
    );
    const [low] = checkMovement(over).filter((finding) => finding.parts.includes('b' as never));
    if (!low) throw new Error('the scene must be too close');
    const words = wordsOf(over.movement);
    expect(words.finding(low)).toBe('A (a) and b (b): gap 0.100 mm in height, wanted 0.300 mm.');
    expect(remediesFor(over, low).map(words.cure)).toContain('Thin a (a) by 0.200 mm from above: gap 0.300 mm');
  });
});

describe('the three values of a gap', () => {
  const bearing = { bore: 2.1, pivot: 2, length: 2 };
  const scene = (apart: number, play: boolean, endShake = 0, level = 0) => {
    const bearings = play
      ? [
          { ...bearing, at: -10 },
          { ...bearing, at: 20 },
        ]
      : [];
    const a = arborAt('A', 0, 0, { levels: { from: -10, to: 22 }, bearings, endShake });
    const b = arborAt('B', apart, 0, { levels: { from: -10, to: 22 }, bearings });
    return sceneOf({
      arbors: [a.arbor, b.arbor],
      rules: [{ ...a.rule }, { ...b.rule, plusMinus: 0.08 }],
      wheels: [wheelOf('a', 'A', 40, 0), wheelOf('b', 'B', 30, level)],
    });
  };
  const gapsAt = (apart: number, play: boolean) => checkMovement(plantMovement(scene(apart, play))).find((f) => f.gaps);

  it('side play of both arbors comes off the gap: 0.05 each way in holes that are 0.1 too large', () => {
    const finding = gapsAt(35.55, true);
    expect(finding?.value).toBe('withShake');
    expect(finding?.gaps?.asPlanted).toBeCloseTo(0.55, 9);
    expect(finding?.gaps?.withShake).toBeCloseTo(0.45, 9);
    const says = finding && wordsOf(scene(35.55, true)).finding(finding);
    expect(says).toBe('A (a) and b (b): gap 0.450 mm with shake, wanted 0.500 mm.');
  });

  it('then the ± of the planting', () => {
    const finding = gapsAt(35.55, false);
    expect(finding?.value).toBe('withPlusMinus');
    expect(finding?.gaps?.withShake).toBeCloseTo(0.55, 9);
    expect(finding?.gaps?.withPlusMinus).toBeCloseTo(0.55 - 0.08, 6);
  });

  it('run-out reaches out by half of what the gauge shows', () => {
    const movement = scene(35.55, false);
    const wheels = movement.wheels.map((wheel) => (wheel.id === 'a' ? { ...wheel, runOut: 0.12 } : wheel));
    const finding = checkMovement(plantMovement({ ...movement, wheels })).find((f) => f.gaps);
    expect(finding?.gaps?.withShake).toBeCloseTo(0.49, 9);
  });

  it('end shake takes half of itself from a gap in height', () => {
    const findings = checkMovement(plantMovement(scene(30, false, 0.3, 2.4)));
    const finding = findings.find((f) => f.parts.includes('b' as never) && f.parts.includes('a' as never));
    expect(finding?.value).toBe('withShake');
    expect(finding?.gaps?.asPlanted).toBeCloseTo(0.4, 9);
    expect(finding?.gaps?.withShake).toBeCloseTo(0.25, 9);
  });
});
