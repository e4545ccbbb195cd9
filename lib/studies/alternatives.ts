import { longestName, oneLine } from '../design/ownParts.ts';
import { mostAlternatives } from '../design/savedStudies.ts';
import type { DesignState } from '../graph/state.ts';
import { type Alternative, noStudies } from '../graph/studies.ts';
import { Problem } from '../problem.ts';

type Design = Omit<DesignState, 'revision'>;

export const alternativesOf = ({ studies = noStudies }: Design): readonly Alternative[] =>
  studies.alternatives;

const withAlternatives = (design: Design, alternatives: readonly Alternative[]): Design => ({
  ...design,
  studies: { ...(design.studies ?? noStudies), alternatives },
});

/** The design with itself kept under a name of one line; a Problem where the name is empty, taken or too long, or no more fit. */
export function keepAlternative(design: Design, name: string): Design {
  const kept = alternativesOf(design);
  const line = oneLine(name, 'name of the alternative', longestName, true);
  if (kept.some((one) => one.name === line))
    throw new Problem(
      'impossible',
      `There is an alternative ‘${line}’ already; give this one another name.`,
      {
        value: line,
      },
    );
  if (kept.length === mostAlternatives)
    throw new Problem(
      'impossible',
      `${mostAlternatives} alternatives are kept, and no more fit. Take one out first.`,
      { allowed: `up to ${mostAlternatives}` },
    );
  return withAlternatives(design, [...kept, { name: line, about: '', inputs: design.inputs }]);
}

/** A name that no alternative has yet. */
export function freeName(design: Design): string {
  const taken = new Set(alternativesOf(design).map(({ name }) => name));
  let count = taken.size + 1;
  while (taken.has(`Alternative ${count}`)) count++;
  return `Alternative ${count}`;
}

/** The design without the alternative at `place`. */
export function forgetAlternative(design: Design, place: number): Design {
  return withAlternatives(design, alternativesOf(design).toSpliced(place, 1));
}

/** The design with the inputs of the alternative at `place`; all that is kept stays kept. */
export function takeAlternative(design: Design, place: number): Design {
  const { inputs } = alternativesOf(design)[place]!;
  return { ...design, inputs: { ...design.inputs, ...inputs } };
}
