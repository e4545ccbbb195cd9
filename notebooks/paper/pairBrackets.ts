/** What opens each closing bracket; a bar closes a bar. */
const openings: Readonly<Record<string, string>> = { ')': '(', ']': '[', '\\}': '\\{', '|': '|' };
const opens = new Set(Object.values(openings));
/** Commands whose group is words. */
const verbatim = /^\\(text\w*|operatorname|mathrm|begin|end)$/;
/** Commands that take the bracket behind them. */
const sized = /^\\(left|right|middle|[bB]igg?[lrm]?)$/;

/**
 * TeX in which brackets that belong together are \left and \right: programs that read Word's equations lose the rest of
 * one where a bracket stands alone, such as the second of `(R/w)^2`, to which the power belongs.
 */
export function pairBrackets(tex: string): string {
  const tokens = tex.match(/\\[a-zA-Z]+|\\.|[^\\]/gsu) ?? [];
  const made = [...tokens];
  const frames: { token: string; index: number }[][] = [[]];
  for (let index = 0; index < tokens.length; index++) {
    const token = tokens[index]!;
    index = skipped(tokens, index);
    const open = frames.at(-1)!;
    if (token === '{' || token === '\\left' || token === '\\begin') frames.push([]);
    else if (token === '}' || token === '\\right' || token === '\\end') leave(frames);
    else if (token === '&' || token === '\\\\') open.length = 0;
    else {
      const partner = openings[token] === undefined ? -1 : lastOf(open, openings[token]);
      if (partner >= 0) {
        made[open[partner]!.index] = `\\left${open[partner]!.token}`;
        made[index] = `\\right${token}`;
        open.length = partner;
      } else if (opens.has(token)) open.push({ token, index });
    }
  }
  return made.join('');
}

/** Last token that belongs to a command at this place: the group that is words, the bracket that it takes, or the root's order. */
function skipped(tokens: readonly string[], index: number): number {
  const token = tokens[index]!;
  if (sized.test(token)) return index + 1;
  const ends = verbatim.test(token) ? '}' : token === '\\sqrt' && tokens[index + 1] === '[' ? ']' : undefined;
  if (ends === undefined) return index;
  const end = tokens.indexOf(ends, index);
  return end < 0 ? index : end;
}

function leave(frames: { token: string; index: number }[][]): void {
  if (frames.length > 1) frames.pop();
}

function lastOf(open: readonly { token: string }[], token: string): number {
  return open.findLastIndex((entry) => entry.token === token);
}
