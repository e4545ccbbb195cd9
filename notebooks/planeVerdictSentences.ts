import { planeVerdicts } from '../lib/design/couponVerdict.ts';
import { formatQuantity, formatReadable } from '../lib/graph/units.ts';
import type { PlaneVerdict } from '../lib/process/planeVerdict.ts';
import { says } from './prose.ts';

/** More planes than this are told by those alone that are not confirmed. */
const mostTold = 6;

const words = {
  confirmed: 'the predicted profile is confirmed',
  'not confirmed': 'the predicted profile is not confirmed',
  undecided: 'it cannot be told whether the profile is as predicted',
} as const;

function placeOf({ z, pulses }: PlaneVerdict): string {
  const count = pulses === 1 ? '' : `, ${formatQuantity(pulses, '1', '1', 6)} pulses`;
  return `z\u00a0=\u00a0${formatReadable(z, 'm', 'mm')}${count}`;
}

function tell(plane: PlaneVerdict): string {
  const { verdict, reasons, threshold, seen, unmarked } = plane;
  const places = unmarked === 0 ? '' : ` and ${unmarked} ${unmarked === 1 ? 'place' : 'places'} without`;
  const marks = `${seen} ${seen === 1 ? 'mark' : 'marks'}${places}`;
  const show = (fluence: number, digits: number) =>
    formatQuantity(fluence, 'J/m^2', 'J/cm^2', digits).replace(/\s\S+$/, '');
  const asked = threshold
    ? `, with a threshold of ${show(threshold.value, 3)}\u00a0±\u00a0${show(threshold.uncertainty, 2)}\u202fJ/cm²`
    : '';
  return `At ${placeOf(plane)} (${marks}) ${words[verdict]}${asked}. ${reasons.join(' ')}`.trim();
}

/** The verdict of each plane of the table. */
export const planeVerdictsSaid = says({ planes: planeVerdicts }, ({ planes }) => {
  if (planes.length <= mostTold) return planes.map(tell).join(' ');
  const confirmed = planes.filter(({ verdict }) => verdict === 'confirmed').length;
  const rest = planes.filter(({ verdict }) => verdict !== 'confirmed');
  const all = `In ${confirmed} of ${planes.length} groups of one plane and number of pulses the predicted profile is confirmed.`;
  const more =
    rest.length > mostTold ? ` ${rest.length - mostTold} more are not confirmed or undecided.` : '';
  return `${[all, ...rest.slice(0, mostTold).map(tell)].join(' ')}${more}`;
});
