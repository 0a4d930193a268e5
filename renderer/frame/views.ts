/**
 * The views that open over the bench, one line each: what shows it, what it is called, the command that opens it, and
 * whether it covers the bench. The window, the menu, Esc and the keys read this table; a kind of view that is missing
 * here does not compile.
 */
import type { Component } from 'svelte';
import GapsView from '../clearance/GapsView.svelte';
import PlantingView from '../clearance/PlantingView.svelte';
import TrialView from '../clearance/TrialView.svelte';
import type { Command } from '../commands/command.ts';
import CountsView from '../counts/CountsView.svelte';
import CuttingView from '../cutting/CuttingView.svelte';
import DepthView from '../depth/DepthView.svelte';
import PowerView from '../power/PowerView.svelte';
import MadeView from '../readings/MadeView.svelte';
import { MADE_PARTS, type MadePart } from '../readings/madeParts.ts';
import Rehearsal from '../rehearsal/Rehearsal.svelte';
import type { Bench } from '../state/bench.ts';
import type { OpenView, ViewKind } from '../state/underWay.ts';

/** A view is told what it is called; whatever else it needs is looked up when it is shown. */
interface Titled {
  readonly title: string;
}

/** One view: its component, its title and the command that opens it. */
export interface ViewEntry {
  readonly component: Component<Titled>;
  readonly title: (bench: Bench) => string;
  /** What the component is given besides its title; undefined where what it looks at is gone. */
  readonly given: (bench: Bench) => object | undefined;
  readonly command: Command;
  /** A view that covers the bench is left before anything else is; the rehearsal turns the train on the bench itself. */
  readonly covers: boolean;
}

/** What the command that opens a view says of itself. */
type CommandParts = Pick<Command, 'group' | 'says' | 'describes' | 'keys'> & {
  readonly possible?: (bench: Bench) => boolean;
};

/** The command that opens a view; it is possible while another one, or none, is open. */
function opens(kind: ViewKind, parts: CommandParts, view: (bench: Bench) => OpenView | undefined): Command {
  return {
    id: kind,
    ...parts,
    possible: (bench) => !bench.hand.isOpen(kind) && (parts.possible?.(bench) ?? view(bench) !== undefined),
    run: (bench) => {
      const open = view(bench);
      if (open) bench.hand.openView(open);
    },
  };
}

type SimpleKind = Exclude<ViewKind, 'depth' | 'cutting' | MadePart>;

const simple = (kind: SimpleKind, component: Component<Titled>, title: string, parts: CommandParts): ViewEntry => ({
  component,
  title: () => title,
  given: () => ({}),
  command: opens(kind, parts, () => ({ kind })),
  covers: true,
});

const made = (kind: MadePart, describes: string, keys?: readonly string[]): ViewEntry => ({
  component: MadeView as Component<Titled>, // given its part below
  title: () => MADE_PARTS[kind],
  given: () => ({ part: kind }),
  command: opens(
    kind,
    { group: 'movement', says: `${MADE_PARTS[kind]}…`, describes, ...(keys ? { keys } : {}) },
    () => ({
      kind,
    }),
  ),
  covers: true,
});

/** The one wheel that is chosen, or the first on the arbor that is. */
function chosenWheel({ looking: { chosen }, document: { movement } }: Bench) {
  const [only] = chosen;
  return chosen.length === 1 ? movement.wheels.find(({ id, arbor }) => id === only || arbor === only) : undefined;
}

/** The depth that is looked at. */
function openDepth({ hand: { open }, document: { movement } }: Bench) {
  const rule = open?.kind === 'depth' ? movement.rules.find(({ id }) => id === open.rule) : undefined;
  return rule?.kind === 'depth' ? rule : undefined;
}

/** The first depth of the chosen wheel. */
function depthOfChosen(bench: Bench): OpenView | undefined {
  const wheel = chosenWheel(bench)?.id;
  const rule = bench.document.movement.rules.find(
    (each) => each.kind === 'depth' && each.wheels.some((id) => id === wheel),
  );
  return rule && { kind: 'depth', rule: rule.id };
}

