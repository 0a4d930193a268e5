/** A page as an SVG file in millimetres: the preview on the screen, and a sheet for those who print from SVG. */
import { trimmed } from '../../movement/decimal.ts';
import { pathData } from '../write/svg.ts';
import type { Colour, Ink, Page, PageMark } from './page.ts';

const PLACES = 4;

/**
 * The page with the same marks as the PDF. Text stays text; each run is stretched to its measured width, so that it fills
 * its place in whatever face the viewer has.
 *
 * @param widthOf measured width of a text mark, mm
 */
export function pageSvg(page: Page, widthOf: (mark: Extract<PageMark, { kind: 'text' }>) => number): string {
  const clips = { count: 0 };
  const x = (value: number): string => trimmed(value, PLACES);
  const y = (value: number): string => trimmed(page.height - value, PLACES);
  const [width, height] = [x(page.width), x(page.height)];
  const body = page.marks.flatMap((mark) => markLines(mark, { x, y, clips, widthOf }));
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
    `<rect width="${width}" height="${height}" fill="#ffffff"/>`,
    ...body,
    '</svg>',
    '',
  ].join('\n');
}

/** How places of the page become the file's, y down, and what has been counted on the way. */
interface Axes {
  readonly x: (value: number) => string;
  readonly y: (value: number) => string;
  readonly clips: { count: number };
  readonly widthOf: (mark: Extract<PageMark, { kind: 'text' }>) => number;
}

function markLines(mark: PageMark, axes: Axes): readonly string[] {
  const { x, y } = axes;
  switch (mark.kind) {
    case 'line':
      return [
        `<line x1="${x(mark.from[0])}" y1="${y(mark.from[1])}" x2="${x(mark.to[0])}" y2="${y(mark.to[1])}" ${stroke(mark.ink)}/>`,
      ];
    case 'circle':
      return [
        `<circle cx="${x(mark.centre[0])}" cy="${y(mark.centre[1])}" r="${x(mark.radius)}" ${stroke(mark.ink)}/>`,
      ];
    case 'arc': {
      const turn = 2 * Math.PI;
      const sweep = (((mark.end - mark.start) % turn) + turn) % turn || turn;
      const at = (angle: number) => ({
        x: mark.centre[0] + mark.radius * Math.cos(angle),
        y: mark.centre[1] + mark.radius * Math.sin(angle),
        bulge: Math.tan(sweep / 8),
      });
      const vertices = [at(mark.start), at(mark.start + sweep / 2), { ...at(mark.start + sweep), bulge: 0 }];
      return [`<path d="${pathData({ kind: 'path', vertices, closed: false }, x, y)}" ${stroke(mark.ink)}/>`];
    }
    case 'path':
      return [
        `<path d="${pathData({ kind: 'path', vertices: mark.vertices, closed: mark.closed }, x, y)}" ${stroke(mark.ink)}/>`,
      ];
    case 'fill': {
      const [minX, minY, maxX, maxY] = mark.box;
      return [
        `<rect x="${x(minX)}" y="${y(maxY)}" width="${x(maxX - minX)}" height="${x(maxY - minY)}" fill="${hex(mark.colour)}"/>`,
      ];
    }
    case 'text':
      return [textLine(mark, axes)];
    case 'clip': {
      const id = `clip${++axes.clips.count}`;
      const [minX, minY, maxX, maxY] = mark.box;
      return [
        `<clipPath id="${id}"><rect x="${x(minX)}" y="${y(maxY)}" width="${x(maxX - minX)}" height="${x(maxY - minY)}"/></clipPath>`,
        `<g clip-path="url(#${id})">`,
        ...mark.marks.flatMap((inner) => markLines(inner, axes)),
        '</g>',
      ];
    }
  }
}

function textLine(mark: Extract<PageMark, { kind: 'text' }>, { x, y, widthOf }: Axes): string {
  const turned = mark.turned
    ? ` transform="rotate(${trimmed((-mark.turned * 180) / Math.PI, 4)} ${x(mark.at[0])} ${y(mark.at[1])})"`
    : '';
  const weight = mark.weight === 'bold' ? ' font-weight="bold"' : '';
  const text = mark.text.replace(/[&<>]/g, (each) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;' })[each] ?? each);
  const length = ` textLength="${x(widthOf(mark))}" lengthAdjust="spacingAndGlyphs"`;
  return `<text x="${x(mark.at[0])}" y="${y(mark.at[1])}" font-family="DejaVu Sans, Verdana, sans-serif" font-size="${x(mark.size)}"${weight} fill="${hex(mark.colour)}"${length}${turned}>${text}</text>`;
}

const hex = (colour: Colour): string =>
  `#${colour
    .map((part) =>
      Math.round(part * 255)
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`;

function stroke({ width, colour, dash }: Ink): string {
  const dashes = dash ? ` stroke-dasharray="${dash.map((each) => trimmed(each, PLACES)).join(' ')}"` : '';
  return `fill="none" stroke="${hex(colour)}" stroke-width="${trimmed(width, PLACES)}" stroke-linecap="round" stroke-linejoin="round"${dashes}`;
}
