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

function run(argv: readonly string[], command = ['measure', 'mark']) {
  let [out, err] = ['', ''];
  const code = main([...command, ...argv], {
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
  it('agrees with a picture given to a design', () => {
    const measured = JSON.parse(run(['a.png', '--pixel', '0.2 um', '--region', '15,10,95,90']).out);
    const part = { regionSource: 'part', regionLeft: 15, regionTop: 10, regionWidth: 95, regionHeight: 90 };
    const settings = Object.entries({ scaleSource: 'typed', pixelPitch: '0.2 um', ...part });
    const names = ['area', 'areaUncertainty', 'outerDiameter', 'innerDiameter', 'extentX', 'centreY'];
    const given = run(
      [
        ...['--mark-picture', 'a.png', '--get', names.map((name) => `markPicture.${name}`).join(',')],
        ...settings.flatMap(([name, value]) => ['--set', `markPicture.${name}=${value}`]),
      ],
      ['evaluate'],
    );
    expect(given).toMatchObject({ code: 0, err: '' });
    const { value } = measured.area;
    const expected = [
      value,
      measured.area.uncertainty,
      measured.outerDiameter.value,
      measured.innerDiameter.value,
    ];
    const all = [...expected, measured.diameterX.value, measured.centreY.value];
    const found = JSON.parse(given.out);
    names.forEach((name, i) => {
      expectClose(found[`markPicture.${name}`].value, all[i], {
        relative: 1e-7,
        source: 'eight digits printed',
      });
    });
  });

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
