import { existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readCausticFile } from '../../lib/design/causticFile.ts';
import { decodeText } from '../../notebooks/fileText.ts';
import { expectClose } from '../close.ts';
import { here, succeed } from './runCommand.ts';

describe('measure', () => {
  it('caustic: five values with uncertainties', () => {
    const result = JSON.parse(
      succeed(['measure', 'caustic', 'data/measured/rain-gauge-caustic.csv', '--wavelength', '1030 nm']),
    );
    for (const name of ['waistPosition', 'waistDiameter', 'rayleighLength', 'divergence']) {
      expect(result[`laser.${name}`].uncertainty, name).toBeGreaterThan(0);
    }
    expect(result['laser.beamPropagationRatio'].value).toBeGreaterThan(1);
    expect(Array.isArray(result.notes)).toBe(true);
  });

  it('caustic: says which wavelength it took', () => {
    const taken = (...more: string[]) =>
      JSON.parse(succeed(['measure', 'caustic', 'data/measured/rain-gauge-caustic.csv', ...more]));
    const usual = taken()['laser.wavelength'];
    expect(usual).toEqual({ value: 1.03e-6, unit: 'm', uncertainty: null, shown: '1030\u202fnm' });
    const green = taken('--wavelength', '515 nm');
    expect(green['laser.wavelength'].value).toBe(515e-9);
    const ratio = 'laser.beamPropagationRatio';
    expectClose(green[ratio].value, 2 * taken()[ratio].value, { relative: 1e-12 });
  });

  it('caustic: the M² that the design then uses', () => {
    const table = 'data/measured/rain-gauge-caustic.csv';
    const measured = JSON.parse(succeed(['measure', 'caustic', table]));
    const { value, uncertainty } = measured['laser.beamPropagationRatio'];
    const ids = ['usedBeamPropagationRatio', 'causticRatioUncertainty', 'usedBeamDiameter'].map(
      (x) => `laser.${x}`,
    );
    const waist = ['--set', 'laser.beamSource=caustic'];
    const argv = ['evaluate', '--caustic', table, ...waist, '--get', ids.join(',')];
    const used = JSON.parse(succeed(argv));
    expect(ids.map((id) => used[id].value)).toEqual([
      value,
      uncertainty,
      measured['laser.waistDiameter'].value,
    ]);
    const rows = (...more: string[]) =>
      succeed(['profile', '--radii', '0:20:5 um', ...more])
        .split('\n')
        .map((line) => line.split(',')[2]);
    expect(rows('--caustic', table)).toEqual(rows('--set', `laser.beamPropagationRatio=${value}`));
    expect(rows('--caustic', table)).not.toEqual(rows());
  });

  it('caustic: what is set on the line wins over the file’s own choice', () => {
    const argv = ['--caustic', 'data/measured/rain-gauge-caustic.csv', '--set', 'laser.ratioSource=typed'];
    const used = JSON.parse(succeed(['evaluate', ...argv, '--get', 'laser.usedBeamPropagationRatio']));
    expect(used['laser.usedBeamPropagationRatio'].value).toBe(1);
  });

  it('caustic: tables from older programs are read, whatever the code of µ', () => {
    const plain = 'z (mm);d (µm)\n1;300\n2;250\n3;230\n4;255\n5;310\n6;390\n';
    const utf8 = new TextEncoder().encode(plain);
    const wide = Uint8Array.from(Buffer.from(`\uFEFF${plain}`, 'utf16le'));
    const swapped = wide.map((_, i) => wide[i ^ 1]!);
    const windows = Uint8Array.from(plain, (sign) => sign.charCodeAt(0));
    const read = (bytes: Uint8Array) => readCausticFile(decodeText(bytes), 'table.csv');
    for (const bytes of [wide, swapped, windows]) expect(read(bytes)).toEqual(read(utf8));
    expectClose(read(utf8).diameter[0]!, 300e-6, { relative: 1e-12 });
  });

  const image = 'data/measured/rain-gauge-beam.png';
  it.runIf(existsSync(here(image)))('beam: the diameter that the design then uses', () => {
    const measured = JSON.parse(succeed(['measure', 'beam', image, '--pixel', '5.5 um']));
    const { value, uncertainty } = measured['laser.usedBeamDiameter'];
    expect(uncertainty).toBeGreaterThan(0);
    expect(uncertainty).toBeLessThan(0.1 * value);
    const argv = ['evaluate', '--beam', image, '--pixel', '5.5 um', '--get', 'laser.usedBeamDiameter'];
    expect(JSON.parse(succeed(argv))['laser.usedBeamDiameter'].value).toBe(value);
  });

  it.runIf(existsSync(here(image)))('beam: an uncertain pitch adds its share to the uncertainty', () => {
    const argv = ['measure', 'beam', image, '--pixel', '5.5 um'];
    const [exact, uncertain] = [argv, [...argv, '--pixel-uncertainty', '0.11 um']].map(
      (words) => JSON.parse(succeed(words))['laser.usedBeamDiameter'],
    );
    expect(uncertain.value).toBe(exact.value);
    const share = Math.sqrt(uncertain.uncertainty ** 2 - exact.uncertainty ** 2) / exact.value;
    expectClose(share, 0.02, { relative: 1e-9, source: '0.11 of 5.5 µm, in quadrature' });
  });
});

