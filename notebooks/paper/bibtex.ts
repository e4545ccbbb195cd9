import { type Source, type Standing, sourceOf } from '../../lib/materials/bibliography.ts';

type Field = readonly [name: string, value: string | undefined];

/** What an entry says of itself where its source was not read in full. */
const notes: Readonly<Record<Standing, string | undefined>> = {
  read: undefined,
  abstract: 'abstract read',
  memory: 'quoted from memory',
  computed: 'computed',
};

/** Publications as BibTeX (UTF-8), in the order given, each once. What is no publication has no entry. */
export function writeBibtex(keys: readonly string[]): string {
  const entries = [...new Set(keys)].flatMap((key) => {
    const source = sourceOf(key);
    return source ? [entry(key, source)] : [];
  });
  return entries.join('\n');
}

function entry(key: string, source: Source): string {
  const { type, fields } = fieldsOf(source);
  const lines = [...fields, ...common(source)].flatMap(([name, value]) =>
    value === undefined || value === '' ? [] : [`  ${name} = {${value}},`],
  );
  return [`@${type}{${key},`, ...lines, '}', ''].join('\n');
}

/** Kind of publication: what has no container is a standard or catalogue, and a chapter names its book. */
function fieldsOf({ title, container, volume, pages }: Source): { type: string; fields: Field[] } {
  const place: Field[] = [
    ['volume', volume && escapeTex(volume)],
    ['pages', pages && escapeTex(pages)],
  ];
  if (container === undefined) return { type: 'misc', fields: [titleField(title)] };
  const chapter = /^ch\. (.+)$/.exec(container)?.[1];
  if (chapter !== undefined)
    return { type: 'book', fields: [titleField(title), ['chapter', escapeTex(chapter)]] };
  const named: Field[] = title === undefined ? [] : [titleField(title)];
  return container.startsWith('Handbook')
    ? { type: 'incollection', fields: [...named, ['booktitle', escapeTex(container)], ...place] }
    : { type: 'article', fields: [...named, ['journal', escapeTex(container)], ...place] };
}

function common({ authors, year, doi, standing }: Source): Field[] {
  return [
    ['author', authors.map(nameForBibtex).join(' and ')],
    ['year', year === undefined ? undefined : String(year)],
    // Read letter by letter: an escaped DOI would be another one.
    ['doi', doi?.replace(/[{}\s]/g, '')],
    ['note', notes[standing]],
  ];
}

/** Inner braces keep the capitals as they are. */
function titleField(title: string | undefined): Field {
  return ['title', title === undefined ? undefined : `{${escapeTex(title)}}`];
}

/** "F. Di Niso et al." as "Di Niso, F. and others": a name of two words stays together. */
function nameForBibtex(author: string): string {
  const alone = author.replace(/ et al\.$/, '');
  const [, first, last] = /^((?:\p{Lu}\p{L}?\.[ -]?)+)(\S.*)$/u.exec(alone) ?? [];
  const name = last === undefined ? `{${escapeTex(alone)}}` : `${escapeTex(last)}, ${first!.trim()}`;
  return alone === author ? name : `${name} and others`;
}

const marks: Readonly<Record<string, string>> = {
  '\\': '\\textbackslash{}',
  '~': '\\textasciitilde{}',
  '^': '\\textasciicircum{}',
  '–': '--',
};

/** Text in which TeX sees no commands. */
export function escapeTex(text: string): string {
  return text.replace(/\p{Cc}/gu, ' ').replace(/[\\~^–{}$&#%_]/g, (mark) => marks[mark] ?? `\\${mark}`);
}
