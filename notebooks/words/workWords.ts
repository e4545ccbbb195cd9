import type { Word } from './word.ts';

/** Larger machines, measuring, and the design as it is kept here. */
export const workWords: readonly Word[] = [
  {
    id: 'larger-machine',
    word: 'Larger machine',
    also: ['scale-up', 'square metres', 'production'],
    meaning:
      'The laser and scanner with which square metres would be written. Which of its limits stops the work first is named.',
    quantities: ['scaleUp.areaPerHour', 'scaleUp.timePerSquareMetre', 'scaleUp.power'],
    covers: ['scaleUp.*'],
    see: ['spots-side-by-side', 'area-rate'],
  },
  {
    id: 'spots-side-by-side',
    word: 'Spots side by side',
    also: ['parallel processing', 'multi-beam', 'splitter', 'DOE', 'beam splitter'],
    symbol: 'N_\\text{s}',
    meaning:
      'A splitter makes several spots of one beam. Each gets its part of the energy, and their heat adds. A diffractive splitter draws the outermost spots out by the bandwidth of the pulse.',
    quantities: ['scaleUp.spots', 'scaleUp.spotDistance', 'scaleUp.splitterSmear'],
    covers: ['scaleUp.splitterEfficiency', 'scaleUp.outermostSpot'],
    see: ['larger-machine'],
  },
  {
    id: 'stitching',
    word: 'Stitching',
    also: ['field to field', 'overlap of fields'],
    meaning: 'Laying fields beside each other, with an overlap so that their edges do not show.',
    quantities: ['scaleUp.fieldOverlap', 'scaleUp.moveTime'],
    see: ['field', 'edge-of-field'],
  },
  {
    id: 'pixel-pitch',
    word: 'Pixel pitch',
    also: ['pixel size', 'µm per pixel', 'magnification of the camera'],
    meaning:
      'Distance between neighbouring pixels, as it lies on what the picture shows. Every length in a picture rests on it.',
    convention: 'On the beam or the workpiece, after any relay or microscope.',
    quantities: ['laser.beamImagePitch', 'spot.measuredPixelPitch', 'markPicture.usedPixelPitch'],
    covers: ['laser.beamImagePitchUncertainty', 'markPicture.pixelPitch', 'markPicture.scaleSource'],
    see: ['scale-bar', 'beam-image'],
  },
  {
    id: 'scale-bar',
    word: 'Scale bar',
    also: ['micron bar'],
    symbol: 'L_\\text{bar}',
    meaning:
      'The line in a microscope picture whose length is printed beside it. Drawn over by hand, it gives the pixel pitch.',
    convention: 'Length from end to end.',
    quantities: ['markPicture.barLength', 'micrograph.barLength'],
    covers: ['markPicture.bar*'],
    see: ['pixel-pitch', 'micrograph'],
  },
  {
    id: 'mark-picture',
    word: 'Mark picture',
    also: ['microscope picture of a mark'],
    meaning: 'A microscope picture of one mark, in which its diameter and its unmarked middle are measured.',
    convention: 'Diameter of a disc with the same area.',
    quantities: ['markPicture.outerDiameter', 'markPicture.area', 'markPicture.innerDiameter'],
    covers: ['markPicture.*'],
    see: ['mark', 'scale-bar'],
  },
  {
    id: 'standard-uncertainty',
    word: 'Standard uncertainty',
    also: ['error', 'error bar', 'GUM', 'u'],
    symbol: 'u',
    meaning:
      'How far a measured number may be off: about two times in three the true value lies within it, either way.',
    convention: 'One standard deviation; ± values are standard uncertainties.',
    quantities: ['laser.measuredUncertainty', 'threshold.uncertainty'],
    see: ['fit', 'sigma'],
  },
  {
    id: 'fit',
    word: 'Fit',
    also: ['least squares', 'residuals', 'chi squared', 'correlation'],
    meaning:
      'Choosing the numbers of a model so that it comes as near as it can to what was measured. What is left over, the residuals, shows whether the model suits at all.',
    convention: 'Thresholds are peak fluences per pulse.',
    quantities: ['threshold.fittedFluence', 'groove.sectionChiSquare', 'groove.fittedCorrelation'],
    see: ['standard-uncertainty', 'diameter-squared'],
  },
  {
    id: 'design',
    word: 'Design',
    also: ['design file', 'set-up'],
    meaning:
      'All inputs of one way to do the work, with what was measured and what you keep beside it. It is what the menu at the top saves.',
    see: ['alternative', 'requirement'],
  },
  {
    id: 'alternative',
    word: 'Alternative',
    also: ['variant', 'kept design'],
    meaning: 'A design kept beside today’s, to compare with or to go back to.',
    see: ['design', 'requirement'],
  },
  {
    id: 'requirement',
    word: 'Requirement',
    also: ['specification', 'tolerance', 'what is asked'],
    meaning:
      'Bounds within which a number of the design must stay, with the reason. They are judged wherever the number stands.',
    see: ['design', 'standard-uncertainty'],
  },
  {
    id: 'trace',
    word: 'Trace of a number',
    also: ['where a number comes from', 'formula', 'source'],
    meaning:
      'What opens when you choose a number: its formula with today’s values, its source, and on up the chain to what you typed.',
    see: ['design'],
  },
  {
    id: 'rationale',
    word: 'Rationale',
    also: ['write-up', 'report', 'reasons'],
    meaning:
      'The paper that says why a design is as it is. It is written from your own words and from the numbers, tables, charts, cautions and sources of these pages.',
    see: ['design', 'requirement'],
  },
  {
    id: 'source-marks',
    word: 'Marks of a source',
    also: [
      'memory',
      'abstract',
      'from memory',
      'abstract read',
      'common practice',
      'no source',
      'our choice',
      'estimate',
    ],
    meaning:
      'How far a statement can be relied on. “Abstract”: only the summary of the paper was read. “Memory”: the source was not at hand when the sentence was written. “Common practice”: passed on in laboratories, without a publication. “Our choice”: set here, and to be doubted.',
    convention: 'Without a mark: read, or worked out here.',
    see: ['standard-uncertainty'],
  },
];
