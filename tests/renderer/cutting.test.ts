/** The cutting view without a window: the maker's kit, and the files of a wheel read back by a reader that is not ours. */
import DxfParser from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { readKit, USUAL_KIT_TEXT } from '../../renderer/cutting/dividingKit.ts';
import { wheelFiles } from '../../solver/files/index.ts';
import { cuttingDataOf, exactWays } from '../../solver/teeth/cutting/index.ts';
import { wheelOutline } from '../../solver/teeth/outlines/index.ts';
import { cuttingSheet, dividingWaySays, speakerOf } from '../../solver/words/index.ts';
import { movementOfParts } from '../support/movements.ts';

function wheelOf(teeth: number) {
  const movement = movementOfParts({
    arbors: [{ id: 'a', at: [0, 0], diameter: 3 }],
    wheels: [
      {
        id: 'w',
        name: 'Day / night wheel',
        arbor: 'a',
        teeth,
        size: { module: 1 },
        form: 'involute',
        level: 0,
        thickness: 2,
        bore: 3,
        arms: { count: 5, width: 3, rim: 3 },
      },
    ],
  });
  const wheel = movement.wheels[0];
  if (!wheel) throw new Error('the movement has no wheel');
  return { wheel, movement };
}

describe('the kit', () => {
  it('is read as typed', () => {
    const read = readKit({ ratios: '40', plates: '18, 27 / 33', plain: '96', wheels: '24 32' });
    expect(read.kind === 'kit' && read.kit).toEqual({
      heads: [{ name: '40:1', ratio: 40, plates: [[18, 27], [33]] }],
      plainPlates: [[96]],
      changeWheels: [24, 32],
    });
  });

  it('divides as printed tables do', () => {
    // 72 on 40:1 with plates of 15 to 49: 10 holes on 18, or 15 on 27. Source: index tables of plate set A, US Army
    // OD1644 (rows derived from 40/N).
    const read = readKit({ ...USUAL_KIT_TEXT, ratios: '40' });
    if (read.kind === 'none') throw new Error('the usual kit cannot be read');
    expect(exactWays(72, read.kit).map((way) => dividingWaySays(way, speakerOf(wheelOf(72).movement)))).toEqual([
      '40:1, simple: 10 holes on 18, or 15 holes on 27 for each tooth.',
    ]);
  });

  it('names the field and the word that is no number', () => {
    const read = readKit({ ...USUAL_KIT_TEXT, plates: '15 sixteen' });
    expect(read.kind === 'none' && read.problems.map(({ field, says }) => [field, says.includes('"sixteen"')])).toEqual(
      [['plates', true]],
    );
  });
});

describe('the files of a wheel', () => {
  const { wheel, movement } = wheelOf(48);
  const outline = wheelOutline(wheel, movement, { phase: 0 });
  const data = cuttingDataOf(wheel, movement, { tableRatio: 72 });
  const speaker = speakerOf(movement);
  const words = { name: speaker.name(wheel.id), cutting: cuttingSheet(data, 72, speaker) };
  const files = wheelFiles(words, outline.kind === 'outline' ? outline : undefined);

  it('are named so that every system takes them', () => {
    expect(files.map(({ name }) => name)).toEqual([
      'Day night wheel.dxf',
      'Day night wheel.svg',
      'Day night wheel cutting.txt',
    ]);
  });

  it('hold the outline: teeth to the tip circle, five openings, the bore and its witness circle', () => {
    const drawing = new DxfParser().parseSync(String(files[0]?.text));
    const entities = drawing?.entities ?? [];
    const on = (layer: string) => entities.filter((entity) => entity.layer === layer);
    expect(on('OPENINGS')).toHaveLength(5);
    expect(on('HOLES').map((entity) => ('radius' in entity ? entity.radius : 0))).toEqual([1.5]);
    expect(on('SCRIBE').map((entity) => ('radius' in entity ? entity.radius : 0))).toEqual([2]);
    const edge = on('OUTLINE')[0];
    const vertices = edge && 'vertices' in edge ? (edge.vertices as { x: number; y: number }[]) : []; // a polyline
    const reach = Math.max(...vertices.map(({ x, y }) => Math.hypot(x, y)));
    // Tip circle of 48 teeth of module 1: (48 + 2)/2. ISO 53 addendum of one module.
    expect(reach).toBeGreaterThan(24.99);
    expect(reach).toBeLessThan(25.0001);
  });

  it('hold the check-off list, closing to the full turn', () => {
    const text = String(files[2]?.text);
    // One tooth of 48 is 7.5 degrees; at 72:1 a crank turn is 5 degrees.
    expect(text).toMatch(/ 1 +7° 30′ 00″ +1 {2}turn \+ +2° 30′ 00″/);
    expect(text).toMatch(/closes +360° 00′ 00″ +72 turns/);
    expect(text).toContain('eye protection');
  });

  it('are written without an outline where there is none to draw', () => {
    expect(wheelFiles(words, undefined).map(({ name }) => name)).toEqual(['Day night wheel cutting.txt']);
  });
});
