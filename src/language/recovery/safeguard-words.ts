// Guards, stops, pull cords and interlocks under the names that people give them: `drive guard missing`, `guard of the tail shaft
// loose`, `e-stop not working at 3 m`. Whose guard it is, is its place: `guard missing at drive`. What is said in other words than
// the language has stays as the note.

import type { BrokenLine } from './broken-line.js';
import { noteOf, severities } from './general.js';
import type { SaidBy } from './kept.js';
import type { Otherwise } from './otherwise.js';
import { changed } from './repairs.js';
import { imagesOf, keyword, plainImage, textsIn, type Word } from './word.js';

const owners: Readonly<Record<string, string>> = {
  drive: 'drive',
  motor: 'drive',
  belt: 'drive',
  chain: 'drive',
  coupling: 'drive',
  gearbox: 'drive',
  'drive shaft': 'drive',
  tail: 'tail',
  'tail shaft': 'tail',
  'tail bearing': 'tail',
  head: 'head',
  'head shaft': 'head',
};

/** The longest first: the guard of a tail shaft is not one of the tail with a word more. */
const owned = Object.keys(owners)
  .sort((a, b) => b.length - a.length)
  .join('|');
const dead = 'dead|not working|does not work|out of order|failed|without function';
const missing = 'missing|gone|off|not fitted|not there';

const sayings: readonly (readonly [RegExp, string])[] = [
  [new RegExp(`^guard (${missing})$`), 'guard missing'],
  [/^guard (loose)$/, 'guard loose'],
  [/^guard (bent|dented)$/, 'guard bent'],
  [new RegExp(`^(?:emergency stop|e-stop|estop) (${dead})$`), 'emergency stop dead'],
  [new RegExp(`^(?:pull cord|pull wire|trip wire) (${dead})$`), 'pull cord dead'],
  [/^(?:pull cord|pull wire|trip wire) (broken|torn|snapped)$/, 'pull cord broken'],
  [/^(?:pull cord|pull wire|trip wire) (slack|sagging|hanging)$/, 'pull cord slack'],
  [new RegExp(`^interlock (${dead})$`), 'interlock dead'],
  [/^interlock (bypassed|bridged|defeated|overridden|tied down)$/, 'interlock bypassed'],
];

export function safeguardInOtherWords({ block, words }: BrokenLine): Otherwise | undefined {
  if (block !== 'Inspection') return undefined;
  const answers = words[0]?.type === 'closed' || words[0]?.type === 'not seen' ? words.slice(0, 1) : [];
  const all = words.slice(answers.length);
  const behind = all.findIndex(({ type }) => closing.has(type) || severities.has(type));
  const head = behind < 0 ? all : all.slice(0, behind);
  const { said, owner } = withoutOwner(head.map(plainImage).join(' ').toLowerCase());
  const found = sayings.flatMap(([pattern, kind]) => {
    const told = pattern.exec(said)?.[1];
    return told === undefined ? [] : [{ kind, told }];
  })[0];
  if (!found) return undefined;
  const { kind, told } = found;
  const end = owners[owner];
  const rest = all.slice(head.length).filter(({ type }) => type !== 'STRING');
  const place: readonly Word[] =
    end === undefined || rest[0]?.type === 'at' || rest[0]?.type === 'from'
      ? []
      : [keyword('at'), keyword(end)];
  const unsaid = [place.length > 0 && end === owner ? '' : owner, kind.endsWith(` ${told}`) ? '' : told];
  const note = noteOf(unsaid.filter(Boolean).map(keyword), textsIn(all));
  const line = [...answers, keyword(kind), ...place, ...rest, ...(note ? [note] : [])];
  return {
    at: 0,
    message: `A guard, a stop, a pull cord and an interlock have conditions of their own: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
    senses: head.map((word): SaidBy => [plainImage(word).toLowerCase(), kind]),
  };
}

const closing: ReadonlySet<string> = new Set([
  'at',
  'from',
  'STRING',
  'QUANTITY',
  'NUMBER',
  'clock',
  'left side',
  'right side',
  'both sides',
  'photo',
  'closed on',
]);

/** `tail shaft guard loose`, `guard of the tail shaft loose`, `guard loose on tail shaft`: whose it is, and the rest. */
function withoutOwner(text: string): { readonly said: string; readonly owner: string } {
  const plain = text
    .replace(/\bthe\b/g, '')
    .replace(/\binterlock switch(es)?\b/, 'interlock')
    .replace(/\bguards\b/, 'guard')
    .replace(/ +/g, ' ')
    .trim();
  const before = new RegExp(`^(${owned}) guard (.*)$`).exec(plain);
  if (before) return { owner: before[1] ?? '', said: `guard ${before[2] ?? ''}` };
  const between = new RegExp(`^guard (?:of|on|over) (${owned}) (.*)$`).exec(plain);
  if (between) return { owner: between[1] ?? '', said: `guard ${between[2] ?? ''}` };
  const after = new RegExp(`^guard (.*?) (?:of|on|over|from) (${owned})$`).exec(plain);
  if (after) return { owner: after[2] ?? '', said: `guard ${after[1] ?? ''}` };
  return { owner: '', said: plain };
}
