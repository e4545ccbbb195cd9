import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { writeDesignFile } from '../../lib/design/designFile.ts';
import { expectClose } from '../close.ts';
import { reference } from '../reference.ts';
import { run, succeed } from './runCommand.ts';

const evaluated = (get: string, ...settings: string[]) =>
  JSON.parse(succeed(['evaluate', ...settings.flatMap((text) => ['--set', text]), '--get', get]));
const evaluatedNumber = (id: string, ...settings: string[]): number => evaluated(id, ...settings)[id].value;

const promised = [
  ...['wavelength', 'beamDiameter', 'pulseEnergy', 'repetitionRate', 'pulseDuration'].map(
    (x) => `laser.${x}`,
  ),
  'laser.beamPropagationRatio',
  'expander.magnification',
  ...['source', 'stepDiameter', 'stop', 'apertureDiameter', 'designPhase'].map((x) => `plate.${x}`),
  ...['madeHeight', 'stepHeight', 'stepPhase'].map((x) => `plate.${x}`),
  ...['lens.focalLength', 'lens.plateDistance', 'workpiece.z'],
  ...['stepRatio', 'stopRatio', 'goal', 'magnification'].map((x) => `match.${x}`),
  ...['radius', 'rayleighLength', 'zeroCurvaturePlanes'].map((x) => `focus.${x}`),
  ...['dip', 'width', 'edgeWidth', 'peakFluence'].map((x) => `spot.${x}`),
];

describe('quantities', () => {
  it('lists every quantity on a line of four columns', () => {
    const lines = succeed(['quantities']).trimEnd().split('\n');
    expect(lines).toHaveLength(designGraph.quantities.size + 1);
    for (const line of lines) expect(line.split('\t'), line).toHaveLength(4);
    for (const id of promised)
      expect(
        lines.some((line) => line.startsWith(`${id}\t`)),
        id,
      ).toBe(true);
  });
});

describe('evaluate', () => {
  it('gives value, unit and shown text of all promised ids', () => {
    const result = evaluated(promised.join(','));
    expect(Object.keys(result)).toEqual(promised);
    for (const id of promised) {
      const { value, unit, shown } = result[id];
      expect(value, id).not.toBeNull();
      expect(unit, id).toBe(designGraph.quantities.get(id)!.unit);
      expect(shown.length, id).toBeGreaterThan(0);
    }
    expect(result['laser.wavelength']).toEqual({ value: 1.03e-6, unit: 'm', shown: '1030\u202fnm' });
    expect(result['focus.zeroCurvaturePlanes'].value.length).toBeGreaterThan(0);
  });

  it('reads settings with units, with a comma, and bare in SI', () => {
    for (const text of ['4 mm', '4mm', '4,0 mm', '4000 µm', '0.004', '4e-3 m', '0.4 cm']) {
      expect(evaluatedNumber('laser.beamDiameter', `laser.beamDiameter=${text}`), text).toBe(4e-3);
    }
    expect(evaluatedNumber('plate.designPhase', 'plate.designPhase=0.5 waves')).toBe(Math.PI);
    expect(evaluatedNumber('plate.designPhase', 'plate.designPhase=180°')).toBe(Math.PI);
    expect(evaluated('plate.stop', 'plate.stop=open')['plate.stop'].value).toBe('open');
    const typed = evaluated('lens.distanceMode,lens.plateDistance', 'lens.plateDistance=30 cm');
    expect(typed['lens.distanceMode'].value).toBe('typed');
    expect(typed['lens.plateDistance'].value).toBe(0.3);
  });

  it('starts from a design file; settings on the line win', () => {
    const inputs = { ...designGraph.initial, 'laser.wavelength': 515e-9, 'expander.magnification': 3 };
    const files = { 'trial.json': writeDesignFile(designGraph, { inputs }) };
    const argv = ['evaluate', 'trial.json', '--set=expander.magnification=2.5'];
    const result = JSON.parse(succeed([...argv, '--get', 'laser.wavelength, expander.magnification'], files));
    expect(result['laser.wavelength'].value).toBe(515e-9);
    expect(result['expander.magnification'].value).toBe(2.5);
  });

  it('gives the values that there are, says what the others lack, and ends with code 2', () => {
    const { code, out, err } = run([
      ...['evaluate', '--set', 'plate.stop=open'],
      ...['--get', 'plate.stop,match.stopRatio,laser.wavelength'],
    ]);
    const result = JSON.parse(out);
    expect([code, result['plate.stop'].value, result['laser.wavelength'].value]).toEqual([
      2,
      'open',
      1.03e-6,
    ]);
    expect(result['match.stopRatio'].problem).toMatch(/no stop ratio/);
    expect(err).toBe(`match.stopRatio: ${result['match.stopRatio'].problem}\n`);
  });

  it('names what it does not know of a design file, and goes on', () => {
    const inputs = { 'plate.stop': { choice: 'open' }, 'later.thing': { value: 1, unit: 'm' } };
    const files = { 'later.json': JSON.stringify({ format: 'stepwell-design', version: 1, inputs }) };
    const { code, out, err } = run(['evaluate', 'later.json', '--get', 'plate.stop'], files);
    expect([code, JSON.parse(out)['plate.stop'].value]).toEqual([0, 'open']);
    expect(err).toBe(
      "'later.json' also gives what this program does not know and leaves out: later.thing.\n",
    );
  });

  it('gives the definitions: w0 = λf/(πw), zR = πw0²/λ, κ, R/w', () => {
    const w0 = (1.03e-6 * 0.1) / (Math.PI * 5e-3);
    const near = { relative: 1e-14, source: 'definition' };
    expectClose(evaluatedNumber('focus.radius'), w0, near);
    expectClose(evaluatedNumber('focus.rayleighLength'), (Math.PI * w0 * w0) / 1.03e-6, near);
    expect(evaluatedNumber('match.stepRatio')).toBe(1);
    expect(evaluatedNumber('match.stopRatio')).toBe(1.4);
    // I. H. Malitson, J. Opt. Soc. Am. 55, 1205 (1965): n(1030 nm) = 1.450044, given to six decimals.
    expectClose(evaluatedNumber('plate.stepHeight'), 1.03e-6 / (2 * 0.450044), {
      relative: 2e-6,
      source: 'Malitson 1965',
    });
  });
});

