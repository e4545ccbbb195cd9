import { designGraph } from '../../../lib/design/design.ts';
import { equationTex } from '../../../notebooks/equationTex.ts';

/** Every formula and symbol of the design's quantities, TeX, each once. */
export const designEquations: readonly string[] = [
  ...new Set(
    [...designGraph.quantities.values()].flatMap((quantity) => [
      'formula' in quantity ? quantity.formula : '',
      'formula' in quantity ? equationTex(quantity.symbol, quantity.formula) : '',
      quantity.symbol ?? '',
    ]),
  ),
].filter((tex) => tex !== '');
