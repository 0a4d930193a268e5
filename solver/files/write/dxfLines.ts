/** Group codes and values of a DXF file, a line each. */
import { trimmed } from '../../movement/decimal.ts';

/** Decimals of coordinates: a ten-millionth of a micrometre, so that ends of pieces meet for any reader's tolerance. */
const PLACES = 10;

/** Collects pairs of code and value. */
export class DxfLines {
  private readonly lines: string[] = [];

  add(code: number, value: string | number): this {
    this.lines.push(String(code), String(value));
    return this;
  }

  real(code: number, value: number): this {
    return this.add(code, trimmed(value, PLACES, 1));
  }

  point(code: number, x: number, y: number): this {
    this.real(code, x);
    this.real(code + 10, y);
    return this.real(code + 20, 0);
  }

  /** The lines, each with its end; nothing at all for none. */
  text(): string {
    return this.lines.length === 0 ? '' : `${this.lines.join('\n')}\n`;
  }
}
