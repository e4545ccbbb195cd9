/**
 * TeX in which a sign that stands in a script with nothing on one of its sides is a word: `\Lambda_+`, `A_{>F}`, `s^{=,1}`.
 * Programs that read Word's equations look for what it would join. A minus before a number stays what it is.
 */
export function quoteScriptSigns(tex: string): string {
  return tex
    .replace(/([_^])([-+=<>])/g, (_all, script, sign) => `${script}${word(sign)}`)
    .replace(/([_^]\{)([=<>])/g, (_all, script, sign) => `${script}${word(sign)}`)
    .replace(/([_^]\{[^{}]*)([-+=<>])\}/g, (_all, script, sign) => `${script}${word(sign)}}`);
}

const word = (sign: string) => `\\text{${sign === '-' ? '−' : sign}}`;
