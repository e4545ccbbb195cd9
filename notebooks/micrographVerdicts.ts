import { wavelength } from '../lib/design/laser.ts';
import {
  firstMicrograph,
  type Micrograph,
  otherMicrograph,
  predictedDirection,
} from '../lib/design/micrographs.ts';
import { barePeriods, expectedPeriods, rippleDirection } from '../lib/design/rippleDirection.ts';
import { formatReadable } from '../lib/graph/units.ts';
import { placeOfPeriod, type RipplePlace } from '../lib/process/ripplePoints.ts';
import { betweenLines, coverage } from './micrographSentences.ts';
import { phrase, type Sentence, says } from './prose.ts';

const placeWords: Readonly<Record<RipplePlace, string>> = {
  inside: 'lies inside the periods to be expected',
  'inside the longer':
    'lies inside what would be expected of the wave that runs with the light, and not in the range of the wave against it',
  shorter: 'is shorter than the periods to be expected',
  longer: 'is longer than the periods to be expected',
  'another mechanism':
    'is below half of the wavelength: another mechanism makes such ripples, and they are not set against the periods to be expected',
};

/** The measured period against what is expected. */
function againstExpectedOf(m: Micrograph, letter: string): Sentence {
  return says(
    {
      period: m.period,
      uncertainty: m.periodUncertainty,
      expected: expectedPeriods,
      bare: barePeriods,
      wavelength,
    },
    ({ period, uncertainty, expected, bare, wavelength }) => {
      const place = placeOfPeriod(period / wavelength, bare.short / wavelength, bare.long / wavelength);
      const end = [expected.low, expected.high].find((at) => Math.abs(period - at) <= coverage * uncertainty);
      const near =
        end === undefined || place === 'another mechanism'
          ? ''
          : `, though ${formatReadable(end, 'm', 'nm', 3)} lies within twice its uncertainty`;
      return phrase`The period of micrograph ${letter}, ${m.period} ± ${m.periodUncertainty}, ${placeWords[place]}, ${expectedPeriods}${near}. An error of the scale comes on top.`;
    },
  );
}

export const againstExpected = againstExpectedOf(firstMicrograph, 'A');
export const otherAgainstExpected = againstExpectedOf(otherMicrograph, 'B');

/** The measured direction against the predicted one, as far as the typed direction of the scan is right. */
function againstDirectionOf(m: Micrograph, letter: string): Sentence {
  return says(
    {
      ridges: m.ridgesToScan,
      uncertainty: m.directionUncertainty,
      predicted: predictedDirection,
      scan: m.scanAngle,
    },
    ({ ridges, uncertainty, predicted, scan }) => {
      const measured = phrase`If the scan ran at ${m.scanAngle} in micrograph ${letter}, as typed, the ridges run at ${m.ridgesToScan} ± ${m.directionUncertainty} to it`;
      if (predicted === null)
        return phrase`${measured}; for this polarisation no one direction is predicted.`;
      const apart = betweenLines(ridges, predicted);
      if (scan === 0 && apart > coverage * uncertainty)
        return phrase`The direction of the scan in micrograph ${letter} stands at ${m.scanAngle}, as it does until it is set: then the ridges would run at ${m.ridgesToScan} ± ${m.directionUncertainty} to it. Set it to how the workpiece lay under the microscope before you hold them against the predicted ${rippleDirection}.`;
      return apart <= coverage * uncertainty
        ? phrase`${measured}, which agrees with the predicted ${rippleDirection} within twice its uncertainty.`
        : phrase`${measured}, which is ${formatReadable(apart, 'rad', 'deg', 2)} from the predicted ${rippleDirection}, more than twice its uncertainty: look first at how the workpiece lay under the microscope.`;
    },
    [rippleDirection],
  );
}

export const againstDirection = againstDirectionOf(firstMicrograph, 'A');
export const otherAgainstDirection = againstDirectionOf(otherMicrograph, 'B');
