/** Drill programs in the published words of numerical control. */
import { foundInList } from '../preflight/found.ts';
import { readDrill } from '../preflight/readDrill.ts';
import type { FileFormat } from './format.ts';

/** Drill programs; written by `write/drill.ts`. */
export const drill: FileFormat<'drill'> = {
  name: 'drill',
  ending: '.ngc',
  called: 'drill words',
  seen: 'machine',
  holds: 'list',
  readBack: (text) => {
    const { holes, problems } = readDrill(text);
    // Every tool goes to all of its places; those of the first are all holes.
    const first = holes.filter((hole) => hole.tool === holes[0]?.tool);
    return foundInList(
      first.map(({ x, y }) => ({ x, y, diameter: undefined })),
      problems,
    );
  },
};
