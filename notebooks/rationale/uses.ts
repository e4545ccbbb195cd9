import { designGraph } from '../../lib/design/design.ts';
import type { DesignState } from '../../lib/graph/state.ts';
import { noStudies } from '../../lib/graph/studies.ts';
import { type UseName, useNames } from './section.ts';

/** Where the person's choice of uses is kept among the texts: their names, with commas between; absent until they choose. */
const chosenUses = 'uses';

/** Inputs and results by whose ids a use is recognised. */
const signs: Readonly<Record<UseName, readonly string[]>> = {
  ripples: ['ripples.', 'micrograph.', 'otherMicrograph.'],
  grooves: ['groove.'],
  engraving: ['engraving.'],
  sheet: ['sheet.'],
  scaleUp: ['scaleUp.'],
};

type Design = Omit<DesignState, 'revision'>;

/** The uses that the design is for: as the person chose, else those of which an input was set or a result is required. */
export function usesOf(design: Design): readonly UseName[] {
  const { texts, requirements } = design.studies ?? noStudies;
  const all = Object.keys(useNames) as UseName[];
  const chosen = texts[chosenUses];
  if (chosen !== undefined) {
    const words = chosen.split(',').map((word) => word.trim());
    return all.filter((use) => words.includes(use));
  }
  const set = Object.entries(designGraph.initial)
    .filter(([id, initial]) => Object.hasOwn(design.inputs, id) && differs(design.inputs[id], initial))
    .map(([id]) => id);
  const asked = requirements.map(({ id }) => id.replace(/^unshaped\./, ''));
  return all.filter((use) => [...set, ...asked].some((id) => signs[use].some((sign) => id.startsWith(sign))));
}

/** Lists are new objects in every design: their content counts. */
function differs(value: unknown, initial: unknown): boolean {
  const empty = Array.isArray(value) && value.length === 0 && Array.isArray(initial) && initial.length === 0;
  return !Object.is(value, initial) && !empty;
}

/** The design for these uses, whatever its inputs say. */
export function withUses(design: Design, uses: readonly UseName[]): Design {
  const studies = design.studies ?? noStudies;
  return { ...design, studies: { ...studies, texts: { ...studies.texts, [chosenUses]: uses.join(', ') } } };
}
