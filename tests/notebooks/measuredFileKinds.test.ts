import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { applyPatch, initialState } from '../../lib/graph/state.ts';
import { inputForFile, readMeasuredFile } from '../../notebooks/measuredFiles.ts';
import { here } from './runCommand.ts';

const bytesOf = (name: string) => new Uint8Array(readFileSync(here(`data/measured/${name}`)));
const text = (content: string) => new TextEncoder().encode(content);
const initial = initialState(designGraph);
const withImage = applyPatch(
  designGraph,
  initial,
  readMeasuredFile('laser.beamImage', bytesOf('clipped-beam.png'), 'clipped-beam.png', initial.inputs),
);

describe('a file of unknown kind', () => {
  it.each([
    ['clipped-beam.png', 'laser.beamImage'],
    ['rain-gauge-beam.png', 'laser.beamImage'],
    ['cold-plate-beam.tif', 'laser.beamImage'],
    ['rain-gauge-caustic.csv', 'laser.causticTable'],
    ['cold-plate-caustic.csv', 'laser.causticTable'],
  ])('%s goes to %s', (name, id) => {
    expect(inputForFile(bytesOf(name))).toBe(id);
  });

  it.each([
    ['This is a letter.', 'laser.beamImage'],
    ['%PDF-1.4\n1 0 obj', 'laser.beamImage'],
    ['z_mm d_um\n1 300\n', 'laser.causticTable'],
    ['Position;Beam size\n1;300\n', 'laser.causticTable'],
  ])('%j goes to %s', (content, id) => {
    expect(inputForFile(text(content))).toBe(id);
  });

  it('a table of grey values is an image', () => {
    for (const content of ['0,1,2\n3,4,5\n', '1e3\t2\n3\t4\n', '0;1,5\n2;3\n'])
      expect(inputForFile(text(content))).toBe('laser.beamImage');
  });
});

describe('a file that cannot be read', () => {
  const read = (inputs: typeof initial.inputs) => () =>
    readMeasuredFile('laser.beamImage', text('This is a letter.'), 'text.png', inputs);

  it('says which file given before stays', () => {
    expect(read(withImage.inputs)).toThrow(
      /^"text\.png" is neither a PNG.* The file given before, "clipped-beam\.png", stays\.$/,
    );
  });

  it('says nothing of a file before where there is none', () => {
    expect(read(initial.inputs)).toThrow(/^"text\.png" is neither a PNG/);
    expect(read(initial.inputs)).not.toThrow(/stays/);
  });
});
