/** The counts form as typed, and the options of a search that it means. */
import { type CountsOptions, fractionText, ratioOfPeriods } from '../../solver/gearing/index.ts';
import type { Movement } from '../../solver/movement/index.ts';

/** As typed; nothing is read before the search is asked for. */
export interface CountsForm {
  from: string;
  to: string;
  stages: string;
  leaves: string;
  teeth: string;
  largestPrime: string;
  coprime: boolean;
  equalSums: boolean;
  worm: boolean;
}

export interface FormProblem {
  readonly field: keyof CountsForm;
  readonly says: string;
}

/** Starts from the movement's drive, where it has one. */
export function blankForm(movement: Movement): CountsForm {
  const period = movement.drive?.period;
  return {
    from: period ? `${period.value} ${period.unit}` : '12 h',
    to: 'synodicMonth',
    stages: '3',
    leaves: '8-20',
    teeth: '20-120',
    largestPrime: '',
    coprime: false,
    equalSums: false,
    worm: false,
  };
}

/** Options of the search, or every field that cannot be read. */
export function optionsOf(form: CountsForm): { options: CountsOptions } | { problems: readonly FormProblem[] } {
  const problems: FormProblem[] = [];
  const ratio = ratioOfPeriods(form.from, form.to);
  if (ratio.kind === 'refused') problems.push({ field: ratio.field, says: ratio.says });
  const range = (field: 'stages' | 'leaves' | 'teeth'): { from: number; to: number } => {
    const match = /^\s*(\d+)\s*(?:(?:-|–|to)\s*(\d+))?\s*$/.exec(form[field]);
    if (!match) problems.push({ field, says: `${form[field] || 'Nothing'} is no range: write 8-20, or one number.` });
    return { from: Number(match?.[1] ?? 0), to: Number(match?.[2] ?? match?.[1] ?? 0) };
  };
  const [stages, drivers, driven] = [range('stages'), range('leaves'), range('teeth')];
  const prime = form.largestPrime.trim();
  if (prime !== '' && !/^\d+$/.test(prime)) {
    problems.push({
      field: 'largestPrime',
      says: `${prime} is no number: write the largest prime that you can divide, such as 31.`,
    });
  }
  if (problems.length > 0 || ratio.kind === 'refused') return { problems };
  return {
    options: {
      ratio: fractionText(ratio.ratio),
      stages,
      drivers,
      driven,
      ...(prime === '' ? {} : { largestPrime: Number(prime) }),
      coprime: form.coprime,
      ...(form.equalSums ? { equalSums: 'all' as const } : {}),
      ...(form.worm ? { worm: { starts: { from: 1, to: 2 }, wheel: driven } } : {}),
    },
  };
}
