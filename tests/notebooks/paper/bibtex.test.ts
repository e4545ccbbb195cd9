import { describe, expect, it } from 'vitest';
import { sourceKeys, sourceOf } from '../../../lib/materials/bibliography.ts';
import { escapeTex, writeBibtex } from '../../../notebooks/paper/bibtex.ts';

interface Entry {
  readonly type: string;
  readonly key: string;
  readonly fields: Readonly<Record<string, string>>;
}

/** Reads BibTeX by counting braces, as BibTeX does; throws at anything else. */
function readBibtex(text: string): Entry[] {
  const found: Entry[] = [];
  let at = 0;
  const take = (pattern: RegExp) => {
    const sticky = new RegExp(pattern.source, 'uy');
    sticky.lastIndex = at;
    const match = sticky.exec(text);
    if (!match) throw new Error(`not BibTeX at ${at}: ${text.slice(at, at + 40)}`);
    at += match[0].length;
    return match;
  };
  const inBraces = () => {
    const start = at;
    for (let depth = 1; depth > 0; at++) {
      if (at >= text.length) throw new Error('a brace is not closed');
      if (text[at] === '\\') at++;
      else if (text[at] === '{') depth++;
      else if (text[at] === '}') depth--;
    }
    return text.slice(start, at - 1);
  };
  while (at < text.length) {
    const [, type, key] = take(/@(\w+)\{([\w-]+),\n/);
    const fields: Record<string, string> = {};
    while (text[at] !== '}') {
      const [, name] = take(/ {2}(\w+) = \{/);
      if (name! in fields) throw new Error(`${key}: ${name} twice`);
      fields[name!] = inBraces();
      take(/,\n/);
    }
    take(/\}\n\n?/);
    found.push({ type: type!, key: key!, fields });
  }
  return found;
}

/** What BibTeX's own styles ask for, but for the title of an article, which physicists' lists leave out. */
const needed: Readonly<Record<string, readonly string[]>> = {
  article: ['journal', 'year'],
  incollection: ['booktitle', 'year'],
  book: ['title', 'author'],
  misc: ['title'],
};

describe('sources as BibTeX', () => {
  const keys = sourceKeys();
  const entries = readBibtex(writeBibtex(keys));

  it('has an entry that reads back for every publication', () => {
    expect(entries.map(({ key }) => key)).toEqual(keys);
    console.log(`entries: ${entries.length}`);
    for (const { key, type, fields } of entries) {
      const source = sourceOf(key)!;
      for (const name of needed[type] ?? ['of no known kind'])
        expect(fields[name], `${key}: ${name}`).toBeTruthy();
      expect(fields.doi, key).toBe(source.doi);
      expect(fields.year, key).toBe(source.year === undefined ? undefined : String(source.year));
      expect(fields.pages?.replace('--', '–'), key).toBe(source.pages);
    }
  });

  it('has every author with family name first, and "et al." as others', () => {
    for (const { key, fields } of entries) {
      const source = sourceOf(key)!;
      const names = (fields.author ?? '').split(' and ').filter((name) => name !== '');
      const back = names.map((name) => (name === 'others' ? name : name.split(', ').reverse().join(' ')));
      const said = source.authors.flatMap((author) =>
        author.endsWith(' et al.') ? [author.replace(' et al.', ''), 'others'] : [author],
      );
      expect(back, key).toEqual(said);
      for (const name of names.filter((other) => other !== 'others'))
        expect(name, key).toMatch(/^.+, (\p{Lu}\.[ -]?)+$/u);
    }
    expect(entries.find(({ key }) => key === 'diniso2014')!.fields.author).toBe('Di Niso, F. and others');
  });

  it('says where a source was quoted from memory', () => {
    for (const { key, fields } of entries)
      expect(fields.note, key).toBe(
        { read: undefined, abstract: 'abstract read', memory: 'quoted from memory', computed: 'computed' }[
          sourceOf(key)!.standing
        ],
      );
  });

  it('leaves out what is no publication, and writes each once', () => {
    expect(writeBibtex(['computed', 'common practice', 'milam1998', 'milam1998']).match(/@/g)).toHaveLength(
      1,
    );
    expect(writeBibtex(['definition'])).toBe('');
  });

  it('escapes what TeX takes for commands', () => {
    expect(escapeTex('50 % & $x_1$ #{a}\\b ~^')).toBe(
      '50 \\% \\& \\$x\\_1\\$ \\#\\{a\\}\\textbackslash{}b \\textasciitilde{}\\textasciicircum{}',
    );
    expect(escapeTex('1550–1567\n')).toBe('1550--1567 ');
  });
});
