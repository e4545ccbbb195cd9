import type { PlannedCoupon } from '../lib/design/coupon.ts';
import { formatQuantity, toUnit } from '../lib/graph/units.ts';
import { couponPlaces } from '../lib/measured/spotColumns.ts';
import type { CouponSpot } from '../lib/process/coupon.ts';
import type { DataColumn } from './document.ts';

/** How the units of the columns are written. */
const written: Readonly<Record<string, string>> = { um: 'µm', 'um^2': 'µm²', uJ: 'µJ', '1': '' };

/** Numbers of the coupon by column; NaN where they are filled in at the microscope. Read back as a table of spots. */
export function couponColumns({ grid, setting, settings, spots }: PlannedCoupon): DataColumn[] {
  const column = (name: string, si: string, unit: string, of: (spot: CouponSpot) => number): DataColumn => ({
    name,
    unit: written[unit] ?? unit,
    // Six digits: more than can be set or measured, and none of the dust of binary fractions.
    values: Float64Array.from(spots, (spot) => Number(toUnit(of(spot), si, unit).toPrecision(6))),
  });
  const empty = (name: string, unit: string) => column(name, 'm', unit, () => Number.NaN);
  const settingOf = ({ energy }: CouponSpot) => settings[grid.energies.indexOf(energy)]!;
  const [x, y] = couponPlaces;
  return [
    column('spot', '1', '1', ({ number }) => number),
    column(x, 'm', 'mm', (spot) => spot.x),
    column(y, 'm', 'mm', (spot) => spot.y),
    column('energy', 'J', 'uJ', ({ energy }) => energy),
    setting === 'power'
      ? column('average power', 'W', 'mW', settingOf)
      : column('attenuator', '1', '%', settingOf),
    column('z', 'm', 'mm', ({ z }) => z),
    column('N', '1', '1', ({ pulses }) => pulses),
    column('predicted diameter', 'm', 'um', ({ mark }) => mark.outerDiameter),
    column('predicted inner diameter', 'm', 'um', ({ mark }) => mark.innerDiameter),
    column('predicted area', 'm^2', 'um^2', ({ mark }) => mark.area),
    empty('dx', 'um'),
    empty('dy', 'um'),
    empty('inner diameter', 'um'),
    { name: 'remark', unit: '', values: Float64Array.from(spots, () => Number.NaN) },
  ];
}

/**
 * A coupon as CSV with empty columns for what is measured, to be given back filled as the table of measured spots. Lines of
 * comment say how, and for which design, where it has a name; a byte order mark tells spreadsheets that µ is one sign. No
 * comma in the comments: spreadsheets would part them into cells.
 */
export function couponCsv(coupon: PlannedCoupon, design = ''): string {
  const columns = couponColumns(coupon);
  const threshold = formatQuantity(coupon.threshold, 'J/m^2', 'J/cm^2', 3);
  const cell = (value: number) => (Number.isNaN(value) ? '' : String(value));
  const lines = [
    ...(design === '' ? [] : [`# Coupon of the design: ${design.replaceAll(/[,;\t\r\n]+/g, ' ')}.`]),
    `# Marks predicted with a threshold of ${threshold} for one pulse.`,
    '# Fill in dx and dy: 0 where no mark is seen and nothing where none was measured. Then give this table as the measured spots.',
    columns.map(({ name, unit }) => (unit === '' ? name : `${name} (${unit})`)).join(','),
    ...coupon.spots.map((_, row) => columns.map(({ values }) => cell(values[row]!)).join(',')),
  ];
  return `\uFEFF${lines.join('\r\n')}\r\n`;
}
