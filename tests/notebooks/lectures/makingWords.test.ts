import { expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { answersWarning, textWarning } from '../../../notebooks/lectures/makingWords.ts';

it('warns of a name that no number has, with the one that may be meant', () => {
  expect(textWarning(designGraph, 'It is {spot.width} wide, $w_0$.')).toBe('');
  expect(textWarning(designGraph, '{spot.width} and {spot.widht}')).toBe(
    'There is no number ‘spot.widht’; did you mean spot.width? Until it is mended, this is said in its place.',
  );
  expect(textWarning(designGraph, 'a {zzzzzzzzzzzzzzzz} b')).toMatch(
    /^There is no number ‘zzzzzzzzzzzzzzzz’(\.|; did you mean .*\?) Until/,
  );
});

it('warns of a single answer', () => {
  expect(['', ' \n', 'One\nTwo'].map(answersWarning)).toEqual(['', '', '']);
  expect(answersWarning('One\n \n')).toMatch(/^One answer leaves no choice\./);
});
