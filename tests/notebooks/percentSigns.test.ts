import { expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { holdPercent } from '../../lib/graph/unitText.ts';
import { beamChangeFigure, phaseChangeFigure } from '../../notebooks/matchingFigures.ts';
import { figureCsv } from '../../notebooks/page/figures/figureCsv.ts';
import { prose, says } from '../../notebooks/prose.ts';
import { proseText } from '../../notebooks/slotPieces.ts';
import { outcomesOf } from './designOutcomes.ts';

/** A percent sign that a line may part from its number. */
const loose = /\d[ \n]%/;
const outcomeOf = outcomesOf();

it('holds a percent sign to its number', () => {
  expect(holdPercent('5 % wider, 90 to 10 %, a % sign')).toBe('5\u202f% wider, 90 to 10\u202f%, a % sign');
});

it('in prose and its sentences', () => {
  const text = prose`Grows by 5 %. ${says({}, () => 'Falls by 7 % then.')}`;
  expect(proseText(text, ({ id }) => outcomeOf(id))).not.toMatch(loose);
});

it('in what is said of every quantity', () => {
  for (const { name, about } of designGraph.quantities.values())
    expect(`${name} ${about}`).not.toMatch(loose);
});

it.each([beamChangeFigure, phaseChangeFigure])('in titles, legends and summaries: $id', ({ from, view }) => {
  const values = Object.entries(from).map(([key, { id }]) => [
    key,
    (outcomeOf(id) as { value: unknown }).value,
  ]);
  const spec = view(Object.fromEntries(values));
  const words = [spec.title, spec.summary, ...spec.series.map(({ label }) => label)].join('\n');
  expect(words).toContain('%');
  expect(words).not.toMatch(loose);
  // Programs that read the table find the column by the name that a person types.
  expect(figureCsv(spec).split('\r\n')[0]).toMatch(/5 % (wider|more)/);
});
