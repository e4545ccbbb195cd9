import { readSpotFile } from '../../lib/design/spotFile.ts';
import type { NamedSpots } from '../../lib/measured/spotTable.ts';
import type { Values } from './designOutcomes.ts';
import type { Case } from './sentenceCases.ts';

const table = (text: string, more: Values = {}): Values => ({
  'threshold.spotTable': readSpotFile(text, 'spots.csv'),
  ...more,
});
const rowsOf = (value: (id: string) => number) => value('threshold.spots') as unknown as NamedSpots;

const energies = table('E (µJ);d (µm)\n10;20\n12;24\n');
const powers = table('P (W);d (µm);z (mm);Nr\n1;20;0;1\n', { 'laser.repetitionRate': 250e3 });
const many = table('E (µJ);d (µm);a1;b1;c1;d7;e1;f1;g1;h1\n10;20;;;;;;;;\n');
const coupon = (results: readonly string[]) =>
  table(`E (µJ);x on coupon (mm);y on coupon (mm);d (µm)\n${results.map((d) => `10;0;0;${d}`).join('\n')}\n`);

/** Cases of the sentences about a table of spots. */
export const spotTableCases: readonly Case[] = [
  {
    says: 'spotEnergySaid',
    design: energies,
    text: /^Energies count as typed/,
    truth: (value) => rowsOf(value).rows.every(({ energy }) => energy! > 0),
  },
  {
    says: 'spotEnergySaid',
    design: powers,
    text: /average powers; divided by the repetition rate of the design, 250\u202fkHz,/,
    truth: (value) => rowsOf(value).rows[0]!.power === 1 && value('laser.repetitionRate') === 250e3,
  },
  {
    says: 'spotPlaceSaid',
    design: powers,
    text: /^Each mark has its own z/,
    truth: (value) => rowsOf(value).rows.every(({ z }) => z === 0),
  },
  {
    says: 'spotPlaceSaid',
    design: { ...energies, 'workpiece.z': 5e-5 },
    text: /says nothing of z, .* at z\u00a0=\u00a00\.05\u202fmm;/,
    truth: (value) => rowsOf(value).rows.every(({ z }) => z === undefined) && value('workpiece.z') === 5e-5,
  },
  {
    says: 'spotColumnsSaid',
    design: energies,
    text: /^Every column/,
    truth: (value) => rowsOf(value).ignored.length === 0,
  },
  {
    says: 'spotColumnsSaid',
    design: powers,
    text: /^Nothing is read from the column "Nr"\.$/,
    truth: (value) => rowsOf(value).ignored.length === 1,
  },
  {
    says: 'spotColumnsSaid',
    design: many,
    text: /the columns "a1", "b1", .*"f1" and 2 more\.$/,
    truth: (value) => rowsOf(value).ignored.length === 8,
  },
  {
    says: 'spotEmptySaid',
    design: energies,
    text: /^$/,
    truth: (value) => rowsOf(value).unmeasured.length === 0,
  },
  {
    says: 'spotEmptySaid',
    design: coupon(['20', '']),
    text: /^Row 3 of the coupon has no size yet;/,
    truth: (value) => rowsOf(value).unmeasured.length === 1,
  },
  {
    says: 'spotEmptySaid',
    design: coupon(['', '20', '']),
    text: /^2 rows of the coupon have no size yet;/,
    truth: (value) => rowsOf(value).unmeasured.length === 2,
  },
];
