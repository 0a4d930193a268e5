/** What all couplings share in the file. */
import { couplingId } from '../ids.ts';
import { name, note } from '../quantities.ts';

/** Fields of every coupling. */
export const common = { id: couplingId, name: name.exactOptional(), note: note.exactOptional() };
