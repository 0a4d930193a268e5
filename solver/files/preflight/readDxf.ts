/** A small DXF reader for the pre-flight report. It shares no code with the writer, so that it cannot share its faults. */
import { bulgedPiece, type ReadDrawing, type ReadPoint, type ReadShape } from './readShapes.ts';

/** One entity as its pairs of code and value. */
interface Entity {
  readonly kind: string;
  readonly pairs: readonly (readonly [number, string])[];
}

/** Millimetres a unit for $INSUNITS; 0 says that the file has no unit. */
const UNIT_MM: Readonly<Record<number, number>> = { 1: 25.4, 2: 304.8, 4: 1, 5: 10, 6: 1000, 13: 0.001 };

/** Reads lines, arcs, circles and polylines of the entities section. */
export function readDxf(text: string): ReadDrawing {
  const problems: string[] = [];
  const pairs = pairsOf(text, problems);
  const units = headerValue(pairs, '$INSUNITS');
  const unit = units === undefined ? undefined : UNIT_MM[Number(units)];
  const shapes: ReadShape[] = [];
  const entities = entitiesOf(pairs);
  if (!pairs.some(([code, value]) => code === 0 && value === 'EOF')) problems.push('the file does not end with EOF');
  for (let index = 0; index < entities.length; index++) {
    const entity = entities[index];
    if (!entity) continue;
    if (entity.kind === 'POLYLINE') {
      const vertices: Entity[] = [];
      while (entities[index + 1]?.kind === 'VERTEX') vertices.push(...entities.slice(++index, index + 1));
      if (entities[index + 1]?.kind === 'SEQEND') index++;
      else problems.push('a POLYLINE has no SEQEND');
      shapes.push(...polyline(entity, vertices.map(heavyVertex)));
    } else if (entity.kind === 'LWPOLYLINE') shapes.push(...polyline(entity, lightVertices(entity)));
    else shapes.push(...single(entity, problems));
  }
  const layers = [...new Set(shapes.map((shape) => shape.layer))];
  return { shapes, layers, problems, ...(unit === undefined ? {} : { unit }) };
}

function pairsOf(text: string, problems: string[]): readonly (readonly [number, string])[] {
  const lines = text.split(/\r?\n/);
  const pairs: (readonly [number, string])[] = [];
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const code = Number(lines[i]);
    const value = (lines[i + 1] ?? '').trim();
    if (!Number.isInteger(code)) problems.push(`line ${i + 1} should hold a group code, found "${lines[i]}"`);
    if (isReal(code) && !/^-?\d+(\.\d+)?$/.test(value)) problems.push(`line ${i + 2}: "${value}" is no plain number`);
    if (isReal(code) && /^-0(\.0+)?$/.test(value)) problems.push(`line ${i + 2} holds minus zero`);
    pairs.push([code, value]);
  }
  return pairs;
}

const isReal = (code: number): boolean => code >= 10 && code <= 59;

function headerValue(pairs: readonly (readonly [number, string])[], name: string): string | undefined {
  const at = pairs.findIndex(([code, value]) => code === 9 && value === name);
  return at < 0 ? undefined : pairs[at + 1]?.[1];
}

function entitiesOf(pairs: readonly (readonly [number, string])[]): readonly Entity[] {
  const start = pairs.findIndex(
    ([code, value], i) => code === 2 && value === 'ENTITIES' && pairs[i - 1]?.[1] === 'SECTION',
  );
  const entities: { kind: string; pairs: (readonly [number, string])[] }[] = [];
  if (start < 0) return entities;
  for (const pair of pairs.slice(start + 1)) {
    if (pair[0] === 0 && pair[1] === 'ENDSEC') break;
    if (pair[0] === 0) entities.push({ kind: pair[1], pairs: [] });
    else entities.at(-1)?.pairs.push(pair);
  }
  return entities;
}

const textOf = (entity: Entity, code: number): string | undefined => entity.pairs.find(([own]) => own === code)?.[1];
const realOf = (entity: Entity, code: number): number => Number(textOf(entity, code) ?? 0);
const layerOf = (entity: Entity): string => textOf(entity, 8) ?? '0';

/** A corner of a polyline that was read, mm. */
interface ReadVertex {
  readonly at: ReadPoint;
  readonly bulge: number;
}

const heavyVertex = (vertex: Entity): ReadVertex => ({
  at: [realOf(vertex, 10), realOf(vertex, 20)],
  bulge: realOf(vertex, 42),
});

function lightVertices(entity: Entity): readonly ReadVertex[] {
  const vertices: { at: [number, number]; bulge: number }[] = [];
  for (const [code, value] of entity.pairs) {
    const last = vertices.at(-1);
    if (code === 10) vertices.push({ at: [Number(value), 0], bulge: 0 });
    else if (code === 20 && last) last.at[1] = Number(value);
    else if (code === 42 && last) last.bulge = Number(value);
  }
  return vertices;
}

function polyline(entity: Entity, vertices: readonly ReadVertex[]): readonly ReadShape[] {
  const closed = (realOf(entity, 70) & 1) === 1;
  const count = closed ? vertices.length : vertices.length - 1;
  const shapes: ReadShape[] = [];
  for (let i = 0; i < count; i++) {
    const from = vertices[i];
    const to = vertices[(i + 1) % vertices.length];
    if (from && to) shapes.push(bulgedPiece(layerOf(entity), from.at, to.at, from.bulge));
  }
  return shapes;
}

function single(entity: Entity, problems: string[]): readonly ReadShape[] {
  const layer = layerOf(entity);
  const centre: ReadPoint = [realOf(entity, 10), realOf(entity, 20)];
  const radius = realOf(entity, 40);
  switch (entity.kind) {
    case 'LINE':
      return [{ kind: 'line', layer, from: centre, to: [realOf(entity, 11), realOf(entity, 21)] }];
    case 'CIRCLE':
      return [{ kind: 'circle', layer, centre, radius }];
    case 'ARC': {
      const start = (realOf(entity, 50) * Math.PI) / 180;
      const end = (realOf(entity, 51) * Math.PI) / 180;
      const turn = 2 * Math.PI;
      const sweep = (((end - start) % turn) + turn) % turn || turn;
      const at = (angle: number): ReadPoint => [
        centre[0] + radius * Math.cos(angle),
        centre[1] + radius * Math.sin(angle),
      ];
      return [{ kind: 'arc', layer, from: at(start), to: at(end), centre, radius, sweep }];
    }
    default:
      problems.push(`a ${entity.kind} on layer ${layer}: machines may not read it`);
      return [];
  }
}
