/**
 * A found train as one edit of the movement: arbors, wheels, depths or a worm, and a first placement.
 *
 * Each stage goes one level up, and the arbors are laid out in a zigzag at their calculated distances, so that
 * nothing stands in the way of the next step: planting.
 */
import type { Edit, ItemInput } from '../../movement/index.ts';
import { freshId, idsOf } from '../../movement/index.ts';
import { COUPLINGS, FORMS, type Movement } from '../../movement/schema.ts';
import { moduleOf } from '../../teeth/index.ts';
import type { CountedTrain, Stage } from './counts.ts';

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
  train: Pick<CountedTrain, 'stages' | 'idlers'>,
  layOut: LayOut = {},
): TrainEdit => editOfTrains(movement, [{ train, layOut }]);

/** Several trains in one edit; a train whose `from` is "#n" starts where train n (from 0) ends. */
export function editOfTrains(
  movement: Movement,
  trains: readonly { readonly train: Pick<CountedTrain, 'stages' | 'idlers'>; readonly layOut?: LayOut }[],
): TrainEdit {
  const taken = new Set<string>(idsOf(movement).keys());
  const edits: Edit[] = [];
  const made = new Map<string, readonly [number, number]>(movement.arbors.map((arbor) => [arbor.id, arbor.at]));
  const ends: string[] = [];
  let arbors: readonly string[] = [];
  for (const { train, layOut = {} } of trains) {
    const link = /^#(\d+)$/.exec(layOut.from ?? '');
    const from = link ? ends[Number(link[1])] : layOut.from;
    if (layOut.from !== undefined && (from === undefined || !made.has(from))) {
      return { kind: 'refused', says: `from: found "${layOut.from}", expected the id of an arbor of this movement.` };
    }
    const laid = layTrain(train, { ...layOut, ...(from === undefined ? {} : { from }) }, taken, made);
    edits.push(...laid.edits);
    arbors = laid.arbors;
    ends.push(laid.arbors[laid.arbors.length - 1] ?? '');
  }
  return { kind: 'edit', edit: { kind: 'several', edits }, arbors };
}

/** Edits that make a train, and the arbors that they make, from first to last. */
interface Laid {
  readonly edits: readonly Edit[];
  readonly arbors: readonly string[];
}

type At = readonly [number, number];
type ListName = Extract<Edit, { readonly kind: 'add' }>['to'];

/** Lays one train: every part that it adds becomes an edit, under an id that is still free. */
class TrainLayer {
  readonly edits: Edit[] = [];
  private readonly layOut: LayOut;
  private readonly taken: Set<string>;
  /** Places of all arbors, the new ones too. */
  private readonly made: Map<string, At>;

  constructor(layOut: LayOut, taken: Set<string>, made: Map<string, At>) {
    this.layOut = layOut;
    this.taken = taken;
    this.made = made;
  }

  placeOf(arbor: string): At {
    return this.made.get(arbor) ?? [0, 0];
  }

  addArbor(at: At, ridesOn?: string): string {
    const { prefix = 'S' } = this.layOut;
    let number = 1;
    while (this.taken.has(`${prefix}${number}`)) number++;
    const id = this.fresh(`${prefix}${number}`);
    this.add('arbors', { id, at: [at[0], at[1]], ...(ridesOn === undefined ? {} : { ridesOn }) });
    this.made.set(id, at);
    return id;
  }

  addWheel(kind: 'p' | 'w' | 'i', arbor: string, teeth: number, stage: number): string {
    const { form = FORMS.involute.name, thickness = 2, gap = 1, level = 0 } = this.layOut;
    const id = this.fresh(`${arbor}${kind}`);
    const size = sizeAt(this.layOut, stage);
    this.add('wheels', { id, arbor, teeth, size, form, level: level + stage * (thickness + gap), thickness });
    return id;
  }

  addDepth(a: string, b: string): void {
    this.add('rules', { kind: 'depth', id: this.fresh(`${a}-${b}`), wheels: [a, b] });
  }

