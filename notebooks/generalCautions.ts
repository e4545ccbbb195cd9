/** The cautions before anything is set; "(memory)" marks what was written down without the standard at hand. */
export const generalCautions: readonly (readonly [about: string, text: string])[] = [
  [
    'Class 4 laser.',
    'Beam, reflections and scattered light can injure eyes and skin and start fires. IEC 60825-1, IEC TR 60825-14 and ISO 11553-1 (memory) apply; local rules and the laser safety officer decide.',
  ],
  [
    'Aligning.',
    'Use the lowest power that can be seen, eyewear for the wavelength, and a viewer card. Put the camera behind a wedge and attenuators.',
  ],
  [
    'Taking the plate out',
    'at unchanged pulse energy raises the peak fluence several times: four to seven times with a beam as wide as the step, up to about ten times with one a fifth wider. Lower the energy first.',
  ],
  [
    'Reflections',
    'come from metal, from both faces of the plate, and back into the laser. A collimated femtosecond beam stays dangerous at a distance.',
  ],
  [
    'X-rays.',
    'Above about 10¹³ W/cm² on metal, ultrashort pulses make X-rays, and below it too at high mean power or in bursts. No value on these pages is an all-clear. Shielding and dose measurement are a matter for radiation protection (H. Legall et al., Appl. Phys. A 124, 407 (2018), memory).',
  ],
  [
    'Fume and nanoparticles',
    'come from every metal that is removed; those of stainless steel hold chromium and nickel. Work with extraction and filters.',
  ],
  [
    'Optics can be damaged:',
    'check the peak irradiance on the plate, in air and in a focus inside the expander. ISO 21254 (memory) tells how thresholds are measured.',
  ],
  [
    'Medical or food use.',
    'Whether a structured surface is fit for it is for the responsible bodies to judge, on proof.',
  ],
];
