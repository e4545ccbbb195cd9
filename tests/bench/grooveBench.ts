import { designGraph } from '../../lib/design/design.ts';
import { grooveCut } from '../../lib/design/groove.ts';
import { groovePasses } from '../../lib/design/grooveInputs.ts';
import { scanSpeed } from '../../lib/design/scanInputs.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { type Timed, watchInputs, withPage } from './benchPages.ts';
import { percentile, type Row, timeRuns } from './timing.ts';

const moves = 40;
const warm = 10;

/** A groove of about a hundred passes: as the worker cuts it, and from the hand on the slider to the painted section. */
export async function benchGroove(): Promise<Row[]> {
  const dragged = await withPage('grooves', async (page): Promise<Row[]> => {
    const field = page.locator(`#block-groove-controls .field[data-input="${groovePasses.id}"]`);
    await field.locator('input[type="text"]').fill('100');
    await page.keyboard.press('Enter');
    // What appears above would move the slider.
    await page.evaluate(() => window.stepwell.settled());
    const track = field.locator('input[type="range"]');
    await track.scrollIntoViewIfNeeded();
    const box = (await track.boundingBox())!;
    await page.evaluate(watchInputs, '#block-groove-section');
    // Passes from 1 to 200 by equal factors: 0.84 to 0.9 of the track is 86 to 118.
    const at = (part: number) => box.x + 8 + part * (box.width - 16);
    await page.mouse.move(at(0.87), box.y + box.height / 2);
    await page.mouse.down();
    const times: Timed[] = [];
    for (let i = 0; i < moves + warm; i++) {
      await page.mouse.move(at(0.84 + 0.06 * Math.abs(((i / 15) % 2) - 1)), box.y + box.height / 2);
      times.push(await page.evaluate(() => window.timed!));
      await page.waitForTimeout(30);
    }
    await page.mouse.up();
    const painted = times.slice(warm).map((one) => one.painted);
    return [
      {
        what: 'passes of a groove dragged about 100, to the painted section',
        times: painted,
        remark: percentile(painted, 0.95) <= 100 ? 'within 100 ms' : 'above 100 ms',
      },
    ];
  });
  const incubated = { 'threshold.incubationExponent': 0.85 };
  return [
    ...dragged,
    ...[passesMoved, fromFresh].flatMap((moved) => [
      inWorker({}, 'S = 1', moved),
      inWorker(incubated, 'S = 0.85', moved),
    ]),
  ];
}

/** What moves from one groove to the next, and what of it is known by then. */
interface Moved {
  readonly words: string;
  readonly inputs: (move: number) => Record<string, unknown>;
}

const passesMoved: Moved = {
  words: 'the passes moved: those cut before are kept',
  inputs: (move) => ({ [groovePasses.id]: 95 + (move % 11) }),
};
/** The planes of the light are kept, the passes are not. */
const fromFresh: Moved = {
  words: 'the spacing of the pulses moved: every pass is cut anew',
  inputs: (move) => ({ [groovePasses.id]: 100, [scanSpeed.id]: 0.05 + 0.0005 * (move % 11) }),
};

/** One groove without a page. */
function inWorker(change: Record<string, unknown>, words: string, moved: Moved): Row {
  const engine = createEngine(designGraph);
  let move = 0;
  const times = timeRuns(
    () => {
      engine.setInputs({ ...designGraph.initial, ...change, ...moved.inputs(move++) });
      engine.evaluate([grooveCut.id]);
    },
    30,
    5,
  );
  return { what: `groove of about 100 passes as the worker cuts it, ${words}, ${moved.words}`, times };
}
