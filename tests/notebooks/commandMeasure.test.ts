import { describe, expect, it } from 'vitest';
import { succeed } from './runCommand.ts';

describe('measure beam of a spoilt image', () => {
  it.each(['clipped', 'saturated'])('%s: no uncertainty, and the reason beside every value', (kind) => {
    const argv = ['measure', 'beam', `data/measured/${kind}-beam.png`, '--pixel', '5.5 um'];
    const { notes, ...measured } = JSON.parse(succeed(argv)) as Record<string, { note?: string }> & {
      notes: string[];
    };
    expect(notes).toHaveLength(1);
    const ids = Object.keys(measured);
    expect(ids).toEqual(expect.arrayContaining(['laser.usedBeamDiameter', 'laser.gaussianFitDiameter']));
    for (const id of ids) expect(measured[id], id).toMatchObject({ uncertainty: null, note: notes[0] });
  });

  it('a good one: uncertainties, and no reason against any value', () => {
    const measured = JSON.parse(
      succeed(['measure', 'beam', 'data/measured/cold-plate-beam.tif', '--pixel', '5.5 um']),
    );
    expect(measured.notes).toEqual([]);
    expect(measured['laser.usedBeamDiameter'].uncertainty).toBeGreaterThan(0);
    expect(measured['laser.usedBeamDiameter'].note).toBeUndefined();
  });
});
