import { coupon, type PlannedCoupon } from '../../lib/design/coupon.ts';
import { designGraph } from '../../lib/design/design.ts';
import { ladder, type PlannedLadder } from '../../lib/design/ladder.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { valueOrThrow } from '../../lib/graph/outcome.ts';
import type { Quantity } from '../../lib/graph/quantity.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import { Problem } from '../../lib/problem.ts';
import { couponCsv } from '../couponTable.ts';
import { ladderCsv } from '../ladderTable.ts';
import type { CommandIo } from './commandIo.ts';
import { designOptions, openDesign } from './openDesign.ts';
import { readOptions } from './options.ts';
import { writeFile } from './writeFile.ts';

/** What is planned: the quantity, and its table to take along. */
const plans: Readonly<
  Record<string, { readonly quantity: Quantity; csv(plan: unknown, design?: string): string }>
> = {
  coupon: { quantity: coupon, csv: (plan, design) => couponCsv(plan as PlannedCoupon, design) },
  ladder: { quantity: ladder, csv: (plan, design) => ladderCsv(plan as PlannedLadder, design) },
};

/** `plan coupon|ladder [DESIGN] [--out FILE]`: spots to fire as CSV with empty columns for the results. */
export function plan(args: readonly string[], io: CommandIo): string {
  const [what = '', ...rest] = args;
  const planned = Object.hasOwn(plans, what) ? plans[what] : undefined;
  if (!planned) {
    const known = Object.keys(plans)
      .map((name) => `plan ${name} DESIGN.json`)
      .join(' or ');
    throw new Problem('unreadable', `'plan ${what}' is not known; use ${known}.`);
  }
  const options = readOptions(rest, [...designOptions, 'out']);
  const state = openDesign(options, io);
  const { id } = planned.quantity;
  const outcome = createEngine(designGraph, state.inputs).evaluate([id])[id]!;
  const csv = planned.csv(valueOrThrow(outcome), state.name);
  const path = options.one('out');
  if (path === undefined) return csv;
  writeFile(io, path, new TextEncoder().encode(csv));
  return `${path}: ${shownValue(planned.quantity, outcome)}.\n`;
}
