// HiGHS (the WebAssembly build on npm) as a second opinion on small integer programmes. Test-time only.

import * as package_ from 'highs';

export interface Term {
  readonly by: number;
  readonly of: string;
}
export interface Row {
  readonly sum: readonly Term[];
  readonly is: '<=' | '>=' | '=';
  readonly value: number;
}

interface Solver {
  solve(problem: string): { readonly Status: string; readonly ObjectiveValue: number };
}
// The package is typed as CommonJS and loaded as a module, where its loader is the default export.
const load = package_.default as unknown as () => Promise<Solver>;
const highs = await load();

/** Minimises; all variables whole and between 0 and `most`. Undefined where infeasible. */
export function minimise(
  objective: readonly Term[],
  rows: readonly Row[],
  variables: readonly string[],
  most = 1,
): number | undefined {
  const expression = (terms: readonly Term[]): string =>
    terms.map(({ by, of }) => `${by < 0 ? '-' : '+'} ${Math.abs(by)} ${of}`).join(' ') || '0 x0';
  const text = [
    'Minimize',
    ` obj: ${expression(objective)}`,
    'Subject To',
    ...rows.map((row, i) => ` r${i}: ${expression(row.sum)} ${row.is} ${row.value}`),
    'Bounds',
    ...variables.map((name) => ` 0 <= ${name} <= ${most}`),
    'General',
    ` ${variables.join(' ')}`,
    'End',
  ].join('\n');
  const solution = highs.solve(text);
  return solution.Status === 'Optimal' ? solution.ObjectiveValue : undefined;
}
