/**
 * A found train as one edit of the movement: arbors, wheels, depths or a worm, and a first placement.
 *
 * Each stage goes one level up, and the arbors are laid out in a zigzag at their calculated distances, so that
 * nothing stands in the way of the next step: planting.
 */
import type { Edit, ItemInput } from '../../movement/index.ts';
import { freshId, idsOf } from '../../movement/index.ts';
import type { Movement } from '../../movement/schema.ts';
import { moduleOf } from '../../teeth/index.ts';
import type { Stage, Train } from './counts.ts';

type ToothSize = ItemInput<'wheels'>['size'];

/** How a found train is put on the bench. */
export interface LayOut {
  /** Size of all teeth (default module 1), one for each stage where given as a list. */
  readonly size?: ToothSize | readonly ToothSize[];
  readonly form?: ItemInput<'wheels'>['form'];
  /** The arbor that the train starts from; a new one is made where absent. */
  readonly from?: string;
  /** Place of the first arbor where it is made, mm. */
  readonly at?: readonly [number, number];
  /** Direction in which the train is laid out, degrees from +x. */
  readonly headingDeg?: number;
  /** Thickness of the wheels and gap between levels, mm. */
  readonly thickness?: number;
  readonly gap?: number;
  /** Height of the first stage, mm. */
  readonly level?: number;
  /** Letters that new ids start with: arbors "S", so S1, S2 …; wheels get w and p for driven and driving. */
  readonly prefix?: string;
  /** Every second arbor rides as a pipe on the one two before it (for equal sums). */
  readonly returns?: boolean;
  /** The wanted period or ratio of the last arbor. */
  readonly indication?: Omit<ItemInput<'indications'>, 'id' | 'arbor'>;
}

/** The edit that adds a train, with the arbors that it makes, or why it cannot be added. */
export type TrainEdit =
  | {
      readonly kind: 'edit';
      readonly edit: Extract<Edit, { readonly kind: 'several' }>;
      readonly arbors: readonly string[];
    }
  | { readonly kind: 'refused'; readonly says: string };

/** Bend of the zigzag at each arbor, degrees: wheels of three stages keep clear of each other in plan. */
const BEND = 50;

/** The edit that adds a train to a movement; `arbors` are its arbors from first to last. */
export const editOfTrain = (
  movement: Movement,
  train: Pick<Train, 'stages' | 'idlers'>,
  layOut: LayOut = {},
): TrainEdit => editOfTrains(movement, [{ train, layOut }]);

/** Several trains in one edit; a train whose `from` is "#n" starts where train n (from 0) ends. */
export const editOfTrains = (
  movement: Movement,
  trains: readonly { readonly train: Pick<Train, 'stages' | 'idlers'>; readonly layOut?: LayOut }[],
): TrainEdit => {
  const taken = new Set<string>(idsOf(movement).keys());
  const edits: Edit[] = [];
  const made = new Map<string, readonly [number, number]>(movement.arbors.map((arbor) => [arbor.id, arbor.at]));
  const ends: string[] = [];
  let arbors: readonly string[] = [];
  for (const { train, layOut = {} } of trains) {
    const link = /^#(\d+)$/.exec(layOut.from ?? '');
    const from = link ? ends[Number(link[1])] : layOut.from;
    if (layOut.from !== undefined && (from === undefined || !made.has(from)))
      return { kind: 'refused', says: `from: found "${layOut.from}", expected the id of an arbor of this movement.` };
    const laid = layTrain(train, { ...layOut, ...(from === undefined ? {} : { from }) }, taken, made);
    edits.push(...laid.edits);
    arbors = laid.arbors;
    ends.push(laid.arbors[laid.arbors.length - 1] ?? '');
  }
  return { kind: 'edit', edit: { kind: 'several', edits }, arbors };
};

/** Edits so far, and the arbors that they make. */
interface Laid {
  readonly edits: readonly Edit[];
  readonly arbors: readonly string[];
}

