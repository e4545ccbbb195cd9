import { derived } from '../graph/define.ts';
import type { Derived, FileInput } from '../graph/quantity.ts';
import type { CameraImage } from '../measured/cameraImage.ts';
import type { CoherenceLength } from '../measured/rippleCoherence.ts';
import type { RipplePeriod } from '../measured/ripplePeriods.ts';
import type { RipplePicture } from '../measured/ripplePicture.ts';
import { Problem } from '../problem.ts';
import type { MicrographLetter } from './micrographInputs.ts';
import type { ResultText } from './pictureInputs.ts';
import { lineAngle } from './rippleDirection.ts';

/** An angle of the library, from x towards y downwards, as one of the page: counter-clockwise, of a line, 0 to π. */
export const counterClockwise = (angle: number) => lineAngle(-angle);

/** What tells against the numbers; that rows of a caption were left out does not. */
export const warningsOf = ({ notes, written }: RipplePicture) => notes.slice(written.length);

function noteOf(found: RipplePicture): string | undefined {
  const warnings = warningsOf(found);
  return warnings.length === 0 ? undefined : warnings.join(' ');
}

/** What results are made from. */
interface Measured {
  readonly found: Derived<RipplePicture>;
  readonly pitch: Derived<number>;
  readonly picture: FileInput<CameraImage>;
}

/** Makes results of the ripples; a problem, why there are none, where there are none. */
export function resultsOf({ found, pitch, picture }: Measured, prefix: string, letter: MicrographLetter) {
  const needed = (ripples: RipplePicture): RipplePeriod => {
    if (ripples.main) return ripples.main;
    throw new Problem('absent', ripples.without!.text, { input: picture.id });
  };
  const described = ({ id, name, symbol, ...text }: ResultText) => ({
    ...text,
    id: `${prefix}.${id}`,
    name: `${name} (${letter})`,
    symbol: `{${symbol}}_\\text{${letter}}`,
    valid: ({ found }: { readonly found: RipplePicture }) => noteOf(found),
  });
  const plain =
    (unit: '1' | 'rad', display: string, source = 'common practice') =>
    (text: ResultText, of: (main: RipplePeriod, all: RipplePicture) => number) =>
      derived({
        ...described(text),
        unit,
        display,
        from: { found },
        compute: ({ found }): number => of(needed(found), found),
        source,
      });
  const length = (text: ResultText, of: (main: RipplePeriod, all: RipplePicture) => number, display = 'nm') =>
    derived({
      ...described(text),
      unit: 'm',
      display,
      from: { found, pitch },
      compute: ({ found, pitch }): number => of(needed(found), found) * pitch,
      source: 'definition',
    });
  return {
    inPixels: plain('1', 'px'),
    angle: plain('rad', 'deg'),
    halfAngle: plain('rad', 'deg', 'gnilitskyi2017'),
    length,
  };
}

type Results = ReturnType<typeof resultsOf>;

/** Period and direction with what they leave open. */
export function mainResults({ inPixels, angle, length }: Results) {
  const open =
    'Standard uncertainty from the spread over the picture and from how much of the peak of the spectrum counts. The scale is not in it.';
  const period = {
    id: 'period',
    name: 'measured period of the ripples',
    symbol: '\\Lambda',
    about:
      'Distance of the ridges, from the centre of the peak in the power spectrum averaged over windowed tiles of the picture.',
    formula: '2\\pi/|\\mathbf k|',
  };
  const openPeriod = {
    id: 'periodUncertainty',
    name: 'uncertainty of the measured period',
    symbol: 'u(\\Lambda)',
    about: open,
    formula: '\\Lambda\\,u(k)/k',
    digits: 2,
  };
  const pixels = (text: ResultText): ResultText => ({
    ...text,
    id: text.id.replace('period', 'periodPixels'),
    name: `${text.name} in pixels`,
  });
  return {
    period: length(period, (main) => main.period),
    periodUncertainty: length(openPeriod, (main) => main.periodUncertainty),
    periodPixels: inPixels(pixels(period), (main) => main.period),
    periodPixelsUncertainty: inPixels(pixels(openPeriod), (main) => main.periodUncertainty),
    direction: angle(
      {
        id: 'direction',
        name: 'direction of the wave vector in the picture',
        symbol: '\\varphi',
        about:
          'Direction across the ridges, in which the grey repeats, against the picture’s x axis, which points to the right; counter-clockwise, 0 to 180°.',
        formula: '\\arg\\mathbf k',
      },
      (main) => counterClockwise(main.direction),
    ),
    directionUncertainty: angle(
      {
        id: 'directionUncertainty',
        name: 'uncertainty of the measured direction',
        symbol: 'u(\\varphi)',
        about: 'Standard uncertainty from the spread over the picture and from how much of the peak counts.',
        formula: 'u(k_\\perp)/k',
        digits: 2,
      },
      (main) => main.directionUncertainty,
    ),
  };
}

