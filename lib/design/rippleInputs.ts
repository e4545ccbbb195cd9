import { choice, number } from '../graph/define.ts';

export const polarisation = choice({
  id: 'laser.polarisation',
  name: 'polarisation',
  symbol: '\\text{polarisation}',
  about: 'State of polarisation on the workpiece.',
  initial: 'linear',
  options: { linear: 'linear', circular: 'circular', radial: 'radial', azimuthal: 'azimuthal' },
});

export const polarisationAngle = number({
  id: 'laser.polarisationAngle',
  name: 'angle of the polarisation',
  symbol: '\\alpha_E',
  unit: 'rad',
  display: 'deg',
  about:
    'Direction of the electric field of linear polarisation against x, the direction of the scan, as seen on the workpiece before it is tilted; counter-clockwise.',
  initial: 0,
  range: { min: -Math.PI, max: Math.PI },
  typical: [0, Math.PI / 2],
});

export const incidence = number({
  id: 'workpiece.incidence',
  name: 'angle of incidence',
  symbol: '\\theta',
  unit: 'rad',
  display: 'deg',
  about:
    'Angle between beam and surface normal, in air; 0 where the beam falls straight onto the surface. Set on purpose: a tilt by mistake, which moves the edges of a field out of the plane, is another input.',
  initial: 0,
  range: { min: 0, max: (80 * Math.PI) / 180 },
  typical: [0, Math.PI / 3],
});

export const incidenceDirection = number({
  id: 'workpiece.incidenceDirection',
  name: 'direction of the tilt',
  symbol: '\\varphi_\\theta',
  unit: 'rad',
  display: 'deg',
  about: 'Angle of the plane of incidence against x, the direction of the scan; counter-clockwise.',
  initial: 0,
  range: { min: -Math.PI, max: Math.PI },
  typical: [0, Math.PI / 2],
});

export const ambientIndex = number({
  id: 'workpiece.ambientIndex',
  name: 'refractive index of the ambient',
  symbol: 'n_\\text{a}',
  unit: '1',
  about: 'Refractive index of what lies over the surface: 1 for air, 1.33 for water.',
  initial: 1,
  range: { min: 1, max: 2.5 },
  typical: [1, 1.5],
});

export const constantsSource = choice({
  id: 'ripples.constantsSource',
  name: 'optical constants',
  symbol: 'n+ik',
  about:
    'Where n and k of the workpiece come from: the first sample that was measured of its material, a sample of your choice, or typed. Surfaces differ, and change under the pulses.',
  initial: 'material',
  options: {
    material: 'first sample of the material',
    stainlessAustenitic: 'stainless steel, austenitic (Karlsson 1982)',
    stainlessFerritic: 'stainless steel, ferritic (Karlsson 1982)',
    titaniumJohnson: 'titanium (Johnson 1974)',
    titaniumMash: 'titanium (Mash 1973)',
    titaniumPalm: 'titanium film (Palm 2018)',
    iron: 'iron (Johnson 1974)',
    nickel: 'nickel (Johnson 1974)',
    chromium: 'chromium (Johnson 1974)',
    copper: 'copper (Johnson 1972)',
    gold: 'gold (Johnson 1972)',
    silver: 'silver (Johnson 1972)',
    aluminium: 'aluminium (Rakić 1995)',
    tungstenWeaver: 'tungsten (Weaver 1975)',
    tungstenOrdal: 'tungsten (Ordal 1988)',
    molybdenumKirillova: 'molybdenum (Kirillova 1971)',
    molybdenumOrdal: 'molybdenum (Ordal 1988)',
    siliconGreen: 'silicon (Green 2008)',
    siliconSchinke: 'silicon (Schinke 2015)',
    fusedSilica: 'fused silica (Malitson 1965)',
    bk7: 'N-BK7 (catalogue)',
    sapphireOrdinary: 'sapphire, ordinary ray (Dodge 1986)',
    sapphireExtraordinary: 'sapphire, extraordinary ray (Dodge 1986)',
    calciumFluoride: 'calcium fluoride (Malitson 1963)',
    typed: 'typed n and k',
  },
});

export const typedIndexOfSurface = number({
  id: 'ripples.typedIndex',
  name: 'typed refractive index of the workpiece',
  symbol: 'n_\\text{typed}',
  unit: '1',
  about: 'Real part n of the complex index n + ik of the workpiece at the laser’s wavelength.',
  initial: 2.8,
  range: { min: 0.01, max: 20 },
  typical: [0.1, 6],
});

export const typedExtinction = number({
  id: 'ripples.typedExtinction',
  name: 'typed extinction coefficient of the workpiece',
  symbol: 'k_\\text{typed}',
  unit: '1',
  about: 'Imaginary part k of the complex index n + ik of the workpiece at the laser’s wavelength.',
  initial: 4.8,
  range: { min: 0, max: 30 },
  typical: [0, 10],
});
