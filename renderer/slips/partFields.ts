/** Numbers of arbors, posts, marks and wheels that are edited in place, with the edit that each makes. */

import type { PartId } from '../../solver/movement/ids.ts';
import type { Arbor, Mark, Movement, Post, Wheel } from '../../solver/movement/schema.ts';
import { fieldsOfForm } from './formFields.ts';
import { type PartField, plainField as plain } from './plainField.ts';

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
  const { id } = wheel;
  const open = { isOptional: true } as const;
  return [
    plain(id, 'bore', 'Bore', wheel.bore, open),
    plain(id, 'tipDiameter', 'Tip diameter as cut', wheel.tipDiameter, { ...open, above: 0 }),
    plain(id, 'toothThickness', 'Tooth thickness as cut', wheel.toothThickness, { ...open, above: 0 }),
    plain(id, 'runOut', 'Run-out at the teeth', wheel.runOut),
    ...fieldsOfForm(wheel),
  ];
}
