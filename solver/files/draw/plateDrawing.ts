/**
 * The drawing of one face of a plate, at the density asked for.
 *
 * `cut` holds only what a machine cuts: outline, holes, openings; its extents are the plate's. `numbers` adds what is
 * needed to strike the points: crosses, the arcs where they cross, names, the face named under the plate. `context`
 * shows everything: pitch circles, true teeth, walls, posts. A face seen from below is mirrored by its coordinates, never
 * by a transform, and its lettering is set afterwards, so it stays readable.
 */

import type { Bounds } from '../../geometry/index.ts';
import type { Face, Hole, MarkingStep } from '../../marking/index.ts';
import { holesOf, markingPlan, type PlateView, plateViewOf, seenOutline } from '../../marking/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { ONE_PLACE } from '../../tolerances.ts';
import type { Density, Drawing, DrawnShape, Layer, LayerName } from '../drawing.ts';
import { LAYER_NAMES } from '../drawing.ts';
import { caseShapes, wheelShapes } from './contextShapes.ts';
import { extentsOf } from './extents.ts';
import { shapeOfOutline } from './outlineShape.ts';
import { type Labelled, type LabelRoom, placeLabels } from './placeLabels.ts';
import { scribedPieces } from './scribedPieces.ts';

/** Which face is drawn, and how much of it. */
export interface PlateDrawingOptions {
  /** May be left out for a movement without plates. */
  readonly plate?: string | undefined;
  /** The plate's marked face when left out. */
  readonly face?: Face | undefined;
  /** `numbers` when left out. */
  readonly density?: Density | undefined;
  /** Title and face lettered under the drawing (default true); pages with a title block leave them out. */
  readonly caption?: boolean | undefined;
  /** Width of lettering with capitals of a height, mm; that of the single strokes when left out. */
  readonly widthOf?: ((text: string, height: number) => number) | undefined;
}

/** The drawing of a plate's face; layers without shapes are left out. */
export function plateDrawing(placed: PlacedMovement, options: PlateDrawingOptions = {}): Drawing {
  const view = plateViewOf(placed.movement, options.plate, options.face);
  const density = options.density ?? 'numbers';
  const holes = seenHoles(view, holesOf(placed, options.plate));
  const sheet = new Map<LayerName, readonly DrawnShape[]>([
    ['OUTLINE', view.plate ? [shapeOfOutline(seenOutline(view, view.plate.outline))] : []],
    ['HOLES', holes.map((hole) => ({ kind: 'circle', centre: [hole.x, hole.y], radius: hole.diameter / 2 }))],
    ['OPENINGS', openingShapes(placed, view)],
  ]);
  if (density !== 'cut') addMarking(sheet, placed, view, holes, density, options);
  const layers: Layer[] = LAYER_NAMES.flatMap((name) => {
    const shapes = sheet.get(name) ?? [];
    return shapes.length === 0 ? [] : [{ name, shapes }];
  });
  const { movement } = placed;
  return {
    title: `${movement.title}, revision ${movement.revision}`,
    face: view.faceLabel,
    mirrored: view.mirrored,
    layers,
    extents: density === 'cut' ? extentsOf(layers) : withMargin(extentsOf(layers)),
  };
}

/** Bounds less a margin, so that names do not touch the edge of the plate. */
const inset = ([minX, minY, maxX, maxY]: Bounds, by: number): Bounds => [minX + by, minY + by, maxX - by, maxY - by];

/** Straight pieces that stand for a round edge when names are kept off it. */
const CHORDS = 48;

/** An outline as straight pieces: near enough for lettering. */
function chordsOf(shape: DrawnShape): readonly (readonly [At, At])[] {
  if (shape.kind === 'path') {
    return shape.vertices.map((a, index) => {
      const b = shape.vertices[(index + 1) % shape.vertices.length] ?? a;
      return [
        [a.x, a.y],
        [b.x, b.y],
      ] as const;
    });
  }
  if (shape.kind !== 'circle') return [];
  const { centre, radius } = shape;
  const on = (piece: number): At => {
    const angle = (2 * Math.PI * piece) / CHORDS;
    return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
  };
  return Array.from({ length: CHORDS }, (_, piece) => [on(piece), on(piece + 1)] as const);
}

type At = readonly [number, number];

/** Paper round a drawing that is looked at, mm; a drawing that is cut has none. */
const MARGIN = 3;

const withMargin = ([minX, minY, maxX, maxY]: Bounds): Bounds => [
  minX - MARGIN,
  minY - MARGIN,
  maxX + MARGIN,
  maxY + MARGIN,
];

/** Holes with their places as seen on a face. */
export function seenHoles(view: PlateView, holes: readonly Hole[]): readonly Hole[] {
  return holes.map((hole) => ({ ...hole, ...view.see(hole) }));
}

