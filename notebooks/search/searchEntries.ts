import type { Quantity } from '../../lib/graph/quantity.ts';
import { blockChoices } from '../blockChoices.ts';
import type { StepwellDocument } from '../document.ts';
import type { Lesson } from '../lessons/lesson.ts';
import { kindWords } from '../quantitySearch.ts';
import { type ReadingPath, readingPaths } from '../reading/paths.ts';
import type { Word } from '../words/word.ts';
import { cautionEntries } from './cautionEntries.ts';
import { proseWords } from './proseWords.ts';
import type { EntryKind, SearchEntry } from './searchEntry.ts';

/** Lists of what there is. */
export interface Searched {
  readonly documents: readonly StepwellDocument[];
  readonly quantities: Iterable<Quantity>;
  readonly words: readonly Word[];
  readonly lessons: readonly Pick<Lesson, 'id' | 'title' | 'about' | 'minutes'>[];
  readonly lectures: readonly { readonly id: string; readonly title: string; readonly about?: string }[];
}

/** Everything that can be found, each once. */
export function searchEntries(all: Searched): readonly SearchEntry[] {
  return [
    ...all.documents.map(documentEntry),
    ...cautionEntries(all.documents),
    ...readingPaths.map(pathEntry),
    ...all.documents.flatMap(partEntries),
    ...all.words.map(wordEntry),
    ...[...all.quantities].flatMap((quantity) => [numberEntry(quantity), ...optionEntries(quantity)]),
    ...all.lessons.map(({ id, title, about, minutes }) =>
      learningEntry('lesson', `lessons/${id}`, title, `${minutes} minutes`, about),
    ),
    ...all.lectures.map(({ id, title, about = '' }) =>
      learningEntry('lecture', `lectures/${id}`, title, 'lecture', about),
    ),
  ];
}

function documentEntry({ id, title, short = '', lead }: StepwellDocument): SearchEntry {
  return {
    key: id,
    kind: 'document',
    name: title,
    beside: '',
    also: short,
    called: [short],
    about: proseWords(lead),
    to: id,
  };
}

function partEntries(document: StepwellDocument): SearchEntry[] {
  const { id, title } = document;
  return blockChoices(document).flatMap((choice): SearchEntry[] => {
    const [kind = '', ...name] = choice.label.split(': ');
    const block = document.blocks.find((one) => one.id === choice.id)!;
    if (block.kind === 'caution') return [];
    return [
      {
        key: `${id}/${choice.id}`,
        kind: 'part',
        name: name.join(': '),
        beside: `${kind.toLowerCase()} in ‘${title}’`,
        also: choice.id.replaceAll('-', ' '),
        about: 'prose' in block ? proseWords(block.prose) : '',
        to: `${id}/${choice.id}`,
      },
    ];
  });
}

function wordEntry({ id, word, also = [], symbol = '', meaning, convention = '' }: Word): SearchEntry {
  return {
    key: `words/${id}`,
    kind: 'word',
    name: word,
    beside: also.slice(0, 3).join(', '),
    also: `${also.join(' ')} ${plainTex(symbol)}`,
    called: also,
    about: plainTex(`${meaning} ${convention}`),
    to: `words/${id}`,
  };
}

function numberEntry(quantity: Quantity): SearchEntry {
  const { id, name, symbol, about } = quantity;
  return {
    key: `number ${id}`,
    kind: 'number',
    name,
    beside: kindWords(quantity),
    also: `${id} ${id.replace(/([a-z])([A-Z])/g, '$1 $2')} ${plainTex(symbol)}`,
    called: [id],
    about,
    quantity: id,
  };
}

/** The ways that an input offers: copper is found, and leads to the input that takes it. */
function optionEntries(quantity: Quantity): SearchEntry[] {
  if (quantity.kind !== 'choice') return [];
  return Object.entries<string>(quantity.options).map(([key, option]) => ({
    key: `option ${quantity.id} ${key}`,
    kind: 'option',
    name: option,
    beside: `one way of ‘${quantity.name}’`,
    also: quantity.name,
    about: '',
    quantity: quantity.id,
  }));
}

function pathEntry({ id, title, about, called }: ReadingPath): SearchEntry {
  return {
    key: `reading/${id}`,
    kind: 'path',
    name: title,
    beside: 'a way through all pages',
    also: called.join(' '),
    called,
    about,
    to: `reading/${id}`,
  };
}

function learningEntry(
  kind: EntryKind,
  to: string,
  name: string,
  beside: string,
  about: string,
): SearchEntry {
  return { key: to, kind, name, beside, also: '', about, to };
}

/** TeX as one might type it: `\kappa_\text{dark}` is "kappa dark". */
export function plainTex(tex: string): string {
  return tex
    .replace(/\\(text|mathrm|bar|dot|sqrt|frac|overline)\b/g, ' ')
    .replace(/[\\{}_^$]/g, ' ')
    .replace(/\s+/g, ' ');
}
