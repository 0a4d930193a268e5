/** A small SVG reader for the pre-flight report: groups, lines, circles and paths of M, L, A and Z, brought to millimetres. */
import { bulgedPiece, type ReadDrawing, type ReadPoint, type ReadShape } from './readShapes.ts';

/** Reads the file; y is turned so that it counts upwards from the lower edge, as drawings do. */
export function readSvg(text: string): ReadDrawing {
  const problems: string[] = [];
  const root = /<svg\b[^>]*>/.exec(text)?.[0] ?? '';
  const width = millimetres(attribute(root, 'width'), problems);
  const height = millimetres(attribute(root, 'height'), problems);
  const box = (attribute(root, 'viewBox') ?? '').split(/[\s,]+/).map(Number);
  const scale = width !== undefined && box[2] ? width / box[2] : 1;
  if (box.length !== 4 || box.some((value) => !Number.isFinite(value))) problems.push('the viewBox is missing');
  else if (Math.abs(scale - 1) > 1e-9) problems.push(`one unit is ${scale} mm, expected 1`);
  if (/transform\s*=/.test(text)) problems.push('a transform: places may be moved or scaled on reading');
  const toMm = ([x, y]: ReadPoint): ReadPoint => [x * scale, ((box[3] ?? 0) - y) * scale];
  const shapes: ReadShape[] = [];
  let layer = '0';
  for (const [tag, name] of text.matchAll(/<(\/?[a-zA-Z]+)\b[^>]*>/g)) {
    if (name === 'g') layer = attribute(tag, 'id') ?? '0';
    else if (name === '/g') layer = '0';
    else shapes.push(...shapesOf(name ?? '', tag, layer, toMm, scale, problems));
  }
  const stated = width === undefined || height === undefined ? undefined : { width, height };
  const layers = [...new Set(shapes.map((shape) => shape.layer))];
  return { shapes, layers, problems, unit: scale, ...(stated ? { stated } : {}) };
}

const attribute = (tag: string, name: string): string | undefined => new RegExp(`\\s${name}="([^"]*)"`).exec(tag)?.[1];

function millimetres(text: string | undefined, problems: string[]): number | undefined {
  const match = /^(-?\d+(?:\.\d+)?)mm$/.exec(text ?? '');
  if (match) return Number(match[1]);
  problems.push(`the size "${text ?? ''}" is not in mm`);
  return undefined;
}

function shapesOf(
  name: string,
  tag: string,
  layer: string,
  toMm: (point: ReadPoint) => ReadPoint,
  scale: number,
  problems: string[],
): readonly ReadShape[] {
  const real = (key: string): number => Number(attribute(tag, key) ?? 0);
  if (name === 'line') {
    return [{ kind: 'line', layer, from: toMm([real('x1'), real('y1')]), to: toMm([real('x2'), real('y2')]) }];
  }
  if (name === 'circle') {
    return [{ kind: 'circle', layer, centre: toMm([real('cx'), real('cy')]), radius: real('r') * scale }];
  }
  if (name === 'path') return pathShapes(attribute(tag, 'd') ?? '', layer, toMm, problems);
  return [];
}

function pathShapes(
  data: string,
  layer: string,
  toMm: (point: ReadPoint) => ReadPoint,
  problems: string[],
): readonly ReadShape[] {
  const words = data.split(/[\s,]+/).filter((word) => word !== '');
  const shapes: ReadShape[] = [];
  let at: ReadPoint = [0, 0];
  let start: ReadPoint = at;
  let index = 0;
  const next = (): number => Number(words[index++]);
  const line = (to: ReadPoint): void => {
    if (to[0] !== at[0] || to[1] !== at[1]) shapes.push({ kind: 'line', layer, from: toMm(at), to: toMm(to) });
    at = to;
  };
  while (index < words.length) {
    const word = words[index++];
    if (word === 'M') {
      at = [next(), next()];
      start = at;
    } else if (word === 'L') line([next(), next()]);
    else if (word === 'Z') line(start);
    else if (word === 'A') {
      const radius = next();
      index += 2;
      const large = next() === 1;
      const sweepFlag = next() === 1;
      const to: ReadPoint = [next(), next()];
      shapes.push(bulgedPiece(layer, toMm(at), toMm(to), bulgeOf(at, to, radius, large, sweepFlag)));
      at = to;
    } else {
      problems.push(`a path holds "${word}", which this check does not know`);
      break;
    }
  }
  return shapes;
}

/** Bulge of an arc told by its radius and flags; sweep-flag 0 turns anticlockwise once y points up. */
function bulgeOf(from: ReadPoint, to: ReadPoint, radius: number, large: boolean, sweepFlag: boolean): number {
  const chord = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const half = Math.asin(Math.min(1, chord / (2 * radius)));
  const turn = large ? 2 * (Math.PI - half) : 2 * half;
  return (sweepFlag ? -1 : 1) * Math.tan(turn / 4);
}
