import { readFileSync } from 'node:fs';
import { unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { changesText } from '../../solver/files/handover/handover.ts';
import { changesBetween, handoverOf, zipOf } from '../../solver/files/index.ts';
import { SheetFonts } from '../../solver/files/pages/index.ts';
import { readMovement } from '../../solver/movement/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { speakerOf } from '../../solver/words/index.ts';
import { revisionSays, sheetWordsOf } from '../../solver/words/shop/index.ts';
import { everyConstruction, movementOf } from '../marking/placedByHand.ts';

const face = (name: string) =>
  new Uint8Array(readFileSync(new URL(`../../node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`, import.meta.url)));
const fonts = new SheetFonts({ regular: face('DejaVuSans'), bold: face('DejaVuSans-Bold') });
const settings = { fonts, words: sheetWordsOf };

describe('handover', () => {
  const placed = everyConstruction();
  const files = handoverOf(placed, { settings });

  it('holds sheets, drawings, programs, tables, the movement and a contents page with cautions', () => {
    const names = files.map(({ name }) => name);
    for (const end of [
      '.dxf',
      '.svg',
      '.ngc',
      '.csv',
      '.pdf',
      '.json',
      'contents.txt',
      'preflight.txt',
      'readout.txt',
    ]) {
      expect(
        names.some((name) => name.endsWith(end)),
        end,
      ).toBe(true);
    }
    const contents = new TextDecoder().decode(files[0]?.bytes);
    for (const name of names.slice(1)) expect(contents).toContain(name);
    expect(contents).toContain('Local codes');
    const json = files.find(({ name }) => name.endsWith('.json'));
    const reading = readMovement(new TextDecoder().decode(json?.bytes));
    expect(reading.kind === 'movement' && reading.movement).toEqual(placed.movement);
  });

  it('is byte-identical when nothing changed, folder and zip', () => {
    const again = handoverOf(everyConstruction(), { settings });
    const [a, b] = [zipOf(files), zipOf(again)];
    expect(Buffer.compare(a, b)).toBe(0);
    const out = unzipSync(a);
    expect(Object.keys(out)).toEqual(files.map(({ name }) => name));
    for (const { name, bytes } of files) expect(Buffer.compare(out[name] ?? new Uint8Array(), bytes), name).toBe(0);
  });
});

describe('changes between two revisions', () => {
  const base = {
    title: 'A',
    arbors: [{ id: 'a', name: 'Centre', at: [0, 0] }],
    wheels: [{ id: 'w', arbor: 'a', teeth: 64, size: { module: 0.8 }, form: 'cycloidal', level: 0, thickness: 2 }],
    rules: [{ id: 'h', kind: 'held', point: 'a', at: [0, 0] }],
  };
  const first = movementOf(base);

  it('are none for the same movement', () => {
    expect(changesBetween(first, movementOf(base))).toEqual([]);
    expect(changesText(first, first, sheetWordsOf(first))).toContain('Nothing changed.');
  });

  it('name what was added, removed and changed, with both values', () => {
    const second = movementOf({
      ...base,
      revision: 'B',
      arbors: [...base.arbors, { id: 'b', at: [5, 5] }],
      wheels: [{ ...base.wheels[0], teeth: 60 }],
      rules: [],
    });
    const says = revisionSays(first, speakerOf(second));
    expect(says).toEqual([
      'Revision: A → B.',
      'Added: arbor 2.',
      'Wheel of 60 on Centre, teeth: 64 → 60.',
      'Removed: the held place of Centre.',
    ]);
    expect(changesBetween(second, first).map(({ kind }) => kind)).toEqual(['changed', 'removed', 'changed', 'added']);
  });

  it('go into the handover when an earlier revision is given', () => {
    const placed = plantMovement(movementOf({ ...base, revision: 'B' }));
    const file = handoverOf(placed, { settings, earlier: first }).find(({ name }) => name === 'changes.txt');
    expect(new TextDecoder().decode(file?.bytes)).toContain('from revision A to revision B');
  });
});
