import { errorFunction } from '../numerics/complexErrorFunction.ts';
import { type PanelledFunction, valueAt } from '../numerics/panelledFunction.ts';
import { Problem } from '../problem.ts';
import type { Spot } from './askedSpot.ts';
import { gridSpot, gridStep, usableDefocus } from './gridSpot.ts';
import { type CrossedPlate, collinsB, type IslandPlate, type Light } from './light.ts';
import { radiusScale } from './roundSpot.ts';
import { axisFunctions, irradianceTerms, layOutAxis } from './separableIrradiance.ts';
import { endOfOverlap } from './spotSpectrum.ts';
import { straightSpectrum } from './straightSpectrum.ts';

/** The spot of crossed strips or of an island, of a centred beam, elliptical along the plate's axes or not. 10 to 100 ms. */
export function straightStepSpot(light: Light, plate: CrossedPlate | IslandPlate, z: number): Spot {
  if (light.decentreX !== 0 || light.decentreY !== 0) {
    throw new Problem(
      'outside',
      'Straight steps are computed for a beam on the centre of the plate only; set both decentres to 0.',
    );
  }
  const defocus = usableDefocus(light, z);
  const scale = radiusScale(light, z);
  const axes = [
    { halfWidth: plate.halfWidthX, radius: light.beamRadius / Math.sqrt(light.beamAspect) },
    { halfWidth: plate.halfWidthY, radius: light.beamRadius * Math.sqrt(light.beamAspect) },
  ].map(({ halfWidth, radius }) => {
    // In units of its own radius the beam is round: defocus grows with its square, the focus shrinks.
    const shrink = radius / light.beamRadius;
    const axis = layOutAxis({
      halfWidth: halfWidth / radius,
      stop: plate.stop === 0 ? null : plate.stop / radius,
      defocus: defocus * shrink * shrink,
      phase: plate.phase,
      beamPropagationRatio: light.beamPropagationRatio,
    });
    return { axis, unit: scale / shrink, functions: axisFunctions(plate.kind, axis) };
  });
  const [x, y] = axes as [(typeof axes)[0], (typeof axes)[0]];
  const strength = (light.focalLength / collinsB(light, z)) ** 2;
  const terms = irradianceTerms(plate.phase, x.functions, y.functions);
  const sum = (a: (f: PanelledFunction) => number, b: (f: PanelledFunction) => number) =>
    strength * terms.reduce((total, term) => total + term.factor * a(term.x) * b(term.y), 0);
  const spectrum = straightSpectrum(plate.kind, x.axis, y.axis);
  return gridSpot(light, {
    irradianceAt: (atX, atY) =>
      sum(
        (f) => valueAt(f, Math.abs(atX) / x.unit),
        (f) => valueAt(f, Math.abs(atY) / y.unit),
      ),
    sample: () => sampleQuadrant(),
    copies: 4,
    transmission: passing(x.axis.stop) * passing(y.axis.stop),
    spectrum: (qx, qy) => spectrum(qx * x.unit, qy * y.unit),
    spectrumForm: 'straight',
    spectrumEnd: (direction) =>
      Math.min(
        endAlong(x.axis) / x.unit / Math.abs(Math.cos(direction)),
        endAlong(y.axis) / y.unit / Math.abs(Math.sin(direction)),
      ),
  });

  function sampleQuadrant() {
    const columns = countSteps(x.axis);
    const rows = countSteps(y.axis);
    const values = new Float64Array(columns * rows);
    for (const { factor, x: alongX, y: alongY } of terms) {
      const inX = samplesOf(alongX, columns, stepOf(x.axis));
      const inY = samplesOf(alongY, rows, stepOf(y.axis));
      for (let i = 0; i < values.length; i++)
        values[i]! += strength * factor * inX[i % columns]! * inY[Math.floor(i / columns)]!;
    }
    const grid = { columns, rows, stepX: stepOf(x.axis) * x.unit, stepY: stepOf(y.axis) * y.unit, values };
    return { grid, x: 0, y: 0 };
  }
}

/** Share of one direction's energy inside the stop. */
function passing(stop: number | null): number {
  return stop === null ? 1 : errorFunction(Math.SQRT2 * stop);
}

/** q of one axis from which its spectrum is 0. */
function endAlong(axis: { readonly stop: number | null }): number {
  return Math.min(4 * (axis.stop ?? Number.POSITIVE_INFINITY), 2 * endOfOverlap);
}

function stepOf(axis: { readonly stop: number | null }): number {
  return gridStep / Math.min(1, axis.stop ?? 1);
}

function countSteps(axis: { readonly stop: number | null; readonly reach: number }): number {
  return Math.floor(axis.reach / stepOf(axis)) + 1;
}

function samplesOf(f: PanelledFunction, count: number, step: number): Float64Array {
  return Float64Array.from({ length: count }, (_, i) => valueAt(f, i * step));
}
