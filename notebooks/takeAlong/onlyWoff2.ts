import type { Plugin } from 'vite';

/** Leaves out fonts in formats for browsers that are too old for these pages. */
export function onlyWoff2(): Plugin {
  return {
    name: 'stepwell-only-woff2',
    enforce: 'pre',
    transform(source, id) {
      if (!/katex.*\.css$/.test(id)) return null;
      return {
        code: source.replace(/,\s*url\([^)]+\.(?:woff|ttf)\)\s*format\(['"][a-z]+['"]\)/g, ''),
        map: null,
      };
    },
  };
}
