import type { ComparedProfile, ProfileComparisons } from '../lib/design/profileComparisons.ts';
import { formatReadable } from '../lib/graph/units.ts';
import { alike } from './measuredSpotSentences.ts';

/** How the widths of all measured profiles compare with the predicted ones, and what could not be compared. */
export function profilesSaid({ compared, refused }: ProfileComparisons): string {
  const why = refused.map(({ name, why }) => `‘${name}’ is not compared. ${why}`);
  return [...(compared.length > 0 ? [widthsSaid(compared)] : []), ...why].join(' ');
}

const departure = ({ width, predictedWidth }: ComparedProfile) => width / predictedWidth - 1;

const wholeOf = (count: number) => (count === 2 ? 'Both' : `All ${count}`);

function widthsSaid(compared: readonly ComparedProfile[]): string {
  const limit = formatReadable(alike, '1', '%', 2);
  const apart = compared.filter((one) => Math.abs(departure(one)) > alike);
  const all = compared.length;
  if (apart.length === 0) {
    return all === 1
      ? `The profile is as wide as predicted to ${limit}.`
      : `${wholeOf(all)} profiles are as wide as predicted to ${limit}.`;
  }
  const worst = apart.reduce((most, one) =>
    Math.abs(departure(one)) > Math.abs(departure(most)) ? one : most,
  );
  const side = departure(worst) > 0 ? 'wider' : 'narrower';
  const most = `${formatReadable(Math.abs(departure(worst)), '1', '%', 2)} ${side} than predicted`;
  if (all === 1) return `The profile is ${most}. Look first at the z given for it.`;
  const count = apart.length === all ? `${wholeOf(all)} profiles` : `Of ${all} profiles ${apart.length}`;
  const verb = apart.length === 1 ? 'differs' : 'differ';
  const which = apart.length === 1 ? `‘${worst.name}’ is` : `‘${worst.name}’ most: it is`;
  return `${count} ${verb} in width by more than ${limit}; ${which} ${most}. Look first at the z given for it.`;
}
