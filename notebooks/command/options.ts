import { Problem } from '../../lib/problem.ts';

/** Words of a command: what stands alone, and the values of each option in the order given. */
export interface Options {
  readonly words: readonly string[];
  /** Values of an option that may be given several times. */
  all(name: string): readonly string[];
  /** Value of an option that may be given once; undefined where it is not. */
  one(name: string): string | undefined;
}

/**
 * Reads `--name value` and `--name=value`; refuses options not in `allowed` and options without a value. Those in `alone`
 * stand without one.
 */
export function readOptions(
  args: readonly string[],
  allowed: readonly string[],
  alone: readonly string[] = [],
): Options {
  const words: string[] = [];
  const values = new Map<string, string[]>();
  for (let i = 0; i < args.length; i++) {
    const arg = args[i]!;
    if (!arg.startsWith('--')) {
      words.push(arg);
      continue;
    }
    const equals = arg.indexOf('=');
    const name = arg.slice(2, equals < 0 ? undefined : equals);
    if (alone.includes(arg.slice(2))) {
      values.set(name, ['']);
      continue;
    }
    if (!allowed.includes(name)) {
      throw new Problem(
        'unreadable',
        `There is no option --${name} here; allowed are ${[...allowed, ...alone].map((o) => `--${o}`).join(', ')}.`,
      );
    }
    const value = equals < 0 ? args[++i] : arg.slice(equals + 1);
    if (value === undefined || value === '') {
      throw new Problem('unreadable', `The option --${name} needs a value after it.`);
    }
    values.set(name, [...(values.get(name) ?? []), value]);
  }
  return {
    words,
    all: (name) => values.get(name) ?? [],
    one: (name) => {
      const given = values.get(name) ?? [];
      if (given.length > 1) throw new Problem('unreadable', `The option --${name} can be given only once.`);
      return given[0];
    },
  };
}

/** The option's value, or a Problem that says it is missing. */
export function required(options: Options, name: string, example: string): string {
  const value = options.one(name);
  if (value === undefined)
    throw new Problem(
      'unreadable',
      `The option --${name} is missing; give for example --${name} ${example}.`,
    );
  return value;
}

/** The option's value among those allowed, the first of them where the option is not given. */
export function oneOf<T extends string>(options: Options, name: string, allowed: readonly [T, ...T[]]): T {
  const value = options.one(name) ?? allowed[0];
  const found = allowed.find((one) => one === value);
  if (found !== undefined) return found;
  throw new Problem('unreadable', `--${name} cannot be '${value}'; choose one of: ${allowed.join(', ')}.`, {
    value,
    allowed: allowed.join(', '),
  });
}

/** The only word, or a Problem. */
export function onlyWord(options: Options, what: string): string {
  if (options.words.length !== 1) {
    throw new Problem('unreadable', `Give exactly one ${what}, not ${options.words.length}.`);
  }
  return options.words[0]!;
}
