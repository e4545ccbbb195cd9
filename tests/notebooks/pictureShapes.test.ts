import fc from 'fast-check';
import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { between, createPictureHandle } from '../../notebooks/page/controls/pictureHandles.ts';
import { keyStep, lineBetween, regionBetween } from '../../notebooks/page/controls/pictureShapes.ts';

const size = { width: 340, height: 260 };
const anywhere = fc.record({
  x: fc.double({ min: -900, max: 900, noNaN: true }),
  y: fc.double({ min: -900, max: 900, noNaN: true }),
});

describe('a part drawn on a picture', () => {
  it('lies between the corners, in whole pixels', () => {
    expect(regionBetween({ x: 80.2, y: 30.4 }, { x: 259.8, y: 210.3 }, size)).toEqual({
      left: 80,
      top: 30,
      width: 180,
      height: 180,
    });
    expect(regionBetween({ x: 259.8, y: 30.4 }, { x: 80.2, y: 210.3 }, size)).toEqual({
      left: 80,
      top: 30,
      width: 180,
      height: 180,
    });
  });

  it('is never too small and never beyond the picture, whatever the hand does', () => {
    fc.assert(
      fc.property(anywhere, anywhere, (one, other) => {
        const { left, top, width, height } = regionBetween(one, other, size);
        expect([left, top, width, height].every(Number.isInteger)).toBe(true);
        expect(Math.min(width, height)).toBeGreaterThanOrEqual(8);
        expect(Math.min(left, top)).toBeGreaterThanOrEqual(0);
        expect(left + width).toBeLessThanOrEqual(size.width);
        expect(top + height).toBeLessThanOrEqual(size.height);
      }),
      { seed: 11 },
    );
  });

  it('the corner that is not moved stays, also where the part would become too small', () => {
    const drawn = between('region', { x: 80, y: 30 }, { x: 260, y: 210 }, size);
    const { document } = parseHTML('<html></html>');
    const keys = { moved: () => {}, ended: () => {} };
    const [first, second] = ([0, 1] as const).map((index) =>
      createPictureHandle(document as unknown as Document, 'region', index, 'the mark', keys),
    ) as [ReturnType<typeof createPictureHandle>, ReturnType<typeof createPictureHandle>];
    expect(first.moved(drawn, { x: 258, y: 40 }, size)).toEqual({
      kind: 'region',
      region: { left: 252, top: 40, width: 8, height: 170 },
    });
    expect(second.moved(drawn, { x: 82, y: 200 }, size)).toEqual({
      kind: 'region',
      region: { left: 80, top: 30, width: 8, height: 170 },
    });
  });
});

describe('a line drawn on a picture', () => {
  it('ends in the picture, to a tenth of a pixel', () => {
    expect(lineBetween({ x: 20.04, y: 237.26 }, { x: 500, y: -3 }, size)).toEqual({
      start: { x: 20, y: 237.3 },
      end: { x: 340, y: 0 },
    });
  });

  it('keys move by one pixel, or ten', () => {
    expect(keyStep('ArrowLeft', false)).toEqual({ x: -1, y: 0 });
    expect(keyStep('ArrowDown', true)).toEqual({ x: 0, y: 10 });
    expect(keyStep('toString', false)).toBeUndefined();
  });
});
