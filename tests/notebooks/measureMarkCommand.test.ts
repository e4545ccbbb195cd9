import { encode } from 'fast-png';
import { describe, expect, it } from 'vitest';
import { main } from '../../notebooks/command/main.ts';
import { expectClose } from '../close.ts';
import { drawMark, trueArea } from '../measured/drawMark.ts';

const drawn = {
  width: 120,
  height: 110,
  x: 61.3,
  y: 54.8,
  halfX: 30,
  halfY: 26,
  hole: 9,
  background: 0.6,
  mark: 0.2,
  fullScale: 65535,
};
const { width, height, samples } = drawMark(drawn);
const png = encode({ width, height, data: Uint16Array.from(samples), depth: 16, channels: 1 });

function run(argv: readonly string[]) {
  let [out, err] = ['', ''];
  const code = main(['measure', 'mark', ...argv], {
    readFile: () => png,
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

describe('measure mark', () => {
  it('prints area, diameters and contours of the mark in a picture', () => {
    const { code, out } = run(['a.png', '--pixel', '0.2 um']);
    expect(code).toBe(0);
    const mark = JSON.parse(out);
    // Blurred by a pixel; see markPicture.test.ts.
    expectClose(mark.area.value, trueArea(drawn) * 0.04e-12, { relative: 0.02, source: 'as drawn' });
    expectClose(mark.innerDiameter.value, 18 * 0.2e-6, { relative: 0.02, source: 'as drawn' });
    expect(mark).toMatchObject({ dark: true, notes: [], area: { unit: 'm^2' } });
    expect(mark.outerContour.length).toBeGreaterThan(50);
    expect(mark.innerContours).toHaveLength(1);
    const part = JSON.parse(
      run(['a.png', '--pixel', '0.2 um', '--region', '10,10,105,95', '--level', '0.4']).out,
    );
    expectClose(part.area.value, mark.area.value, { relative: 0.05 });
  });

  it.each([
    [['a.png'], /--pixel is missing/],
    [['a.png', '--pixel', '0.2 um', '--region', '1,2,3'], /LEFT,TOP,WIDTH,HEIGHT/],
    [['a.png', '--pixel', '0.2 um', '--level', 'half'], /is no number/],
    [['a.png', '--pixel', '0.2 um', '--level', '2'], /from 0\.1 to 0\.9/],
  ])('%j is refused', (argv, says) => {
    const { code, err } = run(argv);
    expect(code).toBe(2);
    expect(err).toMatch(says);
  });
});
