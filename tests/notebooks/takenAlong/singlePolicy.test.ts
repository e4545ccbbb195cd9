import { createHash } from 'node:crypto';
import { expect, it } from 'vitest';
import { signed, singlePolicy } from '../../../notebooks/takeAlong/singlePolicy.ts';

const page = (script: string) =>
  `<meta http-equiv="Content-Security-Policy" content="${singlePolicy}" /><script type="module" crossorigin>${script}</script>`;

it('the policy names the script as it stands, line ends and all', () => {
  const script = '\nconst page = \'<script type="module">\\x3C/script>\';\n';
  const hash = createHash('sha256').update(script, 'utf8').digest('base64');
  expect(signed(page(script))).toContain(`script-src 'sha256-${hash}' 'wasm-unsafe-eval';`);
  expect(signed(page(script))).not.toContain('SCRIPT');
});

it('a page with two scripts, none, or a policy of another kind is refused', () => {
  expect(() => signed(page('one') + '<script type="module">two</script>')).toThrow('2 scripts');
  expect(() => signed('<p>no script</p>')).toThrow('0 scripts');
  expect(() => signed('<script type="module">one</script>')).toThrow('its own policy');
});
