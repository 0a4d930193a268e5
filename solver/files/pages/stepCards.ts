/**
 * Step cards: one step at a time, two cards a page. The arcs of the step stand strong, everything else is faint; the
 * words are large enough to read at arm's length, with a box for the reading.
 */
import type { Bounds, Point } from '../../geometry/index.ts';
import type { Face, MarkingStep } from '../../marking/index.ts';
import { type MarkingPlan, markingPlan, namer, plateViewOf } from '../../marking/index.ts';
import { decimalLengthText, type LengthDisplay, unitName } from '../../movement/decimal.ts';
import type { PointId } from '../../movement/ids.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { extentsOf } from '../draw/extents.ts';
import { type Labelled, placeLabels } from '../draw/placeLabels.ts';
import { plateDrawing } from '../draw/plateDrawing.ts';
import type { Drawing } from '../drawing.ts';
import type { SheetWords } from '../sheetWords.ts';
import { CAPITAL, type MarkPlacing, marksOfDrawing } from './drawingMarks.ts';
import { type Box, FAINT, line, type Page, type PageMark, SOFT, STRONG } from './page.ts';
import { framedPage, type SheetSettings } from './paper.ts';
import { LEADING, type Pen } from './pen.ts';

const CARDS_A_PAGE = 2;

/** The cards of one plate and face. */
export function stepCardPages(
  placed: PlacedMovement,
  options: { readonly plate?: string | undefined; readonly face?: Face | undefined },
  settings: SheetSettings,
): readonly Page[] {
  const plan = markingPlan(placed, options);
  const steps = plan.steps.filter((step) => step.kind !== 'unsettled');
  const view = plateViewOf(placed.movement, options.plate, options.face);
  const cut = plateDrawing(placed, { ...options, density: 'cut' });
  const placeOf = (id: string): Point | undefined => {
    const place = placed.places.get(id as PointId); // loci name points of this movement, or edges, which have no place
    return place ? view.see(place) : undefined;
  };
  const says = settings.words(placed.movement);
  const name = namer(placed.movement);
  const pages: Page[] = [];
  for (let at = 0; at < steps.length; at += CARDS_A_PAGE) {
    const words = {
      kind: 'Step cards',
      subject: plan.faceLabel,
      scale: `Not to scale. Lengths in ${unitName(placed.movement.display)}. ${says.datum(plan)}`,
    };
    const { pen, window } = framedPage(placed, settings, words);
    const height = (window[3] - window[1]) / CARDS_A_PAGE;
    steps.slice(at, at + CARDS_A_PAGE).forEach((step, index) => {
      const top = window[3] - index * height;
      const box: Box = [window[0], top - height + 3, window[2], top - 1];
      card(pen, box, step, { plan, steps, cut, placeOf, settings, says, name, display: placed.movement.display });
    });
    pages.push(pen.page());
  }
  return pages;
}

/** What the cards of one face share. */
interface CardGround {
  readonly plan: MarkingPlan;
  readonly steps: readonly MarkingStep[];
  readonly cut: Drawing;
  readonly placeOf: (id: string) => Point | undefined;
  readonly settings: SheetSettings;
  readonly says: SheetWords;
  readonly name: (id: string) => string;
  readonly display: LengthDisplay;
}

function card(pen: Pen, box: Box, step: MarkingStep, ground: CardGround): void {
  pen.box(box, line(0.3));
  const middle = box[0] + (box[2] - box[0]) * 0.5;
  picture(pen, [box[0] + 3, box[1] + 3, middle - 2, box[3] - 3], step, ground);
  words(pen, [middle + 2, box[1] + 4, box[2] - 4, box[3] - 4], step, ground);
}

/** A sentence of a card with its size. */
interface Said {
  readonly text: string;
  readonly size: number;
  readonly bold: boolean;
}

function words(pen: Pen, [left, low, right, top]: Box, step: MarkingStep, ground: CardGround): void {
  const { steps } = ground;
  const width = right - left;
  pen.text(right, top - 2, `${step.number} of ${steps.length}`, { size: 3, colour: SOFT, align: 'right' });
  const number = pen.text(left, top - 10, `${step.number}`, { size: 11, weight: 'bold' });
  // A long name is set smaller, and only then cut.
  const room = width - number - 3;
  const size = [6, 5.2, 4.5, 3.9, 3.4].find((each) => pen.measure.width(step.label, each, 'bold') <= room) ?? 3.4;
  pen.text(left + number + 3, top - 10, step.label, { size, weight: 'bold', within: room });
  const said = sentencesOf(step, ground);
  // Long cards are set smaller, rather than run into the boxes.
  const high = top - 20 - (low + 14);
  const shrink = [1, 0.9, 0.8, 0.7, 0.6].find((factor) => heightOf(pen, said, width, factor) <= high) ?? 0.5;
  let y = top - 20;
  for (const { text, size, bold } of said) {
    const style = { size: size * shrink, weight: bold ? 'bold' : 'regular' } as const;
    y = pen.paragraph(left, y, text, width, style) - size * shrink * AFTER;
  }
  readingBoxes(pen, left, low, right);
}