const layTrain = (
  train: Pick<Train, 'stages' | 'idlers'>,
  layOut: LayOut,
  taken: Set<string>,
  made: Map<string, readonly [number, number]>,
): Laid => {
  const { form = 'involute', thickness = 2, gap = 1, level = 0, prefix = 'S' } = layOut;
  const edits: Edit[] = [];
  const fresh = (wanted: string): string => {
    const id = freshId(taken, wanted);
    taken.add(id);
    return id;
  };
  const addArbor = (at: readonly [number, number], ridesOn?: string): string => {
    let number = 1;
    while (taken.has(`${prefix}${number}`)) number += 1;
    const id = fresh(`${prefix}${number}`);
    edits.push({
      kind: 'add',
      to: 'arbors',
      item: { id, at: [at[0], at[1]], ...(ridesOn === undefined ? {} : { ridesOn }) } as ItemInput<'arbors'>,
    }); // ids are branded on reading
    made.set(id, at);
    return id;
  };
  const addWheel = (kind: 'p' | 'w' | 'i', arbor: string, teeth: number, stage: number): string => {
    const id = fresh(`${arbor}${kind}`);
    const item = {
      id,
      arbor,
      teeth,
      size: sizeAt(layOut, stage),
      form,
      level: level + stage * (thickness + gap),
      thickness,
    };
    edits.push({ kind: 'add', to: 'wheels', item: item as ItemInput<'wheels'> }); // ids are branded on reading
    return id;
  };
  const addDepth = (a: string, b: string): void => {
    const item = { kind: 'depth', id: fresh(`${a}-${b}`), wheels: [a, b] };
    edits.push({ kind: 'add', to: 'rules', item: item as ItemInput<'rules'> }); // ids are branded on reading
  };

  const first = layOut.from ?? addArbor(layOut.at ?? [0, 0]);
  const arbors = [first];
  train.stages.forEach((stage, index) => {
    const here = arbors[index] ?? first;
    const [x, y] = made.get(here) ?? [0, 0];
    const heading = (((layOut.headingDeg ?? 0) + (index % 2 === 0 ? BEND : -BEND) / 2) * Math.PI) / 180;
    const idler = index === train.stages.length - 1 && train.idlers > 0 && !stage.worm;
    const distance = distanceOf(stage, moduleAt(layOut, index), idler);
    const back = layOut.returns && index % 2 === 1 ? arbors[index - 1] : undefined;
    const at =
      back === undefined
        ? ([round(x + distance * Math.cos(heading)), round(y + distance * Math.sin(heading))] as const)
        : (made.get(back) ?? [0, 0]);
    const next = addArbor(at, back);
    arbors.push(next);
    const wheel = addWheel('w', next, stage.driven, index);
    if (stage.worm) {
      const item = { kind: 'worm', id: fresh(`worm-${wheel}`), arbor: here, starts: stage.driver, wheel };
      edits.push({ kind: 'add', to: 'couplings', item: item as ItemInput<'couplings'> }); // ids are branded on reading
      return;
    }
    const driver = addWheel('p', here, stage.driver, index);
    if (!idler) {
      addDepth(driver, wheel);
      return;
    }
    const between = addArbor([round((x + at[0]) / 2), round((y + at[1]) / 2 + moduleAt(layOut, index))]);
    const loose = addWheel('i', between, stage.driver, index);
    addDepth(driver, loose);
    addDepth(loose, wheel);
  });
  const last = arbors[arbors.length - 1] ?? first;
  if (layOut.indication) {
    const item = { id: fresh(`${last}-shows`), arbor: last, ...layOut.indication };
    edits.push({ kind: 'add', to: 'indications', item: item as ItemInput<'indications'> }); // ids are branded on reading
  }
  return { edits, arbors };
};

const sizeAt = (layOut: LayOut, stage: number): ToothSize => {
  const { size = { module: 1 } } = layOut;
  return Array.isArray(size)
    ? ((size[stage] ?? size[size.length - 1] ?? { module: 1 }) as ToothSize)
    : (size as ToothSize); // a list or one size
};

const moduleAt = (layOut: LayOut, stage: number): number => moduleOf(sizeAt(layOut, stage));

/** Centre distance; with an idler between (as many teeth as the driver) twice the driver more, a little folded. */
const distanceOf = (stage: Stage, module: number, idler: boolean): number =>
  stage.worm
    ? (module * (stage.driven + 20)) / 2
    : ((stage.driver + stage.driven + (idler ? 1.9 * stage.driver : 0)) * module) / 2;

/** To a thousandth of a millimetre, so that the file stays readable. */
const round = (value: number): number => Math.round(value * 1000) / 1000;