/** Beam of 10 mm (w = 5 mm), λ = 1030 nm, f = d = 100 mm. */
const w = 5e-3;
const w0 = (1.03e-6 * 0.1) / (Math.PI * w);
const rayleigh = (Math.PI * w0 * w0) / 1.03e-6;
/** Settings of a two-zone plate given in beam radii. */
const plateOf = (stepRatio: number, phase: number, stopRatio: number) => [
  `plate.stepDiameter=${2 * w * stepRatio}`,
  `plate.designPhase=${phase}`,
  stopRatio === 6 ? 'plate.stop=open' : `plate.apertureDiameter=${2 * w * stopRatio}`,
];

function table(argv: readonly string[]): number[][] {
  const [header, ...lines] = succeed(['profile', ...argv])
    .trimEnd()
    .split('\n');
  expect(header).toBe('z_m,radius_m,relative_irradiance,fluence_J_m2');
  return lines.map((line) => line.split(',').map(Number));
}

describe('profile', () => {
  it('writes one block a plane, in the order asked for', () => {
    const rows = table(['--z', '50 um', '--z', '-0.0001', '--z=0', '--radii', '0:20:5 um']);
    expect(rows.map(([z]) => z)).toEqual([5e-5, -1e-4, 0].flatMap((z) => Array(5).fill(z)));
    const radii = [0, 5e-6, 10e-6, 15e-6, 20e-6];
    rows.forEach(([, radius], i) => {
      expectClose(radius!, radii[i % 5]!, { absolute: 1e-20 });
    });
    const peakFluence = (2 * 20e-6) / (Math.PI * w0 * w0);
    for (const [, , irradiance, fluence] of rows) {
      expectClose(fluence!, irradiance! * peakFluence, { relative: 1e-14, source: '2E/(πw0²)' });
    }
  });

  it('reads several planes from one option', () => {
    const planes = (...argv: string[]) => [
      ...new Set(table([...argv, '--radii', '0:10:2 um']).map(([z]) => z)),
    ];
    expect(planes('--z', '0,0.05mm,0.1mm')).toEqual([0, 5e-5, 1e-4]);
    expect(planes('--z', '0, -0.05, 0.1 mm', '--z', '20 um')).toEqual([0, -5e-5, 1e-4, 2e-5]);
    expect(planes('--z', '0; 0,05 mm; 0,1 mm')).toEqual([0, 5e-5, 1e-4]);
    expect(planes('--z', '0,05 mm')).toEqual([5e-5]);
  });

  it('writes a column of fluence for each plane, with the unit in its head', () => {
    const argv = ['--z', '0, 50 um', '--radii', '0:20:5 um'];
    const rows = table(argv);
    const lines = succeed(['profile', ...argv, '--layout', 'columns'])
      .trimEnd()
      .split('\n');
    expect(lines[0]).toBe('radius_m,fluence_J_m2 at z_m=0,fluence_J_m2 at z_m=0.00005');
    expect(lines.slice(1).map((line) => line.split(',').map(Number))).toEqual(
      [0, 1, 2, 3, 4].map((i) => [rows[i]![1], rows[i]![3], rows[i + 5]![3]]),
    );
  });

  it('takes the workpiece where no plane is given, and a single radius', () => {
    const rows = table(['--set', 'workpiece.z=20 um', '--radii', '0:0:1 um']);
    expect(rows).toHaveLength(1);
    expect(rows[0]!.slice(0, 2)).toEqual([20e-6, 0]);
    const dense = table(['--z', '20 um', '--radii', '0:10:3 um']);
    expectClose(rows[0]![2]!, dense[0]![2]!, { absolute: 1e-9, source: 'the same with more radii' });
  });

  for (const item of reference('focus').cases.filter(
    ({ zones }: { zones: unknown[] }) => zones.length === 2,
  )) {
    it(`${item.name}: irradiance to 1e-9 of the unshaped peak`, () => {
      const [step, stop] = item.zones;
      const settings = plateOf(step.outer, step.phase, stop.outer).flatMap((text) => ['--set', text]);
      for (const { rho, zeta, irradiance } of item.field) {
        const radius = rho * w0;
        const rows = table([
          ...settings,
          ...['--z', String(zeta * rayleigh), '--radii', `${radius}:${radius}:1 m`],
        ]);
        expectClose(rows[0]![2]!, irradiance, {
          absolute: 1e-9,
          source: `tests/reference/focus.json at ϱ = ${rho}, ζ = ${zeta}`,
        });
      }
    });
  }
});