/** How regular the ripples are. */
export function regularityResults({ halfAngle, length }: Results, picture: string) {
  const coherence = (id: string, along: string, of: (main: RipplePeriod) => CoherenceLength) =>
    length(
      {
        id,
        name: `coherence length ${along}`,
        symbol: '\\ell',
        about: `Distance ${along} at which the ripples’ own correlation has fallen to 1/e; where tiles are too small to show its end, at least this.`,
        formula: '|C(\\ell)|=C(0)/e',
        digits: 3,
      },
      (main) => of(main).length,
      'um',
    );
  return {
    halfWidth: halfAngle(
      {
        id: 'halfWidth',
        name: 'half-width of the local orientation',
        symbol: '\\delta\\varphi',
        about:
          'Half the width at half the maximum of the distribution of local gradients over their direction, weighted by their size. It depends on the smoothing.',
        formula: '\\tfrac12\\,\\text{width}\\{\\sum m\\,\\delta(\\varphi-\\varphi_i)\\}',
        digits: 3,
      },
      (_, { orientation: { halfWidth } }) => {
        if (halfWidth !== undefined) return halfWidth;
        throw new Problem(
          'absent',
          'The distribution of local orientation nowhere falls to half of its maximum, so that it has no half-width. Choose a part with one direction.',
          { input: picture },
        );
      },
    ),
    coherenceAlong: coherence('coherenceAlong', 'along the wave vector', (main) => main.coherenceAlong),
    coherenceAcross: coherence('coherenceAcross', 'along the ridges', (main) => main.coherenceAcross),
  };
}

/** A second kind of ripples. */
export function secondResults({ angle, length }: Results, picture: string) {
  const second = ({ second: found }: RipplePicture): RipplePeriod => {
    if (found) return found;
    throw new Problem('absent', 'No second period stands out in this micrograph.', { input: picture });
  };
  return {
    secondPeriod: length(
      {
        id: 'secondPeriod',
        name: 'second period',
        symbol: '\\Lambda_2',
        about: 'Period of a second kind of ripples, neither a harmonic of the first nor beside it.',
        formula: '2\\pi/|\\mathbf k_2|',
      },
      (_, all) => second(all).period,
    ),
    secondPeriodUncertainty: length(
      {
        id: 'secondPeriodUncertainty',
        name: 'uncertainty of the second period',
        symbol: 'u(\\Lambda_2)',
        about: 'As that of the measured period.',
        formula: '\\Lambda_2\\,u(k_2)/k_2',
        digits: 2,
      },
      (_, all) => second(all).periodUncertainty,
    ),
    secondDirection: angle(
      {
        id: 'secondDirection',
        name: 'direction of the second wave vector in the picture',
        symbol: '\\varphi_2',
        about:
          'Direction across the ridges of the second kind, counter-clockwise from the picture’s x axis, 0 to 180°.',
        formula: '\\arg\\mathbf k_2',
      },
      (_, all) => counterClockwise(second(all).direction),
    ),
  };
}
