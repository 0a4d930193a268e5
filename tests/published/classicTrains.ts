/**
 * Continued fractions and trains in print, as outside values.
 *
 * Convergents: derived with exact fractions; that of the sidereal day agrees with the one printed on the horology
 * page of numericana; that of Saturn with Huygens, Descriptio automati planetarii (1703), whose wheels are 206 and 7.
 */
export const CONVERGENTS: readonly {
  readonly name: string;
  readonly value: string;
  readonly terms: readonly number[];
  readonly convergents: readonly string[];
}[] = [
  {
    name: 'synodic',
    value: '29530588853/1000000000',
    terms: [29, 1, 1, 7, 1, 2, 17, 2],
    convergents: ['29', '30', '59/2', '443/15', '502/17', '1447/49', '25101/850', '51649/1749'],
  },
  {
    name: 'sidratio',
    value: '200547581870159/200000000000000',
    terms: [1, 365, 4, 7, 1, 2, 1, 361],
    convergents: [
      '1',
      '366/365',
      '1465/1461',
      '10621/10592',
      '12086/12053',
      '34793/34698',
      '46879/46751',
      '16958112/16911809',
    ],
  },
  {
    name: 'tropyear',
    value: '36524219/100000',
    terms: [365, 4, 7, 1, 3, 24],
    convergents: ['365', '1461/4', '10592/29', '12053/33', '46751/128', '1134077/3105'],
  },
  {
    name: 'sidyear',
    value: '365256363/1000000',
    terms: [365, 3, 1, 9, 13, 1],
    convergents: ['365', '1096/3', '1461/4', '14245/39', '186646/511', '200891/550'],
  },
  {
    name: 'lunarday',
    value: '10350501/10000000',
    terms: [1, 28, 1, 1, 7, 1, 2, 17, 1],
    convergents: ['1', '29/28', '30/29', '59/57', '443/428', '502/485', '1447/1398', '25101/24251', '26548/25649'],
  },
  {
    name: 'metonic',
    value: '365242190000/29530588853',
    terms: [12, 2, 1, 2, 1, 1, 17, 3, 632],
    convergents: ['12', '25/2', '37/3', '99/8', '136/11', '235/19', '4131/334', '12628/1021', '7985027/645606'],
  },
  {
    name: 'sidmonth',
    value: '13660831/500000',
    terms: [27, 3, 9, 5, 2, 1, 4],
    convergents: ['27', '82/3', '765/28', '3907/143', '8579/314', '12486/457', '58523/2142'],
  },
  {
    name: 'saturn',
    value: '77708431/2640858',
    terms: [29, 2, 2, 1, 5, 1, 4, 1],
    convergents: ['29', '59/2', '147/5', '206/7', '1177/40', '1383/47', '6709/228', '8092/275'],
  },
  { name: 'brocot', value: '191/23', terms: [8, 3, 3, 2], convergents: ['8', '25/3', '83/10', '191/23'] },
  {
    name: 'pi',
    value: '3.1415926535897931',
    terms: [3, 7, 15, 1, 292, 1],
    convergents: ['3', '22/7', '333/106', '355/113', '103993/33102', '104348/33215'],
  },
];

/** Trains as printed, with the printed or recomputed value and half a unit of its last digit, or better. */
export const TYPED_TRAINS: readonly {
  readonly name: string;
  readonly train: string;
  readonly value: number;
  readonly tolerance: number;
  readonly exact?: string;
}[] = [
  // Richard of Wallingford, 14th century, lag of the Sun: printed 0.002737915.
  {
    name: 'Wallingford, lag of the Sun',
    train: '29/32 x 2/16 x 8/331',
    value: 0.002737915,
    tolerance: 6e-10,
    exact: '29/10592',
  },
  // E. Sandgren, 1990: the 1/6.931 problem; (1/6.931 - 304/2107)^2 = 2.7009e-12.
  {
    name: 'Sandgren, one over 6.931',
    train: '16x19/(43x49)',
    value: 1 / 6.931,
    tolerance: 1.6435e-6,
    exact: '304/2107',
  },
  // Huygens 1703: Saturn.
  { name: 'Huygens, Saturn', train: '206/7', value: 77708431 / 2640858, tolerance: 29.43 * 1.0614e-4 },
  // Common practice: motion work of twelve.
  { name: 'motion work 36/12 x 40/10', train: '36/12 x 40/10', value: 12, tolerance: 0, exact: '12' },
  { name: 'motion work 24/8 x 32/8', train: '24/8 × 32/8', value: 12, tolerance: 0, exact: '12' },
  // math-fun mailing list (Hillis, Gosper), counts 12 to 400: values as printed there.
  {
    name: 'mailing list, Moon (aimed at a mistyped month)',
    train: '293x149x157/(12x83x233)',
    value: 29.5350888532671,
    tolerance: 1e-8,
  },
  {
    name: 'mailing list, Mercury',
    train: '293x152x358x101x61/(12x107x295x67x44)',
    value: 87.9692571945795,
    tolerance: 1e-8,
  },
  { name: 'mailing list, Venus', train: '293x152x149/(12x107x23)', value: 224.700799133144, tolerance: 1e-8 },
  { name: 'mailing list, Earth', train: '293x152x358x269/(12x107x295x31)', value: 365.256355463807, tolerance: 1e-8 },
  {
    name: 'mailing list, Mars',
    train: '293x152x358x101x263x267/(12x107x295x67x47x138)',
    value: 686.979585832448,
    tolerance: 1e-8,
  },
  {
    name: 'mailing list, Jupiter',
    train: '293x152x358x101x263x322x281x272/(12x107x295x67x47x103x107x183)',
    value: 4332.8201300432,
    tolerance: 1e-8,
  },
  {
    name: 'mailing list, Saturn',
    train: '293x152x358x101x263x322x281/(12x107x295x67x47x103x29)',
    value: 10755.6986519239,
    tolerance: 1e-8,
  },
];
