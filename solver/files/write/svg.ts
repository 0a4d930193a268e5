/**
 * SVG in millimetres: width and height in mm and a viewBox with one unit a millimetre, so that every reader opens it at
 * true size. y is turned by the writer (SVG counts it downwards); there is no transform to forget.
 *
 * Source: W3C SVG 1.1 and SVG 2, coordinate systems, path data and the implementation notes on elliptical arcs.
 */

import type { DrawnVertex } from '../../marking/index.ts';
import { trimmed } from '../../movement/decimal.ts';
import { shownText } from '../../movement/index.ts';
import type { Drawing, LayerName, ShapeOf } from '../drawing.ts';
import { walkDrawing } from './walk.ts';

/** Decimals of a millimetre: a thousandth of a micrometre, so that joins stay exact for every reader. */
const PLACES = 6;

/** Line width and colour of a layer; ink on white, so that a laser or a printer sees one clear line. */
const STYLES: Readonly<Record<LayerName, string>> = {
  OUTLINE: 'stroke="#22231f" stroke-width="0.25"',
  HOLES: 'stroke="#22231f" stroke-width="0.2"',
  OPENINGS: 'stroke="#22231f" stroke-width="0.2"',
  SCRIBE: 'stroke="#d55e00" stroke-width="0.13"',
  PITCH: 'stroke="#6b675c" stroke-width="0.13" stroke-dasharray="6 1 1 1"',
  TIPS: 'stroke="#6b675c" stroke-width="0.13"',
  TEETH: 'stroke="#22231f" stroke-width="0.13"',
  CENTRES: 'stroke="#22231f" stroke-width="0.13"',
  CASE: 'stroke="#6b675c" stroke-width="0.2"',
  LETTERING: 'stroke="#22231f" stroke-width="0.18" stroke-linecap="round" stroke-linejoin="round"',
};

/** The drawing as an SVG file: same drawing, same bytes. */
export function writeSvg(drawing: Drawing): string {
  const [minX, minY, maxX, maxY] = drawing.extents;
  const width = trimmed(maxX - minX, PLACES);
  const height = trimmed(maxY - minY, PLACES);
  const x = (value: number): string => trimmed(value - minX, PLACES);
  const y = (value: number): string => trimmed(maxY - value, PLACES);
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" overflow="visible">`,
    `<title>${escaped(drawing.title)}</title>`,
    `<desc>${escaped(`${drawing.face}. One unit is one millimetre.`)}</desc>`,
  ];
  walkDrawing(drawing, {
    layer: (name) => lines.push(`<g id="${name}" fill="none" ${STYLES[name]}>`),
    endLayer: () => lines.push('</g>'),
    line: ({ from, to }) =>
      lines.push(`<line x1="${x(from[0])}" y1="${y(from[1])}" x2="${x(to[0])}" y2="${y(to[1])}"/>`),
    circle: ({ centre, radius }) =>
      lines.push(`<circle cx="${x(centre[0])}" cy="${y(centre[1])}" r="${trimmed(radius, PLACES)}"/>`),
    arc: (arc) => lines.push(`<path d="${arcData(arc, x, y)}"/>`),
    path: (path) => lines.push(`<path d="${pathData(path, x, y)}"/>`),
  });
  lines.push('</svg>');
  return `${lines.join('\n')}\n`;
}

type Coordinate = (value: number) => string;

function arcData({ centre, radius, start, end }: ShapeOf<'arc'>, x: Coordinate, y: Coordinate): string {
  const turn = 2 * Math.PI;
  const sweep = (((end - start) % turn) + turn) % turn || turn;
  const at = (angle: number) => `${x(centre[0] + radius * Math.cos(angle))} ${y(centre[1] + radius * Math.sin(angle))}`;
  const r = trimmed(radius, PLACES);
  // Counter-clockwise with y up is sweep-flag 0 with y down. In halves: SVG drops an arc that ends where it starts.
  const half = `A ${r} ${r} 0 0 0`;
  return `M ${at(start)} ${half} ${at(start + sweep / 2)} ${half} ${at(start + sweep)}`;
}

/** Path data of vertices with bulges. */
export function pathData(path: ShapeOf<'path'>, x: Coordinate, y: Coordinate): string {
  const [first, ...rest] = path.vertices;
  if (!first) return '';
  const words = [`M ${x(first.x)} ${y(first.y)}`];
  let from = first;
  for (const to of path.closed ? [...rest, first] : rest) {
    words.push(pieceData(from, to, path.closed && to === first, x, y));
    from = to;
  }
  if (path.closed) words.push('Z');
  return words.filter((word) => word !== '').join(' ');
}

function pieceData(from: DrawnVertex, to: DrawnVertex, closing: boolean, x: Coordinate, y: Coordinate): string {
  if (from.bulge === 0) return closing ? '' : `L ${x(to.x)} ${y(to.y)}`;
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  const radius = (chord * (1 + from.bulge * from.bulge)) / (4 * Math.abs(from.bulge));
  const r = trimmed(radius, PLACES);
  const large = Math.abs(from.bulge) > 1 ? 1 : 0;
  return `A ${r} ${r} 0 ${large} ${from.bulge > 0 ? 0 : 1} ${x(to.x)} ${y(to.y)}`;
}

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Text safe inside XML, which forbids most control characters and halves of pairs. */
function escaped(text: string): string {
  return shownText(text).replace(/[&<>"]/g, (character) => ENTITIES[character] ?? character);
}
