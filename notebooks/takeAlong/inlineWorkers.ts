import type { Plugin } from 'vite';

/** A worker as the page opens it: a file of its own, which a page from disk may not load. */
const opened = /new Worker\(\s*new URL\('([^']+)', import\.meta\.url\),\s*\{ type: 'module' \}\s*\)/g;

/** Puts every worker into the script that opens it. */
export function inlineWorkers(): Plugin {
  return {
    name: 'stepwell-inline-workers',
    enforce: 'pre',
    transform(source, id) {
      if (!/\/notebooks\/.*\.ts$/.test(id) || !source.includes('new Worker(')) return null;
      const imports: string[] = [];
      const code = source.replace(opened, (_, path: string) => {
        const name = `InlineWorker${imports.length}`;
        imports.push(`import ${name} from '${path}?worker&inline';`);
        return `new ${name}()`;
      });
      if (code.includes('new Worker(')) this.error(`A worker of ${id} is not opened as the others are.`);
      return { code: `${imports.join('')}${code}`, map: null };
    },
  };
}