describe('numbers of the spot in metres', () => {
  for (const item of reference('profiles').cases) {
    if (item.zones.length !== 2) continue;
    it(`${item.name}: width, edge, dip and fluence to 1e-6`, () => {
      const [[stepRatio, phase], [stopRatio]] = item.zones;
      for (const plane of item.planes) {
        const settings = [...plateOf(stepRatio, phase, stopRatio), `workpiece.z=${plane.zeta * rayleigh}`];
        const got = evaluated('spot.width,spot.edgeWidth,spot.dip,spot.peakFluence', ...settings);
        const near = { relative: 1e-6, source: `tests/reference/profiles.json, ζ = ${plane.zeta}` };
        const half = plane.clips.find(({ eta }: { eta: number }) => eta === 0.5);
        expectClose(got['spot.width'].value, 2 * w0 * Math.sqrt(half.area / Math.PI), near);
        expectClose(got['spot.edgeWidth'].value, w0 * plane.edge.width, near);
        expectClose(got['spot.dip'].value, 1 - plane.onAxis / plane.peak, { ...near, absolute: 1e-9 });
        expectClose(got['spot.peakFluence'].value, ((2 * 20e-6) / (Math.PI * w0 * w0)) * plane.peak, near);
      }
    });
  }
});

describe('help', () => {
  it('says how each command is called', () => {
    for (const argv of [[], ['help'], ['--help']]) {
      for (const name of ['quantities', 'evaluate', 'profile', 'map', 'measure']) {
        expect(succeed(argv)).toContain(`stepwell ${name}`);
      }
    }
  });
});
