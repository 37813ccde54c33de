// Stands in for vitest's `describe` and `test` where in-process.mjs loads the tests of a group: collects them instead of running
// them. `expect` is vitest's own.

import { createHash } from 'node:crypto';

export { expect } from 'vitest';

/** @typedef {{ readonly name: string, readonly run: () => unknown }} Collected */

/** @type {Collected[]} */
export const collected = [];

/** @type {string[]} */
const titles = [];

function add(title, run, row = []) {
  // A test whose text has changed is another test: the mutation tester then tries the faults on it again.
  const text = createHash('sha1')
    .update(`${run} ${JSON.stringify(row, plain())}`)
    .digest('hex')
    .slice(0, 8);
  const name = `${[...titles, title].join(' > ')} ${text}`;
  const before = collected.filter((each) => each.name.startsWith(name)).length;
  collected.push({ name: before === 0 ? name : `${name} ${before + 1}`, run: () => run(...row) });
}

/** Without places in a text, which count up from test to test, and without values that lead back to themselves. */
function plain() {
  const seen = new Set();
  return (key, value) => {
    if (/origin$/i.test(key)) return undefined;
    if (typeof value === 'function') return String(value);
    if (typeof value !== 'object' || value === null) return value;
    if (seen.has(value)) return '…';
    seen.add(value);
    return value;
  };
}

function group(title, fill) {
  titles.push(title);
  fill();
  titles.pop();
}

const rowsOf = (table) => table.map((row) => (Array.isArray(row) ? row : [row]));

export const test = Object.assign((title, run) => add(title, run), {
  each: (table) => (title, run) => rowsOf(table).forEach((row) => add(title, run, row)),
});
export const it = test;
export const describe = Object.assign(group, {
  each: (table) => (title, fill) => rowsOf(table).forEach((row) => group(title, () => fill(...row))),
});
