import fc from 'fast-check';
import { parseQuantity } from '../../lib/graph/units.ts';
import { invented } from './formulas.ts';

/** A formula as text, and its value by plain arithmetic; undefined where a part of it has none. */
export interface Tree {
  readonly text: string;
  /** 1 sum, 2 product, 3 minus, 4 power, 5 a single thing. */
  readonly strength: number;
  readonly value: number | undefined;
}

type Kind = 'pure' | 'length';

const finite = (value: number) => (Number.isFinite(value) ? value + 0 : undefined);

/** Works on the values of parts where all of them have one. */
function of(parts: readonly Tree[], work: (...values: number[]) => number): number | undefined {
  const values = parts.map(({ value }) => value);
  return values.every((value) => value !== undefined) ? finite(work(...(values as number[]))) : undefined;
}

/** In brackets where it must be, and now and then where it need not. */
const held = ({ text, strength }: Tree, needed: number) => (strength < needed ? `(${text})` : text);

function operation(sign: string, left: Tree, right: Tree): Tree {
  const strength = { '+': 1, '-': 1, '*': 2, '/': 2, '^': 4 }[sign]!;
  const power = sign === '^';
  const [before, after] = [held(left, power ? 5 : strength), held(right, power ? 3 : strength + 1)];
  const value = of([left, right], (a, b) => {
    if (sign === '+') return a + b;
    if (sign === '-') return a - b;
    if (sign === '*') return a * b;
    return power ? a ** b : a / b;
  });
  return { text: `${before === '10' ? '(10)' : before} ${sign} ${after}`, strength, value };
}

function call(name: string, args: readonly Tree[], work: (...values: number[]) => number): Tree {
  return { text: `${name}(${args.map(({ text }) => text).join(', ')})`, strength: 5, value: of(args, work) };
}

function choice(sign: string, [a, b, yes, no]: readonly [Tree, Tree, Tree, Tree]): Tree {
  const holds = of([a, b], (x, y) => Number(sign === '<' ? x < y : sign === '>=' ? x >= y : x === y));
  const value = holds === undefined ? undefined : (holds === 1 ? yes : no).value;
  return { text: `if(${a.text} ${sign} ${b.text}, ${yes.text}, ${no.text})`, strength: 5, value };
}

const names = (unit: string): fc.Arbitrary<Tree> =>
  fc
    .constantFrom(...Object.entries(invented).filter(([, [own]]) => own === unit))
    .map(([text, [, value]]) => ({ text, strength: 5, value }));
const decimal = fc.tuple(fc.integer({ min: 0, max: 9999 }), fc.integer({ min: 0, max: 3 }));
const pureNumber = decimal.map(([n, tens]): Tree => {
  const text = (n / 10 ** tens).toString();
  return { text, strength: 5, value: Number(text) };
});
const lengthNumber = fc
  .tuple(decimal, fc.constantFrom('um', ' µm', ' mm', ' nm', ' in'))
  .map(([[n, tens], unit]): Tree => {
    const text = `${n / 10 ** tens}${unit}`;
    return { text, strength: 4, value: parseQuantity(text, 'm') };
  });
const constants = fc.constantFrom<Tree>(
  { text: 'pi', strength: 5, value: Math.PI },
  { text: 'e', strength: 5, value: Math.E },
);

const minus = (tree: Tree): Tree => ({
  text: `-${held(tree, 3)}`,
  strength: 3,
  value: of([tree], (x) => -x),
});
const bracketed = (tree: Tree): Tree => ({ ...tree, text: `( ${tree.text} )`, strength: 5 });
const pureFunctions = [
  'sqrt',
  'cbrt',
  'abs',
  'exp',
  'log10',
  'sin',
  'cos',
  'tan',
  'asin',
  'acos',
  'atan',
  'floor',
  'ceil',
  'round',
] as const;
const sameFunctions = ['min', 'max', 'hypot'] as const;
const comparisons = fc.constantFrom('<', '>=', '==');

/** Trees whose units fit, of pure numbers and lengths, to a few levels. */
export const trees = fc.letrec<Record<Kind, Tree>>((tie) => {
  const [pure, length] = [tie('pure'), tie('length')];
  const alike = (kind: fc.Arbitrary<Tree>) => [
    fc.tuple(fc.constantFrom('+', '-'), kind, kind).map(([sign, a, b]) => operation(sign, a, b)),
    fc
      .tuple(fc.constantFrom(...sameFunctions), kind, kind)
      .map(([name, a, b]) => call(name, [a, b], Math[name])),
    fc.tuple(comparisons, pure, pure, kind, kind).map(([sign, ...rest]) => choice(sign, rest)),
    fc.tuple(comparisons, length, length, kind, kind).map(([sign, ...rest]) => choice(sign, rest)),
    kind.map(minus),
    kind.map(bracketed),
    kind.map((x) => call('abs', [x], Math.abs)),
  ];
  return {
    pure: fc.oneof(
      { maxDepth: 5, depthSize: 'medium' },
      fc.oneof(pureNumber, names('1'), constants),
      ...alike(pure),
      fc.tuple(fc.constantFrom('*', '/', '^'), pure, pure).map(([sign, a, b]) => operation(sign, a, b)),
      fc.tuple(length, length).map(([a, b]) => operation('/', a, b)),
      fc.tuple(fc.constantFrom(...pureFunctions), pure).map(([name, x]) => call(name, [x], Math[name])),
      pure.map((x) => call('ln', [x], Math.log)),
      fc.tuple(length, length).map(([y, x]) => call('atan2', [y, x], Math.atan2)),
    ),
    length: fc.oneof(
      { maxDepth: 5, depthSize: 'medium' },
      fc.oneof(lengthNumber, names('m')),
      ...alike(length),
      fc.tuple(length, pure).map(([a, b]) => operation('*', a, b)),
      fc.tuple(length, pure).map(([a, b]) => operation('/', a, b)),
      fc.tuple(length, length).map(([a, b]) => call('sqrt', [operation('*', a, b)], Math.sqrt)),
      length.map((a) =>
        operation(
          '/',
          operation('^', a, { text: '3', strength: 5, value: 3 }),
          operation('^', a, { text: '2', strength: 5, value: 2 }),
        ),
      ),
    ),
  };
});
