import { describe, expect, it } from 'vitest';
import { widthsOf } from '../../../lib/optics/widths.ts';
import { Problem } from '../../../lib/problem.ts';
import { findWords } from '../../../notebooks/words/findWords.ts';
import { fluenceRows, fluenceSaid, pulseValues, pulseWith } from '../../../notebooks/words/fluenceRows.ts';
import { bareSaid, readingSaid, readRow, rowText } from '../../../notebooks/words/linkedRows.ts';
import { widthFigure, widthRows } from '../../../notebooks/words/widthRows.ts';
import { words } from '../../../notebooks/words/words.ts';
import { expectClose } from '../../close.ts';

const row = (key: string) => [...widthRows, ...fluenceRows].find((one) => one.key === key)!;
const ids = (typed: string) => findWords(words, typed).map(({ id }) => id);

describe('rows of a converter', () => {
  it('read any unit, and a bare number always in the one said beside the field', () => {
    expect(readRow(row('radius'), '2.5 mm', '1 m')).toBe(2.5e-3);
    for (const shown of ['7 mm', '20\u202fµm', '1 m', ''])
      expect(readRow(row('radius'), '2,5', shown)).toBe(2.5e-3);
    for (const shown of ['3 J', '12\u202fµJ', '5 fJ'])
      expectClose(readRow(row('energy'), '5e-6', shown), 5e-12, { relative: 1e-12 });
    expect(bareSaid(row('radius'))).toBe('A number alone is in mm.');
    expect(bareSaid(row('energy'))).toBe('A number alone is in µJ.');
    expect(bareSaid(row('mean'))).toBe('A number alone is in J/cm².');
    expect(readingSaid(row('energy'), '5e-6', 5e-12)).toBe('Read in µJ: 5\u202fpJ.');
    expect(readingSaid(row('energy'), '5e-6 J', 5e-6)).toBe('');
    expectClose(readRow(row('peak'), '1.5', '3 J/cm²'), 15_000, { relative: 1e-12 });
    expectClose(readRow(row('mean'), '15000 J/m²', '3 J/cm²'), 15_000, { relative: 1e-12 });
  });

  it('read what they show', () => {
    for (const key of ['radius', 'fullWidth', 'energy', 'peak'])
      for (const value of [3.21e-7, 4.5e-4, 0.02]) {
        const shown = rowText(row(key), value);
        expectClose(readRow(row(key), shown, shown), value, { relative: 1e-4 });
      }
  });

  it('refuse what cannot be, with what is allowed', () => {
    for (const typed of ['0', '-1 mm', '200 m', 'wide', '5 kg', ''])
      expect(() => readRow(row('diameter'), typed, '5 mm'), typed).toThrow(Problem);
    expect(() => readRow(row('diameter'), '-1 mm', '5 mm')).toThrow(
      /−1 mm cannot be: type a value above 0, at most 100\u202fm/,
    );
  });

  it('are one for each way of giving a width', () => {
    expect(widthRows.map(({ key }) => key)).toEqual(Object.keys(widthsOf(1)));
  });
});

describe('a pulse in the converter', () => {
  const pulse = { energy: 10e-6, radius: 20e-6 };

  it('takes a fluence as well as an energy, and keeps its width', () => {
    const { peak, mean } = pulseValues(pulse);
    expectClose(peak, 15915.494309, { relative: 1e-9, source: '2E/(πw²) by hand' });
    for (const [key, value] of [
      ['peak', peak],
      ['mean', mean],
      ['energy', pulse.energy],
    ] as const) {
      const back = pulseWith({ ...pulse, energy: 1 }, key, value);
      expectClose(back.energy, pulse.energy, { relative: 1e-12 });
      expect(back.radius).toBe(pulse.radius);
    }
  });

  it('is told with its numbers', () => {
    expect(fluenceSaid(pulse)).toBe(
      'The peak is 1.592\u202fJ/cm², twice the mean of 0.7958\u202fJ/cm². Of the energy 86.5\u202f% falls into the 1/e² circle, so the mean of what really arrives in it is 0.6881\u202fJ/cm².',
    );
  });
});

describe('the picture of the widths', () => {
  it('draws each chord from edge to edge of the curve, at its level', () => {
    for (const radius of [2.5e-3, 13e-6, 4e-9, 3]) {
      const { series, x } = widthFigure(radius);
      const [curve, ...chords] = series;
      expect(chords.length).toBe(4);
      const w = x.domain[1] / 2;
      for (const { x: ends, y, label } of chords) {
        expectClose(y[1]!, Math.exp(-2 * (ends[1]! / w) ** 2), { relative: 1e-12, source: label });
        expect(y[0]).toBe(y[1]);
      }
      expect(Math.max(...curve!.y)).toBe(1);
      expect(x.unit).toMatch(/^(m|mm|µm|nm)$/);
    }
  });

  it('says levels and energies that belong together', () => {
    expect(widthFigure(1e-3).summary).toContain('13.5\u202f% of its peak');
    expect(widthFigure(1e-3).summary).toContain(
      'hold 86.5\u202f%, 63.2\u202f%, 50.0\u202f% and 39.3\u202f% of the power',
    );
  });
});

describe('looking up a word', () => {
  it('shows all for nothing, and those that hold what is typed', () => {
    expect(findWords(words, ' ')).toBe(words);
    expect([ids('φ')[0], ids('ϕ')[0], ids('ζ').length > 0]).toEqual(['phase', 'phase', true]);
    expect(ids('rayl')).toEqual(['rayleigh-length']);
    expect(ids('LIPSS')).toEqual(['ripples']);
    expect(ids('dose')).toContain('accumulated-fluence');
    expect(ids('1/e')).toEqual(expect.arrayContaining(['radius', 'diameter', 'radius-at-1-e']));
  });

  it('puts first what is called so, then what begins so, then what holds it', () => {
    expect(ids('M2')[0]).toBe('propagation-ratio');
    expect(ids('fluence')[0]).toBe('fluence');
    expect(ids('plate').slice(0, 2)).toEqual(['plate', 'plateau']);
    expect(ids('memory')[0]).toBe('source-marks');
    expect(ids('abstract')[0]).toBe('source-marks');
    expect(ids('fluense')[0]).toBe('fluence');
    expect(ids('raleigh length')[0]).toBe('rayleigh-length');
  });

  it('comes near what is misspelt, and finds nothing where there is nothing', () => {
    expect(ids('reighley lenght')).toEqual([]);
    expect(ids('raleigh length')).toContain('rayleigh-length');
    expect(ids('incubaton')).toContain('incubation');
    expect(ids('zzqqxx')).toEqual([]);
  });
});
