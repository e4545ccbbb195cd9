import type { Graph } from '../graph/graph.ts';
import type { DesignState } from '../graph/state.ts';
import { noStudies, type OwnBlock, type OwnLine, type Studies } from '../graph/studies.ts';
import { Problem } from '../problem.ts';
import { parseFormula } from './formulaParser.ts';
import { namesIn } from './formulaSyntax.ts';
import { ownLimits } from './ownLines.ts';
import { ownQuantities } from './ownQuantities.ts';

type Design = Omit<DesignState, 'revision'>;

export const ownLinesOf = ({ studies = noStudies }: Design): readonly OwnLine[] => studies.ownLines;

const withLines = (design: Design, ownLines: readonly OwnLine[]): Design => ({
  ...design,
  studies: { ...(design.studies ?? noStudies), ownLines },
});

/**
 * The design with a line in place of the one at `place`, or behind all others without one. Throws its Problem where the
 * line cannot be used; lines that rest on it may get one.
 */
export function putLine(base: Graph, design: Design, line: OwnLine, place?: number): Design {
  const lines = ownLinesOf(design);
  // Before its id: that is made of the name.
  if (line.name.trim() === '')
    throw new Problem('absent', 'The number has no name yet; give it a few words.');
  if (line.formula.trim() === '')
    throw new Problem('absent', `‘${line.name}’ has no formula yet; write what it follows from.`);
  const next = place === undefined ? [...lines, line] : lines.with(place, line);
  const at = place ?? lines.length;
  const wrong = ownQuantities(base, next).problems.find((one) => one.line === at);
  if (wrong) throw wrong.problem;
  return withLines(design, next);
}

/** The design without the line at `place`. */
export function takeOutLine(design: Design, place: number): Design {
  return withLines(design, ownLinesOf(design).toSpliced(place, 1));
}

/** An id made of a name, that none of `taken` has: "depth to width" gives `own.depthToWidth`. */
export function idOfName(name: string, taken: ReadonlySet<string>): string {
  const words = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .split(/[^A-Za-z0-9]+/)
    .filter((word) => word !== '');
  const joined = words
    .map((word, i) => (i === 0 ? word.toLowerCase() : word[0]!.toUpperCase() + word.slice(1).toLowerCase()))
    .join('')
    .replace(/^\d+/, '');
  const plain = joined === '' ? 'number' : joined[0]!.toLowerCase() + joined.slice(1);
  // Room for a count behind it.
  const id = `own.${plain.slice(0, ownLimits.id - 'own.'.length - 3)}`;
  if (!taken.has(id)) return id;
  let count = 2;
  while (taken.has(`${id}${count}`)) count++;
  return `${id}${count}`;
}

/** Where an own quantity is used, in words: other lines, pages, lectures and requirements. */
export function usesOf(
  id: string,
  { ownLines, ownDocuments, lectures, requirements }: Studies,
): readonly string[] {
  const lines = ownLines.filter((line) => line.id !== id && idsIn(line.formula).has(id));
  const pages = ownDocuments.filter(({ blocks }) => blocks.some((block) => shows(block, id)));
  const given = lectures.filter(({ steps }) =>
    steps.some(
      ({ pieces, notes = '', ask }) =>
        pieces.some((piece) => shows(piece, id)) || `${notes} ${ask?.question ?? ''}`.includes(`{${id}}`),
    ),
  );
  return [
    ...lines.map(({ name }) => `‘${name}’`),
    ...pages.map(({ title }) => `the page ‘${title}’`),
    ...given.map(({ title }) => `the lecture ‘${title}’`),
    ...(requirements.some((one) => one.id === id) ? ['a requirement'] : []),
  ];
}

function shows(piece: OwnBlock, id: string): boolean {
  if (piece.kind === 'text') return piece.text.includes(`{${id}}`);
  if (piece.kind === 'equation') return piece.id === id;
  return piece.kind !== 'block' && piece.ids.includes(id);
}

/** Ids that a formula names; none where it cannot be read. */
function idsIn(formula: string): ReadonlySet<string> {
  try {
    return new Set(namesIn(parseFormula(formula)).map(({ id }) => id));
  } catch (error) {
    if (error instanceof Problem) return new Set();
    throw error;
  }
}
