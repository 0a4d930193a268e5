/** Other ways than dividers: rotary table, readout, pins and chords between holes, offsets from edges. */
export { buttonList, chordList, distanceTable } from './betweenHoles.ts';
export { edgeOffsets } from './edgeOffsets.ts';
export { positivePreset, positiveZero, readoutList } from './readout.ts';
export { rotaryList, type TableError } from './rotaryTable.ts';
