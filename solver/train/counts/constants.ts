/**
 * Periods that makers show, with their digits and sources. Values are decimal text, so that no digit is lost.
 *
 * Where a value comes from memory its source says so: the maker should confirm it before cutting for it.
 */

import { SECONDS } from '../turning/periods.ts';
import { exactly, multiply, type Rational, rational } from '../turning/rational.ts';

/** A period that is shown by instruments, with its source. */
export interface AstronomyConstant {
  readonly id: string;
  readonly name: string;
  readonly group: 'day' | 'month' | 'year' | 'tide' | 'planet' | 'moon' | 'own';
  /** Decimal digits as the source prints them. */
  readonly value: string;
  readonly unit: keyof typeof SECONDS;
  readonly source: string;
  /** What is easily taken for it, or what the mean hides. */
  readonly note?: string;
}

const ALMANAC = 'Astronomical Almanac for 2000, pages B6, C1, D2';
const NOAA = 'NOAA CO-OPS harmonic constituents, 360 degrees over the speed in degrees an hour';
const PLANETS = 'from memory of published planetary fact sheets (sidereal orbit period)';
const MOONS = 'from memory of published satellite fact sheets (sidereal orbit period)';

const row = (
  group: AstronomyConstant['group'],
  id: string,
  name: string,
  value: string,
  unit: AstronomyConstant['unit'],
  source: string,
  note?: string,
): AstronomyConstant => ({ id, name, group, value, unit, source, ...(note === undefined ? {} : { note }) });

export const CONSTANTS: readonly AstronomyConstant[] = [
  row('day', 'solarDay', 'mean solar day', '1', 'd', 'by definition of civil time'),
  row('day', 'siderealDay', 'mean sidereal day', '0.99726956633', 'd', ALMANAC, '1/1.00273790935 of a solar day'),
  row(
    'day',
    'lunarDay',
    'mean lunar day',
    '24.8412024',
    'h',
    'twice the M2 period',
    'from one moonrise to the next, in the mean',
  ),
  row(
    'month',
    'synodicMonth',
    'mean synodic month (new moon to new moon)',
    '29.530588853',
    'd',
    'ELP-2000/85 constant term at J2000, from memory; the Almanac prints 29.530589',
    'the true month differs from the mean by up to 7 hours; a disc with two moons turns in twice this',
  ),
  row('month', 'siderealMonth', 'mean sidereal month (by the stars)', '27.321662', 'd', ALMANAC),
  row('month', 'tropicalMonth', 'mean tropical month (by the equinox)', '27.321582', 'd', ALMANAC),
  row('month', 'draconicMonth', 'mean draconic month (node to node)', '27.212221', 'd', ALMANAC),
  row('month', 'anomalisticMonth', 'mean anomalistic month (perigee to perigee)', '27.554550', 'd', ALMANAC),
  row('year', 'tropicalYear', 'mean tropical year (the seasons)', '365.242190', 'd', ALMANAC),
  row('year', 'siderealYear', 'sidereal year (by the stars)', '365.256363', 'd', ALMANAC),
  row('year', 'anomalisticYear', 'anomalistic year (perihelion to perihelion)', '365.259635', 'd', ALMANAC),
  row('year', 'eclipseYear', 'eclipse year (node to node)', '346.620075', 'd', ALMANAC),
  row('year', 'gregorianYear', 'mean Gregorian calendar year', '365.2425', 'd', '146097 days in 400 years'),
  row('year', 'julianYear', 'mean Julian calendar year', '365.25', 'd', '1461 days in 4 years'),
  row(
    'tide',
    'tideM2',
    'M2, principal lunar tide',
    '12.4206012',
    'h',
    '360/28.9841042; speed from memory of Schureman, Manual of Harmonic Analysis, table 2',
  ),
  row('tide', 'tideS2', 'S2, principal solar tide', '12', 'h', 'by definition: 30 degrees an hour'),
  row('tide', 'tideN2', 'N2, larger elliptic lunar tide', '12.65834802', 'h', NOAA),
  row('tide', 'tideK1', 'K1, lunisolar daily tide', '23.93446902', 'h', NOAA),
  row('tide', 'tideO1', 'O1, lunar daily tide', '25.81934278', 'h', NOAA),
  row('planet', 'mercury', 'Mercury, once round the Sun', '87.9691', 'd', PLANETS),
  row('planet', 'venus', 'Venus, once round the Sun', '224.7008', 'd', PLANETS),
  row('planet', 'mars', 'Mars, once round the Sun', '686.980', 'd', PLANETS),
  row('planet', 'jupiter', 'Jupiter, once round the Sun', '4332.589', 'd', PLANETS),
  row('planet', 'saturn', 'Saturn, once round the Sun', '10759.22', 'd', PLANETS),
  row('planet', 'uranus', 'Uranus, once round the Sun', '30685.4', 'd', PLANETS),
  row('planet', 'neptune', 'Neptune, once round the Sun', '60189', 'd', PLANETS),
  row(
    'moon',
    'moonNodes',
    "Moon's nodes, once round (by the equinox)",
    '6798.38',
    'd',
    'from memory; 18.61 years',
    'runs backwards through the zodiac',
  ),
  row('moon', 'moonApsides', "Moon's apogee, once round (by the stars)", '3232.6', 'd', 'from memory; 8.85 years'),
  row('moon', 'io', 'Io, once round Jupiter', '1.769138', 'd', MOONS),
  row('moon', 'europa', 'Europa, once round Jupiter', '3.551181', 'd', MOONS),
  row('moon', 'ganymede', 'Ganymede, once round Jupiter', '7.154553', 'd', MOONS),
  row('moon', 'callisto', 'Callisto, once round Jupiter', '16.689018', 'd', MOONS),
  row('moon', 'titan', 'Titan, once round Saturn', '15.945421', 'd', MOONS),
];

