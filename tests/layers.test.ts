import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));

function filesIn(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && !name.endsWith('.d.ts'))
    .map((name) => join(folder, name).replaceAll('\\', '/'))
    .sort();
}

/** Source without comments and texts, for names that are used; a template's `${}` counts as text. */
function codeOf(source: string): string {
  return source
    .replace(/\/\*[\s\S]*?\*\/|(?<![:'"`])\/\/.*$/gm, '')
    .replace(/'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"|`(?:[^`\\]|\\.)*`/g, "''");
}

/** What a file imports: packages by name, own files by their path from the top. */
function importsOf(path: string): string[] {
  const source = readFileSync(join(root, path), 'utf8');
  const found = source.matchAll(/(?:\bfrom|\bimport)\s*\(?\s*'([^']+)'/g);
  return [...found].map(([, name]) =>
    name!.startsWith('.') ? normalize(join(dirname(path), name!)).replaceAll('\\', '/') : name!,
  );
}

const lib = filesIn('lib');
const notebooks = filesIn('notebooks');
const imports = new Map([...lib, ...notebooks].map((path) => [path, importsOf(path)]));

/** What each part of the library may import besides itself and lib/problem.ts. */
const mayImport: Readonly<Record<string, readonly string[]>> = {
  numerics: [],
  graph: [],
  optics: ['numerics'],
  materials: ['numerics'],
  measured: ['numerics'],
  process: ['numerics', 'optics', 'materials'],
  design: ['numerics', 'graph', 'optics', 'materials', 'measured', 'process'],
  studies: ['numerics', 'graph', 'optics', 'materials', 'measured', 'process', 'design'],
};

describe('direction of imports', () => {
  it('every folder of the library has its place', () => {
    const folders = new Set(lib.map((path) => path.split('/')[1]!).filter((name) => !name.endsWith('.ts')));
    for (const folder of folders) expect(Object.keys(mayImport)).toContain(folder);
    console.log(`files: ${lib.length} in lib, ${notebooks.length} in notebooks`);
    expect(lib.length).toBeGreaterThan(60);
  });

  it('the library imports downwards only, and never a notebook', () => {
    for (const path of lib.filter((name) => name !== 'lib/problem.ts')) {
      const own = path.split('/')[1]!;
      for (const other of imports.get(path)!.filter((name) => /^(lib|notebooks|tests)\//.test(name))) {
        const allowed =
          other === 'lib/problem.ts' ||
          [own, ...mayImport[own]!].some((folder) => other.startsWith(`lib/${folder}/`));
        expect(allowed, `${path} imports ${other}`).toBe(true);
      }
    }
    expect(imports.get('lib/problem.ts')).toEqual([]);
  });

  it('no file imports itself by way of others', () => {
    const done = new Set<string>();
    const visit = (path: string, chain: readonly string[]): void => {
      expect(chain.includes(path), [...chain, path].join(' → ')).toBe(false);
      if (done.has(path)) return;
      for (const other of imports.get(path) ?? []) visit(other, [...chain, path]);
      done.add(path);
    };
    for (const path of imports.keys()) visit(path, []);
  });

  it('every import of an own file names a file that exists', () => {
    for (const [path, names] of imports) {
      for (const name of names.filter((other) => /^(lib|notebooks)\/.*\.ts$/.test(other))) {
        expect(imports.has(name) || name.endsWith('.d.ts'), `${path} imports ${name}`).toBe(true);
      }
    }
  });

  it('one file alone knows the reactive runtime', () => {
    const users = [...imports].filter(([, names]) => names.includes('@observablehq/runtime'));
    expect(users.map(([path]) => path)).toEqual(['notebooks/page/live.ts']);
  });
});

const browserNames = /(?<![.\w])(window|globalThis|localStorage|navigator|fetch|requestAnimationFrame)\b/;
const documentUse = /(?<![.\w])document\s*\./;
const hostNames =
  /(?<![.\w])(console|process|Buffer|require|setTimeout|setInterval|performance)\b(?=\s*[.(])/;

describe('what each part may touch', () => {
  it('the library has no DOM, no Node and no console', () => {
    for (const path of lib) {
      const code = codeOf(readFileSync(join(root, path), 'utf8'));
      for (const pattern of [/(?<![.\w])window\s*\./, documentUse, hostNames]) {
        expect(pattern.exec(code)?.[0], path).toBeUndefined();
      }
      expect(imports.get(path)!.filter((name) => name.startsWith('node:'))).toEqual([]);
    }
  });

  it('documents are data: no DOM, no Node, no page', () => {
    // main.ts starts the page; figurePicture.ts draws a figure of a document for paper.
    const documents = notebooks.filter(
      (path) => path.split('/').length === 2 && !/\/(main|figurePicture)\.ts$/.test(path),
    );
    expect(documents).toContain('notebooks/matching.ts');
    for (const path of documents) {
      const code = codeOf(readFileSync(join(root, path), 'utf8'));
      for (const pattern of [browserNames, documentUse, /createElement/, hostNames]) {
        expect(pattern.exec(code)?.[0], path).toBeUndefined();
      }
      const foreign = imports.get(path)!.filter((name) => /^(node:|notebooks\/page\/)/.test(name));
      expect(foreign, path).toEqual([]);
    }
  });

  it('papers are written anywhere: no DOM, no Node', () => {
    const papers = notebooks.filter((path) => path.startsWith('notebooks/paper/'));
    expect(papers.length).toBeGreaterThan(10);
    for (const path of papers) {
      const code = codeOf(readFileSync(join(root, path), 'utf8'));
      for (const pattern of [browserNames, documentUse, /createElement/, hostNames]) {
        expect(pattern.exec(code)?.[0], path).toBeUndefined();
      }
      // The numbers of a figure are words too.
      const foreign = imports.get(path)!.filter((name) => /^(node:|notebooks\/(page|command)\/)/.test(name));
      expect(
        foreign.filter((name) => name !== 'notebooks/page/figures/figureCsv.ts'),
        path,
      ).toEqual([]);
    }
  });

  it('the command line imports no page', () => {
    for (const path of notebooks.filter((name) => name.startsWith('notebooks/command/'))) {
      for (const name of imports.get(path)!) expect(name.startsWith('notebooks/page/'), path).toBe(false);
    }
  });
});

/** Longer than 250 lines, each with its reason. */
const longFiles: Readonly<Record<string, string>> = {
  'lib/design/plate.ts': 'one declaration a quantity of the plate, nothing else',
  'lib/design/spot.ts': 'one declaration a quantity of the spot, nothing else',
  'notebooks/matchingFigures.ts': 'six figures as data, each with its summary',
  'tests/notebooks/sentenceCases.ts': 'a table: every branch of every sentence with what makes it true',
  'tests/graph/units.test.ts': 'tables of texts as people type them',
  'tests/notebooks/figures.test.ts': 'one design after the other, each with its picture',
  'tests/measured/measureBeam.test.ts': 'tables of beams with what must be measured',
  'tests/browser/liveEqualsHeadless.spec.ts': 'one walk through the page, step by step',
};

it('files stay below 250 lines', () => {
  for (const path of [...lib, ...notebooks, ...filesIn('tests'), ...filesIn('data')]) {
    const lines = readFileSync(join(root, path), 'utf8').split('\n').length - 1;
    if (lines > 250) expect(Object.keys(longFiles), `${path} has ${lines} lines`).toContain(path);
  }
});
