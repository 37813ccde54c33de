// What was done to a part, in the words of whoever did it: `oil change gearbox`, `new seal on the gate`, `pull cord tensioned`, `hold-down
// H2 new`, as the work that the language has a word for; and what is as it should be again, as the condition that it ends. What was
// done to a thing on the part, and what is still to be done, is neither.

import { belongsTo } from '../../domain/conditions/service.js';
import type { ConditionKind, PartName, Service } from '../../domain/model/records.js';
import { isToDo } from './done-words.js';
import { fillers } from './fillers.js';
import type { SaidBy } from './kept.js';
import { partOfWord } from './part-words.js';
import { inSmall, plainImage, type Word } from './word.js';

type Work = NonNullable<Service['work']>;

export interface WorkSaid {
  readonly part: PartName;
  readonly work: Work;
  /** Words that it does not say. */
  readonly left: readonly Word[];
  /** `hold-down new`: that it is new may be said of what is seen too. */
  readonly isNew: boolean;
  readonly senses: readonly SaidBy[];
}

const did = '(?:renewed|replaced|changed|exchanged|new)';
const joins = '(?: (?:the|a|an|some|with|of|gear|all|in|was|were|is|are|now|has|been|and|on|in|at|to))*';
/** The part in a line of plain words. */
const part = '§';

/** By what was done, each with the parts that it may be done to without being named; the first that fits. */
const phrases: readonly (readonly [Work, string])[] = [
  [
    'oil changed',
    `oil${joins} (?:change|${did})|(?:change of|oil change|fresh|${did})${joins}(?: ${part})? oil`,
  ],
  [
    'oil topped up',
    `oil(?: level)?${joins} (?:topped up|topped|top up|top-up|refilled|filled up|added|made up)`,
  ],
  ['oil topped up', `(?:topped up|topped|top up|added|filled up|refilled)${joins} oil`],
  ['seal renewed', `seals?${joins}(?: ${part})?${joins} ${did}|${did}${joins}(?: ${part})? seals?|resealed`],
  ['bearings renewed', `bearings?${joins}(?: ${part})?${joins} ${did}|${did}${joins}(?: ${part})? bearings?`],
  [
    'renewed',
    `${part}${joins} ${did}|(?:(?:fitted|installed|put in|put on|put up|mounted) )?${did}${joins} ${part}`,
  ],
  ['renewed', `${part}${joins} (?:fitted|installed|mounted) new`],
  ['greased', '(?:re-?)?greased|(?:re-?)?lubricated|(?:new|fresh|more) grease'],
  [
    'greased',
    'grease (?:changed|renewed|replaced|pumped in|put in|added|topped up)|grease(?= (?:[a-z-]+ )?instead of)',
  ],
  ['aligned', '(?:re-?)?aligned'],
  ['tightened', '(?:re-?)?(?:tightened|tensioned)(?: up)?|nipped up|pulled tight'],
];

const patterns = phrases.map(([work, text]) => [work, new RegExp(`(?<![^ ])(?:${text})(?![^ ])`)] as const);

/** `named`: the part that the line is about; `told`: what is said of it, with or without its name. */
export function workIn(named: string | undefined, told: readonly Word[]): WorkSaid | undefined {
  if (isToDo(told)) return undefined;
  const isHere = told.some((word) => partOfWord(word) === named && named !== undefined);
  const words = named !== undefined && !isHere ? [{ type: named, image: named }, ...told] : told;
  const singles = words.flatMap((word) =>
    named !== undefined && partOfWord(word) === named
      ? [{ word, text: part }]
      : plainImage(word)
          .split(' ')
          .map((text) => ({ word, text: text.toLowerCase() })),
  );
  const line = singles.map(({ text }) => text).join(' ');
  for (const [work, pattern] of patterns) {
    const found = pattern.exec(line);
    const about = (named ?? (/^oil/.test(work) ? 'gearbox' : undefined)) as PartName | undefined;
    if (!found || about === undefined || !belongsTo({ part: about, work })) continue;
    const from = line.slice(0, found.index).split(' ').length - 1;
    const to = from + found[0].split(' ').length;
    const left = singles
      .filter(({ text }, at) => (at < from || at >= to) && text !== part)
      .map(({ word }) => word);
    if (
      !isOfThePart(
        singles.map(({ text }) => text),
        from,
        to,
      ) ||
      left.some(isThing)
    )
      return undefined;
    return {
      part: about,
      work,
      left: withoutJoins([...new Set(left)]),
      isNew: /(?<![^ ])new(?![^ ])/.test(found[0]),
      senses: found[0].split(' ').map((each): SaidBy => [each, work]),
    };
  }
  return undefined;
}

