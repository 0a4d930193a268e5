/** The power view without a window: what its form means, against handbook values. */
import { describe, expect, it } from 'vitest';
import type { PowerForm } from '../../renderer/power/powerNumbers.ts';
import {
  beatsOfTrain,
  driveOf,
  driveRefusalSays,
  palletsOf,
  pendulumOf,
  type SpokenForm,
  secondsPerTurn,
  torqueOf,
  torques,
} from '../../renderer/power/powerOf.ts';
import { turnMovement } from '../../solver/train/index.ts';
import { speakerOf } from '../../solver/words/index.ts';
import { movementOfFile } from '../support/movements.ts';

const movement = movementOfFile('demo-data/going-train.json');
const turning = turnMovement(movement);
const speaker = speakerOf(movement);
const inInches = { ...movement, display: { ...movement.display, unit: 'inch' as const } };
const form = (numbers: PowerForm['numbers'] = {}, set: Partial<PowerForm> = {}): SpokenForm => ({
  kind: 'weight',
  power: '',
  escape: '',
  numbers,
  ...set,
  speaker,
});

describe('the power view', () => {
  it('a weight pulls at the middle of its cord', () => {
    // 2 kg on one cord, drum and cord 50 mm across their middles: 2 · 9.80665 · 25 N·mm. Statics of the pulley.
    const driven = driveOf(form({ mass: 2, drum: 48, cord: 2, parts: 1, pulleyLoss: 0 }), 3600);
    expect(torqueOf(form(), driven)).toBeCloseTo(2 * 9.80665 * 25, 9);
  });

  it('an arbor an eighth as fast has eight times the torque where nothing is lost', () => {
    const report = torques(form({ lossPerDepth: 0, lossPerPivot: 0 }), turning, 100);
    if (report.kind === 'refused') throw new Error(driveRefusalSays(report, speaker).join('\n'));
    const at = (name: string) =>
      report.arbors.find(({ arbor }) => movement.arbors.find(({ id }) => id === arbor)?.name === name);
    const [centre, third] = [at('Centre arbor'), at('Third arbor')];
    // Centre wheel 64 into a pinion of 8, as in ordinary seconds-beating clocks. Common practice.
    expect((centre?.torque ?? 0) / (third?.torque ?? 1)).toBeCloseTo(8, 9);
  });

  it('the escape wheel of 30 gives a seconds pendulum its 3600 beats', () => {
    const escapeWheel = movement.wheels.find(({ name }) => name === 'Escape wheel');
    const chosen = form({ amplitude: 0 }, { escape: escapeWheel?.id ?? '' });
    expect(beatsOfTrain(chosen, movement, turning)).toBe(3600);
    const pendulum = pendulumOf(chosen, 3600);
    // Length of the seconds pendulum at standard gravity: 9.80665/π² m = 993.62 mm. Source: the law of the simple pendulum.
    expect(pendulum.kind === 'pendulum' && pendulum.length).toBeCloseTo(993.621, 3);
    const pallets = palletsOf(chosen, movement);
    // 30 teeth over 7½ stand at √2 times the wheel's radius. Common practice of the trade.
    const radius = pallets?.kind === 'pallets' ? pallets.palletRadius : 0;
    expect(pallets?.kind === 'pallets' && pallets.distance / radius).toBeCloseTo(Math.SQRT2, 9);
  });

  it('what cannot be is refused by the name that the maker sees', () => {
    const driven = driveOf(form({ mass: Number.NaN, drum: -4 }), 3600);
    if (driven.kind !== 'refused') throw new Error('a heavy weight was accepted');
    expect(driveRefusalSays(driven, speaker)[0]).toMatch(/^Weight with its pulley: found no number/);
    expect(driveRefusalSays(driven, speaker)[1]).toMatch(
      /^Drum Ø: found −4\.000 mm, expected a number greater than 0\.000 mm/,
    );
  });

  it('lengths are typed and told in the unit of the document, and diameters stay diameters', () => {
    const inches = { ...form({ drum: 50.8, fall: 1016, cord: 0 }), speaker: speakerOf(inInches) };
    const [weight, half] = [driveOf(inches, 3600), driveOf(form({ drum: 50.8, fall: 1016, cord: 0 }), 3600)];
    expect(weight).toEqual(half);
    const spring = driveOf({ ...inches, kind: 'spring', numbers: { arborRadius: 76.2, barrelRadius: 50.8 } }, 3600);
    if (spring.kind !== 'refused') throw new Error('an arbor larger than its barrel was accepted');
    expect(driveRefusalSays(spring, inches.speaker)).toEqual([
      "Barrel arbor Ø: found 3.0000 in, expected less than the barrel's 2.0000 in.",
    ]);
  });

  it('an arbor that stands still drives nothing', () => {
    const still = movement.arbors.find(({ name }) => name === 'Pallet arbor');
    expect(secondsPerTurn(form({}, { power: still?.id ?? '' }), turning)).toBeUndefined();
    expect(secondsPerTurn(form(), turning)).toBe(43_200);
  });
});