  addWorm(arbor: string, starts: number, wheel: string): void {
    this.add('couplings', { kind: COUPLINGS.worm.kind, id: this.fresh(`worm-${wheel}`), arbor, starts, wheel });
  }

  addIndication(arbor: string, shows: NonNullable<LayOut['indication']>): void {
    this.add('indications', { id: this.fresh(`${arbor}-shows`), arbor, ...shows });
  }

  /** Ids are branded on reading, so an item with plain ones is cast. */
  private add<To extends ListName>(to: To, item: object): void {
    this.edits.push({ kind: 'add', to, item: item as ItemInput<To> } as Edit);
  }

  private fresh(wanted: string): string {
    const id = freshId(this.taken, wanted);
    this.taken.add(id);
    return id;
  }
}

/** The wheels of one stage between two arbors, with an idler between them where one is wanted. */
function layStage(layer: TrainLayer, stage: Stage, index: number, ends: readonly [string, string], idler?: At): void {
  const [here, next] = ends;
  const wheel = layer.addWheel('w', next, stage.driven, index);
  if (stage.worm) {
    layer.addWorm(here, stage.driver, wheel);
    return;
  }
  const driver = layer.addWheel('p', here, stage.driver, index);
  if (!idler) {
    layer.addDepth(driver, wheel);
    return;
  }
  const loose = layer.addWheel('i', layer.addArbor(idler), stage.driver, index);
  layer.addDepth(driver, loose);
  layer.addDepth(loose, wheel);
}

/** Where the arbor at the end of a stage stands: on to the other side of the zigzag. */
function placeAfter([x, y]: At, index: number, headingDeg: number, distance: number): At {
  const heading = ((headingDeg + (index % 2 === 0 ? BEND : -BEND) / 2) * Math.PI) / 180;
  return [round(x + distance * Math.cos(heading)), round(y + distance * Math.sin(heading))];
}

function layTrain(
  train: Pick<CountedTrain, 'stages' | 'idlers'>,
  layOut: LayOut,
  taken: Set<string>,
  made: Map<string, At>,
): Laid {
  const layer = new TrainLayer(layOut, taken, made);
  const first = layOut.from ?? layer.addArbor(layOut.at ?? [0, 0]);
  const arbors = [first];
  train.stages.forEach((stage, index) => {
    const here = arbors[index] ?? first;
    const hasIdler = index === train.stages.length - 1 && train.idlers > 0 && !stage.worm;
    const module = moduleAt(layOut, index);
    const back = layOut.returns && index % 2 === 1 ? arbors[index - 1] : undefined;
    const from = layer.placeOf(here);
    const at =
      back === undefined
        ? placeAfter(from, index, layOut.headingDeg ?? 0, distanceOf(stage, module, hasIdler))
        : layer.placeOf(back);
    const next = layer.addArbor(at, back);
    arbors.push(next);
    const between: At = [round((from[0] + at[0]) / 2), round((from[1] + at[1]) / 2 + module)];
    layStage(layer, stage, index, [here, next], hasIdler ? between : undefined);
  });
  if (layOut.indication) layer.addIndication(arbors[arbors.length - 1] ?? first, layOut.indication);
  return { edits: layer.edits, arbors };
}

function sizeAt(layOut: LayOut, stage: number): ToothSize {
  const { size = { module: 1 } } = layOut;
  return Array.isArray(size)
    ? ((size[stage] ?? size[size.length - 1] ?? { module: 1 }) as ToothSize)
    : (size as ToothSize); // a list or one size
}

const moduleAt = (layOut: LayOut, stage: number): number => moduleOf(sizeAt(layOut, stage));

/** Centre distance; with an idler between (as many teeth as the driver) twice the driver more, a little folded. */
const distanceOf = (stage: Stage, module: number, idler: boolean): number =>
  stage.worm
    ? (module * (stage.driven + 20)) / 2
    : ((stage.driver + stage.driven + (idler ? 1.9 * stage.driver : 0)) * module) / 2;

/** To a thousandth of a millimetre, so that the file stays readable. */
const round = (value: number): number => Math.round(value * 1000) / 1000;
