const greek: Readonly<Record<string, string>> = {
  α: 'alpha',
  β: 'beta',
  δ: 'delta',
  ζ: 'zeta',
  η: 'eta',
  θ: 'theta',
  κ: 'kappa',
  λ: 'lambda',
  μ: 'mu',
  π: 'pi',
  ρ: 'rho',
  σ: 'sigma',
  τ: 'tau',
  φ: 'varphi',
  χ: 'chi',
};

/** Slips that lie as near to another word of these pages: "lazer" is no layer. */
const slips: Readonly<Record<string, string>> = {
  lazer: 'laser',
  lasers: 'laser',
  lense: 'lens',
  gausian: 'gaussian',
  fluense: 'fluence',
  tophat: 'flattop',
};

/** A word as it is looked for: small, without accents, raised digits on the line, Greek letters by name. */
export function plainTerm(term: string): string {
  const small = term.toLowerCase().normalize('NFKD').replace(/\p{M}/gu, '');
  return greek[small] ?? slips[small] ?? small;
}

/** Words of a text: all but letters, digits and Greek signs parts them. */
export const parted = (text: string): string[] =>
  text.split(/[^\p{L}\p{N}\p{M}]+/u).filter((word) => word !== '');

/** Words of a text that is to be found; what a hyphen joins also as one: "flat-top" is found by "flattop". */
export function partedAndJoined(text: string): string[] {
  const joined = text.match(/[\p{L}\p{N}\p{M}]+(?:-[\p{L}\p{N}\p{M}]+)+/gu) ?? [];
  return [...parted(text), ...joined.map((word) => word.replaceAll('-', ''))];
}

/** A text to compare with another: its words as they are looked for, nothing between them. */
export const plainText = (text: string): string => parted(text).map(plainTerm).join('');

/** Words that say nothing of what is looked for. */
const fillers = new Set([
  'a',
  'an',
  'the',
  'i',
  'do',
  'does',
  'is',
  'are',
  'of',
  'how',
  'what',
  'should',
  'can',
  'my',
]);

/** Words of what was typed, without those that only fill; all of them where there are no others. */
export function partedQuestion(text: string): string[] {
  const all = parted(text);
  const telling = all.filter((word) => !fillers.has(word.toLowerCase()));
  return telling.length > 0 ? telling : all;
}
