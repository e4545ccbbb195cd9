import { describe, expect, it } from 'vitest';
import { drawBeam } from '../../data/measured/drawBeam.ts';
import type { MeasuredBeam } from '../../lib/measured/measuredBeam.ts';
import type { FigureBlock } from '../../notebooks/document.ts';
import { measuredBlocks } from '../../notebooks/measuredBeam.ts';
import { layOut } from '../../notebooks/page/figures/layout.ts';
import { expectClose } from '../close.ts';
import { outcomesOf } from './designOutcomes.ts';

const pitch = 5e-6;
/** High in the picture and left, turned from x towards y, which points down. */
const drawn = { width: 700, height: 500, x: 260, y: 170, radiusX: 90, radiusY: 60, angle: 0.5 };
const image = drawBeam({
  ...drawn,
  peak: 0.8,
  noise: 0.002,
  offset: 0.02,
  gradientX: 0,
  gradientY: 0,
  fullScale: 4095,
  seed: 3,
});
const outcomeOf = outcomesOf({
  'laser.beamImage': image,
  'laser.beamImagePitch': pitch,
  'laser.beamSource': 'measured',
});
const block = measuredBlocks.find(({ id }) => id === 'beam-image') as FigureBlock;
const values = Object.fromEntries(
  Object.entries(block.from).map(([key, { id }]) => [key, (outcomeOf(id) as { value: unknown }).value]),
);
const spec = block.view(values);
const beam = values['beam'] as MeasuredBeam;

describe('the picture of the measured beam', () => {
  it.each([712, 358])('draws a millimetre across as long as one down at %i px', (width) => {
    const { x, y, frameWidth, frameHeight } = layOut(spec, width, 'tall');
    const across = frameWidth / Math.abs(x.domain[1] - x.domain[0]);
    const down = frameHeight / Math.abs(y.domain[1] - y.domain[0]);
    // Frames are whole pixels of some 300 a side.
    expectClose(across / down, 1, { absolute: 0.004, source: 'rounding to whole pixels' });
  });

  it('counts rows downwards, as text and angle do', () => {
    expect(spec.y.domain[0]).toBeGreaterThan(spec.y.domain[1]);
    expect(spec.y.label).toMatch(/down/);
    const { columns, rows, values: greys } = spec.map!;
    const brightest = greys.indexOf(Math.max(...greys));
    const place = ([from, to]: readonly [number, number], share: number) => from + (to - from) * share;
    const x = place(spec.x.domain, (brightest % columns) / (columns - 1));
    const y = place(spec.y.domain, Math.floor(brightest / columns) / (rows - 1));
    // The top of the beam is flat to a twentieth of its radius, some blocks.
    expectClose(x, drawn.x * pitch * 1e3, { absolute: 0.06, source: 'drawn' });
    expectClose(y, drawn.y * pitch * 1e3, { absolute: 0.06, source: 'drawn' });
    expect(spec.summary).toMatch(/0\.85\d*\smm from the top/);
  });

  it('lays the ellipse along the beam as drawn', () => {
    const [{ x, y }] = spec.series as [(typeof spec.series)[number]];
    // The first point of the ellipse is the end of its first axis.
    const angle = Math.atan2(y[0]! - beam.centroid.y * 1e3, x[0]! - beam.centroid.x * 1e3);
    expectClose(angle, drawn.angle, { absolute: 0.01, source: 'drawn, from x towards y down' });
    expectClose(Math.hypot(y[0]! - beam.centroid.y * 1e3, x[0]! - beam.centroid.x * 1e3), 90 * pitch * 1e3, {
      relative: 0.01,
      source: 'drawn',
    });
  });

  it('says in its summary, which goes into files, that a spoilt image gives doubtful numbers', () => {
    expect(spec.summary).not.toMatch(/doubtful/);
    const notes = [{ kind: 'clipped', text: 'At the left edge …' }];
    expect(block.view({ ...values, beam: { ...beam, notes } }).summary).toMatch(
      /clipped: these numbers are doubtful\.$/,
    );
  });
});
