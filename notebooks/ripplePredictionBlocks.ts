import { wavelength } from '../lib/design/laser.ts';
import { material } from '../lib/design/material.ts';
import { expectedPeriods, rippleDirection, sampleSpread } from '../lib/design/rippleDirection.ts';
import {
  ambientIndex,
  constantsSource,
  incidence,
  incidenceDirection,
  polarisation,
  polarisationAngle,
  typedExtinction,
  typedIndexOfSurface,
} from '../lib/design/rippleInputs.ts';
import { boundWave, constantsOfSurface, longRipplePeriod, ripplePeriod } from '../lib/design/ripples.ts';
import { formatNumber, formatReadable } from '../lib/graph/units.ts';
import { citation } from '../lib/materials/bibliography.ts';
import { placeOfPeriod, publishedRipples, type RipplePlace } from '../lib/process/ripplePoints.ts';
import type { Block } from './document.ts';
import { math, prose, sets, term } from './prose.ts';
import { directionFigure } from './rippleDirectionFigure.ts';
import { periodIncidenceFigure, periodWavelengthFigure } from './rippleFigures.ts';
import {
  bothPolarisationsSaid,
  constantsSaid,
  directionSaid,
  periodSaid,
  tiltSaid,
} from './rippleSentences.ts';
import { slantedCutFigure } from './slantedCutFigure.ts';

/** ε = 1.77, as the published point in water has it. */
const water = Math.sqrt(1.77);
const upright = Math.PI / 2;

const placeWords: Readonly<Record<RipplePlace, string>> = {
  inside: 'inside',
  'inside the longer': 'inside, of the wave with the light',
  shorter: 'outside, shorter',
  longer: 'outside, longer',
  'another mechanism': 'another mechanism, below half',
};

/** What ripples are, their period and direction, and the charts of the model. */
export const predictionBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'what-ripples-are',
    prose: prose`
      ## Period and direction

      Light is polarised where its electric field swings in one direction only. Where such light hits a metal, part of it runs along the surface as a wave. Light and wave interfere, and the next pulses dig where both agree: after some ten pulses there are **ripples**, ridges about a wavelength apart, at right angles to the polarisation. ${periodSaid} ${directionSaid}
    `,
  },
  directionFigure,
  {
    kind: 'controls',
    id: 'ripple-controls',
    heading: 'Light and surface',
    inputs: [
      wavelength,
      polarisation,
      polarisationAngle,
      material,
      constantsSource,
      typedIndexOfSurface,
      typedExtinction,
      incidence,
      incidenceDirection,
      ambientIndex,
    ],
  },
  {
    kind: 'prose',
    id: 'ripple-links',
    prose: prose`
      Turn the polarisation ${sets('along the scan', { [polarisation.id]: 'linear', [polarisationAngle.id]: 0 })} or ${sets('across it', { [polarisation.id]: 'linear', [polarisationAngle.id]: upright })}, look at the surface under ${sets('water', { [ambientIndex.id]: water })} or in ${sets('air', { [ambientIndex.id]: 1 })}, tilt it by ${sets('30°', { [incidence.id]: Math.PI / 6 })} or ${sets('not at all', { [incidence.id]: 0 })}.
    `,
  },
  {
    kind: 'table',
    id: 'ripple-table',
    table: {
      caption: 'What the model says here',
      columns: ['', 'value'],
      rows: [
        ['period as modelled', ripplePeriod],
        ['longer period, from the wave that runs with the light', longRipplePeriod],
        ['whether a wave is bound to the surface', boundWave],
        ['periods to be expected', expectedPeriods],
        ['direction of the ridges against the scan', rippleDirection],
        ['optical constants n + ik', constantsOfSurface],
        ['samples measured of the material at this wavelength', sampleSpread],
      ],
    },
  },
  {
    kind: 'prose',
    id: 'surface-wave',
    prose: prose`
      ### Where the number comes from

      Two numbers, the optical constants *n* and *k*, say how a metal slows light down and how it absorbs it; together they are its permittivity ${math`\varepsilon=(n+ik)^2`}. That of the ambient, mostly air, is ${math`\varepsilon_\text{d}`}. A wave along the boundary of the two has the index ${math`\eta=\sqrt{\varepsilon\varepsilon_\text{d}/(\varepsilon+\varepsilon_\text{d})}`}, and the ripples the period ${math`\lambda/\operatorname{Re}\eta`} where the beam falls straight onto the surface (normal incidence). The wave is bound to the surface, and runs along it instead of away, where ${math`\operatorname{Re}\varepsilon<-\varepsilon_\text{d}`}. ${constantsSaid}

      The constants are those of a cold, clean, smooth surface. Heat, oxide and the ripples themselves change them while the pulses come, and so measured periods, taken in air at normal incidence, lie 5 to 30 % below the wavelength and fall with the number of pulses (J. Bonse and S. Gräf, Laser Photonics Rev. 14, 2000215 (2020), memory). Much finer ripples, below half the wavelength, have another cause.
    `,
  },
  periodWavelengthFigure,
  {
    kind: 'table',
    id: 'published-ripples',
    table: {
      caption: 'Periods as published, against 0.70 to 0.95 of the wavelength',
      columns: ['measured on', 'period over wavelength', 'where it lies', 'source'],
      rows: publishedRipples.map(({ material, wavelength, ambientIndex, periodOverWavelength, source }) => [
        `${material} in ${ambientIndex === 1 ? 'air' : 'water'}, ${formatReadable(wavelength, 'm', 'nm')}`,
        formatNumber(periodOverWavelength, 3),
        placeWords[placeOfPeriod(periodOverWavelength, 1 / ambientIndex)],
        citation(source),
      ]),
    },
  },
  {
    kind: 'prose',
    id: 'tilted',
    prose: prose`
      ### On a tilted workpiece

      ${tiltSaid} The ${term('plane of incidence', 'incidence-plane')} holds the beam and the upright of the surface. In p polarisation, with the field in that plane, the period parts in two; in s polarisation, with the field across that plane, it grows without parting. Between the two the waves of the model run along the field on the surface (worked out here). ${bothPolarisationsSaid}
    `,
  },
  periodIncidenceFigure,
  slantedCutFigure,
];
