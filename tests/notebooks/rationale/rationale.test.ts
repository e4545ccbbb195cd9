import { describe, expect, it } from 'vitest';
import type { Paper, PaperBlock } from '../../../notebooks/paper/paper.ts';
import { citedIn } from '../../../notebooks/paper/readPaper.ts';
import { numberReferences } from '../../../notebooks/paper/references.ts';
import { type Design, demoDesign, lineOf, made, rationaleOf, withStudies, wordsOf } from './workedPapers.ts';

const measured = demoDesign(
  'rain-gauge-funnel',
  {
    'laser.beamImage': 'rain-gauge-beam.png',
    'laser.causticTable': 'rain-gauge-caustic.csv',
    'threshold.spotTable': 'rain-gauge-spots.csv',
  },
  {
    'laser.beamImagePitch': 5.5e-6,
    'laser.beamSource': 'measured',
    'laser.ratioSource': 'measured',
    'threshold.source': 'fitted',
  },
);
const full = withStudies(measured, {
  alternatives: [
    {
      name: 'Shorter lens',
      about: 'Fits the small table.',
      inputs: { ...measured.inputs, 'lens.focalLength': 0.1 },
    },
  ],
  requirements: [
    { id: 'spot.dip', unit: '1', atMost: 0.05, reason: 'even ripples' },
    { id: 'spot.width', unit: 'm', atLeast: 60e-6, reason: 'one drop wide' },
    { id: 'own.gone', unit: '1', atLeast: 1, reason: '' },
  ],
  texts: {
    purpose: 'Drops run **off**: {spot.width}, $a/b$, <script>alert(1)</script>, {no.such}.\n\n- one\n- two',
    step: 'The plate was there.',
    risks: 'The sheet may bend.',
    unchecked: 'The glue.',
    uses: 'ripples, grooves, engraving, sheet, scaleUp',
  },
});

const demos: Readonly<Record<string, Design>> = {
  'rain-gauge-funnel': demoDesign('rain-gauge-funnel'),
  'lecture-table': demoDesign('lecture-table'),
  'cold-plate-channels': demoDesign('cold-plate-channels'),
  'with a measured beam and a table of spots': full,
};
const papers = new Map<string, Paper>();
const paperOf = (name: string): Paper => {
  const known = papers.get(name) ?? rationaleOf(demos[name]!).paper;
  papers.set(name, known);
  return known;
};

/** The blocks from a heading to the next one of its level or above. */
function under({ blocks }: Paper, text: string) {
  const start = blocks.findIndex((block) => block.kind === 'heading' && block.text === text);
  expect(start, text).toBeGreaterThanOrEqual(0);
  const { level } = blocks[start] as { level: number };
  const rest = blocks.slice(start + 1);
  const end = rest.findIndex((block) => block.kind === 'heading' && block.level <= level);
  return end < 0 ? rest : rest.slice(0, end);
}

const runsOf = (block: PaperBlock | undefined) => (block?.kind === 'paragraph' ? block.runs : []);

