import { spawnSync } from 'node:child_process';
import type { Page } from '@playwright/test';
import { designGraph } from '../../lib/design/design.ts';
import { map } from '../../lib/design/familyMap.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { type Timed, watchInputs, withPage } from './benchPages.ts';
import { percentile, type Row, timeRuns } from './timing.ts';

const moves = 60;
const warm = 10;
/** From the hand to the painted map. */
const aim = 50;

/** Inputs that change the whole map, with their element of the beam path. */
const inputs: readonly (readonly [element: string, id: string])[] = [
  ['laser', 'laser.beamDiameter'],
  ['laser', 'laser.wavelength'],
  ['laser', 'laser.beamPropagationRatio'],
  ['plate', 'plate.stepDiameter'],
  ['plate', 'plate.designPhase'],
  ['lens', 'lens.focalLength'],
];

/** The r–z map of the page while sliders are dragged, from the pointer's move to the painted map, in Chromium on the built page. */
export async function benchLatency(): Promise<Row[]> {
  const rows = await withPage('through-focus', async (page) => {
    const made: Row[] = [];
    for (const [element, id] of inputs) made.push(await benchDrag(page, element, id));
    return made;
  });
  return [...rows, ...benchCompute(), ...benchTransforms()];
}

async function benchDrag(page: Page, element: string, id: string): Promise<Row> {
  await page.locator(`.beam-place[data-element="${element}"]`).click();
  const track = page.locator(`.path-inputs .field[data-input="${id}"] input[type="range"]`).first();
  await track.scrollIntoViewIfNeeded();
  const box = (await track.boundingBox())!;
  await page.evaluate(watchInputs, '#block-map');
  const [left, width, y] = [box.x + 10, box.width - 20, box.y + box.height / 2];
  await page.mouse.move(left + width * 0.35, y);
  await page.mouse.down();
  const times: Timed[] = [];
  for (let i = 0; i < moves + warm; i++) {
    // To and fro over a quarter of the slider, a pixel or two a move.
    const share = 0.35 + 0.25 * Math.abs(((i / 30) % 2) - 1);
    await page.mouse.move(left + width * share, y);
    times.push(await page.evaluate(() => window.timed!));
    await page.waitForTimeout(30);
  }
  await page.mouse.up();
  const painted = times.slice(warm).map((one) => one.painted);
  const remark = percentile(painted, 0.95) <= aim ? `within ${aim} ms` : `above the aim of ${aim} ms`;
  return { what: `${id} dragged, to the painted map`, times: painted, remark };
}

/** The map alone, without a page: what the worker does for each answer. */
function benchCompute(): Row[] {
  const timeMap = (change: Record<string, unknown>, what: string): Row => {
    const engine = createEngine(designGraph);
    let i = 0;
    const times = timeRuns(
      () => {
        // Another phase each time, so that nothing is kept.
        engine.setInputs({ ...designGraph.initial, ...change, 'plate.designPhase': 2.8 + 1e-4 * ++i });
        engine.evaluate([map.id]);
      },
      30,
      5,
    );
    return { what, times };
  };
  return [
    timeMap({}, 'map 512 × 401 as the worker computes it, M² = 1'),
    timeMap({ 'laser.beamPropagationRatio': 1.2 }, 'the same, M² = 1.2'),
  ];
}

const program = `
import json, time
import numpy as np
n, planes = 512, 401
x = np.linspace(-2.5, 2.5, n)
r2 = x[:, None] ** 2 + x[None, :] ** 2
plate = np.exp(-r2) * np.exp(1j * np.pi * (r2 < 1)) * (r2 < 1.96)
start = time.perf_counter()
for zeta in np.linspace(-7, 7, planes):
    field = np.fft.fft2(plate * np.exp(-1j * zeta * r2))
    value = field.real ** 2 + field.imag ** 2
print(json.dumps(1e3 * (time.perf_counter() - start)))
`;

/** The way without symmetry: a two-dimensional Fourier transform a plane, 512 × 512. */
function benchTransforms(): Row[] {
  const what = 'numpy, 401 Fourier transforms of 512 × 512';
  const result = spawnSync('python3', ['-c', program], { encoding: 'utf8' });
  if (result.status !== 0) return [{ what, remark: 'python3 with numpy is not there' }];
  return [{ what, times: [JSON.parse(result.stdout) as number] }];
}