/** `in, 4.5 l`: what only joined it to what was said. */
function withoutJoins(left: readonly Word[]): readonly Word[] {
  const says = left.findIndex(({ image, type }) => /^\w/.test(type) && !fillers.has(image.toLowerCase()));
  return left.slice(Math.max(0, says));
}

/** Between the part and what was done stands no other thing. */
function isOfThePart(line: readonly string[], from: number, to: number): boolean {
  const at = line.indexOf(part);
  if (at < 0 || (at >= from && at < to)) return true;
  const between = at < from ? line.slice(at + 1, from) : line.slice(to, at);
  return between.every(
    (each) => fillers.has(each) || /^(the|a|an|of|oil|bolts?|new|,|and|gearbox|:)$/.test(each),
  );
}

/** On a part, things that are renewed by themselves. */
function isThing({ image }: Word): boolean {
  return things.has(image.toLowerCase());
}

const things: ReadonlySet<string> = new Set(
  (
    'oil grease seal seals bearing bearings cylinder cylinders hinge hinges rubber rubbers gasket gaskets fan belt belts chain ring rings shoe shoes pad ' +
    'pads insert inserts element elements key filter breather plug spring springs rope wiper nut nuts bolt foot feet lamp clamp clamps switch ' +
    'handle lock latch wheel sprocket shim shims cap caps sensor weld plate'
  ).split(' '),
);

type Over = readonly [PartName, string, ConditionKind];

const switches = ['interlock', 'zero-speed sensor', 'level probe', 'blockage switch'] as const;

/** Of what can be wrong with a part in one way only, or is put back where it was gone: which condition is over. */
const over: readonly Over[] = [
  [
    'walkway',
    'ok again|good again|fine again|in order again|repaired|mended|fixed|made good|welded',
    'walkway damaged',
  ],
  [
    'cable',
    'ok again|good again|fine again|in order again|repaired|mended|fixed|made good|spliced',
    'cable damaged',
  ],
  [
    'guard',
    'put back(?: on)?|back on|back in place|refitted|reinstalled|in place again|put on again|on again',
    'guard missing',
  ],
  ...(['cover', 'hatch'] as const).map((part): Over => [
    part,
    'put back(?: on)?|back on|back in place|in place again|put on again|on again',
    `${part} missing`,
  ]),
  [
    'sign',
    'put back(?: up)?|back up|back in place|refitted|in place again|put up again|up again',
    'sign missing',
  ],
  [
    'emergency stop',
    'works again|working again|repaired|mended|fixed|ok again|in order again',
    'emergency stop dead',
  ],
  ...switches.flatMap((part): readonly Over[] => [
    [part, 'works again|working again', `${part} dead`],
    [
      part,
      '(?:bridge|bypass|jumper|tape|link|wire)(?: was)? (?:removed|taken off|taken out|off|out)',
      `${part} bypassed`,
    ],
  ]),
  ['pull cord', 'works again|working again', 'pull cord dead'],
  ['pull cord', 'spliced|joined again|knotted', 'pull cord broken'],
];

export interface OverAgain {
  readonly kind: ConditionKind;
  readonly senses: readonly SaidBy[];
}

export function overAgain(named: string | undefined, told: readonly Word[]): OverAgain | undefined {
  const line = inSmall(told);
  if (isToDo(told)) return undefined;
  for (const [part, words, kind] of over) {
    const found = part === named ? new RegExp(`(?<![^ ])(?:${words})(?![^ ])`).exec(line) : null;
    if (found) return { kind, senses: found[0].split(' ').map((each): SaidBy => [each, 'closed']) };
  }
  return undefined;
}
