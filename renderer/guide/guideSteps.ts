/**
 * The guided build: a pointer that turns sixty times for one turn of a drum, on four arbors, made on the bench itself.
 *
 * A step is done when the movement shows it, however it was done; each can also be done for the maker, as one edit.
 */

import { applyEdit, type Edit } from '../../solver/movement/index.ts';
import { type Arbor, FORMS, type Movement, type Wheel } from '../../solver/movement/schema.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';

/** What the maker is asked to do next, and how it is known to be done. */
export interface GuideStep {
  readonly title: string;
  readonly says: string;
  readonly isDone: (placed: PlacedMovement) => boolean;
  /** What doing it for the maker takes; nothing where it is done. */
  readonly edits: (movement: Movement) => readonly Edit[];
}

const MODULE = 0.8;
const LEAVES = 12;

/** One stage of the train: the wheel that drives, and where its next arbor goes. */
interface Stage {
  readonly id: string;
  readonly name: string;
  readonly teeth: number;
  readonly level: number;
  readonly at: readonly [number, number];
  readonly settle: (arbor: Arbor, first: Arbor) => Record<string, unknown>;
  readonly settleSays: string;
}

const STAGES: readonly Stage[] = [
  {
    id: 'second',
    name: 'Second',
    teeth: 60,
    level: 4,
    at: [22, 19],
    settle: (arbor, first) => ({ kind: 'bearing', point: arbor.id, centre: first.id, angle: 40 }),
    settleSays: 'Choose both arbors and add a direction: 40° about the drum.',
  },
  {
    id: 'third',
    name: 'Third',
    teeth: 48,
    level: 10,
    at: [1, 34],
    settle: (arbor, first) => ({ kind: 'radius', point: arbor.id, centre: first.id, length: 34 }),
    settleSays: 'Choose it and the drum and add a radius of 34: one arc and a radius cross, and it is planted.',
  },
  {
    id: 'pointer',
    name: 'Pointer',
    teeth: 36,
    level: 16,
    at: [-18, 30],
    settle: (arbor, first) => ({ kind: 'distance', points: [first.id, arbor.id], length: 35 }),
    settleSays: 'Give it a distance of 35 from the drum. Two arcs cross; X puts it at the other crossing.',
  },
];

const wheelsOn = (movement: Movement, arbor: Arbor | undefined): readonly Wheel[] =>
  movement.wheels.filter((wheel) => wheel.arbor === arbor?.id);
const wheelOf = (movement: Movement, arbor: Arbor | undefined, teeth: number): Wheel | undefined =>
  wheelsOn(movement, arbor).find((wheel) => wheel.teeth === teeth);
const isPlanted = (placed: PlacedMovement, arbor: Arbor | undefined): boolean =>
  arbor !== undefined && placed.places.get(arbor.id)?.state === 'planted';

/** The steps in order. */
export const guideSteps: readonly GuideStep[] = [
  {
    title: 'Set down the drum',
    says: 'Press A, point near the middle of the sheet and press. An arbor that can still move is a ring with arrows.',
    isDone: ({ movement }) => movement.arbors.length >= 1,
    edits: () => [
      {
        kind: 'add',
        to: 'arbors',
        item: { id: 'drum', name: 'Drum', at: [0, 0], diameter: 3, levels: { from: 0, to: 24 } },
      },
    ],
  },
  {
    title: 'Keep it there',
    says: 'Choose it and hold it at its place. The ring becomes a cross with a dot: planted.',
    isDone: (placed) => isPlanted(placed, placed.movement.arbors[0]),
    edits: ({ arbors: [first] }) =>
      first
        ? [{ kind: 'add', to: 'rules', item: { id: 'drum-held', kind: 'held', point: first.id, at: [...first.at] } }]
        : [],
  },
  ...STAGES.flatMap((stage, index) => stageSteps(stage, index)),
  {
    title: 'Let it turn',
    says: 'Press the bare sheet, so that nothing is chosen: on the right the drum is put under “Driven by”, once in 1 hours. The list on the left then tells the period and sense of every arbor: the pointer turns once a minute.',
    isDone: ({ movement }) => movement.drive !== undefined,
    edits: ({ arbors: [first] }) =>
      first ? [{ kind: 'describe', set: { drive: { arbor: first.id, period: { value: 1, unit: 'h' } } } }] : [],
  },
];

