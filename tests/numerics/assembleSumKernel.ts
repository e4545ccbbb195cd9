import { readFileSync, writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import wabt from 'wabt';

const text = new URL('../../lib/numerics/sumKernel.wat', import.meta.url);
const program = new URL('../../lib/numerics/sumKernelProgram.ts', import.meta.url);

/** The kernel's text, assembled: bytes in hexadecimal. */
export async function assembleSumKernel(): Promise<string> {
  const assembler = await wabt();
  const parsed = assembler.parseWat('sumKernel.wat', readFileSync(text, 'utf8'), { simd: true });
  return Buffer.from(parsed.toBinary({}).buffer).toString('hex');
}

/** `npm run build:kernel`: writes the program that the library loads. */
if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const lines = (await assembleSumKernel()).match(/.{1,100}/g) ?? [];
  writeFileSync(
    program,
    `/** sumKernel.wat, assembled by \`npm run build:kernel\`: bytes in hexadecimal, blanks left out. */
export const sumKernelProgram = \`
${lines.join('\n')}
\`;
`,
  );
}
