/** Numbers of arbors, posts, marks and wheels that are edited in place, with the edit that each makes. */

import type { PartId } from '../../solver/movement/ids.ts';
import type { Edit } from '../../solver/movement/index.ts';
import type { Arbor, Mark, Movement, Post, Wheel } from '../../solver/movement/schema.ts';

/** A number of a part that can be edited. */
export interface PartField {
  readonly says: string;
  readonly kind: 'length' | 'angle' | 'number';
  readonly value: number | undefined;
  /** It must be more than this. */
  readonly above?: number;
  /** May be left open: an emptied field then means "not stated". */
  readonly isOptional?: boolean;
  readonly edit: (value: number | undefined) => Edit;
}

type Options = Partial<Pick<PartField, 'kind' | 'above' | 'isOptional'>>;

/** A field that stands in the item itself. */
function plain(id: string, field: string, says: string, value: number | undefined, options: Options = {}): PartField {
  return {
    kind: 'length',
    ...options,
    says,
    value,
    edit: (next) =>
      next === undefined ? { kind: 'change', id, unset: [field] } : { kind: 'change', id, set: { [field]: next } },
  };
}

function heights({ id, levels }: Arbor | Post): PartField[] {
  const field = (end: 'from' | 'to', says: string): PartField => ({
    says,
    kind: 'length',
    value: levels?.[end],
    isOptional: true,
    edit: (next) => {
      // The other end stays as it is: typed, or following from what the part has to reach.
      const { [end]: _, ...rest } = levels ?? {};
      const set = next === undefined ? rest : { ...rest, [end]: next };
      return Object.keys(set).length === 0
        ? { kind: 'change', id, unset: ['levels'] }
        : { kind: 'change', id, set: { levels: set } };
    },
  });
  return [field('from', 'From height'), field('to', 'To height')];
}

function ofArbor(arbor: Arbor): PartField[] {
  const { id } = arbor;
  return [
    plain(id, 'diameter', 'Diameter', arbor.diameter, { above: 0 }),
    ...(arbor.ridesOn === undefined
      ? []
      : [plain(id, 'pipeBore', 'Bore of the pipe', arbor.pipeBore, { above: 0, isOptional: true })]),
    plain(id, 'endShake', 'End shake', arbor.endShake),
    ...heights(arbor),
  ];
}

const ofPost = (post: Post): PartField[] => [
  plain(post.id, 'diameter', 'Diameter', post.diameter, { above: 0 }),
  plain(post.id, 'hole', 'Fixing hole', post.hole),
  ...heights(post),
];

const ofMark = (mark: Mark): PartField[] => [plain(mark.id, 'hole', 'Hole', mark.hole)];

/** Fields of the arbor, post or mark that has the id. */
export function fieldsOfPoint({ arbors, posts, marks }: Movement, id: PartId): readonly PartField[] {
  const arbor = arbors.find((each) => each.id === id);
  if (arbor) return ofArbor(arbor);
  const post = posts.find((each) => each.id === id);
  if (post) return ofPost(post);
  const mark = marks.find((each) => each.id === id);
  return mark ? ofMark(mark) : [];
}

/** Fields of a wheel that seldom change: the body, what was cut, and what its form lets one choose. */
export function fieldsOfWheel(wheel: Wheel): readonly PartField[] {
  const { id, form } = wheel;
  const open = { isOptional: true } as const;
  return [
    plain(id, 'bore', 'Bore', wheel.bore, open),
    plain(id, 'tipDiameter', 'Tip diameter as cut', wheel.tipDiameter, { ...open, above: 0 }),
    plain(id, 'toothThickness', 'Tooth thickness as cut', wheel.toothThickness, { ...open, above: 0 }),
    plain(id, 'runOut', 'Run-out at the teeth', wheel.runOut),
    ...(form === 'involute'
      ? [
          plain(id, 'pressureAngle', 'Pressure angle', wheel.pressureAngle, { ...open, kind: 'angle' }),
          plain(id, 'profileShift', 'Profile shift', wheel.profileShift, { kind: 'number' }),
        ]
      : []),
    ...(form === 'triangular'
      ? [plain(id, 'toothAngle', 'Angle of the teeth', wheel.toothAngle, { ...open, kind: 'angle' })]
      : []),
    ...(form === 'lantern'
      ? [plain(id, 'trundleDiameter', 'Diameter of the pins', wheel.trundleDiameter, { ...open, above: 0 })]
      : []),
  ];
}
