import type { Graph } from '../lib/graph/graph.ts';
import type { DesignState } from '../lib/graph/state.ts';
import { noStudies, type Studies } from '../lib/graph/studies.ts';
import { listed } from './shortTexts.ts';

type Design = Omit<DesignState, 'revision'>;

/** Names that are told one by one; of more the number. */
const mostNamed = 3;

const studyWords: Readonly<Record<keyof Studies, string>> = {
  alternatives: 'kept designs',
  requirements: 'what is asked of the design',
  ownLines: 'own numbers',
  ownDocuments: 'own pages',
  texts: 'own words',
  lectures: 'lectures',
};

/** What differs between two states of a design, in a few names: the inputs, and what is kept with them. */
export function stepSaid(graph: Graph, before: Design, now: Design): string {
  const names = [...changedInputs(graph, before, now), ...changedParts(before, now)];
  if (names.length === 0) return 'nothing that is shown';
  return names.length <= mostNamed
    ? listed(names)
    : `${names.slice(0, mostNamed - 1).join(', ')} and ${names.length - mostNamed + 1} more`;
}

function changedInputs(graph: Graph, before: Design, now: Design): string[] {
  return Object.keys(now.inputs)
    .filter((id) => !Object.is(now.inputs[id], before.inputs[id]))
    .map((id) => graph.quantities.get(id)?.name ?? id);
}

function changedParts(before: Design, now: Design): string[] {
  const [one, other] = [before.studies ?? noStudies, now.studies ?? noStudies];
  const differs = (key: keyof Studies) =>
    one[key] !== other[key] && JSON.stringify(listOf(one, key)) !== JSON.stringify(listOf(other, key));
  const keys = Object.keys(studyWords) as (keyof Studies)[];
  return [
    ...((before.name ?? '') === (now.name ?? '') ? [] : ['name']),
    ...((before.about ?? '') === (now.about ?? '') ? [] : ['notes']),
    ...keys.filter(differs).map((key) => studyWords[key]),
  ];
}

/** A part to be compared; alternatives, which hold files and tables, by their names. */
function listOf(studies: Studies, key: keyof Studies): unknown {
  return key === 'alternatives' ? studies.alternatives.map(({ name, about }) => [name, about]) : studies[key];
}
