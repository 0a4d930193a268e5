/**
 * Rehearsal physics: does the train turn? Toothed bodies on bearings with shake, a torque on the first arbor, a load on
 * the last ones, followed step by step until the first arbor has gone round, or has stopped.
 *
 * It tells whether a train runs and where it stalls. Ratios and gaps never come from it: the counts give the one, our
 * own geometry the other. The same movement gives the same run.
 */

import type { ArborId, WheelId } from '../../movement/ids.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { runSteps, type Steps } from '../../steps.ts';
import { TORQUE_UNIT, type TurningWorld, turningWorldOf } from '../planckAdapter.ts';
import { type ArborLean, LeanWatch } from './leanWatch.ts';
import {
  type LeftOut,
  type NoRehearsal,
  type RehearsalBody,
  type RehearsalMesh,
  type RehearsalTrain,
  rehearsalTrain,
} from './rehearsalTrain.ts';
import { type MeanSpeed, SpeedWatch } from './speedWatch.ts';

/** How the train is driven and loaded. */
export interface RehearsalOptions {
  /** The arbor that is driven; the movement's drive, else the driver of the first depth, when absent. */
  readonly input?: ArborId;
  /** Turns of the input that make a full cycle; 1 when absent. */
  readonly turns?: number;
  /** Load at the outputs, as a share of the torque that the drive could hand on; 0.3 when absent. */
  readonly load?: number;
  /** Friction of tooth on tooth; 0.15 when absent (brass on steel, common practice). */
  readonly friction?: number;
}

/** How far the run is. */
export interface RehearsalProgress {
  /** Turned of what is to be turned, 0 … 1. */
  readonly done: number;
}

/** How a run went. */
export interface RehearsalReport {
  readonly kind: 'rehearsed';
  /** The arbor that was driven. */
  readonly input: ArborId;
  readonly runs: boolean;
  /** Turns that the input made. */
  readonly turns: number;
  /** Driven arbors that moved by a tooth at least, of all that are driven: it runs only where they all did. */
  readonly moved: number;
  readonly driven: number;
  /**
   * What stopped it: teeth forced into each other, no further turning, or teeth that slip past each other; `unmoved`: the
   * run ended before every driven arbor had moved by a tooth, so that nothing can be told.
   */
  readonly stoppedBy?: 'forced' | 'stall' | 'slip' | 'unmoved';
  /** Where: the two bodies, the pair of wheels, and the angle of the input from where it began, degrees. */
  readonly stoppedAt?: readonly ArborId[];
  readonly stoppedWheels?: readonly [WheelId, WheelId];
  readonly inputDeg: number;
  /** Mean speed of each body against the input. */
  readonly speeds: readonly (MeanSpeed & { readonly arbor: ArborId })[];
  /** How far each axis was pushed from its place in the plane of its teeth, mm. */
  readonly aside: readonly { readonly arbor: ArborId; readonly most: number }[];
  /** How far each arbor leans, and how far its teeth stand aside by that. */
  readonly leans: readonly ArborLean[];
  /** Deepest overlap of teeth after settling, mm. */
  readonly overlap: number;
  readonly steps: number;
  readonly leftOut: readonly LeftOut[];
}

/** A run, or why none could be made. */
export type Rehearsal = RehearsalReport | { readonly kind: 'none'; readonly why: NoRehearsal };

/** Steps in which the fastest tooth passes by one pitch. */
const STEPS_A_PITCH = 20;
/** Steps without torque in which overlapping teeth are let part, and in which speed is gathered. */
const SETTLING = 60;
const GATHERING = 160;
/** Overlap that stays is force, not rounding, × module: ten times the fineness of the teeth's chords. */
const FORCED = 0.03;
/** Steps that teeth may stay forced into each other, and pitches without turning, before the train has stopped. */
const FORCED_STEPS = 30;
const STALLED_PITCHES = 12;
/** A run goes on for slow arbors up to so many times the steps that the wanted turns took, and these. */
const LONGER = 3;
const AT_LEAST_MORE = 4000;
/** Steps between two tellings of progress. */
const TOLD_EVERY = 100;

