import { cleanText } from './cleanText.ts';
import type { Run } from './paper.ts';
import type { Reference } from './references.ts';

/** Characters that mean something within a line: emphasis, code, links, tables, equations, citations, addresses. */
const inline = /[\\`*_{}[\]<>|$~^&@#]/g;

/** Text that Markdown shows as it stands, wherever in a line: `://` and `www.` would become links. */
export function escapeMarkdown(text: string): string {
  return cleanText(text)
    .replace(inline, (mark) => `\\${mark}`)
    .replace(/:\/\//g, '\\://')
    .replace(/\bwww\./gi, (www) => `${www.slice(0, 3)}\\.`);
}

/** A line that begins no list, heading, quotation or rule. */
export function lineOfText(line: string): string {
  return line
    .trim()
    .replace(/^([-+=:!])/, '\\$1')
    .replace(/^(\d+)([.)])/, '$1\\$2');
}

/**
 * An equation between dollars. A dollar within it would end it; where equations are not drawn its TeX is read as text, so
 * that nothing in it may begin a tag, a link or code.
 */
export function mathMarkdown(tex: string): string {
  return cleanText(tex)
    .replace(/(?<!\\)\$/g, '\\$')
    .replaceAll('<', '\\lt ')
    .replaceAll('>', '\\gt ')
    .replaceAll('](', ']{}(')
    .replaceAll('`', "'")
    .trim();
}

/** Runs of a line; in a table a bar would end the cell, within an equation too. */
export function runsMarkdown(
  runs: readonly Run[],
  references: ReadonlyMap<string, Reference>,
  inTable = false,
): string {
  const line = runs.map((run) => runMarkdown(run, references, inTable)).join('');
  return inTable ? line.trim() : lineOfText(line);
}

function runMarkdown(run: Run, references: ReadonlyMap<string, Reference>, inTable: boolean): string {
  if ('tex' in run) {
    const tex = mathMarkdown(run.tex);
    return `$${inTable ? withoutBars(tex).trim() : tex}$`;
  }
  if ('cite' in run) return `\\[${references.get(run.cite)!.number}\\]`;
  const text = escapeMarkdown(run.text);
  const mark = `${run.strong ? '**' : ''}${run.emphasis ? '*' : ''}`;
  return mark === '' ? text : marked(text, mark);
}

/** Marks stand next to letters, or they are no marks. */
function marked(text: string, mark: string): string {
  const [, before, words, after] = /^(\s*)(.*?)(\s*)$/.exec(text)!;
  return words === '' ? text : `${before}${mark}${words}${mark}${after}`;
}

const withoutBars = (tex: string) => tex.replaceAll('\\|', '\\Vert ').replaceAll('|', '\\vert ');
