/** A small reader of drill programs for the pre-flight report: follows the moves and tells which holes they make. */

/** A hole that a program makes, mm. */
export interface ReadHole {
  readonly x: number;
  readonly y: number;
  /** Lowest Z reached there, mm. */
  readonly bottom: number;
  readonly tool: number;
}

/** A drill program as it was read back. */
export interface ReadProgram {
  readonly holes: readonly ReadHole[];
  readonly unit: number | undefined;
  readonly problems: readonly string[];
}

/** Where the machine is and what holds for it, between two words. */
interface MachineState {
  x: number;
  y: number;
  z: number;
  motion: number;
  scale: number | undefined;
  tool: number;
  feed: number | undefined;
  spinning: boolean;
}

const MM_PER_INCH = 25.4;

/** Follows the program; every fault in its words is told with its line. */
export function readDrill(text: string): ReadProgram {
  const problems: string[] = [];
  const holes: ReadHole[] = [];
  const state: MachineState = {
    x: 0,
    y: 0,
    z: 0,
    motion: 0,
    scale: undefined,
    tool: 0,
    feed: undefined,
    spinning: false,
  };
  let ended = false;
  text.split(/\r?\n/).forEach((raw, index) => {
    const line = raw.replace(/\([^)]*\)/g, '').trim();
    if (line === '' || line === '%') return;
    const fault = (what: string) => problems.push(`line ${index + 1}: ${what}`);
    for (const flaw of flawsOf(line)) fault(flaw);
    const words = [...line.matchAll(/([A-Z])\s*(-?\d*\.?\d+)/g)].map(
      ([, letter = '', value]) => [letter, Number(value)] as const,
    );
    follow(words, state, holes, fault);
    if (words.some(([letter, value]) => letter === 'M' && (value === 2 || value === 30))) ended = true;
  });
  if (!ended) problems.push('the program has no end (M2 or M30)');
  if (state.scale === undefined) problems.push('the program states no units');
  return { holes, unit: state.scale, problems };
}

function flawsOf(line: string): readonly string[] {
  const flaws: string[] = [];
  if (/[0-9][eE]/.test(line)) flaws.push('a number with an exponent');
  if (line.includes(',')) flaws.push('a comma');
  if (/\.\d{5}/.test(line)) flaws.push('more than four decimals');
  if (/-0(\.0*)?(?![\d.])/.test(line)) flaws.push('minus zero');
  if (/[a-z]/.test(line)) flaws.push('small letters');
  return flaws;
}

function follow(
  words: readonly (readonly [string, number])[],
  state: MachineState,
  holes: ReadHole[],
  fault: (what: string) => void,
): void {
  const word = (letter: string): number | undefined => words.find(([own]) => own === letter)?.[1];
  for (const [letter, value] of words) {
    if (letter === 'G' && value === 20) state.scale = MM_PER_INCH;
    if (letter === 'G' && value === 21) state.scale = 1;
    if (letter === 'G' && (value === 91 || value === 92)) fault(`G${value} moves the zero`);
    if (letter === 'G' && (value <= 3 || (value >= 80 && value <= 89))) state.motion = value;
    if (letter === 'T') state.tool = value;
    if (letter === 'F') state.feed = value;
    if (letter === 'M' && (value === 3 || value === 5)) state.spinning = value === 3;
  }
  const scale = state.scale ?? 1;
  const before = { ...state };
  const to = (letter: string, old: number) => (word(letter) === undefined ? old : (word(letter) ?? 0) * scale);
  if (['X', 'Y', 'Z'].every((letter) => word(letter) === undefined)) return;
  state.x = to('X', state.x);
  state.y = to('Y', state.y);
  if (state.motion >= 81) {
    holes.push({ x: state.x, y: state.y, bottom: to('Z', 0), tool: state.tool });
    checkCut(state, fault);
    if (before.z <= 0) fault('a move across the work below its face');
    return;
  }
  state.z = to('Z', state.z);
  const across = state.x !== before.x || state.y !== before.y;
  if (across && Math.min(before.z, state.z) <= 0) fault('a move across the work below its face');
  if (state.z >= 0 || state.z >= before.z) return;
  const last = holes.at(-1);
  const same = last?.x === state.x && last.y === state.y && last.tool === state.tool;
  const bottom = same && last ? Math.min(last.bottom, state.z) : state.z;
  if (state.motion === 0) {
    // Back into a hole that is already deeper, between pecks, a rapid move meets no metal.
    if (!same || !last || state.z <= last.bottom) fault('a rapid move into the work');
    return;
  }
  checkCut(state, fault);
  if (same) holes.pop();
  holes.push({ x: state.x, y: state.y, bottom, tool: state.tool });
}

function checkCut(state: MachineState, fault: (what: string) => void): void {
  if (!state.feed) fault('cutting without a feed');
  if (!state.spinning) fault('cutting with the spindle at rest');
}
