/** How the maker prints, read from what was kept and from what he measured. */
import { BAR, PAPERS, type PaperName, scalesOf } from '../../solver/files/pages/index.ts';
import type { Speaker } from '../../solver/words/index.ts';
import type { SheetChoice } from './questions.ts';

/** Least and greatest overlap of tiles, mm. */
export const OVERLAPS = { least: 5, most: 40 } as const;
const USUAL: SheetChoice = { paper: 'A4', overlap: 10 };

/** Reads what was kept; whatever cannot be used is left at the usual. */
export function readChoice(text: string | null): SheetChoice {
  let value: unknown;
  try {
    value = JSON.parse(text ?? '{}');
  } catch {
    return USUAL;
  }
  const kept = (typeof value === 'object' && value !== null ? value : {}) as Partial<Record<string, unknown>>; // fields are asked below
  const { paper, overlap, calibration } = kept;
  const bars = (typeof calibration === 'object' && calibration !== null ? calibration : {}) as Record<string, unknown>; // likewise
  return {
    paper: typeof paper === 'string' && paper in PAPERS ? (paper as PaperName) : USUAL.paper, // a key of the record
    overlap:
      typeof overlap === 'number' && overlap >= OVERLAPS.least && overlap <= OVERLAPS.most ? overlap : USUAL.overlap,
    ...calibrationOf(bars['xBar'], bars['yBar']),
  };
}

/** Bars that can be used; nothing when they cannot, or when both are exact. */
function calibrationOf(xBar: unknown, yBar: unknown): Pick<SheetChoice, 'calibration'> {
  if (typeof xBar !== 'number' || typeof yBar !== 'number' || !isBar(xBar) || !isBar(yBar)) return {};
  return xBar === BAR && yBar === BAR ? {} : { calibration: { xBar, yBar } };
}

/** Why a bar of so many mm cannot be taken, in words; nothing when it can. */
export function barTroubleSays(mm: number, speaker: Speaker): string | undefined {
  if (isBar(mm)) return undefined;
  const [drawn, measured] = [speaker.length(BAR), speaker.length(mm)];
  return `The bar is drawn ${drawn} long; ${measured} is more than a printer's error. Measure it again, from end to end.`;
}

/** Is it a length that a printer may give the bar? */
function isBar(mm: number): boolean {
  try {
    scalesOf({ xBar: mm, yBar: BAR });
    return true;
  } catch {
    return false;
  }
}
