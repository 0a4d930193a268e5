/** A weight on a drum: torque, fall, turns, run time, power. */
import { STANDARD_GRAVITY } from './gravity.ts';
import { checkNumbers, type Refusal } from './inputCheck.ts';

/** A weight, its cord and its drum. */
export interface WeightDriveOptions {
  /** Mass of the weight with its pulley, kg. */
  readonly mass: number;
  /** Diameter of the drum and of the cord, mm. */
  readonly drum: number;
  readonly cord: number;
  /** Turns of cord side by side on one layer; all on one layer where absent. */
  readonly turnsPerLayer?: number;
  /** Height through which the weight may fall, mm. */
  readonly fall: number;
  /** Parts of cord that carry the weight: 1 straight, 2 with one pulley, and so on. */
  readonly parts?: number;
  /** Time of one turn of the drum, seconds. */
  readonly secondsPerTurn: number;
  /** Share of the pull lost in the pulley's bearing (0 to below 1, default 0). */
  readonly pulleyLoss?: number;
}

/** One layer of cord on the drum. */
export interface CordLayer {
  /** Radius to the middle of the cord, mm. */
  readonly radius: number;
  readonly turns: number;
  /** Torque at the drum while this layer carries, N·mm. */
  readonly torque: number;
}

/** What a weight gives over its fall. */
export interface WeightDrive {
  readonly kind: 'weight';
  /** Cord that runs off the drum, mm, and the turns of the drum that it makes. */
  readonly cordLength: number;
  readonly turns: number;
  readonly runSeconds: number;
  /** From the layer that runs off first (outermost) to the last. */
  readonly layers: readonly CordLayer[];
  /** Energy of the fall, J, and mean power, mW. */
  readonly energy: number;
  readonly power: number;
}

/** Each layer of round cord laid in the grooves of the one below lies √3/2 of a cord further out. Geometry of equal circles. */
const LAYER_STEP = Math.sqrt(3) / 2;

/**
 * A weight-driven movement. The cord pulls at the drum's radius plus half the cord; cord of further layers further out.
 * With n parts of cord the drum feels the nth part of the weight and pays out n times the fall.
 */
export function weightDrive(options: WeightDriveOptions): WeightDrive | Refusal {
  const { mass, drum, cord, fall, parts = 1, secondsPerTurn, pulleyLoss = 0, turnsPerLayer } = options;
  const problems = checkNumbers({
    mass: { value: mass, above: 0, upTo: 10_000 },
    drum: { value: drum, above: 0, upTo: 10_000 },
    cord: { value: cord, from: 0, upTo: drum > 0 ? drum : 0 },
    fall: { value: fall, above: 0, upTo: 1e6 },
    parts: { value: parts, from: 1, upTo: 12, whole: true },
    secondsPerTurn: { value: secondsPerTurn, above: 0, upTo: 1e9 },
    pulleyLoss: { value: pulleyLoss, from: 0, upTo: 0.99 },
    ...(turnsPerLayer === undefined ? {} : { turnsPerLayer: { value: turnsPerLayer, from: 1, upTo: 1e6 } }),
  });
  if (problems.length > 0) return { kind: 'refused', problems };
  const cordLength = fall * parts;
  const pull = (mass * STANDARD_GRAVITY * (1 - pulleyLoss)) / parts;
  const layers = layersOf(cordLength, drum, cord, turnsPerLayer ?? Number.POSITIVE_INFINITY).map(
    ({ radius, turns }) => ({
      radius,
      turns,
      torque: pull * radius,
    }),
  );
  const turns = layers.reduce((sum, layer) => sum + layer.turns, 0);
  const runSeconds = turns * secondsPerTurn;
  const energy = mass * STANDARD_GRAVITY * (fall / 1000);
  const power = (1000 * energy) / runSeconds;
  return {
    kind: 'weight',
    cordLength,
    turns,
    runSeconds,
    layers,
    energy,
    power,
  };
}

/** Layers that hold so much cord, outermost first. */
function layersOf(
  length: number,
  drum: number,
  cord: number,
  turnsPerLayer: number,
): readonly { readonly radius: number; readonly turns: number }[] {
  const layers: { radius: number; turns: number }[] = [];
  let left = length;
  for (let layer = 0; left > 1e-9; layer++) {
    const radius = drum / 2 + cord * (0.5 + layer * LAYER_STEP);
    const turns = Math.min(turnsPerLayer, left / (2 * Math.PI * radius));
    layers.unshift({ radius, turns });
    left -= turns * 2 * Math.PI * radius;
  }
  return layers;
}