/** The wheel whose cutting is looked at. */
function openWheel({ hand: { open }, document: { movement } }: Bench) {
  return open?.kind === 'cutting' ? movement.wheels.find(({ id }) => id === open.wheel) : undefined;
}

function cuttingOfChosen(bench: Bench): OpenView | undefined {
  const wheel = chosenWheel(bench);
  return wheel && { kind: 'cutting', wheel: wheel.id };
}

export const views = {
  counts: simple('counts', CountsView, 'Finding counts', {
    group: 'movement',
    says: 'Find counts…',
    describes: 'Find tooth counts for a wanted period',
    keys: ['N'],
  }),
  power: simple('power', PowerView, 'Weight, spring, pendulum', {
    group: 'movement',
    says: 'Weight, spring, pendulum…',
    describes: 'What drives the movement, and what it beats',
    keys: ['Shift+W'],
  }),
  readings: made('readings', 'Enter readings and drilled places, and see what they change', ['Shift+R']),
  changes: made('changes', 'Compare with an earlier file or day'),
  errors: made('errors', 'What errors in the lengths do, before anything is cut'),
  fits: made('fits', 'Fits of shafts, pivots and bushes'),
  planting: simple('planting', PlantingView, 'Find a planting', {
    group: 'movement',
    says: 'Find a planting…',
    describes: 'Search places for all that is loose',
  }),
  trial: simple('trial', TrialView, 'Does it run?', {
    group: 'movement',
    says: 'Does it run…',
    describes: 'Try the train by physics',
    possible: ({ document }) => document.movement.wheels.length > 1,
  }),
  gaps: simple('gaps', GapsView, 'Gaps and end shake', {
    group: 'movement',
    says: 'Gaps and end shake…',
    describes: 'Set least gaps and tolerances; see every stack and the order of taking apart',
  }),
  rehearsal: {
    component: Rehearsal,
    title: () => 'Rehearsal',
    given: () => ({}),
    command: {
      id: 'rehearsal',
      group: 'view',
      says: 'Rehearsal',
      describes: 'Turn the train and read the dials',
      keys: ['R'],
      possible: ({ hand, document }) => !hand.rehearsing && document.movement.wheels.length > 0,
      run: ({ hand, looking }) => {
        looking.show('bench');
        hand.openView({ kind: 'rehearsal' });
      },
    },
    covers: false,
  },
  cutting: {
    component: CuttingView as Component<Titled>, // given its wheel below
    title: (bench) => `How to cut ${bench.speaker.name(openWheel(bench)?.id ?? '')}`,
    given: (bench) => {
      const wheel = openWheel(bench);
      return wheel && { wheel };
    },
    command: opens(
      'cutting',
      { group: 'view', says: 'How it is cut', describes: 'Cutting and dividing of the chosen wheel', keys: ['K'] },
      cuttingOfChosen,
    ),
    covers: true,
  },
  depth: {
    component: DepthView as Component<Titled>, // given its rule below
    title: (bench) => (openDepth(bench)?.wheels ?? []).map((id) => bench.speaker.name(id)).join(' and '),
    given: (bench) => {
      const rule = openDepth(bench);
      return rule && { rule };
    },
    command: opens(
      'depth',
      { group: 'view', says: 'How it runs', describes: 'How the depth of the chosen wheel runs' },
      depthOfChosen,
    ),
    covers: true,
  },
} satisfies Record<ViewKind, ViewEntry>;

/** The commands of all views, by the kinds of the views. */
export const openCommands = Object.fromEntries(
  Object.entries(views).map(([kind, { command }]) => [kind, command]),
) as Readonly<Record<ViewKind, Command>>; // one entry for each kind of view

/** The view that is open. */
export function openEntry({ hand: { open } }: Bench): ViewEntry | undefined {
  return open && views[open.kind];
}

/** Does a view cover the bench? */
export const isCovered = (bench: Bench): boolean => openEntry(bench)?.covers === true;
