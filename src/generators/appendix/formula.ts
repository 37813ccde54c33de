// What a formula of the appendix says, and how far it may be trusted. The same text stands in hovers, reports and packs, so
// that a reader can follow any number to its formula, its units and its source.

export interface Formula {
  /** Permanent: reports and hovers link to it. */
  readonly id: string;
  readonly title: string;
  /** Plain Unicode text, one line. */
  readonly formula: string;
  readonly symbols: readonly FormulaSymbol[];
  readonly source: string;
  readonly standing: Standing;
  /** What to mind when using it, in a sentence or two. */
  readonly note?: string;
}

export interface FormulaSymbol {
  readonly symbol: string;
  readonly meaning: string;
  /** As printed in the reports; `1` where it has none. */
  readonly unit: string;
}

/**
 * published: a standard, handbook or data sheet, named in `source`; from memory: recalled and not checked against the source;
 * derived: worked out from geometry, statics or probability; common practice: what the trade does; judgement: ours, to be agreed.
 */
export type Standing = 'published' | 'from memory' | 'derived' | 'common practice' | 'judgement';

/** `['D mm', 'screw diameter']` for short: the unit is the last word of the first. */
export function symbols(
  ...rows: readonly (readonly [symbolAndUnit: string, meaning: string])[]
): readonly FormulaSymbol[] {
  return rows.map(([symbolAndUnit, meaning]) => {
    const at = symbolAndUnit.lastIndexOf(' ');
    return { symbol: symbolAndUnit.slice(0, at), unit: symbolAndUnit.slice(at + 1), meaning };
  });
}
