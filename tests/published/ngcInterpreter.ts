/** A small interpreter of RS-274/NGC words, from NISTIR 6556; only what drill programs use. Lengths in mm. */

export interface Move {
  readonly fromX: number;
  readonly fromY: number;
  readonly fromZ: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly rapid: boolean;
  readonly across: boolean;
}

export interface Run {
  readonly moves: readonly Move[];
  /** Every feed downwards below the face: where, how deep, with which tool. */
  readonly cuts: readonly { readonly x: number; readonly y: number; readonly to: number; readonly tool: number }[];
  /** Some hole was pecked: rapid moves then go back into the hole. */
  readonly pecked: boolean;
}

/** Rapid back to this far above the last peck, mm (NISTIR 6556, G83). */
const PECK_RETURN = 0.254;
const round = (value: number): number => Math.round(value * 1e9) / 1e9 + 0;

export function runProgram(text: string): Run {
  const machine = new Machine();
  for (const raw of text.split('\n')) {
    const line = raw.replace(/\([^)]*\)/g, '').replace(/\s+/g, '');
    if (line === '' || line === '%') continue;
    const words = [...line.matchAll(/([A-Z])([+-]?(?:\d+\.?\d*|\.\d+))/g)].map(([, letter = '', value]) => ({
      letter,
      value: Number(value),
    }));
    if (words.map(({ letter }) => letter).join('').length === 0) throw new Error(`cannot read "${raw}"`);
    if (machine.line(words)) break;
  }
  if (!machine.ended) throw new Error('the program does not end');
  return machine;
}

interface Word {
  readonly letter: string;
  readonly value: number;
}

class Machine implements Run {
  readonly moves: Move[] = [];
  readonly cuts: { x: number; y: number; to: number; tool: number }[] = [];
  pecked = false;
  ended = false;
  private x = 0;
  private y = 0;
  private z = 0;
  private scale: number | undefined;
  private motion: number | undefined;
  private retractToOld = true;
  private feed = 0;
  private tool = 0;
  private selected = 0;
  private spinning = false;
  private sticky: { z?: number; r?: number; q?: number } = {};

  /** Order of execution as in the report: feed, speed, tool, spindle, units, modes, motion, stop. True at the end. */
  line(words: readonly Word[]): boolean {
    const value = (letter: string) => words.find((word) => word.letter === letter)?.value;
    const codes = (letter: string) => words.filter((word) => word.letter === letter).map((word) => word.value);
    const gs = codes('G');
    const ms = codes('M');
    if (gs.includes(20)) this.scale = 25.4;
    if (gs.includes(21)) this.scale = 1;
    const scale = this.scale ?? 1;
    const feed = value('F');
    if (feed !== undefined) this.feed = feed * scale;
    const tool = value('T');
    if (tool !== undefined) this.selected = tool;
    if (ms.includes(6)) {
      this.tool = this.selected;
      this.spinning = false;
    }
    if (ms.includes(3)) this.spinning = true;
    if (ms.includes(5)) this.spinning = false;
    if (gs.includes(91)) throw new Error('incremental moves are not expected here');
    if (gs.includes(98)) this.retractToOld = true;
    if (gs.includes(99)) this.retractToOld = false;
    const motions = gs.filter((g) => g <= 3 || (g >= 80 && g <= 89));
    if (motions.length > 1) throw new Error('two motion words on one line');
    const axes = ['X', 'Y', 'Z'].some((letter) => value(letter) !== undefined);
    if (motions[0] !== undefined) {
      this.motion = motions[0];
      this.sticky = {};
    }
    if (this.motion === 80 && axes) throw new Error('an axis word on a G80 line');
    if (axes) this.move(value, scale);
    if (ms.includes(30) || ms.includes(2)) this.ended = true;
    return this.ended;
  }

  private move(value: (letter: string) => number | undefined, scale: number): void {
    const word = (letter: string, old: number) =>
      value(letter) === undefined ? old : round((value(letter) ?? 0) * scale);
    const x = word('X', this.x);
    const y = word('Y', this.y);
    if (this.motion === 0 || this.motion === 1) this.go(x, y, word('Z', this.z), this.motion === 0);
    else if (this.motion !== undefined && this.motion >= 81) {
      this.sticky = {
        z: word('Z', this.sticky.z ?? Number.NaN),
        r: word('R', this.sticky.r ?? Number.NaN),
        q: word('Q', this.sticky.q ?? Number.NaN),
      };
      this.cycle(x, y);
    } else throw new Error('a move without a motion word');
  }

  private cycle(x: number, y: number): void {
    const { z = Number.NaN, r = Number.NaN, q = Number.NaN } = this.sticky;
    if (!(r > z)) throw new Error('R must be above Z');
    const old = this.z;
    if (this.z < r) this.go(this.x, this.y, r, true);
    this.go(x, y, this.z, true);
    this.go(x, y, r, true);
    const clear = this.retractToOld ? Math.max(old, r) : r;
    if (this.motion === 83) {
      if (!(q > 0)) throw new Error('Q must be positive');
      this.pecked = true;
      for (let bottom = r; bottom > z; ) {
        const next = round(Math.max(z, bottom - q));
        this.go(x, y, next, false);
        if (next > z) {
          this.go(x, y, clear, true);
          this.go(x, y, round(next + PECK_RETURN), true);
        }
        bottom = next;
      }
      this.go(x, y, clear, true);
    } else {
      this.go(x, y, z, false);
      // G85 feeds out again; G81 goes out at rapid.
      if (this.motion === 85) this.go(x, y, r, false);
      else if (this.motion !== 81) throw new Error(`cycle G${this.motion} is not expected here`);
      this.go(x, y, clear, true);
    }
  }

  private go(x: number, y: number, z: number, rapid: boolean): void {
    if (x === this.x && y === this.y && z === this.z) return;
    if (!rapid && this.feed <= 0) throw new Error('a feed move without a feed');
    const across = x !== this.x || y !== this.y;
    this.moves.push({ fromX: this.x, fromY: this.y, fromZ: this.z, x, y, z, rapid, across });
    if (rapid && !across && z < this.z && z < 0) this.pecked = true;
    if (!rapid && z < this.z && z < 0) {
      if (!this.spinning) throw new Error('cutting with the spindle at rest');
      this.cuts.push({ x, y, to: z, tool: this.tool });
    }
    [this.x, this.y, this.z] = [x, y, z];
  }
}
