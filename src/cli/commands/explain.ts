// `troughline explain CODE`: a rule in full; without a code, all rules in a list. `explain formulas` and `explain ID`: what is reckoned, how,
// and where it comes from.

import { codesLike, explain as explainRule, listRules } from '../../validation/explain.js';
import { formulas } from '../../generators/appendix/formulas.js';
import { Exit, Trouble, type Console } from '../console.js';

export function explain(code: string | undefined, console: Console): number {
  if (code === undefined) {
    console.out(listRules());
    return Exit.clean;
  }
  if (code === 'formulas') {
    console.out(`${formulas.map(({ id, title }) => `${id.padEnd(20)}${title}`).join('\n')}\n`);
    return Exit.clean;
  }
  const text = explainRule(code) ?? formulaText(code);
  if (text === undefined) {
    const near = codesLike(code.slice(0, 3));
    throw new Trouble(
      `${code}: no such rule or formula${near.length > 0 ? `; there are ${near.join(', ')}` : ''}. ` +
        `Run 'troughline explain' or 'troughline explain formulas' for the lists.`,
    );
  }
  console.out(text);
  return Exit.clean;
}

function formulaText(id: string): string | undefined {
  const found = formulas.find((each) => each.id === id.toLowerCase());
  if (!found) return undefined;
  const { title, formula, symbols, standing, source, note } = found;
  const width = Math.max(0, ...symbols.map(({ symbol, unit }) => symbol.length + unit.length)) + 3;
  const rows = symbols.map(
    ({ symbol, unit, meaning }) => `    ${`${symbol} ${unit === '1' ? '' : unit}`.padEnd(width)}${meaning}`,
  );
  return [
    title,
    '',
    `    ${formula}`,
    '',
    ...rows,
    '',
    `${standing}: ${source}.`,
    ...(note ? [note] : []),
    '',
  ].join('\n');
}