describe('the rationale of the invented designs, and of one that was measured', () => {
  for (const name of Object.keys(demos)) {
    it(`${name}: every part in order, nothing empty, nothing that is no word`, () => {
      const paper = paperOf(name);
      const headings = paper.blocks.flatMap((block) =>
        block.kind === 'heading' && block.level === 1 ? [block.text] : [],
      );
      expect(headings).toEqual([
        'Purpose',
        'Requirements',
        'Beam and plate',
        'Why this design',
        'Usable planes and their depth',
        'Process settings',
        'Risks and cautions',
        'What was not checked',
        'Appendix: all inputs',
        'Appendix: formulas of the numbers in the text',
      ]);
      for (const heading of headings) expect(under(paper, heading).length, heading).toBeGreaterThan(0);
      const words = wordsOf(paper.blocks);
      expect(words).not.toMatch(/NaN|undefined|\[object|Infinity/);
      expect(words.split('\n').filter((line) => /^\s*$/.test(line))).toEqual([]);
      const figures = paper.blocks.flatMap((block) => (block.kind === 'figure' ? [block.id] : []));
      expect(new Set(figures).size).toBe(figures.length);
      expect(figures.length).toBeGreaterThan(8);
      expect(paper.references).toEqual(citedIn(paper.blocks));
      expect(numberReferences(paper).size).toBe(paper.references.length);
    });

    it(`${name}: no sentence asks to choose what paper has no button for`, () => {
      for (const block of paperOf(name).blocks)
        if (block.kind === 'paragraph')
          expect(lineOf(block.runs)).not.toMatch(/^Try |Take that lens|choose from the planes|Set speed and/);
    });
  }

  it('tells design, program, day and the command that makes it again', () => {
    const { facts, date } = paperOf('lecture-table');
    expect(Object.fromEntries(facts)).toMatchObject({
      Design: made.name,
      Date: made.date,
      'Made again by': 'stepwell rationale test.json --to FILE.html',
    });
    expect(Object.fromEntries(facts)['Made with']).toMatch(/^Stepwell \d+\.\d+\.\d+$/);
    expect(date).toBe(made.date);
  });
});

describe('what the person adds', () => {
  const name = 'with a measured beam and a table of spots';

  it('own words stand first in their part, their Markdown read and nothing else of it', () => {
    const [first, second] = under(paperOf(name), 'Purpose');
    expect(first).toMatchObject({ kind: 'paragraph' });
    const runs = runsOf(first);
    expect(runs).toContainEqual({ text: 'off', strong: true });
    expect(runs).toContainEqual({ text: expect.stringMatching(/µm$/), quantity: 'spot.width' });
    expect(runs).toContainEqual({ tex: 'a/b' });
    expect(lineOf(runs)).toContain('<script>alert(1)</script>, (there is no number ‘no.such’');
    expect(second).toMatchObject({
      kind: 'list',
      ordered: false,
      items: [[{ text: 'one' }], [{ text: 'two' }]],
    });
    expect(lineOf(runsOf(under(paperOf(name), 'The step')[0]))).toBe('The plate was there.');
    expect(wordsOf(under(paperOf(name), 'Risks and cautions'))).toMatch(/^The sheet may bend\./);
    expect(wordsOf(under(paperOf(name), 'What was not checked'))).toMatch(/^The glue\./);
  });

  it('a missing purpose is told, and so is that nothing is required or kept', () => {
    const paper = paperOf('lecture-table');
    expect(wordsOf(under(paper, 'Purpose'))).toMatch(
      /^The purpose has not been written yet\.\nThe plate that goes round/,
    );
    expect(wordsOf(under(paper, 'Requirements'))).toBe('No requirement has been put to this design.');
    expect(wordsOf(under(paper, 'Alternatives that were kept'))).toBe(
      'No alternative has been kept with this design.',
    );
  });

  it('a failed requirement stands first, then what is not known, then what is met', () => {
    const blocks = under(paperOf(name), 'Requirements');
    expect(blocks[0]).toMatchObject({ kind: 'paragraph', role: 'failed' });
    const table = blocks.find((block) => block.kind === 'table')!;
    expect(table.rows.map((row) => lineOf(row[3]!))).toEqual(['not met', 'not known', 'met']);
    expect(lineOf(table.rows[0]![0]!)).toBe('spot width');
    expect(lineOf(table.rows[0]![5]!)).toBe('one drop wide');
  });

  it('alternatives are set beside the design: inputs that differ, and numbers that follow', () => {
    const blocks = under(paperOf(name), 'Alternatives that were kept');
    const words = wordsOf(blocks);
    expect(words).toContain('Shorter lens: Fits the small table.');
    const rows = blocks
      .flatMap((block) => (block.kind === 'table' ? block.rows : []))
      .map((row) => row.map(lineOf));
    expect(rows[0]).toEqual(['focal length', '160\u202fmm', '100\u202fmm']);
    const [, ours, theirs] = rows.find(([first]) => first === 'spot width')!;
    // The focus scales with the focal length, and with it the spot in the focal plane.
    expect(parseFloat(theirs!) / parseFloat(ours!)).toBeCloseTo(100 / 160, 3);
  });

  it('uncertain numbers are rounded to their uncertainty, and say which file they are from', () => {
    const words = wordsOf(under(paperOf(name), 'Beam and plate'));
    expect(words).toMatch(
      /raw beam diameter in use \| 2\.495\s\S+ \| 0\.59\sµm \| second moments of rain-gauge-beam\.png/,
    );
    expect(words).toMatch(
      /M² in use \| 1\.15 \| 0\.0054 \| fitted to the caustic in rain-gauge-caustic\.csv/,
    );
    expect(words).toContain('3 measured files are in this design');
  });

  it('a fit that does not describe its marks is named among what was not checked', () => {
    const words = wordsOf(under(paperOf(name), 'What was not checked'));
    expect(words).toMatch(/hreshold fluence.*: The model does not describe the marks\./);
    expect(words).not.toContain('No mark was measured');
    expect(words).toContain('No profile of the spot was measured');
    expect(words).toContain('is given for the plane, the fluence and the spacing.');
    expect(words).not.toContain('Not looked at here');
  });
});
