import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { designs } from '../../data/designs/make.ts';
import { predictedMark } from '../../data/measured/drawMarkPicture.ts';
import { makeMeasured, truth } from '../../data/measured/make.ts';
import { readRippleFile } from '../../lib/design/rippleSeries.ts';
import { readSectionFile } from '../../lib/design/sectionFile.ts';
import { readSpotFile } from '../../lib/design/spotFile.ts';
import { decodeCameraImage } from '../../lib/measured/cameraImage.ts';
import { readCausticTable } from '../../lib/measured/causticTable.ts';
import { measureMark } from '../../lib/measured/markPicture.ts';
import { measureBeam } from '../../lib/measured/measureBeam.ts';
import { decodeMicrograph } from '../../lib/measured/micrograph.ts';
import { measureRipples } from '../../lib/measured/ripplePicture.ts';
import { levelSection } from '../../lib/measured/sectionLevel.ts';
import { fitCaustic } from '../../lib/optics/caustic.ts';
import type { Estimate } from '../../lib/optics/causticFit.ts';
import type { Light } from '../../lib/optics/light.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import { expectClose } from '../close.ts';
import { read as readDesigned } from '../notebooks/designOutcomes.ts';
import { toMetres } from './toMetres.ts';

const folder = new URL('../../data/measured/', import.meta.url);
const read = (name: string) => new Uint8Array(readFileSync(new URL(name, folder)));
const measure = (name: string) => measureBeam(decodeCameraImage(read(name), name), truth.pixelPitch);

