import type { StepwellDocument } from './document.ts';
import { grooves } from './grooves.ts';
import { lectures } from './lectures.ts';
import { lessonsDocument } from './lessons.ts';
import { matching } from './matching.ts';
import { ownPages } from './ownPages.ts';
import { readingDocument } from './reading.ts';
import { ripples } from './ripples.ts';
import { scaleUp } from './scaleUp.ts';
import { setUpSheet } from './setUpSheet.ts';
import { threshold } from './threshold.ts';
import { throughFocus } from './throughFocus.ts';
import { throughput } from './throughput.ts';
import { whatIf } from './whatIf.ts';
import { wordsDocument } from './words.ts';
import { writeUp } from './writeUp.ts';

/** The documents in reading order. */
export const documents: readonly StepwellDocument[] = [
  matching,
  throughFocus,
  threshold,
  ripples,
  throughput,
  grooves,
  scaleUp,
  whatIf,
  ownPages,
  writeUp,
  setUpSheet,
  readingDocument,
  lessonsDocument,
  lectures,
  wordsDocument,
];
