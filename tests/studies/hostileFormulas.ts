import fc from 'fast-check';
import { invented } from './formulas.ts';
import { trees } from './formulaTrees.ts';

/** Pieces that programs, other notations and this one are made of. */
const pieces = [
  ...[
    'constructor',
    '__proto__',
    'prototype',
    'toString',
    'valueOf',
    'own.constructor',
    'own.__proto__',
    'own.x',
  ],
  ...[
    'import(',
    'eval(',
    'Function(',
    'globalThis',
    'process.exit()',
    '=>',
    '`${',
    '}',
    ';',
    '//',
    '"',
    "'",
    '\\',
  ],
  ...[
    '<script>',
    '</script>',
    '&lt;',
    '\\url{',
    '%00',
    '\u0000',
    '\u202e',
    '\ud800',
    '😀',
    'ﬁ',
    '١٢',
    '½',
    '∞',
    'NaN',
    'Infinity',
  ],
  ...[
    '1e999',
    '1e-999',
    '9'.repeat(60),
    '10^999',
    '2^1e9',
    '^',
    '^^',
    '**',
    '-'.repeat(40),
    '('.repeat(60),
    ')'.repeat(60),
  ],
  ...[
    '0',
    '-1',
    '2.5',
    '1/3',
    '3 um',
    '5 %',
    '0.2 J/cm²',
    '/mm',
    'mm³/(W·min)',
    'kg',
    '°',
    'π',
    '²',
    '⁻¹',
    '1,5',
  ],
  ...['+', '-', '*', '/', '(', ')', ',', ', ', '<', '<=', '==', '=', ' ', '\n', '\t', '\u00a0', '.', '..'],
  ...[
    'sqrt(',
    'ln(',
    'exp(',
    'min(',
    'if(',
    'atan2(',
    'hypot(',
    'floor(',
    'pi',
    'e',
    ...Object.keys(invented),
  ],
];
const soup = fc.array(fc.constantFrom(...pieces), { maxLength: 40 }).map((parts) => parts.join(''));
/** What reads well and goes to extremes. */
const operands = [
  '0',
  '1e300',
  '1e-300',
  '9^99',
  '-5',
  '1/3',
  '2 um',
  '3 J',
  'pi',
  'exp(700)',
  'cbrt(-8)',
  'heat.none',
];
const extreme = fc
  .array(
    fc.tuple(
      fc.constantFrom(...operands, 'heat.loss', 'groove.depth'),
      fc.constantFrom('+', '-', '*', '/', '^'),
    ),
    {
      minLength: 1,
      maxLength: 12,
    },
  )
  .map((parts) => parts.flat().slice(0, -1).join(' '));
/** Texts that nobody means well with, and some that are nearly right. */
export const hostile = fc.oneof(
  { weight: 4, arbitrary: extreme },
  { weight: 6, arbitrary: soup },
  {
    weight: 2,
    arbitrary: fc.array(fc.constantFrom(...pieces), { maxLength: 6 }).map((parts) => parts.join(' ')),
  },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 600 }) },
  { weight: 1, arbitrary: fc.string({ unit: 'grapheme', maxLength: 80 }) },
  {
    weight: 1,
    arbitrary: fc.tuple(trees.length, fc.nat(), fc.constantFrom(...pieces)).map(([{ text }, at, piece]) => {
      const place = at % (text.length + 1);
      return text.slice(0, place) + piece + text.slice(place);
    }),
  },
);
