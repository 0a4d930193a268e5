/** `depthwright check`: everything that fouls, is too close or does not fit, worst first. */
import { checkMovement, type Finding, withRemedies } from '../../solver/clearance/index.ts';
import { lengthText } from '../../solver/movement/decimal.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import type { Answer } from './answer.ts';
import { inBlocks, inColumns, wrapped } from './columns.ts';
import { isSettled, titleLine } from './plantAnswer.ts';

const SEVERITIES: Readonly<Record<Finding['severity'], string>> = { stops: 'stops', warns: 'warns', notes: 'note' };

const KINDS: Readonly<Record<Finding['kind'], string>> = {
  fouls: 'fouls',
  tooClose: 'too close',
  depth: 'depth',
  size: 'size',
  turning: 'turning',
  ring: 'ring',
  bearing: 'bearing',
  stack: 'stack',
  planting: 'planting',
  assembly: 'assembly',
  case: 'case',
};

function summary(findings: readonly Finding[]): string {
  if (findings.length === 0) return 'Nothing fouls, nothing is too close.';
  const count = (severity: Finding['severity']): number => findings.filter((each) => each.severity === severity).length;
  const parts = [
    [count('stops'), 'stopping the movement'],
    [count('warns'), 'to look at'],
    [count('notes'), 'to know'],
  ] as const;
  const told = parts.filter(([number]) => number > 0).map(([number, what]) => `${number} ${what}`);
  return `${findings.length === 1 ? '1 finding' : `${findings.length} findings`}: ${told.join(', ')}.`;
}

function table({ movement }: PlacedMovement, findings: readonly Finding[]): string[] {
  const length = (mm: number | undefined): string => (mm === undefined ? '' : lengthText(mm, movement.display));
  const rows = findings.map(({ severity, kind, parts, gap, wanted }) => [
    SEVERITIES[severity],
    KINDS[kind],
    parts.join(', '),
    length(gap),
    length(wanted),
  ]);
  if (rows.length === 0) return [];
  const heads = [{ head: '' }, { head: 'kind' }, { head: 'parts' }] as const;
  return inColumns([...heads, { head: 'gap', align: 'right' }, { head: 'wanted', align: 'right' }], rows);
}

/** Each finding in words, with what would cure it. */
function sentences(findings: readonly Finding[]): string[] {
  return findings.flatMap(({ says, remedies = [], advice }) => [
    ...wrapped(says, '  - '),
    ...remedies.flatMap((remedy) => wrapped(remedy.says, '      cure: ')),
    ...(advice === undefined ? [] : wrapped(advice, '      ')),
  ]);
}

/** A finding as data: of each remedy what it says and gives, without the whole changed movement. */
function findingJson({ remedies, ...finding }: Finding) {
  if (!remedies) return finding;
  return { ...finding, remedies: remedies.map(({ movement: _changed, ...remedy }) => remedy) };
}

/** The findings as text and as data, all that the window tells when it is idle; for the first ten, remedies are tried out. */
export function checkAnswer(placed: PlacedMovement): Answer {
  const findings = withRemedies(placed, checkMovement(placed, { depths: true }));
  const settled = isSettled(placed);
  const text = inBlocks([
    [titleLine(placed.movement)],
    table(placed, findings),
    sentences(findings),
    // What disagrees is among the findings already; what is loose is not.
    [summary(findings), ...(placed.freeMotions > 0 ? wrapped(placed.says) : [])],
  ]);
  const json = { title: placed.movement.title, settled, findings: findings.map(findingJson) };
  return { text, json, code: findings.length === 0 && settled ? 0 : 1 };
}