describe('the invented files', () => {
  it('are what the script makes, byte by byte, and nothing else lies there', () => {
    const made = makeMeasured();
    for (const [name, bytes] of Object.entries(made)) {
      expect(Buffer.compare(read(name), bytes), `${name}: run npx tsx data/measured/make.ts`).toBe(0);
    }
    const kept = readdirSync(folder).filter((name) => !/\.(ts|md)$/.test(name));
    expect(kept.sort()).toEqual(Object.keys(made).sort());
  });

  it('rain-gauge beam: the true diameter, and a note that the fit reads less', () => {
    const beam = measure('rain-gauge-beam.png');
    // Wings of twice the width lose 0.24 % of the diameter beyond the window of three widths.
    expectClose(beam.equivalentDiameter, truth.rainGauge.equivalentDiameter, {
      relative: 0.003,
      source: 'data/measured/README.md',
    });
    expectClose(beam.ellipticity, truth.rainGauge.ellipticity, { relative: 0.002 });
    expectClose(beam.angle, truth.rainGauge.angle, { absolute: 0.01 });
    expect(beam.notes.map((note) => note.kind)).toEqual(['not-gaussian']);
    expect(beam.notes[0]?.text).toMatch(
      /^The Gaussian fit reads 2\.4\d{1,2} mm, the second moments 2\.495 mm: light in the wings/,
    );
  });

  it('cold-plate beam: the true diameter from eight bits, no note', () => {
    const beam = measure('cold-plate-beam.tif');
    expectClose(beam.equivalentDiameter, truth.coldPlate.equivalentDiameter, {
      relative: 0.002,
      source: 'data/measured/README.md',
    });
    expectClose(beam.ellipticity, truth.coldPlate.ellipticity, { relative: 0.003 });
    expect(beam.notes).toEqual([]);
  });

  it.each(['clipped', 'saturated'])('%s beam is called so', (kind) => {
    expect(measure(`${kind}-beam.png`).notes.map((note) => note.kind)).toEqual([kind]);
  });

  it.each([
    ['rain-gauge-caustic.csv', truth.rainGaugeCaustic],
    ['cold-plate-caustic.csv', truth.coldPlateCaustic],
  ] as const)('%s: the true beam within three standard uncertainties', (name, expected) => {
    const { z, diameter } = readCausticTable(readFileSync(new URL(name, folder), 'utf8'), toMetres);
    const fit = fitCaustic(z, diameter, expected.wavelength);
    const check = (found: Estimate, value: number) =>
      expectClose(found.value, value, { absolute: 3 * found.uncertainty, source: 'data/measured/README.md' });
    check(fit.waistPosition, expected.waistPosition);
    check(fit.waistDiameter, expected.waistDiameter);
    check(fit.beamPropagationRatio, expected.beamPropagationRatio);
    expect(fit.notes).toEqual([]);
  });

  it('lecture-table mark: the predicted ring in its part, and a neighbour in the whole picture', () => {
    const name = 'lecture-table-mark.png';
    const image = decodeCameraImage(read(name), name);
    const { pixelPitch, x, y, edge } = truth.markPicture;
    const region = { left: 80, top: 30, width: 180, height: 180 };
    const mark = measureMark(image, { pixelPitch, region });
    const { outerDiameter, innerDiameter } = predictedMark();
    // Noise of 2.5 % on a contrast of 38 % moves single corners of the contour by a few tenths of a pixel.
    const near = { absolute: 0.3 * pixelPitch, source: 'data/measured/README.md' };
    expectClose(mark.outerDiameter, outerDiameter, near);
    expectClose(mark.innerDiameter, innerDiameter, near);
    expectClose(mark.centre[0], x * pixelPitch, near);
    expectClose(mark.centre[1], y * pixelPitch, near);
    // The edge as drawn and the blur before the contour, which passes 0.35 and 0.65 at some 0.37 standard deviations.
    expectClose(mark.outerDiameterUncertainty, 2 * 0.37 * Math.hypot(edge, Math.sqrt(2)) * pixelPitch, {
      relative: 0.1,
      source: 'data/measured/README.md',
    });
    expect(mark.notes).toEqual([]);
    expect(measureMark(image, { pixelPitch }).notes).toEqual([expect.stringMatching(/^1 further part/)]);
  });

  it('rain-gauge spots: areas of the true threshold, one outlier, three energies three times', () => {
    const name = 'rain-gauge-spots.csv';
    const { rows, bad, ignored } = readSpotFile(readFileSync(new URL(name, folder), 'utf8'), name);
    expect(bad).toEqual([]);
    expect(ignored).toEqual(['remark']);
    const energies = rows.map(({ energy }) => energy!);
    const often = energies.filter((one) => energies.filter((other) => other === one).length === 3);
    expect(new Set(often).size).toBe(3);
    const { threshold, outlierRow, outlierFactor } = truth.marks;
    const value = readDesigned(designs['rain-gauge-funnel.json']!.patch);
    const spot = spotAt(value('focus.light') as unknown as Light, 0);
    const unit = value('focus.unshapedPeakFluence') / value('laser.usedPulseEnergy');
    for (const { row, energy, area } of rows) {
      const level = threshold / (energy! * unit);
      if (area === 0) expect(level).toBeGreaterThan(spot.peak);
      else {
        const expected = spot.areaAbove(level) * (row === outlierRow ? outlierFactor ** 2 : 1);
        // Two diameters of 2 % each; near threshold the area follows the energy more steeply than above.
        expectClose(area, expected, {
          relative: energy! < 4e-6 ? 0.3 : 0.12,
          source: 'data/measured/README.md',
        });
      }
    }
  });

  const ripplesIn = (name: string) =>
    measureRipples(decodeMicrograph(read(name), name), { pixelPitch: truth.ripples.pixelPitch });

  it.each(['even', 'uneven'] as const)('%s ripples: the true period and direction', (kind) => {
    const { main } = ripplesIn(`${kind}-ripples.png`);
    const { period, direction } = truth.ripples[kind];
    const source = 'data/measured/README.md';
    expectClose(main!.period, period, { absolute: main!.periodUncertainty, source });
    expectClose(main!.direction, direction, { absolute: main!.directionUncertainty, source });
    expect(main!.periodUncertainty).toBeLessThan(0.03 * period);
  });

  it('periods of the rain-gauge funnel: what was put in, to three times the scatter', () => {
    const name = 'rain-gauge-periods.csv';
    const { against, setting, period } = readRippleFile(new TextDecoder().decode(read(name)), name);
    const { atTen, fallPerTenfold, scatter, pulses } = truth.periods;
    expect(against).toBe('pulses');
    expect(setting).toEqual(pulses);
    const source = 'data/measured/README.md';
    pulses.forEach((count, i) => {
      const exact = atTen * (1 - fallPerTenfold * Math.log10(count / 10));
      expectClose(period[i]!, exact, { relative: 3 * scatter, source });
    });
  });

  it('a section of the cold-plate channels: where the groove lies, the tilt, the noise and what is missing', () => {
    const name = 'cold-plate-section.csv';
    const table = readSectionFile(new TextDecoder().decode(read(name)), name);
    const { position, noise, tilt, missing, rim } = levelSection(table);
    const made = truth.section;
    const source = 'data/measured/README.md';
    // Walls of slope 3 give the middle to a part of the noise; every seventh of their points is missing.
    expectClose(table.position[0]! - position[0]!, made.centre, { absolute: 2 * made.noise, source });
    // 130 places of surface, a quarter as many that tell: a tenth of the noise, and what the rim pulls.
    expectClose(noise, made.noise, { relative: 0.25, source });
    // Three standard errors: 60 nm over the root of 130 places, 23 µm from their middle, neighbours alike: twice that.
    expectClose(tilt, made.tilt, { absolute: 1.5e-3, source });
    expectClose(rim, made.rim.height, { absolute: 3 * made.noise, source });
    expect(missing).toBe(18);
  });

  it('even ripples: the caption is left out', () => {
    const { region, notes } = ripplesIn('even-ripples.png');
    expect(region).toEqual({ left: 0, top: 0, width: 480, height: 420 - truth.ripples.captionRows });
    expect(notes).toHaveLength(1);
  });

  it('uneven ripples: the map shows the lines and what lies between them', () => {
    const { orientation } = ripplesIn('uneven-ripples.png');
    const { columns, rows, cell, values } = orientation.regularity;
    const spacing = truth.ripples.uneven.lineSpacing / truth.ripples.pixelPitch;
    const onLine: number[] = [];
    const between: number[] = [];
    for (let row = 0; row < rows; row++) {
      const row0 = values.slice(row * columns, (row + 1) * columns);
      const mean = row0.reduce((sum, value) => sum + value, 0) / columns;
      // Where cos is −1 a line runs, where it is 1 the middle between two lies.
      const place = Math.cos((2 * Math.PI * (row + 0.5) * cell) / spacing);
      if (place < -0.5) onLine.push(mean);
      if (place > 0.5) between.push(mean);
    }
    expect(Math.min(...onLine)).toBeGreaterThan(Math.max(...between) + 0.2);
  });
});
