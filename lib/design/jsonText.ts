/** Deeper than any design: what is nested further was not saved here, and could not be written again. */
const deepest = 40;
/** Names that an object of the language has of its own. */
const forbidden = new Set(['__proto__', 'prototype', 'constructor']);

/**
 * The value of a JSON text. Throws what `refuse` makes of the reason where it is none, where a name stands twice in one
 * object (a reader would have to guess which counts) or where it is nested without end.
 */
export function readJson(text: string, refuse: (why: string) => Error): unknown {
  if (text.trim() === '') throw refuse('it is empty');
  if (text.includes('\0')) throw refuse('it is no text, but what pictures and programs are made of');
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    throw refuse(wordsFor(error as Error, text));
  }
  checkNames(text, refuse);
  return value;
}

/** Engines say it in words of their own; what they agree on is the place. */
function wordsFor({ message }: Error, text: string): string {
  const start = text.trimStart();
  if (!/^[[{"\d-]/.test(start))
    return `it begins with '${start.slice(0, 20).replace(/\s+/g, ' ')}', where a bracket { belongs`;
  if (/end of JSON input|Unterminated|end of data/i.test(message))
    return 'it ends too early, as if it had been cut short';
  const told = /position (\d+)/.exec(message)?.[1];
  const at = told === undefined ? strayWord(text) : Number(told);
  if (at === undefined)
    return `it is not written as such files are (JSON: ${message.replace(/\s+/g, ' ').slice(0, 80)})`;
  if (text.slice(at).trim() === '') return 'it ends too early, as if it had been cut short';
  return `${placeOf(text, at)}${nearWhat(text, at)} reads '${strayText(text, at)}', which cannot stand there`;
}

/** The word or sign at a place. */
function strayText(text: string, at: number): string {
  return /^(?:[\w.+-]{1,30}|\S)/.exec(text.slice(at, at + 30).trimStart())?.[0] ?? '';
}

/** The dotted name of the entry that a place lies in or behind, as far as one stands shortly before it. */
function nearWhat(text: string, at: number): string {
  const names = [...text.slice(Math.max(0, at - 300), at).matchAll(/"([\w-]+(?:\.[\w-]+)+)"\s*:/g)];
  const last = names.at(-1)?.[1];
  return last === undefined ? '' : `, near ${last},`;
}

/** Place of the first word outside strings that JSON does not know, such as NaN; some engines tell no place. */
function strayWord(text: string): number | undefined {
  const word = /"|[A-Za-z_$][\w$]*|-?\d[\w.+-]*/g;
  for (let found = word.exec(text); found; found = word.exec(text)) {
    if (found[0] === '"') word.lastIndex = endOfString(text, found.index) + 1;
    else if (!/^(true|false|null|-?\d.*)$/.test(found[0])) return found.index;
    if (word.lastIndex === 0) return undefined;
  }
  return undefined;
}

/** "Line 3, column 7", counted from 1. */
function placeOf(text: string, at: number): string {
  const before = text.slice(0, at);
  return `line ${before.split('\n').length}, column ${at - before.lastIndexOf('\n')}`;
}

/** Walks through a text that is JSON. */
function checkNames(text: string, refuse: (why: string) => Error): void {
  const open: (Set<string> | undefined)[] = [];
  for (let i = 0; i < text.length; i++) {
    const sign = text[i]!;
    if (sign === '{') open.push(new Set());
    else if (sign === '[') open.push(undefined);
    else if (sign === '}' || sign === ']') open.pop();
    if (open.length > deepest)
      throw refuse(
        `${placeOf(text, i)} lies inside more than ${deepest} brackets, and nothing in a design does`,
      );
    if (sign !== '"') continue;
    const end = endOfString(text, i);
    const names = open.at(-1);
    if (names && /^\s*:/.test(text.slice(end + 1, end + 20))) addName(names, text, i, end, refuse);
    i = end;
  }
}

function addName(
  names: Set<string>,
  text: string,
  from: number,
  to: number,
  refuse: (why: string) => Error,
): void {
  const name = JSON.parse(text.slice(from, to + 1)) as string;
  const place = () => placeOf(text, from);
  if (forbidden.has(name)) throw refuse(`${place()} names '${name}', which nothing in a design is called`);
  if (names.has(name))
    throw refuse(
      `${place()} gives '${name.slice(0, 60)}' a second time, so that nobody can tell which counts`,
    );
  names.add(name);
}

/** Place of the closing quote, -1 where there is none; by search, since pictures are strings of megabytes. */
function endOfString(text: string, from: number): number {
  for (let end = text.indexOf('"', from + 1); ; end = text.indexOf('"', end + 1)) {
    let slashes = 0;
    while (text[end - 1 - slashes] === '\\') slashes += 1;
    if (slashes % 2 === 0 || end < 0) return end;
  }
}