/** Air after a sentence, as part of its size. */
const AFTER = 0.35;

function heightOf(pen: Pen, said: readonly Said[], width: number, factor: number): number {
  return said.reduce((sum, { text, size, bold }) => {
    const style = { size: size * factor, weight: bold ? 'bold' : 'regular' } as const;
    return sum + (pen.linesOf(text, width, style).length * LEADING + AFTER) * size * factor;
  }, 0);
}

function sentencesOf(step: MarkingStep, { plan, says }: CardGround): readonly Said[] {
  const said: Said[] = [];
  const say = (text: string, size: number, bold = false) => said.push({ text, size, bold });
  for (const locus of step.kind === 'same' ? [] : step.loci) say(sentence(says.locus(locus, plan)), 5.2, true);
  if (step.kind === 'same') say('Shares a place that is already struck: nothing to strike.', 4.4);
  if (step.kind === 'already') say('Already on the metal.', 4.4);
  if (step.kind === 'datum' && step.loci.length === 0) say('The datum: everything is measured from here.', 4.4);
  if (step.crossing) say(`Take ${says.crossing(step.crossing)}.`, 4);
  if (step.check) say(`Check: ${says.check(step.check)}.`, 4.4, true);
  for (const note of says.notes(step, plan)) say(note, 3);
  return said;
}

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

function readingBoxes(pen: Pen, left: number, low: number, right: number): void {
  const boxes = [
    ['Check reads', 0.4],
    ['Gauge', 0.25],
    ['Date', 0.22],
    ['Done', 0.13],
  ] as const;
  let x = left;
  for (const [name, share] of boxes) {
    const width = (right - left) * share;
    pen.box([x, low, x + width - 1.5, low + 9], line(0.2, SOFT));
    pen.text(x, low + 10, name, { size: 2.4, colour: SOFT });
    x += width;
  }
}

function picture(pen: Pen, box: Box, step: MarkingStep, ground: CardGround): void {
  const { cut, steps, settings } = ground;
  const bounds = boundsWith(cut, steps);
  const scale = Math.min((box[2] - box[0]) / (bounds[2] - bounds[0]), (box[3] - box[1]) / (bounds[3] - bounds[1]));
  const shift = [
    (box[0] + box[2] - (bounds[0] + bounds[2]) * scale) / 2,
    (box[1] + box[3] - (bounds[1] + bounds[3]) * scale) / 2,
  ] as const;
  const placing: MarkPlacing = { scale: { x: scale, y: scale }, shift };
  const outline = { ...cut, layers: cut.layers.filter(({ name }) => name !== 'HOLES') };
  const faint = marksOfDrawing(outline, placing, settings.fonts).map((mark) =>
    'ink' in mark ? { ...mark, ink: line(0.25, FAINT) } : mark,
  );
  const at = (point: Point): readonly [number, number] => [point.x * scale + shift[0], point.y * scale + shift[1]];
  const before = steps
    .filter((each) => each.number < step.number)
    .flatMap((each) => faintCross(at({ x: each.place[0], y: each.place[1] })));
  const strong = strongMarks(step, ground, at, scale);
  pen.clip(box, [...faint, ...before, ...strong]);
  cardLabels(pen, step, ground, { at, box, lines: [...before, ...strong].flatMap(chordsOf) });
}

/** The plate with some air, or the points where there is no plate. */
function boundsWith(cut: Drawing, steps: readonly MarkingStep[]): Bounds {
  const points = steps.map(({ place }) => ({ kind: 'circle', centre: place, radius: 1 }) as const);
  const [minX, minY, maxX, maxY] = extentsOf([...cut.layers, { name: 'CENTRES', shapes: points }]);
  const air = Math.max(maxX - minX, maxY - minY, 1) * 0.03;
  return [minX - air, minY - air, maxX + air, maxY + air];
}

const faintCross = ([x, y]: readonly [number, number]): readonly PageMark[] => [
  { kind: 'line', from: [x - 1.5, y], to: [x + 1.5, y], ink: line(0.18, SOFT) },
  { kind: 'line', from: [x, y - 1.5], to: [x, y + 1.5], ink: line(0.18, SOFT) },
];

