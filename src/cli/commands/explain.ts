// `troughline explain CODE`: a rule in full; without a code, all rules in a list.

import { codesLike, explain as explainRule, listRules } from '../../validation/explain.js';
import { Exit, Trouble, type Console } from '../console.js';

export function explain(code: string | undefined, console: Console): number {
  if (code === undefined) {
    console.out(listRules());
    return Exit.clean;
  }
  const text = explainRule(code);
  if (text === undefined) {
    const near = codesLike(code.slice(0, 3));
    throw new Trouble(
      `${code}: no such rule${near.length > 0 ? `; there are ${near.join(', ')}` : ''}. Run 'troughline explain' for the list.`,
    );
  }
  console.out(text);
  return Exit.clean;
}
