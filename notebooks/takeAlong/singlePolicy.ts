import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { Plugin } from 'vite';

const icon = readFileSync(new URL('../public/icon.svg', import.meta.url)).toString('base64');
const policyTag = /(http-equiv="Content-Security-Policy"\s+content=")[^"]*(")/;
const inlineScript = /<script type="module"[^>]*>([\s\S]*?)<\/script>/g;
/** Stands in the policy until the script is as it stays. */
const unknownHash = "'sha256-SCRIPT'";

/** The policy of the single file: its own script alone, and no address at all. */
export const singlePolicy = [
  "default-src 'none'",
  `script-src ${unknownHash} 'wasm-unsafe-eval'`,
  "style-src 'unsafe-inline'",
  'img-src data: blob:',
  'font-src data:',
  'worker-src blob:',
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** Puts the policy into the page, and the icon, which is a file of its own elsewhere. */
export function takeSinglePolicy(): Plugin {
  return {
    name: 'stepwell-take-single-policy',
    transformIndexHtml: {
      order: 'pre',
      handler: (html) =>
        html
          .replace(policyTag, (_, before: string, after: string) => `${before}${singlePolicy}${after}`)
          .replace(/href="[^"]*icon\.svg"/, `href="data:image/svg+xml;base64,${icon}"`),
    },
  };
}

/** Names the script in the policy; the last of all plugins, since nothing may change in the script afterwards. */
export function signSinglePage(): Plugin {
  return {
    name: 'stepwell-sign-single-page',
    enforce: 'post',
    generateBundle: {
      order: 'post',
      handler(_, bundle) {
        const page = bundle['index.html'];
        const others = Object.keys(bundle).filter((name) => name !== 'index.html');
        if (page?.type !== 'asset' || others.length > 0)
          return this.error(`The single file would need others beside it: ${others.join(', ')}.`);
        page.source = signed(String(page.source));
      },
    },
  };
}

/** The page with the SHA-256 of its one script in its policy. */
export function signed(html: string): string {
  const scripts = [...html.matchAll(inlineScript)];
  if (scripts.length !== 1 || !html.includes(unknownHash))
    throw new Error(`The single file has ${scripts.length} scripts; it must have one, and its own policy.`);
  const hash = createHash('sha256').update(scripts[0]![1]!).digest('base64');
  return html.replace(unknownHash, `'sha256-${hash}'`);
}