/** The short name of a constant as it is said and typed: "synodic month" of synodicMonth. */
export const termOf = ({ id }: Pick<AstronomyConstant, 'id'>): string =>
  id.replace(/(?<=[\p{Ll}\d])(?=\p{Lu})/gu, ' ').toLowerCase();

/** The constant that a word means, in any case of letters: its term, its name, or its short name as the file has it. */
export function constantNamed(
  text: string,
  constants: readonly AstronomyConstant[] = CONSTANTS,
): AstronomyConstant | undefined {
  const plain = text.trim().toLowerCase().replace(/\s+/g, ' ');
  return constants.find((each) => [each.id, each.name, termOf(each)].some((word) => word.toLowerCase() === plain));
}

/** Exact seconds of a constant. */
export function secondsOfConstant(constant: AstronomyConstant): Rational {
  const value = exactly(constant.value);
  if (!value) throw new Error(`constant ${constant.id} has the value "${constant.value}", which is no number`);
  return multiply(value, rational(SECONDS[constant.unit]));
}

/** Number of significant digits that a constant carries. */
export const digitsOfConstant = (constant: AstronomyConstant): number =>
  constant.value.replace('.', '').replace(/^0+/, '').length;

/** The shipped constants with the maker's own after them; an own one with a shipped id takes its place. */
export function constantsWith(
  own: readonly Omit<AstronomyConstant, 'group'>[],
):
  | { readonly kind: 'constants'; readonly constants: readonly AstronomyConstant[] }
  | { readonly kind: 'refused'; readonly says: readonly string[] } {
  const says = own.flatMap((constant) => {
    const value = exactly(constant.value);
    return [
      ...(constant.id.trim() === '' ? [`constant "${constant.name}": id is empty, expected a short name.`] : []),
      ...(value && value.n > 0n
        ? []
        : [`constant ${constant.id}: value is "${constant.value}", expected a number greater than 0.`]),
      ...(constant.source.trim() === ''
        ? [`constant ${constant.id}: source is empty, expected where the value is from.`]
        : []),
    ];
  });
  if (says.length > 0) return { kind: 'refused', says };
  const replaced = new Set(own.map((constant) => constant.id));
  return {
    kind: 'constants',
    constants: [
      ...CONSTANTS.filter((constant) => !replaced.has(constant.id)),
      ...own.map((constant): AstronomyConstant => ({ ...constant, group: 'own' })),
    ],
  };
}
