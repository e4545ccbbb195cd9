import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { readValue } from '../../lib/design/savedValue.ts';
import { isInput } from '../../lib/graph/quantity.ts';
import { expectClose } from '../close.ts';

const inputs = [...designGraph.quantities.values()].filter(isInput);

/** What a reader says of an entry that stands for no value, with the form that it proposes. */
function formFor(input: (typeof inputs)[number]): unknown {
  let form: string | undefined;
  expect(() =>
    readValue(input, null, (proposed) => {
      form = proposed;
      return '';
    }),
  ).toThrow(
    /is written as nothing, where a (number with its unit|choice) belongs; (allowed is|choose one of)/,
  );
  return JSON.parse(form!);
}

describe('a saved value', () => {
  it.each(
    inputs
      .filter(({ kind }) => kind === 'number' || kind === 'choice')
      .map((input) => [input.id, input] as const),
  )('%s that is none is answered with a form that can be read', (_, input) => {
    const read = readValue(input, formFor(input), () => '');
    if (typeof read === 'number')
      expectClose(read, input.initial as number, { relative: 1e-12, absolute: 0 });
    else expect(read).toBe(input.initial);
  });

  it('of a file is refused', () => {
    const file = inputs.find(({ kind }) => kind === 'file')!;
    expect(() => readValue(file, {}, () => '')).toThrow(/is a file, and no value/);
  });
});
