import { createEngine } from '../../lib/graph/engine.ts';
import type { DesignState } from '../../lib/graph/state.ts';
import { formatUnit, toUnit } from '../../lib/graph/units.ts';
import { Problem } from '../../lib/problem.ts';
import { canBeAsked, numberOf, requirementsOf } from '../../lib/studies/requirements.ts';
import { quoted } from '../csvText.ts';
import { boundsText, failedFirst, howFarText, type Standing, standingOf } from '../requirementWords.ts';
import type { PartlyDone } from './commandIo.ts';
import { graphOf } from './openDesign.ts';

const head = ['id', 'at least', 'at most', 'value', 'unit', 'verdict', 'how far', 'because'];

/**
 * `evaluate --requirements`: all that is asked of a design as CSV, what is not met first. Where one is not met, or it is not
 * known, the problem names them, so that a script can stop.
 */
export function judgedCsv(state: DesignState): string | PartlyDone {
  const requirements = requirementsOf(state);
  if (requirements.length === 0)
    throw new Problem(
      'absent',
      'Nothing is asked of this design; set requirements on the page What if, and save the design.',
    );
  const graph = graphOf(state);
  const known = requirements.map(({ id }) => id).filter((id) => graph.quantities.has(id));
  const outcomes = createEngine(graph, state.inputs).evaluate(known);
  const all = failedFirst(
    requirements.map((one) => standingOf(one, graph.quantities.get(one.id), outcomes[one.id])),
  );
  const out = `${[head, ...all.map(rowOf)].map((row) => row.map(quoted).join(',')).join('\r\n')}\r\n`;
  const open = all.filter(({ verdict }) => verdict !== 'met');
  if (open.length === 0) return out;
  return { out, problem: new Problem('outside', open.map(openSaid).join(' ')) };
}

/** Numbers in the unit in which the quantity is shown, to twelve digits: what comes after is the dust of binary sums. */
function rowOf(standing: Standing): string[] {
  const { requirement, quantity, outcome, verdict } = standing;
  const { id, atLeast, atMost, unit, reason } = requirement;
  const display = canBeAsked(quantity) ? (quantity.display ?? unit) : unit;
  const shown = display.startsWith('auto:') ? unit : display;
  const cell = (value: number | undefined) =>
    value === undefined ? '' : String(Number(toUnit(value, unit, shown).toPrecision(12)));
  const numbers = [cell(atLeast), cell(atMost), cell(numberOf(outcome))];
  return [id, ...numbers, formatUnit(shown), verdict, howFarText(standing), reason];
}

function openSaid(standing: Standing): string {
  const { requirement, quantity, verdict } = standing;
  return `${requirement.id}: required ${boundsText(requirement, quantity)}, ${verdict}, ${howFarText(standing)}.`;
}