describe('measure spots', () => {
  const argv = [
    'measure',
    'spots',
    'data/measured/rain-gauge-spots.csv',
    'data/designs/rain-gauge-funnel.json',
  ];

  it('prints the fits with uncertainties and verdicts', () => {
    const fits = JSON.parse(succeed([...argv, '--leave-out', '18=outlier']));
    const { value, unit } = fits['threshold.fittedFluence'];
    expect(unit).toBe('J/m^2');
    expect(Math.abs(value - 2100)).toBeLessThan(2 * fits['threshold.fittedUncertainty'].value);
    expect(fits['threshold.profileFit'].verdict).toBe('describes');
    expect(fits['threshold.gaussianFit'].verdict).toBe('does not describe');
    expect(fits['threshold.planeFit'].uncertainties.planeOffset).toBeGreaterThan(0);
    expect(fits['threshold.profileFit'].residuals).toHaveLength(19);
    expect(fits['threshold.incubationFit'].problem).toMatch(/at least 3/);
  });

  it('the threshold that the design then uses', () => {
    const fits = JSON.parse(succeed(argv));
    const used = ['evaluate', argv[3]!, '--spots', argv[2]!, '--set', 'threshold.source=fitted'];
    const design = JSON.parse(succeed([...used, '--get', 'threshold.fluence']));
    expect(design['threshold.fluence'].value).toBe(fits['threshold.fittedFluence'].value);
    expect(fits['threshold.fittedFluence'].note).toMatch(/does not describe/);
  });
});

describe('measure beam of a spoilt image', () => {
  it.each(['clipped', 'saturated'])('%s: no uncertainty, and the reason beside every value', (kind) => {
    const argv = ['measure', 'beam', `data/measured/${kind}-beam.png`, '--pixel', '5.5 um'];
    const { notes, ...measured } = JSON.parse(succeed(argv)) as Record<string, { note?: string }> & {
      notes: string[];
    };
    expect(notes).toHaveLength(1);
    const ids = Object.keys(measured);
    expect(ids).toEqual(expect.arrayContaining(['laser.usedBeamDiameter', 'laser.gaussianFitDiameter']));
    for (const id of ids) expect(measured[id], id).toMatchObject({ uncertainty: null, note: notes[0] });
  });

  it('a good one: uncertainties, and no reason against any value', () => {
    const measured = JSON.parse(
      succeed(['measure', 'beam', 'data/measured/cold-plate-beam.tif', '--pixel', '5.5 um']),
    );
    expect(measured.notes).toEqual([]);
    expect(measured['laser.usedBeamDiameter'].uncertainty).toBeGreaterThan(0);
    expect(measured['laser.usedBeamDiameter'].note).toBeUndefined();
  });
});
