import { derived } from '../graph/define.ts';
import { planeOfDefocus } from '../optics/light.ts';
import { tellingPlane } from '../optics/offCentre.ts';
import { plateBeamDiameter } from './expander.ts';
import { light } from './focus.ts';
import { stepRatio } from './match.ts';
import { offsetTried, zonesInRadii } from './offCentre.ts';
import { zones } from './plate.ts';

export const centring = derived({
  id: 'centring.telling',
  name: 'plane that tells of the centring, and how much it tells',
  symbol: '(\\zeta_\\text{c},\\Delta_\\text{c})',
  unit: { defocus: '1', rise: '1' },
  about:
    'Plane within a Rayleigh length of the focus, to a tenth of one, in which a beam beside the middle of the plate makes one side of the spot higher than the other by most, and by how much, over the higher one. Coherent light.',
  from: { ratio: stepRatio, zones, offset: offsetTried },
  compute: ({ ratio, zones, offset }) => tellingPlane(zonesInRadii(zones, ratio), offset),
  formula: '\\max_\\zeta\\frac{|I_\\text{right}-I_\\text{left}|}{\\max(I_\\text{right},I_\\text{left})}',
  source: 'collins1970',
  heavy: 'picture',
});

export const centringPlane = derived({
  id: 'centring.z',
  name: 'plane to centre the plate in',
  symbol: 'z_\\text{c}',
  unit: 'm',
  display: 'mm',
  digits: 3,
  about:
    'Where along z a beam beside the middle of the plate shows most, within a Rayleigh length of the focus.',
  from: { light, centring },
  compute: ({ light, centring }) => planeOfDefocus(light, centring.defocus),
  formula: 'z(\\zeta_\\text{c})',
  source: 'definition',
});

export const centringRise = derived({
  id: 'centring.rise',
  name: 'one side higher than the other where the centring is judged',
  symbol: '\\Delta_\\text{c}',
  unit: '1',
  display: '%',
  digits: 2,
  about:
    'How much higher one side of the spot rises than the other, over the higher one, in the plane to centre the plate in, with the beam 5\u202f% of its 1/e² radius beside the middle of the plate; coherent light.',
  from: { centring },
  compute: ({ centring }) => centring.rise,
  formula: '\\frac{|I_\\text{right}-I_\\text{left}|}{\\max(I_\\text{right},I_\\text{left})}',
  source: 'definition',
});

export const centringOffset = derived({
  id: 'centring.offset',
  name: 'offset of the beam at the plate that is tried',
  symbol: 'x_\\text{off}',
  unit: 'm',
  display: 'mm',
  digits: 2,
  about: 'How far beside the middle of the plate the beam is taken to stand.',
  from: { offset: offsetTried, diameter: plateBeamDiameter },
  compute: ({ offset, diameter }) => (offset * diameter) / 2,
  formula: '\\delta_\\text{off}\\,w',
  source: 'definition',
});
