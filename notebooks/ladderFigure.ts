import { ladder, type PlannedLadder } from '../lib/design/ladder.ts';
import { shownReading } from '../lib/design/ladderResults.ts';
import type { LadderMark } from '../lib/process/ladderPlan.ts';
import { circles, points } from './circles.ts';
import { micro } from './columns.ts';
import { type FigureSpec, figure, type SeriesSpec } from './document.ts';
import { ladderColumns } from './ladderTable.ts';
import { lengthText } from './shortTexts.ts';

const milli = 1e3;

/** A ladder drawn to scale: predicted outer contours, unmarked centres, and places where nothing is expected. */
export function ladderPicture(plan: PlannedLadder): FigureSpec {
  const { marks, pitch } = plan;
  const drawn = (diameterOf: (mark: LadderMark) => number) =>
    circles(
      marks.map((mark) => ({ x: micro * mark.x, y: micro * mark.y, diameter: micro * diameterOf(mark) })),
    );
  const unmarked = marks.filter(({ mark }) => mark.outerDiameter === 0);
  const series: SeriesSpec[] = [
    { label: 'predicted mark', role: 'main', ...drawn(({ mark }) => mark.outerDiameter) },
    { label: 'unmarked centre', role: 'second', ...drawn(({ mark }) => mark.innerDiameter) },
    {
      label: 'no mark expected',
      role: 'reference',
      ...points(unmarked.map(({ x, y }) => ({ x: micro * x, y: micro * y }))),
    },
    {
      label: `focus expected, z = ${shownReading(middles(marks)[0]!.reading)}`,
      role: 'third',
      ...points(middles(marks).map(({ x, y }) => ({ x: micro * x, y: micro * y }))),
    },
  ];
  const { step } = plan.shaped.proposal;
  const [right, top] = (['x', 'y'] as const).map((of) => Math.max(...marks.map((mark) => mark[of])));
  const domain = (most: number) => [-micro * pitch, micro * (most + pitch)] as const;
  return {
    title: 'Focus ladder, to scale',
    x: { label: 'along a line', unit: 'µm', domain: domain(right!) },
    y: { label: 'from line to line', unit: 'µm', domain: domain(top!) },
    secondX: { label: 'z from the left end of a line (mm)', factor: (milli * step) / (micro * pitch) },
    equalScale: true,
    series: series.filter(({ x }) => x.length > 0),
    // The file of the chart is the table to fill in.
    data: ladderColumns(plan),
    summary: summaryOf(plan),
  };
}

/** The middle of each row, where the focus is expected. */
function middles(marks: readonly LadderMark[]): LadderMark[] {
  return [true, false].flatMap((plate) => {
    const row = marks.filter((mark) => mark.plate === plate);
    return row.length === 0 ? [] : [row[(row.length - 1) / 2]!];
  });
}

function summaryOf({ marks, pitch, shaped }: PlannedLadder): string {
  const rows = ([true, false] as const).flatMap((plate) => {
    const row = marks.filter((mark) => mark.plate === plate);
    const seen = row.filter(({ mark }) => mark.area > 0);
    const widest = Math.max(...seen.map(({ mark }) => mark.outerDiameter));
    const name = plate ? 'with the plate' : 'without the plate';
    if (row.length === 0) return [];
    return [
      `${name} ${seen.length} of ${row.length} places are marked${seen.length > 0 ? `, from z = ${shownReading(seen[0]!.reading)} to ${shownReading(seen.at(-1)!.reading)}, up to ${lengthText(widest)} wide` : ''}`,
    ];
  });
  const order = rows.length > 1 ? '; the row with the plate above, that without it below' : '';
  return `Places ${lengthText(pitch)} apart, z ${lengthText(shaped.proposal.step)} further from each to the next, read like text${order}. As predicted ${rows.join('; ')}.`;
}

export const ladderFigure = figure({
  id: 'ladder-figure',
  from: { ladder },
  view: ({ ladder }) => ladderPicture(ladder),
});