/** Runs the rehearsal, telling its progress; stop it by asking for no more. */
export function* rehearseSteps(
  placed: PlacedMovement,
  options: RehearsalOptions = {},
): Steps<RehearsalProgress, Rehearsal> {
  const input = options.input ?? placed.movement.drive?.arbor ?? firstDriver(placed);
  if (input === undefined) return { kind: 'none', why: { kind: 'noDepth' } };
  const train = rehearsalTrain(placed, input);
  if (train.kind === 'none') return train;
  const run = new Run(train, options);
  while (run.goesOn()) {
    run.step();
    if (run.steps % TOLD_EVERY === 0) yield { done: run.done() };
  }
  return run.report(train.leftOut);
}

/** The same in one go. */
export function rehearse(placed: PlacedMovement, options: RehearsalOptions = {}): Rehearsal {
  return runSteps(rehearseSteps(placed, options));
}

function firstDriver({ movement }: PlacedMovement): ArborId | undefined {
  const depth = movement.rules.find((rule) => rule.kind === 'depth' && !rule.leaveOut);
  const driver = depth?.kind === 'depth' ? depth.wheels[0] : undefined;
  return movement.wheels.find(({ id }) => id === driver)?.arbor;
}

/** A train that can be run. */
type Train = Extract<RehearsalTrain, { kind: 'train' }>;

/** One run, step after step. */
class Run {
  steps = 0;
  private readonly bodies: readonly RehearsalBody[];
  private readonly world: TurningWorld;
  private readonly wantedTurns: number;
  /** Rate of the input that the drive strives for, radians a step, and its torque at rest. */
  private readonly rate: number;
  private readonly torque: number;
  private readonly load: number;
  private readonly stallSteps: number;
  private readonly aside: number[];
  private startAngles: number[];
  private readonly meshes: readonly RehearsalMesh[];
  private readonly speeds: SpeedWatch;
  private readonly leans: LeanWatch;
  /** The step at which the wanted turns were made. */
  private turnedAt: number | undefined;
  private forcedFor = 0;
  private overlap = 0;
  private marked = { step: 0, angle: 0 };
  private stopped: { by: 'forced' | 'stall' | 'slip'; at: readonly number[]; mesh?: number | undefined } | undefined;

  constructor(
    { bodies, meshes }: Pick<Train, 'bodies' | 'meshes'>,
    { turns = 1, load = 0.3, friction = 0.15 }: RehearsalOptions,
  ) {
    this.bodies = bodies;
    this.meshes = meshes;
    this.speeds = new SpeedWatch(bodies);
    this.leans = new LeanWatch(bodies, meshes);
    this.world = turningWorldOf(
      bodies.map(({ plan }) => plan),
      friction,
    );
    this.wantedTurns = turns;
    this.load = load;
    this.aside = bodies.map(() => 0);
    this.startAngles = bodies.map(() => 0);
    const fastest = Math.max(...bodies.map(({ ratio, mostTeeth }) => Math.abs(ratio) * mostTeeth));
    this.rate = (2 * Math.PI) / (fastest * STEPS_A_PITCH);
    this.stallSteps = STALLED_PITCHES * STEPS_A_PITCH;
    // Inertia of the whole train as the input feels it; so much torque gathers the speed in the stated steps.
    const felt = bodies.reduce((sum, { ratio }, i) => sum + this.world.inertia(i) * ratio * ratio, 0);
    this.torque = (felt * this.rate * TORQUE_UNIT) / GATHERING;
  }

  goesOn(): boolean {
    if (this.stopped !== undefined) return false;
    if (this.done() < 1) return true;
    this.turnedAt ??= this.steps;
    return this.unmoved().length > 0 && this.steps < this.turnedAt * (1 + LONGER) + AT_LEAST_MORE;
  }

  /** Driven bodies that have not yet moved by a tooth. */
  private unmoved(): readonly number[] {
    return this.bodies.flatMap(({ mostTeeth }, i) =>
      i > 0 && (Math.abs(this.turnedOf(i)) * mostTeeth) / (2 * Math.PI) < 1 ? [i] : [],
    );
  }

  done(): number {
    return Math.min(1, Math.abs(this.turnedOf(0)) / (2 * Math.PI * this.wantedTurns));
  }

  private turnedOf(body: number): number {
    return this.world.angle(body) - (this.startAngles[body] ?? 0);
  }

