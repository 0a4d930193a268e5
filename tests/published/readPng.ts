/** Grey values of a PNG picture (8 bits, not interlaced), after the W3C PNG specification: chunks, deflate, row filters. */
import { inflateSync } from 'node:zlib';

export interface Picture {
  readonly width: number;
  readonly height: number;
  /** 0 black to 255 white, alpha taken as paper below. */
  readonly grey: (x: number, y: number) => number;
}

export function readPng(bytes: Buffer): Picture {
  const width = bytes.readUInt32BE(16);
  const height = bytes.readUInt32BE(20);
  const depth = bytes[24];
  const colour = bytes[25] ?? 0;
  if (depth !== 8 || bytes[28] !== 0) throw new Error('expected an 8-bit PNG without interlace');
  const channels = { 0: 1, 2: 3, 4: 2, 6: 4 }[colour as 0 | 2 | 4 | 6]; // other kinds give undefined
  if (!channels) throw new Error(`PNG colour kind ${colour} is not read here`);
  const parts: Buffer[] = [];
  for (let at = 8; at < bytes.length; ) {
    const length = bytes.readUInt32BE(at);
    if (bytes.toString('latin1', at + 4, at + 8) === 'IDAT') parts.push(bytes.subarray(at + 8, at + 8 + length));
    at += 12 + length;
  }
  const rows = unfiltered(inflateSync(Buffer.concat(parts)), width * channels, height, channels);
  const hasAlpha = channels === 2 || channels === 4;
  const grey = (x: number, y: number): number => {
    const at = (y * width + x) * channels;
    const level = channels < 3 ? (rows[at] ?? 0) : ((rows[at] ?? 0) + (rows[at + 1] ?? 0) + (rows[at + 2] ?? 0)) / 3;
    const alpha = hasAlpha ? (rows[at + channels - 1] ?? 255) / 255 : 1;
    return level * alpha + 255 * (1 - alpha);
  };
  return { width, height, grey };
}

function unfiltered(raw: Buffer, stride: number, height: number, step: number): Uint8Array {
  const out = new Uint8Array(stride * height);
  for (let row = 0; row < height; row++) {
    const filter = raw[row * (stride + 1)] ?? 0;
    for (let i = 0; i < stride; i++) {
      const left = i >= step ? (out[row * stride + i - step] ?? 0) : 0;
      const up = row > 0 ? (out[(row - 1) * stride + i] ?? 0) : 0;
      const corner = row > 0 && i >= step ? (out[(row - 1) * stride + i - step] ?? 0) : 0;
      const predicted = [0, left, up, (left + up) >> 1, paeth(left, up, corner)][filter] ?? 0;
      out[row * stride + i] = (raw[row * (stride + 1) + 1 + i] ?? 0) + predicted;
    }
  }
  return out;
}

function paeth(left: number, up: number, corner: number): number {
  const guess = left + up - corner;
  const [a, b, c] = [Math.abs(guess - left), Math.abs(guess - up), Math.abs(guess - corner)];
  return a <= b && a <= c ? left : b <= c ? up : corner;
}
