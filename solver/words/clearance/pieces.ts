/** Pieces of parts, as findings, cures and stacks call them: "collar on Third", "hub of wheel of 64 on Third". */
import type { Piece } from '../../clearance/index.ts';
import { listed } from '../lists.ts';
import type { Speaker } from '../speaker.ts';

type Words = (piece: Piece, speaker: Speaker) => string;

const PIECES: Readonly<Record<Piece['piece'], Words>> = {
  whole: ({ part }, { name }) => name(part),
  hub: ({ part }, { name }) => `hub of ${name(part)}`,
  collar: ({ part }, { name }) => `collar on ${name(part)}`,
  head: ({ part }, { name }) => `head on ${name(part)}`,
  bush: ({ part }, { name }) => `bush of ${name(part)}`,
  swept: ({ part, nth = 0 }, { name, movement }) => {
    const swept = movement.arbors.find(({ id }) => id === part)?.swept?.[nth];
    return swept?.name?.trim() || `${swept?.kind ?? 'hand'} on ${name(part)}`;
  },
};

/** What a piece of a part is called. */
export function pieceWords(piece: Piece, speaker: Speaker): string {
  return PIECES[piece.piece](piece, speaker);
}

/** "a and b", parts by their names. */
export function namesOfParts(parts: readonly string[], { name }: Speaker): string {
  return listed(parts.map(name));
}
