import { describe, expect, test } from 'vitest';
import { type GlassId, groupIndex, refractiveIndex } from '../../lib/materials/glasses.ts';
import { stepHeightForPhase } from '../../lib/optics/step.ts';
import { expectClose } from '../close.ts';
import { reference } from '../reference.ts';

const paper = 'I. H. Malitson, J. Opt. Soc. Am. 55, 1205 (1965)';

describe('published indices', () => {
  test.each<{ glass: GlassId; wavelength_um: number; n: number; source: string }>(
    reference('glassIndices').rows,
  )('$glass at $wavelength_um µm: $n', ({ glass, wavelength_um, n, source }) => {
    expectClose(refractiveIndex(glass, wavelength_um * 1e-6), n, { absolute: 5.01e-7, source });
  });

  // Measured values of the paper's table, from memory; its formula leaves residuals near 1e-5.
  test.each([
    [0.404656, 1.46961],
    [0.486133, 1.46313],
    [0.587561, 1.45846],
    [0.656272, 1.45637],
    [1.01398, 1.45024],
    [1.52952, 1.44427],
    [2.32542, 1.43293],
  ])('fused silica at %f µm: %f (memory)', (micrometres, index) => {
    const source = `${paper}, table (memory)`;
    expectClose(refractiveIndex('fusedSilica', micrometres * 1e-6), index, { absolute: 1.5e-5, source });
  });

  test('a step of half a wave in fused silica for 1030 nm', () => {
    const index = refractiveIndex('fusedSilica', 1.03e-6);
    expectClose(index, 1.450044, { absolute: 5.01e-7, source: paper });
    const height = stepHeightForPhase(Math.PI, 1.03e-6, index);
    expectClose(height, 1.14433e-6, { absolute: 5.01e-12, source: `computed from ${paper}` });
  });

  test('Abbe numbers of fused silica and N-BK7', () => {
    const abbe = (glass: GlassId) =>
      (refractiveIndex(glass, 587.5618e-9) - 1) /
      (refractiveIndex(glass, 486.1327e-9) - refractiveIndex(glass, 656.2725e-9));
    expectClose(abbe('fusedSilica'), 67.8, { absolute: 0.051, source: `${paper} (memory)` });
    expectClose(abbe('bk7'), 64.17, { absolute: 0.0051, source: 'glass catalogue (memory)' });
  });

  test('group index of fused silica at 1064 and 800 nm', () => {
    const source = 'widely printed values (memory)';
    expectClose(groupIndex('fusedSilica', 1.064e-6), 1.4624, { absolute: 1e-4, source });
    expectClose(groupIndex('fusedSilica', 0.8e-6), 1.4671, { absolute: 1e-4, source });
    expect(groupIndex('fusedSilica', 1.03e-6)).toBeGreaterThan(refractiveIndex('fusedSilica', 1.03e-6));
  });
});