function openingShapes(placed: PlacedMovement, view: PlateView): readonly DrawnShape[] {
  const own = placed.movement.openings.filter((opening) => opening.plate === view.plate?.id);
  return own.map((opening) => shapeOfOutline(seenOutline(view, opening.outline)));
}

function addMarking(
  sheet: Map<LayerName, readonly DrawnShape[]>,
  placed: PlacedMovement,
  view: PlateView,
  holes: readonly Hole[],
  density: 'numbers' | 'context',
  { caption: captioned = true, widthOf }: PlateDrawingOptions,
): void {
  const { steps } = markingPlan(placed, { plate: view.plate?.id, face: view.face });
  const struck = steps.filter((step) => step.kind !== 'unsettled' && step.kind !== 'same');
  const bounds = extentsOf([...sheet].map(([name, shapes]) => ({ name, shapes })));
  const height = letteringHeight(bounds);
  const armOf = (step: MarkingStep): number => {
    const diameter = holes.find((hole) => hole.points.includes(step.point))?.diameter ?? 0;
    return Math.max(diameter / 2 + height * 0.6, height);
  };
  sheet.set(
    'SCRIBE',
    struck.flatMap((step) => scribedPieces(step, steps, height * SCRIBE_REACH)),
  );
  sheet.set(
    'CENTRES',
    struck.flatMap((step) => cross(step, armOf(step))),
  );
  if (density === 'context') {
    const { pitch, tips, teeth } = wheelShapes(placed, view);
    sheet.set('PITCH', pitch);
    sheet.set('TIPS', tips);
    sheet.set('TEETH', teeth);
    sheet.set('CASE', caseShapes(placed, view));
  }
  const posts = new Map(placed.movement.posts.map((post) => [post.id as string, post.diameter / 2]));
  const labels = struck.map((step) => {
    const shares = steps.filter((each) => each.kind === 'same' && samePlace(each, step)).map((each) => each.label);
    const text = [`${step.number} ${step.label}`, ...shares].join(' / ');
    const post = density === 'context' ? (posts.get(step.point) ?? 0) : 0;
    return {
      number: step.number,
      text,
      x: step.place[0],
      y: step.place[1],
      clear: Math.max(armOf(step), step.loci.length > 0 ? height * SCRIBE_REACH : 0, post),
    };
  });
  const lines = (sheet.get('OUTLINE') ?? []).flatMap(chordsOf);
  const all = extentsOf([...sheet].map(([name, shapes]) => ({ name, shapes })));
  const under = captioned ? caption(placed, view, all, height) : [];
  sheet.set('LETTERING', [...labelTexts(labels, { height, within: inset(bounds, height), widthOf, lines }), ...under]);
}

/** Length of a scribed piece to each side of the crossing, in heights of the lettering. */
const SCRIBE_REACH = 1.6;

/** Share of labels that may run into others before the names are left to the list of steps. */
const CROWDED = 0.15;

/** Names beside the points; where they would run over each other, only the steps' numbers. */
function labelTexts(labels: readonly (Labelled & { readonly number: number })[], room: LabelRoom) {
  const named = placeLabels(labels, room);
  if (named.overlapping <= CROWDED * labels.length) return named.texts;
  return placeLabels(
    labels.map((label) => ({ ...label, text: `${label.number}` })),
    room,
  ).texts;
}

const samePlace = (a: MarkingStep, b: MarkingStep): boolean =>
  Math.hypot(a.place[0] - b.place[0], a.place[1] - b.place[1]) < ONE_PLACE;

/** Lettering that suits the plate: a seventieth of its diagonal, between 1.6 and 3.5 mm (legible when engraved). */
function letteringHeight([minX, minY, maxX, maxY]: Bounds): number {
  const diagonal = Math.hypot(maxX - minX, maxY - minY);
  return Math.min(3.5, Math.max(1.6, diagonal / 70));
}

function cross({ place: [x, y] }: MarkingStep, arm: number): readonly DrawnShape[] {
  return [
    { kind: 'line', from: [x - arm, y], to: [x + arm, y] },
    { kind: 'line', from: [x, y - arm], to: [x, y + arm] },
  ];
}

/** Title, face and unit under the drawing. */
function caption(placed: PlacedMovement, view: PlateView, bounds: Bounds, height: number): readonly DrawnShape[] {
  const { movement } = placed;
  const date = movement.date === undefined ? '' : `, ${movement.date}`;
  const lines = [`${movement.title}, revision ${movement.revision}${date}`, `${view.faceLabel}. Millimetres.`];
  return lines.map((text, index) => ({
    kind: 'text',
    at: [bounds[0], bounds[1] - height * (2 + 1.8 * index)],
    height,
    text,
    align: 'left',
  }));
}
