import { isInput } from '../../../../lib/graph/quantity.ts';
import type { OwnBlock } from '../../../../lib/graph/studies.ts';
import { Problem } from '../../../../lib/problem.ts';
import type { PageContext } from '../../context.ts';
import { blockFields } from './blockFields.ts';
import { chartFields } from './chartFields.ts';
import { createChosenList } from './chosenList.ts';
import { captionFields, type FieldsOf, type PieceFields, type PieceOf } from './pieceParts.ts';
import { textFields } from './textFields.ts';

/** As many values or inputs stand in one piece. */
const mostListed = 30;

function listFields<K extends 'values' | 'controls'>(
  kind: K,
  label: string,
  of: Parameters<typeof createChosenList>[2]['of'],
): FieldsOf<K> {
  return (context, start, changed) => {
    const chosen = createChosenList(context, start?.ids ?? [], { label, of, most: mostListed, changed });
    const caption = captionFields(context, start, changed);
    return {
      elements: [chosen.element, ...caption.elements],
      read() {
        const ids = chosen.ids();
        if (ids.length === 0)
          throw new Problem('absent', 'Nothing is chosen yet; search for a number by a word of its name.');
        return { kind, ids, ...caption.read() };
      },
      focus: () => chosen.input.focus(),
    };
  };
}

const equationFields: FieldsOf<'equation'> = (context, start, changed) => {
  const chosen = createChosenList(context, start ? [start.id] : [], {
    label: 'Search for the number whose formula is shown',
    of: ({ kind }) => kind === 'derived',
    most: 1,
    changed,
  });
  const caption = captionFields(context, start, changed);
  return {
    elements: [chosen.element, ...caption.elements],
    read() {
      const [id] = chosen.ids();
      if (id === undefined)
        throw new Problem('absent', 'Nothing is chosen yet; search for a number by a word of its name.');
      return { kind: 'equation', id, ...caption.read() };
    },
    focus: () => chosen.input.focus(),
  };
};

const kinds: { readonly [K in OwnBlock['kind']]: FieldsOf<K> } = {
  text: textFields,
  block: blockFields,
  values: listFields('values', 'Search for a number to show', () => true),
  controls: listFields('controls', 'Search for an input to set', isInput),
  equation: equationFields,
  chart: chartFields,
};

/** The kinds of piece in words, in the order in which they are offered. */
export const pieceKinds: Readonly<Record<OwnBlock['kind'], string>> = {
  text: 'Text',
  block: 'Part of another page',
  values: 'Numbers',
  controls: 'Inputs',
  equation: 'Formula',
  chart: 'Chart over an input',
};

/** Fields for a kind of piece, filled from the piece that is there. */
export function pieceFields<K extends OwnBlock['kind']>(
  context: PageContext,
  kind: K,
  start: PieceOf<K> | undefined,
  changed: () => void,
): PieceFields {
  return kinds[kind](context, start, changed);
}
