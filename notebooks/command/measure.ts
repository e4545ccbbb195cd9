import { readCausticFile } from '../../lib/design/causticFile.ts';
import { designGraph } from '../../lib/design/design.ts';
import { beamImagePitchUncertainty, wavelength } from '../../lib/design/laser.ts';
import {
  gaussianFitDiameter,
  measuredAngle,
  measuredCentroidX,
  measuredCentroidY,
  measuredDiameterX,
  measuredDiameterY,
  measuredEllipticity,
} from '../../lib/design/measured.ts';
import { usedBeamDiameter } from '../../lib/design/rawBeam.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { valueOrThrow } from '../../lib/graph/outcome.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import { applyPatch, initialState } from '../../lib/graph/state.ts';
import { readTyped } from '../../lib/graph/typedInput.ts';
import { formatQuantity } from '../../lib/graph/units.ts';
import { type MeasuredBeam, spoilingNotes } from '../../lib/measured/measuredBeam.ts';
import { fitCaustic } from '../../lib/optics/caustic.ts';
import { Problem } from '../../lib/problem.ts';
import type { CommandIo } from './commandIo.ts';
import { measureMarkFile } from './measureMark.ts';
import { measureRipplesFile } from './measureRipples.ts';
import { measureSpotsFile } from './measureSpots.ts';
import { imagePatch, readText } from './openDesign.ts';
import { type Options, onlyWord, readOptions, required } from './options.ts';

interface Measured {
  readonly value: number;
  readonly unit: string;
  /** Standard uncertainty in the same unit; null where none is known. */
  readonly uncertainty: number | null;
  readonly shown: string;
  /** What tells against the value, if anything. */
  readonly note?: string;
}

/** `measure beam FILE --pixel LENGTH [--pixel-uncertainty LENGTH]` and `measure caustic FILE`: JSON of measured values with uncertainties. */
export function measure(args: readonly string[], io: CommandIo): string {
  const [what, ...rest] = args;
  if (what === 'beam') return measureBeamFile(readOptions(rest, ['pixel', 'pixel-uncertainty']), io);
  if (what === 'caustic') return measureCausticFile(readOptions(rest, ['wavelength']), io);
  if (what === 'spots') return measureSpotsFile(rest, io);
  if (what === 'mark') return measureMarkFile(rest, io);
  if (what === 'ripples') return measureRipplesFile(rest, io);
  throw new Problem(
    'unreadable',
    `'measure ${what ?? ''}' is not known; use measure beam FILE --pixel "5.5 um", measure mark FILE --pixel "0.2 um", measure ripples FILE --pixel "50 nm", measure spots FILE or measure caustic FILE.`,
  );
}

function measureBeamFile(options: Options, io: CommandIo): string {
  const path = onlyWord(options, 'image file');
  const patch = imagePatch(io, path, required(options, 'pixel', '"5.5 um"'));
  const uncertain = options.one('pixel-uncertainty');
  const state = applyPatch(designGraph, initialState(designGraph), {
    ...patch,
    ...(uncertain === undefined
      ? {}
      : { [beamImagePitchUncertainty.id]: readTyped(beamImagePitchUncertainty, uncertain) }),
  });
  const shown = [
    usedBeamDiameter,
    measuredDiameterX,
    measuredDiameterY,
    measuredAngle,
    measuredEllipticity,
    measuredCentroidX,
    measuredCentroidY,
    gaussianFitDiameter,
  ];
  const outcomes = createEngine(designGraph, state.inputs).evaluate([
    'laser.measuredBeam',
    ...shown.map(({ id }) => id),
  ]);
  const beam = valueOrThrow(outcomes['laser.measuredBeam']!) as MeasuredBeam;
  // Where part of the beam is cut off, noise and background tell nothing of how far a diameter is off.
  const spoilt = spoilingNotes(beam).length > 0;
  const uncertainties: Readonly<Record<string, number>> = spoilt
    ? {}
    : {
        [usedBeamDiameter.id]: beam.uncertainty.equivalentDiameter,
        [measuredDiameterX.id]: beam.uncertainty.diameterX,
        [measuredDiameterY.id]: beam.uncertainty.diameterY,
      };
  const entries = shown.flatMap((quantity): [string, Measured][] => {
    const outcome = outcomes[quantity.id]!;
    if (!('value' in outcome)) return [];
    const uncertainty = uncertainties[quantity.id] ?? null;
    return [
      [
        quantity.id,
        {
          value: outcome.value as number,
          unit: String(quantity.unit),
          uncertainty,
          shown: shownValue(quantity, outcome),
          ...('note' in outcome && outcome.note !== undefined ? { note: outcome.note } : {}),
        },
      ],
    ];
  });
  return json({ ...Object.fromEntries(entries), notes: beam.notes.map((note) => note.text) });
}

function measureCausticFile(options: Options, io: CommandIo): string {
  const path = onlyWord(options, 'table file');
  const typed = options.one('wavelength');
  const lambda = typed === undefined ? wavelength.initial : readTyped(wavelength, typed);
  const table = readCausticFile(readText(io, path), path);
  const fit = fitCaustic(table.z, table.diameter, lambda);
  const entry = (
    result: { value: number; uncertainty: number },
    unit: string,
    display: string,
  ): Measured => ({
    ...result,
    unit,
    shown: formatQuantity(result.value, unit, display),
  });
  return json({
    'laser.wavelength': {
      value: lambda,
      unit: wavelength.unit,
      uncertainty: null,
      shown: shownValue(wavelength, { value: lambda }),
    },
    'laser.waistPosition': entry(fit.waistPosition, 'm', 'mm'),
    'laser.waistDiameter': entry(fit.waistDiameter, 'm', 'um'),
    'laser.rayleighLength': entry(fit.rayleighLength, 'm', 'mm'),
    'laser.divergence': entry(fit.divergence, 'rad', 'mrad'),
    'laser.beamPropagationRatio': entry(fit.beamPropagationRatio, '1', '1'),
    notes: fit.notes,
  });
}

function json(value: unknown): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}
