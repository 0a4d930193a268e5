/**
 * Draws the icon: a wheel and a pinion in mesh on marking-out blue, their arbors struck with crosses. Run `node build/icons/drawIcon.mjs`; it writes icon.svg, and icon.png where rsvg-convert is there.
 */
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const SIZE = 1024;
const BLUE = '#16385c';
const LINE = '#e9f1f7';
const BRASS = '#e69f00';

const place = (name) => fileURLToPath(new URL(name, import.meta.url));
const number = (value) => String(Math.round(value * 100) / 100);

/** Outline of a wheel with rounded teeth: a polygon fine enough to look smooth. */
function wheel(cx, cy, pitch, teeth, height, phase) {
  const steps = teeth * 24;
  const points = Array.from({ length: steps }, (_, i) => {
    const angle = (2 * Math.PI * i) / steps + phase;
    const wave = Math.cos(teeth * (angle - phase));
    // Flattened wave: flanks steeper than a sine, tips and roots rounder than a square.
    const radius = pitch + height * Math.tanh(2.2 * wave);
    return `${number(cx + radius * Math.cos(angle))},${number(cy - radius * Math.sin(angle))}`;
  });
  return `M${points.join('L')}Z`;
}

const circle = (cx, cy, r, more) => `<circle cx="${number(cx)}" cy="${number(cy)}" r="${number(r)}" ${more}/>`;
const cross = (x, y, arm) => `<path d="M${x - arm} ${y}H${x + arm}M${x} ${y - arm}V${y + arm}"/>`;

/** Wheel and pinion: 20 and 8 teeth of one size, in mesh on a line that rises to the right. */
const big = { x: 420, y: 604, r: 262, teeth: 20 };
const small = { r: (big.r * 8) / big.teeth, teeth: 8 };
/** Half height of a tooth, and the play that keeps the two apart to the eye. */
const HEIGHT = 33;
const PLAY = 26;
const ALONG = (40 * Math.PI) / 180;
const apart = big.r + small.r + PLAY;
small.x = big.x + apart * Math.cos(ALONG);
small.y = big.y - apart * Math.sin(ALONG);
/** A tooth of the wheel and a space of the pinion on the line of centres. */
const bigPhase = ALONG;
const smallPhase = ALONG + Math.PI + Math.PI / small.teeth;

const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${SIZE}" height="${SIZE}" viewBox="0 0 ${SIZE} ${SIZE}">
  <title>Depthwright</title>
  <rect x="32" y="32" width="960" height="960" rx="208" fill="${BLUE}"/>
  <path d="${wheel(big.x, big.y, big.r, big.teeth, HEIGHT, bigPhase)}" fill="${LINE}"/>
  <path d="${wheel(small.x, small.y, small.r, small.teeth, HEIGHT, smallPhase)}" fill="${BRASS}"/>
  <g fill="none" stroke="${BLUE}" stroke-width="9" stroke-dasharray="34 16 6 16">
    ${circle(big.x, big.y, 182, '')}
    <path d="M${number(big.x)} ${number(big.y)}L${number(small.x)} ${number(small.y)}"/>
  </g>
  <g fill="none" stroke="${BLUE}" stroke-width="22" stroke-linecap="round">
    ${cross(big.x, big.y, 92)}
    ${cross(Math.round(small.x), Math.round(small.y), 40)}
  </g>
  <g fill="${BLUE}">
    ${circle(big.x, big.y, 30, '')}
    ${circle(Math.round(small.x), Math.round(small.y), 20, '')}
  </g>
</svg>
`;

writeFileSync(place('icon.svg'), svg);
const drawn = spawnSync('rsvg-convert', ['-w', '1024', '-o', place('icon.png'), place('icon.svg')]);
if (drawn.status !== 0) console.log('icon.png was not drawn: rsvg-convert is missing.');
