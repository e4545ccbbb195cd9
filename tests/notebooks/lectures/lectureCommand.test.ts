import { strFromU8, unzipSync } from 'fflate';
import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { writeDesignFile } from '../../../lib/design/designFile.ts';
import { noStudies } from '../../../lib/graph/studies.ts';
import { shippedLectures } from '../../../notebooks/lectures/shipped.ts';
import { trialLecture } from '../../trialLecture.ts';
import { runLater } from '../runCommand.ts';

const studies = { ...noStudies, lectures: [trialLecture] };
const files = {
  'trial.json': writeDesignFile(designGraph, { inputs: designGraph.initial, name: 'Trial', studies }),
};
const run = (...args: readonly string[]) => runLater(['lecture', ...args], files);

describe('stepwell lecture', () => {
  it('writes the students’ copy and the lecturer’s, as a page, Markdown and a DOCX', async () => {
    const page = await run('trial.json', 'lecture7', '--to', 'out/l.html', '--date', '2026-03-01');
    expect([page.code, page.err, page.out]).toEqual([0, '', 'Written: out/l.html\n']);
    const { document } = parseHTML(strFromU8(page.written['out/l.html']!));
    expect(document.querySelector('h1')!.textContent).toBe('Seven steps to a flat spot');
    expect([...document.querySelectorAll('h2')].map((one) => one.textContent)).toEqual(
      trialLecture.steps.map(({ title }, i) => `${i + 1}. ${title}`),
    );
    expect(document.querySelectorAll('figure svg, figure img').length).toBeGreaterThanOrEqual(4);
    expect(document.body.textContent).toContain('stepwell lecture trial.json lecture7 --to FILE.html');
    expect(document.body.textContent).not.toContain('nobody knows yet');
    const own = await run('trial.json', 'lecture7', '--notes', '--to', 'l.md.zip');
    const markdown = strFromU8(unzipSync(own.written['l.md.zip']!)['l.md']!);
    expect(markdown).toContain('nobody knows yet');
    expect(markdown).toContain('stepwell lecture trial.json lecture7 --notes --to FILE.html');
    const word = await run('trial.json', 'lecture7', '--to', 'l.docx');
    expect(Object.keys(unzipSync(word.written['l.docx']!))).toContain('word/document.xml');
  });

  it.each(shippedLectures)('writes $title without a design', async ({ id, title }) => {
    const { code, err, written } = await run(id, '--to', 'l.html');
    expect([code, err]).toEqual([0, '']);
    expect(parseHTML(strFromU8(written['l.html']!)).document.querySelector('h1')!.textContent).toBe(title);
  });

  const refused: readonly (readonly [args: readonly string[], says: RegExp])[] = [
    [['trial.json', 'lecture7'], /--to is missing/],
    [['trial.json', 'lecture9', '--to', 'l.html'], /no lecture 'lecture9' here\. There are: .*lecture7/],
    [['trial.json', '--to', 'l.html'], /Say which lecture to write.*lecture7/],
    [['--to', 'l.html'], /Say which lecture to write/],
    [['trial.json', 'lecture7', '--to', 'l.pdf'], /let its name end in/],
    [['a.json', 'b.json', 'lecture7', '--to', 'l.html'], /at most one design file/],
  ];
  it.each(refused)('%j says what is wrong and writes nothing', async (args, says) => {
    const { code, err, written } = await run(...args);
    expect([code, written]).toEqual([2, {}]);
    expect(err).toMatch(says);
  });
});
