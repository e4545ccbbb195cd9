import { compactStyle } from './compactStyle.ts';
import { escapeHtml, mathHtml, runsHtml } from './htmlText.ts';
import { type NumberedBlock, numberBlocks } from './numbered.ts';
import type { Paper, PaperBlock } from './paper.ts';
import { paperStyle } from './paperStyle.ts';
import { type PaperPictures, pictureOf } from './pictures.ts';
import { numberReferences, type Reference } from './references.ts';

interface Context {
  readonly pictures: PaperPictures;
  readonly references: ReadonlyMap<string, Reference>;
}

/** A paper as one HTML page that stands alone: no script, no font and no address is loaded. */
export function writeHtml(paper: Paper, pictures: PaperPictures): string {
  const context = { pictures, references: numberReferences(paper) };
  const title = escapeHtml(paper.title);
  const facts = paper.facts.map(
    ([name, value]) => `<dt>${escapeHtml(name)}</dt><dd>${escapeHtml(value)}</dd>`,
  );
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">
<meta name="generator" content="Stepwell">
<title>${title}</title>
<style>${paperStyle}${paper.compact ? compactStyle : ''}</style>
</head>
<body${paper.compact ? ' class="compact"' : ''}>
<main>
<header>
<h1>${title}</h1>
${facts.length > 0 ? `<dl class="facts">\n${facts.join('\n')}\n</dl>` : ''}
</header>
${numberBlocks(paper.blocks)
  .map((numbered) => blockHtml(numbered, context))
  .join('\n')}
${referencesHtml(context.references)}
</main>
</body>
</html>
`;
}

function blockHtml({ block, number }: NumberedBlock, context: Context): string {
  switch (block.kind) {
    case 'heading':
      return `<h${block.level + 1}>${escapeHtml(block.text)}</h${block.level + 1}>`;
    case 'paragraph': {
      const role = block.role === undefined ? '' : ` class="${block.role}"`;
      return `<p${role}>${runsHtml(block.runs, context.references)}</p>`;
    }
    case 'list': {
      const tag = block.ordered ? 'ol' : 'ul';
      const items = block.items.map((runs) => `<li>${runsHtml(runs, context.references)}</li>`);
      return `<${tag}>\n${items.join('\n')}\n</${tag}>`;
    }
    case 'table':
      return tableHtml(block, number, context);
    case 'figure':
      return figureHtml(block, number, context);
    case 'equation':
      return equationHtml(block);
  }
}

/** Wider than the screen, it is moved within its own edges, by the keys too. */
const wide = (label: string, content: string) =>
  `<div class="wide" tabindex="0" role="group" aria-label="${label}">${content}</div>`;

function tableHtml(
  { caption, columns, rows }: Extract<PaperBlock, { kind: 'table' }>,
  number: number,
  { references }: Context,
): string {
  const head = columns.map((name) => `<th scope="col">${escapeHtml(name)}</th>`).join('');
  const body = rows.map((cells) => {
    const made = cells.map((runs, index) => {
      const tag = index === 0 ? ['th scope="row"', 'th'] : ['td', 'td'];
      return `<${tag[0]}>${runsHtml(runs, references)}</${tag[1]}>`;
    });
    return `<tr>${made.join('')}</tr>`;
  });
  const table = `<table>
<caption><b>Table ${number}.</b> ${escapeHtml(caption)}</caption>
<thead><tr>${head}</tr></thead>
<tbody>
${body.join('\n')}
</tbody>
</table>`;
  return `<div class="table" id="table-${number}">${wide(`Table ${number}`, table)}</div>`;
}

function figureHtml(
  { id, caption }: Extract<PaperBlock, { kind: 'figure' }>,
  number: number,
  { pictures }: Context,
): string {
  const { svg, dark } = pictureOf(pictures, id);
  const drawn = wide(
    `Picture of figure ${number}`,
    `<div class="by-day">${svg}</div><div class="by-night">${dark}</div>`,
  );
  return `<figure id="figure-${number}">${drawn}<figcaption><b>Figure ${number}.</b> ${escapeHtml(caption)}</figcaption></figure>`;
}

function equationHtml({ tex, note }: Extract<PaperBlock, { kind: 'equation' }>): string {
  const words = note === undefined ? '' : `<p>${escapeHtml(note)}</p>`;
  return `<div class="equation"><div class="wide">${mathHtml(tex, true)}</div>${words}</div>`;
}

function referencesHtml(references: ReadonlyMap<string, Reference>): string {
  if (references.size === 0) return '';
  const lines = [...references.values()].map(({ number, text, doi, link }) => {
    const address = link === undefined ? '' : `, <a href="${escapeHtml(link)}">DOI ${escapeHtml(doi!)}</a>`;
    return `<li id="reference-${number}">${escapeHtml(text)}${address}</li>`;
  });
  return `<section aria-labelledby="references">
<h2 id="references">References</h2>
<ol class="references">
${lines.join('\n')}
</ol>
</section>`;
}
