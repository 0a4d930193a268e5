/** Runs the catalogue: every movement as written and varied by a seed, each fault named and nothing told of sound ones. */
import { buildable, checkMovement, type Finding } from '../../../solver/clearance/index.ts';
import { plantMovement } from '../../../solver/planting/index.ts';
import { movementOfParts } from '../../support/movements.ts';
import { PLAIN, type Variation, Writer } from './bench.ts';
import { FAULTY, type Faulty } from './faulty.ts';
import { SOUND } from './sound.ts';

/** What came of one movement. */
export interface Verdict {
  readonly name: string;
  readonly isSound: boolean;
  readonly isVaried: boolean;
  readonly isRight: boolean;
  /** What was found, as causes with their parts. */
  readonly found: readonly string[];
}

/** Everything that the check tells of a movement but its notes. */
function toldOf(parts: object): readonly Finding[] {
  const placed = plantMovement(movementOfParts(parts));
  const findings = checkMovement(placed, { depths: true });
  return [...findings, ...buildable(placed, findings).missing].filter(({ severity }) => severity !== 'notes');
}

const told = ({ cause, parts }: Finding): string => `${cause.kind} ${parts.join(' ')}`;

const names =
  ({ cause, of }: Faulty) =>
  (finding: Finding): boolean =>
    finding.cause.kind === cause && of.every((id) => (finding.parts as readonly string[]).includes(id));

/** The whole catalogue under as many variations as `random` is drawn for. */
export function judgeCatalogue(random: () => number, rounds = 1): readonly Verdict[] {
  const variations = Array.from({ length: rounds }, () => variationOf(random));
  return [PLAIN, ...variations].flatMap((by): Verdict[] => {
    const isVaried = by !== PLAIN;
    return [
      ...SOUND.map(({ name, parts }): Verdict => {
        const found = toldOf(parts(new Writer(by)));
        return { name, isSound: true, isVaried, isRight: found.length === 0, found: found.map(told) };
      }),
      ...FAULTY.map((faulty): Verdict => {
        const found = toldOf(faulty.parts(new Writer(by)));
        return {
          name: faulty.name,
          isSound: false,
          isVaried,
          isRight: found.some(names(faulty)),
          found: found.map(told),
        };
      }),
    ];
  });
}

/** Half to twice the size, anywhere round, mirrored or not, lifted, in either unit, its lists shuffled. */
function variationOf(random: () => number): Variation {
  return {
    size: 0.6 + 1.4 * random(),
    turn: 2 * Math.PI * random(),
    isMirrored: random() < 0.5,
    lift: 40 * random() - 20,
    unit: random() < 0.5 ? 'mm' : 'inch',
    order: random,
  };
}
