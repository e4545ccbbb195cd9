import { coupon, type PlannedCoupon } from '../../lib/design/coupon.ts';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { valueOrThrow } from '../../lib/graph/outcome.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import { Problem } from '../../lib/problem.ts';
import { couponCsv } from '../couponTable.ts';
import type { CommandIo } from './commandIo.ts';
import { designOptions, openDesign } from './openDesign.ts';
import { readOptions } from './options.ts';
import { writeFile } from './writeFile.ts';

/** `plan coupon [DESIGN] [--out FILE]`: the grid of test spots as CSV with empty columns for the results. */
export function plan(args: readonly string[], io: CommandIo): string {
  const [what, ...rest] = args;
  if (what !== 'coupon') {
    throw new Problem('unreadable', `'plan ${what ?? ''}' is not known; use plan coupon DESIGN.json.`);
  }
  const options = readOptions(rest, [...designOptions, 'out']);
  const state = openDesign(options, io);
  const outcome = createEngine(designGraph, state.inputs).evaluate([coupon.id])[coupon.id]!;
  const csv = couponCsv(valueOrThrow(outcome) as PlannedCoupon, state.name);
  const path = options.one('out');
  if (path === undefined) return csv;
  writeFile(io, path, new TextEncoder().encode(csv));
  return `${path}: ${shownValue(coupon, outcome)}.\n`;
}
