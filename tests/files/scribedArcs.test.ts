import { describe, expect, it } from 'vitest';
import { plateDrawing } from '../../solver/files/draw/plateDrawing.ts';
import { writeDxf } from '../../solver/files/write/dxf.ts';
import { markingSteps } from '../../solver/marking/index.ts';
import { emptyMovement } from '../../solver/movement/index.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { movementOfFile } from '../support/movements.ts';
import { allSheets } from './allSheets.ts';

const movement = movementOfFile('demo-data/moons-of-jupiter.json');
const placed = plantMovement(movement);
const plate = movement.plates[0]?.id;

describe('arcs and lines scribed on a drawing', () => {
  it('every locus of every step is there, those from the centre of a round plate included', () => {
    const steps = markingSteps(placed, { plate });
    const wanted = steps
      .filter(({ kind }) => kind !== 'datum' && kind !== 'already' && kind !== 'unsettled' && kind !== 'same')
      .flatMap(({ loci }) => loci.filter(({ kind }) => kind !== 'offset'));
    const drawn = plateDrawing(placed, { plate, density: 'numbers' }).layers.find(({ name }) => name === 'SCRIBE');
    expect(wanted.some((locus) => locus.kind === 'arc' && locus.from === 'plate centre')).toBe(true);
    expect(drawn?.shapes.length).toBe(wanted.length);
  });

  it('a movement with nothing in it gives a DXF file without a blank line: code and value stay in step', () => {
    const sheets = allSheets(plantMovement(emptyMovement())).filter(({ name }) => name.endsWith('.dxf'));
    const texts = [
      ...sheets.map(({ text }) => text),
      writeDxf(plateDrawing(plantMovement(emptyMovement()), { density: 'cut' })),
    ];
    for (const text of texts) {
      const lines = text.trimEnd().split('\n');
      expect(lines.length % 2).toBe(0);
      lines.forEach((line, i) => {
        if (i % 2 === 0) expect(line.trim()).toMatch(/^\d+$/);
      });
      expect(lines.slice(-2)).toEqual(['0', 'EOF']);
    }
  });
});