function strongMarks(
  step: MarkingStep,
  { placeOf }: CardGround,
  at: (point: Point) => readonly [number, number],
  scale: number,
): readonly PageMark[] {
  const here: Point = { x: step.place[0], y: step.place[1] };
  const [x, y] = at(here);
  const strong = line(0.7, STRONG);
  const thin = line(0.2, STRONG, [2, 1.2]);
  const marks: PageMark[] = [];
  for (const locus of step.kind === 'same' ? [] : step.loci) {
    const source = locus.kind === 'offset' ? undefined : placeOf(locus.kind === 'line' ? locus.through : locus.from);
    if (locus.kind === 'arc' && source) {
      const angle = Math.atan2(here.y - source.y, here.x - source.x);
      const half = Math.min(0.5, 14 / (locus.radius * scale));
      marks.push({ kind: 'line', from: at(source), to: [x, y], ink: thin });
      marks.push({
        kind: 'arc',
        centre: at(source),
        radius: locus.radius * scale,
        start: angle - half,
        end: angle + half,
        ink: strong,
      });
    } else if (source) marks.push({ kind: 'line', from: at(source), to: [x, y], ink: strong });
    else if (locus.kind === 'offset') {
      const upright =
        locus.from === 'left edge' || locus.from === 'right edge' || (locus.from === 'datum' && locus.along === 'x');
      marks.push({
        kind: 'line',
        from: upright ? [x, y - 12] : [x - 12, y],
        to: upright ? [x, y + 12] : [x + 12, y],
        ink: strong,
      });
    }
  }
  marks.push({ kind: 'circle', centre: [x, y], radius: 2, ink: line(0.5) });
  for (const [dx, dy] of [
    [3.5, 0],
    [0, 3.5],
  ] as const) {
    marks.push({ kind: 'line', from: [x - dx, y - dy], to: [x + dx, y + dy], ink: line(0.35) });
  }
  return marks;
}

type At = readonly [number, number];

/** Pieces into which an arc is cut for keeping labels off it. */
const CHORDS = 8;

/** A struck line or arc as straight pieces. */
function chordsOf(mark: PageMark): readonly (readonly [At, At])[] {
  if (mark.kind === 'line') return [[mark.from, mark.to]];
  if (mark.kind !== 'arc') return [];
  const { centre, radius, start, end } = mark;
  const on = (part: number): At => {
    const angle = start + (end - start) * part;
    return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
  };
  return Array.from({ length: CHORDS }, (_, piece) => [on(piece / CHORDS), on((piece + 1) / CHORDS)] as const);
}

/** The little drawing of a card: how places of the plate come to the page, and the lines on it. */
interface CardPicture {
  readonly at: (point: Point) => At;
  readonly box: Box;
  readonly lines: readonly (readonly [At, At])[];
}

/** Names of the point and of those that the step starts from, and the lengths of its settings, clear of what is struck. */
function cardLabels(pen: Pen, step: MarkingStep, ground: CardGround, { at, box, lines }: CardPicture): void {
  const here = at({ x: step.place[0], y: step.place[1] });
  const loci = step.kind === 'same' ? [] : step.loci;
  const ids = new Set(
    loci.flatMap((locus) =>
      locus.kind === 'offset' ? [] : locus.kind === 'line' ? [locus.through, locus.to] : [locus.from],
    ),
  );
  const named = (text: string, [x, y]: At): Labelled => ({ text, x, y, clear: 3.6 });
  const lengths = loci.flatMap((locus): Labelled[] => {
    const from = locus.kind === 'arc' ? ground.placeOf(locus.from) : undefined;
    if (!from || locus.kind !== 'arc') return [];
    const [x, y] = at(from);
    return [{ text: decimalLengthText(locus.radius, ground.display), x, y, clear: 0, along: here }];
  });
  const sources = [...ids].flatMap((id) => {
    const place = ground.placeOf(id);
    return place ? [named(ground.name(id), at(place))] : [];
  });
  const weightAt = (index: number) => (index === 0 ? 'bold' : 'regular');
  const labels = [named(step.label, here), ...lengths, ...sources];
  const widthOf = (text: string) =>
    pen.measure.width(text, LABEL_SIZE, weightAt(labels.findIndex((label) => label.text === text)));
  const room = { height: LABEL_HEIGHT, within: box, lines, widthOf, reaches: [1, 1.8, 2.8] };
  placeLabels(labels, room).texts.forEach(({ at: [x, y], text, align }, index) => {
    pen.text(x, y, text, { size: LABEL_SIZE, weight: weightAt(index), align, within: box[2] - box[0] });
  });
}

/** Size of the labels on a card, and the height of its capitals, mm. */
const LABEL_SIZE = 3.2;
const LABEL_HEIGHT = LABEL_SIZE * CAPITAL;
