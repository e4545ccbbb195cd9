/**
 * TeX of a quantity with its formula. A formula that is itself an equation is the condition that the quantity meets, and
 * stands behind a colon: κ = 2e^(−κ²) = 1 + … would say that all three are equal.
 */
export function equationTex(symbol: string, formula: string): string {
  if (formula === symbol) return formula;
  if (formula.replaceAll(' ', '').startsWith(`${symbol.replaceAll(' ', '')}=`)) return formula;
  return isCondition(formula) ? `${symbol}\\colon\\quad ${formula}` : `${symbol} = ${formula}`;
}

/** Whether an equals sign stands outside all brackets before the first comma: behind it abbreviations are explained. */
function isCondition(formula: string): boolean {
  let depth = 0;
  for (const sign of formula) {
    if ('{(['.includes(sign)) depth += 1;
    else if ('})]'.includes(sign)) depth -= 1;
    else if (depth > 0) continue;
    else if (sign === ',') return false;
    else if (sign === '=') return true;
  }
  return false;
}
