import { measuredPixelPitch } from '../../lib/design/measuredSpot.ts';
import { readTyped } from '../../lib/graph/typedInput.ts';
import { formatQuantity } from '../../lib/graph/units.ts';
import { decodeMicrograph } from '../../lib/measured/micrograph.ts';
import type { CoherenceLength } from '../../lib/measured/rippleCoherence.ts';
import type { RipplePeriod } from '../../lib/measured/ripplePeriods.ts';
import { measureRipples, type RippleOptions, type RipplePicture } from '../../lib/measured/ripplePicture.ts';
import { Problem } from '../../lib/problem.ts';
import type { CommandIo } from './commandIo.ts';
import { readRegion } from './measureMark.ts';
import { readBytes } from './openDesign.ts';
import { type Options, onlyWord, readOptions } from './options.ts';

/**
 * `measure ripples FILE [--pixel LENGTH] [--region LEFT,TOP,WIDTH,HEIGHT] [--smoothing PIXELS]`: JSON of period,
 * direction, coherence and regularity of the ripples in a micrograph; lengths in pixels where no pixel pitch is given.
 */
export function measureRipplesFile(args: readonly string[], io: CommandIo): string {
  const options = readOptions(args, ['pixel', 'region', 'smoothing']);
  const path = onlyWord(options, 'picture');
  const wanted = rippleOptions(options);
  const found = measureRipples(decodeMicrograph(readBytes(io, path), path), wanted);
  const { orientation } = found;
  const result = {
    main: found.main ? ripples(found.main, found.unit) : null,
    second: found.second ? ripples(found.second, found.unit) : null,
    without: found.without ?? null,
    orientation: {
      smoothing: { value: orientation.smoothing, unit: 'px' },
      direction: angle(orientation.direction),
      halfWidth: orientation.halfWidth === undefined ? null : angle(orientation.halfWidth),
      resultant: orientation.resultant,
    },
    angles:
      'of the wave vector, from the picture’s x towards its y, which points down; ridges lie at right angles',
    uncertainties:
      'standard uncertainties from the spread over the picture and from how much of the spectrum’s peak counts; that of the pixel pitch is not in them',
    region: found.region,
    leftOut: found.written,
    tile: found.tile,
    regularity: regularity(found),
    notes: found.notes,
  };
  return `${JSON.stringify(result, (_, value) => (typeof value === 'number' ? Number(value.toPrecision(8)) : value))}\n`;
}

function rippleOptions(options: Options): RippleOptions {
  const [pixel, region, smoothing] = ['pixel', 'region', 'smoothing'].map((name) => options.one(name));
  return {
    ...(pixel !== undefined && { pixelPitch: readTyped(measuredPixelPitch, pixel) }),
    ...(region !== undefined && { region: readRegion(region) }),
    ...(smoothing !== undefined && { smoothing: readSmoothing(smoothing) }),
  };
}

function readSmoothing(text: string): number {
  const smoothing = Number(text.replace(',', '.').replace(/\s*px$/, ''));
  if (text.trim() !== '' && Number.isFinite(smoothing)) return smoothing;
  throw new Problem('unreadable', `The smoothing '${text}' is no number; write pixels such as 2.`);
}

function ripples(found: RipplePeriod, unit: 'm' | 'px') {
  const coherence = ({ length: value, atLeast }: CoherenceLength) => ({ ...length(value, unit), atLeast });
  return {
    period: { ...length(found.period, unit), uncertainty: found.periodUncertainty },
    direction: { ...angle(found.direction), uncertainty: found.directionUncertainty },
    coherenceAlong: coherence(found.coherenceAlong),
    coherenceAcross: coherence(found.coherenceAcross),
    overBackground: found.overBackground,
    tileShare: found.tileShare,
  };
}

function length(value: number, unit: 'm' | 'px') {
  const shown = unit === 'm' ? formatQuantity(value, 'm', 'auto:m') : `${value.toPrecision(4)} px`;
  return { value, unit, shown };
}

function angle(value: number) {
  return { value, unit: 'rad', shown: formatQuantity(value, 'rad', 'deg') };
}

/** The map to three digits: its cells hold too few gradients for more. */
function regularity({ orientation }: RipplePicture) {
  const { values, directions, ...grid } = orientation.regularity;
  const rounded = (numbers: Float64Array) => [...numbers].map((value) => Number(value.toFixed(3)));
  return { ...grid, values: rounded(values), directions: rounded(directions) };
}
