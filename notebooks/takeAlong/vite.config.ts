import { renameSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig, type Plugin } from 'vite';
import { viteSingleFile } from 'vite-plugin-singlefile';
import { inlineWorkers } from './inlineWorkers.ts';
import { onlyWoff2 } from './onlyWoff2.ts';
import { signSinglePage, takeSinglePolicy } from './singlePolicy.ts';

const folder = fileURLToPath(new URL('../../dist/single', import.meta.url));

/** Gives the file its name, and says where it is. */
const name: Plugin = {
  name: 'stepwell-name-single-page',
  writeBundle() {
    const file = `${folder}/stepwell.html`;
    renameSync(`${folder}/index.html`, file);
    const size = (statSync(file).size / 1e6).toFixed(1);
    console.log(`All the pages in one file to take along, ${size} MB: dist/single/stepwell.html`);
  },
};

/** The page as one file that works from disk: script, workers, fonts and styles stand in it. */
export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  mode: 'single',
  publicDir: false,
  build: {
    outDir: folder,
    emptyOutDir: true,
    rolldownOptions: {
      checks: { pluginTimings: false },
      onwarn(warning, warn) {
        // It means the policy that written papers have, which stands in the script as text.
        if (warning.plugin !== 'vite:singlefile') warn(warning);
      },
    },
  },
  plugins: [inlineWorkers(), onlyWoff2(), takeSinglePolicy(), viteSingleFile(), signSinglePage(), name],
});
