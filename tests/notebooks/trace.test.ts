import { describe, expect, it } from 'vitest';
import { glass, plateIndex } from '../../lib/design/plate.ts';
import { peakFluence } from '../../lib/design/spot.ts';
import { citation } from '../../lib/materials/bibliography.ts';
import { glassById } from '../../lib/materials/glasses.ts';
import { sourceText } from '../../notebooks/page/trace.ts';
import { outcomesOf } from './designOutcomes.ts';

describe('source of an opened number', () => {
  const said = (design: Record<string, unknown>) => {
    const outcomeOf = outcomesOf(design);
    return sourceText(plateIndex, ({ id }) => outcomeOf(id));
  };

  for (const id of Object.keys(glass.options).filter((option) => option !== 'typed')) {
    it(`of the refractive index of ${id} is that of its row in the table`, () => {
      expect(said({ 'plate.glass': id })).toBe(`Source: ${citation(glassById(id).source)}`);
    });
  }

  it('names four different sources for four glasses', () => {
    const texts = Object.keys(glass.options).map((id) => said({ 'plate.glass': id }));
    expect(new Set(texts).size).toBe(5);
  });

  it('there is none for a typed index', () => {
    expect(said({ 'plate.glass': 'typed' })).toBe('Typed, without a source.');
  });

  it('stands where an input has no value, and for quantities that have one source only', () => {
    const outcomeOf = outcomesOf({ 'laser.beamSource': 'measured' });
    expect(sourceText(peakFluence, ({ id }) => outcomeOf(id))).toBe('Source: by definition');
  });
});
