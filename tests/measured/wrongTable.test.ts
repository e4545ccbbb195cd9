import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { measuredFiles } from '../../notebooks/measuredFiles.ts';
import { here } from '../notebooks/runCommand.ts';

const given = (id: string, text: string) => () =>
  measuredFiles[id]!.read(new TextEncoder().encode(text), 'given.csv');
const spots = readFileSync(here('data/measured/rain-gauge-spots.csv'), 'utf8');
const rows = (header: string, row: string) =>
  `${header}\n${Array.from({ length: 6 }, (_, i) => `${i + 1};${row}`).join('\n')}\n`;
const sendsOn =
  /^"given\.csv" is no .* but one of single spots, .* the table of measured spots, in the document “Fluence and threshold”\.$/;

describe('a table of single spots that is given as something else', () => {
  for (const id of ['spot.measuredProfile', 'laser.causticTable', 'focus.measuredCaustic']) {
    it.each([
      ['of a demonstration', spots],
      ['with z and a diameter', rows('z (mm);E (µJ);d (µm)', '10;20')],
      ['with places of marks', rows('x (mm);y (mm);energy (µJ);dx (µm);dy (µm)', '1;10;20;21')],
      ['energy and radius', rows('E (µJ);r (µm)', '20')],
    ])(`${id}: %s`, (_, text) => expect(given(id, text)).toThrow(sendsOn));
  }

  it('is not what a profile of two columns is, whatever its light is called', () => {
    const profile = given('spot.measuredProfile', rows('r (µm);power', '3'));
    expect(profile).not.toThrow(sendsOn);
    expect(profile()['spot.measuredProfile']).toMatchObject({ axis: 'radius', counts: [3, 3, 3, 3, 3, 3] });
  });
});
