/**
 * A small movement for the command line and the shell, our own scenario with the numbers of the worked example
 * "two-depth planting" (two fixed arbors, one arbor between them placed by two depths).
 */

/** Part of a movement file that a test changes. */
export type Changes = Readonly<Record<string, unknown>>;

function wheel(id: string, arbor: string, teeth: number, level: number) {
  return { id, arbor, teeth, form: 'cycloidal', size: { module: 0.8 }, level, thickness: 1.5 };
}

/** The file's text; `changes` replace its top fields. */
export function twoDepths(changes: Changes = {}): string {
  return JSON.stringify({
    format: 'depthwright-movement',
    version: 2,
    title: 'Two depths',
    arbors: [
      { id: 'centre', name: 'centre', at: [0, 0], diameter: 4 },
      { id: 'escape', name: 'escape', at: [0, 45], diameter: 3 },
      { id: 'third', name: 'third', at: [16, 23] },
    ],
    wheels: [
      wheel('centreWheel', 'centre', 64, 2),
      wheel('thirdPinion', 'third', 8, 2),
      wheel('thirdWheel', 'third', 60, 8),
      wheel('escapePinion', 'escape', 8, 8),
    ],
    rules: [...HELD, ...DEPTHS],
    ...changes,
  });
}

export const HELD = [
  { id: 'h1', kind: 'held', point: 'centre', at: [0, 0] },
  { id: 'h2', kind: 'held', point: 'escape', at: [0, 45] },
] as const;
export const DEPTHS = [
  { id: 'd1', kind: 'depth', wheels: ['centreWheel', 'thirdPinion'] },
  { id: 'd2', kind: 'depth', wheels: ['thirdWheel', 'escapePinion'] },
] as const;
export { wheel };
