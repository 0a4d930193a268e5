/** A small sound movement that uses every kind of thing once; tests spoil one place of it at a time. */

type Place = [number, number];

/** A fresh copy as the parsed text of a file. Loosely typed on purpose: tests write nonsense into it. */
export function sampleDocument() {
  const levels = { from: 0, to: 3 };
  const square = (size: number) => [
    { x: 0, y: 0 },
    { x: size, y: 0 },
    { x: size, y: size },
    { x: 0, y: size },
  ];
  const circle = (radius: number, centre: Place = [0, 0]) => ({ kind: 'circle', centre, radius });
  const point = (id: string, at: Place) => ({ id, at });
  // biome-ignore lint/suspicious/noExplicitAny: tests write values of every wrong type into copies of this
  const document: any = {
    format: 'depthwright-movement',
    version: 2,
    title: 'Sample',
    arbors: [
      {
        ...point('centre', [0, 0]),
        diameter: 3,
        bearings: [{ plate: 'base', bore: 2.05, pivot: 2, length: 3, outer: 4 }],
        endShake: 0.1,
      },
      {
        ...point('pipe', [0, 0]),
        diameter: 5,
        ridesOn: 'centre',
        pipeBore: 3.1,
        turns: 'freely',
        levels: { from: 5, to: 20 },
      },
      {
        ...point('third', [20, 10]),
        crossing: { from: 'centre', to: 'corner', side: 'left' },
        collars: [{ diameter: 4, from: 3, to: 5 }],
      },
      point('fourth', [-20, -10]),
      point('fifth', [0, 30]),
    ],
    wheels: [
      {
        id: 'great',
        arbor: 'centre',
        teeth: 60,
        size: { module: 0.8 },
        form: 'involute',
        level: 5,
        thickness: 2,
        hub: { diameter: 8, from: 3, to: 5 },
      },
      {
        id: 'leaves',
        arbor: 'third',
        teeth: 12,
        size: { diametralPitch: 31.75 },
        form: 'involute',
        level: 5,
        thickness: 3,
        arms: { count: 5, width: 3, rim: 3 },
      },
      {
        id: 'second',
        arbor: 'fourth',
        teeth: 30,
        size: { circularPitch: 2.5 },
        form: 'lantern',
        level: 9,
        thickness: 2,
      },
      { id: 'ring', arbor: 'pipe', teeth: 80, size: { module: 0.8 }, form: 'involute', level: 9, thickness: 2 },
    ],
    posts: [{ ...point('p1', [40, 40]), diameter: 8, hole: 4, plate: 'base', slidesAbout: 'centre', levels }],
    marks: [point('corner', [50, 0]), point('dial', [0, -40])],
    plates: [{ id: 'base', outline: circle(80), levels: { from: -3, to: 0 } }],
    walls: [{ id: 'drum', outline: circle(80), inner: circle(75), levels }],
    openings: [{ id: 'window', plate: 'base', outline: { kind: 'path', vertices: square(10) } }],
    rules: [
      { id: 'r-held', kind: 'held', point: 'centre', at: [0, 0] },
      {
        id: 'r-depth',
        kind: 'depth',
        wheels: ['great', 'leaves'],
        use: 'measured',
        measured: { value: 28.9, plusMinus: 0.02, reading: 'm1' },
      },
      { id: 'r-distance', kind: 'distance', points: ['centre', 'corner'], length: 50 },
      { id: 'r-radius', kind: 'radius', point: 'corner', centre: 'centre', length: 50 },
      { id: 'r-bearing', kind: 'bearing', point: 'corner', centre: 'centre', reference: 'dial', angle: 90 },
      { id: 'r-opposite', kind: 'opposite', point: 'fourth', centre: 'centre', of: 'third' },
      { id: 'r-same', kind: 'samePlace', points: ['pipe', 'centre'] },
      { id: 'r-line', kind: 'inLine', point: 'fifth', through: ['centre', 'dial'] },
      { id: 'r-radii', kind: 'sameRadius', points: ['third', 'fourth'], centre: 'centre' },
      { id: 'r-even', kind: 'evenSpacing', points: ['corner', 'dial'], centre: 'centre', leaveOut: true },
      { id: 'r-clear', kind: 'clearBy', parts: ['p1', 'great'], gap: 1 },
    ],
    couplings: [
      { id: 'c-worm', kind: 'worm', arbor: 'fifth', starts: 1, wheel: 'second' },
      { id: 'c-contrate', kind: 'contrate', wheels: ['great', 'second'] },
      { id: 'c-arm', kind: 'carrier', arm: 'centre', carries: ['fifth'] },
      { id: 'c-step', kind: 'stepped', arbor: 'third', wheel: 'ring' },
    ],
    drive: { arbor: 'centre', period: { value: 1, unit: 'h' } },
    indications: [
      { id: 'i-moon', arbor: 'pipe', period: { value: 29.530588853, unit: 'd' }, tolerancePpm: 5 },
      { id: 'i-ratio', arbor: 'third', ratio: '-5/1' },
    ],
    readings: [
      {
        id: 'm1',
        kind: 'depth',
        of: ['great', 'leaves'],
        value: 30.9,
        taken: { how: 'over', pins: [2, 2] },
        date: '2026-03-01',
      },
    ],
    made: [{ point: 'dial', state: 'drilled', at: [0.01, -40.02], plusMinus: 0.02 }],
    accepted: [{ finding: 'tooClose', parts: ['great', 'p1'], gap: 0.4, reason: 'seen on the bench' }],
  };
  return document;
}
