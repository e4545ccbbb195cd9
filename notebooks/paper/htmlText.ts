import katex from 'katex';
import { cleanText } from './cleanText.ts';
import type { Run } from './paper.ts';
import type { Reference } from './references.ts';

const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Text as HTML: also within an attribute in double quotes. */
export function escapeHtml(text: string): string {
  return cleanText(text).replace(/[&<>"]/g, (mark) => escapes[mark]!);
}

/** An equation as MathML, which needs no fonts of its own and which screen readers speak. */
export function mathHtml(tex: string, displayMode = false): string {
  const clean = cleanText(tex);
  try {
    return katex.renderToString(clean, { displayMode, output: 'mathml', errorColor: 'currentColor' });
  } catch {
    // What cannot be typeset stays TeX.
    return `<code>${escapeHtml(tex)}</code>`;
  }
}

/** Runs of a line as HTML; a number carries the id of its quantity. */
export function runsHtml(runs: readonly Run[], references: ReadonlyMap<string, Reference>): string {
  return runs.map((run) => runHtml(run, references)).join('');
}

function runHtml(run: Run, references: ReadonlyMap<string, Reference>): string {
  if ('tex' in run) return mathHtml(run.tex);
  if ('cite' in run) {
    const { number } = references.get(run.cite)!;
    return `<a class="citation" href="#reference-${number}">[${number}]</a>`;
  }
  const text = escapeHtml(run.text);
  const value =
    run.quantity === undefined
      ? text
      : `<span class="value" data-quantity="${escapeHtml(run.quantity)}">${text}</span>`;
  const emphasis = run.emphasis ? `<em>${value}</em>` : value;
  return run.strong ? `<strong>${emphasis}</strong>` : emphasis;
}
