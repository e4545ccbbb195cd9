import { expect, it } from 'vitest';
import { placeAfter } from '../../notebooks/page/studies/own/dragging.ts';

it('a piece that is let go stands where it was let go, wherever it came from', () => {
  const pieces = ['a', 'b', 'c', 'd'];
  for (const [from] of pieces.entries())
    for (const [over] of pieces.entries())
      for (const side of ['above', 'below'] as const) {
        // The other route: a mark in the gap, and the piece put in its place.
        const marked = pieces.toSpliced(side === 'above' ? over : over + 1, 0, 'mark');
        const put = marked
          .filter((one) => one !== pieces[from])
          .map((one) => (one === 'mark' ? pieces[from] : one));
        const to = placeAfter(from, over, side);
        expect(pieces.toSpliced(from, 1).toSpliced(to, 0, pieces[from]!)).toEqual(put);
      }
});
