import { encode } from 'fast-png';
import { describe, expect, it } from 'vitest';
import { drawRipples } from '../../data/measured/drawRipples.ts';
import { main } from '../../notebooks/command/main.ts';
import { expectClose } from '../close.ts';
import { drawPlain } from '../measured/drawPlain.ts';

const pngOf = ({ width, height, samples }: ReturnType<typeof drawRipples>) =>
  encode({ width, height, data: Uint8Array.from(samples), depth: 8, channels: 1 });
const files: Readonly<Record<string, Uint8Array>> = {
  'a.png': pngOf(
    drawRipples({ width: 300, height: 260, period: 12.4, direction: 1.45, amplitude: 0.2, noise: 0.05 }),
  ),
  'plain.png': pngOf(drawPlain('noise', 200, 200, 4)),
  'letter.png': new TextEncoder().encode('A letter.'),
};

function command(argv: readonly string[]) {
  let [out, err] = ['', ''];
  const code = main(argv, {
    readFile: (path) => files[path]!,
    writeFile: () => {},
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
  });
  return { code, out, err };
}
const run = (argv: readonly string[]) => command(['measure', 'ripples', ...argv]);

describe('measure ripples', () => {
  it('prints period and direction with uncertainties, in pixels or in metres', () => {
    const inPixels = JSON.parse(run(['a.png']).out);
    expectClose(inPixels.main.period.value, 12.4, { relative: 0.003, source: 'as drawn' });
    expectClose(inPixels.main.direction.value, 1.45, { absolute: 0.005, source: 'as drawn' });
    expect(inPixels.main.period).toMatchObject({ unit: 'px', shown: expect.stringMatching(/^12\.\d\d px$/) });
    expect(inPixels.main.direction).toMatchObject({ unit: 'rad', shown: expect.stringMatching(/^83.*°$/) });
    expect(inPixels).toMatchObject({ second: null, without: null, notes: [], leftOut: [] });
    expect(inPixels.orientation.smoothing).toEqual({ value: 2, unit: 'px' });
    const { columns, rows, values } = inPixels.regularity;
    expect(values).toHaveLength(columns * rows);
    const inMetres = JSON.parse(run(['a.png', '--pixel', '50 nm', '--smoothing', '3']).out);
    expectClose(inMetres.main.period.value, 50e-9 * inPixels.main.period.value, { relative: 1e-6 });
    expect(inMetres.main.period.shown).toMatch(/^6\d\d\.?\d*\snm$/);
    expect(inMetres.orientation.smoothing.value).toBe(3);
  });

  it('takes a region, and says why there is no period', () => {
    const part = JSON.parse(run(['a.png', '--region', '20,10,200,180']).out);
    expect(part.region).toEqual({ left: 20, top: 10, width: 200, height: 180 });
    const { main: found, without } = JSON.parse(run(['plain.png']).out);
    expect(found).toBeNull();
    expect(without).toMatchObject({ kind: 'no-direction', text: expect.stringMatching(/alike along all/) });
  });

  it.each([
    [['a.png', '--region', '1,2,3'], /LEFT,TOP,WIDTH,HEIGHT/],
    [['a.png', '--region', '250,0,100,100'], /does not lie in "a\.png"/],
    [['a.png', '--smoothing', 'much'], /'much' is no number/],
    [['a.png', '--smoothing', '40'], /0\.5 to 16 pixels/],
    [['a.png', '--pixel', '5 s'], /length/],
    [['letter.png'], /"letter\.png" is neither a PNG, a TIFF nor a JPEG/],
    [[], /exactly one picture/],
  ])('%j is refused', (argv, says) => {
    const { code, out, err } = run(argv);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(says);
  });
});

it('micrographs given to a design are measured as by themselves, angles counter-clockwise', () => {
  const typed = ['micrograph', 'otherMicrograph'].flatMap((prefix) => [
    ...['--set', `${prefix}.scaleSource=typed`],
    ...['--set', `${prefix}.pixelPitch=50 nm`],
  ]);
  const names = ['micrograph.period', 'otherMicrograph.direction'];
  const given = ['--micrograph', 'a.png', '--other-micrograph', 'a.png', ...typed];
  const { code, out, err } = command(['evaluate', ...given, '--get', names.join(',')]);
  expect([code, err]).toEqual([0, '']);
  const [period, direction] = names.map((name) => JSON.parse(out)[name].value);
  const { main: alone } = JSON.parse(run(['a.png', '--pixel', '50 nm']).out);
  expectClose(period, alone.period.value, { relative: 1e-6, source: 'the same measurement' });
  expectClose(direction, Math.PI - alone.direction.value, { relative: 1e-6, source: 'the same measurement' });
});