function stageSteps(stage: Stage, index: number): GuideStep[] {
  const driver = (movement: Movement): Arbor | undefined => movement.arbors[index];
  const driven = (movement: Movement): Arbor | undefined => movement.arbors[index + 1];
  const carrier = index === 0 ? 'the drum' : `the ${STAGES[index - 1]?.name.toLowerCase() ?? ''} arbor`;
  return [
    {
      title: `A wheel of ${stage.teeth}`,
      says: `Press W and set down a wheel of ${stage.teeth} teeth, module ${MODULE}, on ${carrier}, at level ${stage.level}.`,
      isDone: ({ movement }) => wheelOf(movement, driver(movement), stage.teeth) !== undefined,
      edits: (movement) => addWheel(movement, driver(movement), stage.teeth, stage.level, 1.5),
    },
    {
      title: `${stage.name}: a pinion that meets it`,
      says: `Set down an arbor with a pinion of ${LEAVES} leaves at the same level, and drag it to the wheel until it snaps: the depth is kept when you let go.`,
      isDone: ({ movement }) => meets(movement, driver(movement), driven(movement)),
      edits: (movement) => addDriven(movement, stage, index),
    },
    {
      title: `${stage.name}: one thing more`,
      says: `A depth alone lets it swing. ${stage.settleSays}`,
      isDone: (placed) => isPlanted(placed, driven(placed.movement)),
      edits: (movement) => {
        const [first] = movement.arbors;
        const arbor = driven(movement);
        if (!first || !arbor) return [];
        const item = { id: freshId(movement, `${stage.id}-settled`), ...stage.settle(arbor, first) };
        return [{ kind: 'add', to: 'rules', item: item as never }]; // one of the rule shapes of STAGES above
      },
    },
  ];
}

function meets(movement: Movement, driver: Arbor | undefined, driven: Arbor | undefined): boolean {
  const from = new Set(wheelsOn(movement, driver).map((wheel) => wheel.id));
  const to = new Set(wheelsOn(movement, driven).map((wheel) => wheel.id));
  return movement.rules.some(
    (rule) =>
      rule.kind === 'depth' &&
      !rule.leaveOut &&
      rule.wheels.some((id) => from.has(id)) &&
      rule.wheels.some((id) => to.has(id)),
  );
}

function addWheel(
  movement: Movement,
  arbor: Arbor | undefined,
  teeth: number,
  level: number,
  thickness: number,
): readonly Edit[] {
  if (!arbor) return [];
  const id = freshId(movement, `${arbor.id}-${teeth}`);
  return [
    {
      kind: 'add',
      to: 'wheels',
      item: { id, arbor: arbor.id, teeth, size: { module: MODULE }, form: FORMS.cycloidal.name, level, thickness },
    },
  ];
}

function addDriven(movement: Movement, stage: Stage, index: number): readonly Edit[] {
  const wheel = wheelOf(movement, movement.arbors[index], stage.teeth);
  if (!wheel) return [];
  const edits: Edit[] = [];
  let present = movement;
  if (!movement.arbors[index + 1]) {
    const item = {
      id: freshId(movement, stage.id),
      name: stage.name,
      at: [...stage.at] as [number, number],
      levels: { from: 0, to: 24 },
    };
    edits.push({ kind: 'add', to: 'arbors', item });
    const added = applyEdit(movement, edits[0] ?? { kind: 'several', edits: [] });
    if (added.kind === 'edited') present = added.movement;
  }
  const arbor = present.arbors[index + 1];
  const pinion = wheelOf(present, arbor, LEAVES);
  const added = pinion ? [] : addWheel(present, arbor, LEAVES, stage.level - 1, 3.5);
  const first = added[0];
  const pinionId = pinion?.id ?? (first?.kind === 'add' ? String(first.item.id) : undefined);
  if (pinionId === undefined) return [];
  const id = freshId(movement, `depth-${stage.id}`);
  const depth: Edit = { kind: 'add', to: 'rules', item: { id, kind: 'depth', wheels: [wheel.id, pinionId] as never } }; // ids of wheels, just found
  return [...edits, ...added, depth];
}

/** An id that nothing has yet. */
function freshId(movement: Movement, wanted: string): string {
  const taken = new Set<string>(
    [movement.arbors, movement.wheels, movement.rules, movement.posts, movement.marks].flatMap((parts) =>
      parts.map(({ id }) => id as string),
    ),
  );
  let id = wanted;
  for (let count = 2; taken.has(id); count++) id = `${wanted}-${count}`;
  return id;
}