  step(): void {
    this.world.step();
    this.steps++;
    if (this.steps === SETTLING) this.begin();
    if (this.steps > SETTLING) this.watch();
  }

  /** Overlapping teeth have been let part: from here the first arbor is driven, and each output resists. */
  private begin(): void {
    this.startAngles = this.bodies.map((_, i) => this.world.angle(i));
    this.world.drive(0, this.rate, this.torque);
    const outputs = this.bodies.filter(({ isOutput }) => isOutput).length;
    this.bodies.forEach(({ isOutput, ratio }, i) => {
      if (isOutput && i > 0 && ratio !== 0) this.world.brake(i, (this.load * this.torque) / Math.abs(ratio) / outputs);
    });
  }

  private watch(): void {
    this.bodies.forEach((_, i) => {
      this.aside[i] = Math.max(this.aside[i] ?? 0, this.world.aside(i));
    });
    this.watchOverlap();
    this.watchSlip();
    this.speeds.watch((body) => this.turnedOf(body));
    this.leans.watch(this.world.pushes);
    const angle = Math.abs(this.turnedOf(0));
    if (angle - this.marked.angle > this.rate * STEPS_A_PITCH) this.marked = { step: this.steps, angle };
    else if (this.steps - this.marked.step > this.stallSteps) this.stopped ??= this.stall();
  }

  private watchOverlap(): void {
    const deepest = this.world.deepest();
    if (!deepest) return;
    this.overlap = Math.max(this.overlap, deepest.overlap);
    const module = Math.min(...deepest.bodies.map((body) => this.bodies[body]?.module ?? 1));
    this.forcedFor = deepest.overlap > FORCED * module ? this.forcedFor + 1 : 0;
    if (this.forcedFor > FORCED_STEPS) this.stopped ??= { by: 'forced', at: deepest.bodies, mesh: deepest.mesh };
  }

  /** Where more than a tooth has passed on one side and not on the other, teeth have slipped past each other. */
  private watchSlip(): void {
    for (const [mesh, { bodies, pitches }] of this.meshes.entries()) {
      const passed = (this.turnedOf(bodies[0]) * pitches[0] + this.turnedOf(bodies[1]) * pitches[1]) / (2 * Math.PI);
      if (Math.abs(passed) > 1) this.stopped ??= { by: 'slip', at: bodies, mesh };
    }
  }

  /** It stalls at the teeth that are pressed hardest. */
  private stall(): NonNullable<Run['stopped']> {
    const mesh = this.leans.hardest() ?? this.world.deepest()?.mesh;
    return { by: 'stall', at: (mesh === undefined ? undefined : this.meshes[mesh]?.bodies) ?? [0], mesh };
  }

  report(leftOut: readonly LeftOut[]): RehearsalReport {
    const input = this.turnedOf(0);
    const first = (i: number): ArborId => this.bodies[i]?.arbors[0] as ArborId; // each body has its arbor
    const unmoved = this.unmoved();
    const stopped =
      this.stopped ?? (unmoved.length > 0 ? ({ by: 'unmoved', at: unmoved, mesh: undefined } as const) : undefined);
    const stoppedAt = stopped?.at.map(first);
    const pair = stopped?.mesh === undefined ? undefined : this.meshes[stopped.mesh]?.wheels;
    return {
      kind: 'rehearsed',
      input: first(0),
      runs: stopped === undefined,
      turns: Math.abs(input) / (2 * Math.PI),
      moved: this.bodies.length - 1 - unmoved.length,
      driven: this.bodies.length - 1,
      ...(stopped && stoppedAt ? { stoppedBy: stopped.by, stoppedAt } : {}),
      ...(pair ? { stoppedWheels: [pair[0].id, pair[1].id] } : {}),
      inputDeg: (input * 180) / Math.PI,
      speeds: this.bodies
        .slice(1)
        .map((_, k) => ({ arbor: first(k + 1), ...this.speeds.speedOf(k + 1, (body) => this.turnedOf(body)) })),
      aside: this.bodies.map((_, i) => ({ arbor: first(i), most: this.aside[i] ?? 0 })),
      leans: this.leans.leans(),
      overlap: this.overlap,
      steps: this.steps,
      leftOut,
    };
  }
}
