// Which words are named where many could stand? Sixty are no help: at most the five that lie nearest to what was written, by
// its words and then by its letters, or else what kinds of words there are.

import { conditionKinds } from '../../domain/conditions/kinds.js';
import { nearest } from '../nearest.js';
import { isPartName } from './part-words.js';
import { keyword, plainImage, type Word } from './word.js';
import { oneOf } from './wording.js';

/** So many choices can be taken in at a glance. */
export const most = 7;

/** Words of the language that a crew's skill may be too, where any name may stand. */
const skills = ['`electrical`', '`crane`', '`confined space`'];

/** For a sentence that goes on `comes …`; each choice as waysInWords gives it. */
export function choices(all: readonly string[], word: Word | undefined): string {
  if (all.length <= most) return oneOf(all);
  if (skills.every((each) => all.includes(each))) return 'a name';
  const near = nearTo(all, word);
  return near.length > 0 ? `one of ${all.length}, such as ${oneOf(near)}` : oneOf(inKinds(all));
}

/** At most five: those that share a word with what was written, then those that are spelt like it. */
export function nearTo(all: readonly string[], word: Word | undefined): readonly string[] {
  const image = word ? plainImage(word).toLowerCase() : '';
  if (!/^[a-z]/.test(image)) return [];
  const plain = all.flatMap((each) => (each.startsWith('`') ? [each.slice(1, -1)] : []));
  const own = new Set(image.split(' '));
  const kin = plain.filter((each) => each.split(' ').some((single) => own.has(single)));
  return [...new Set([...kin, ...nearest(image, plain, image.length < 5 ? 1 : 2)])]
    .slice(0, 5)
    .map((each) => `\`${each}\``);
}

/** Conditions and parts as kinds, and the other words by name. */
function inKinds(all: readonly string[]): readonly string[] {
  const found = kinds.filter(({ has }) => all.filter(has).length > 3);
  const others = all.filter((each) => !found.some(({ has }) => has(each)));
  const named = found.map(({ words }) => words);
  if (others.length + named.length <= most + 3) return [...named, ...others];
  return [...named, ...others.slice(0, 5), `${others.length - 5} others`];
}

const conditions: ReadonlySet<string> = new Set(conditionKinds.map((kind) => `\`${kind}\``));

const kinds: readonly { readonly words: string; readonly has: (each: string) => boolean }[] = [
  { words: 'what is wrong (such as `panel torn` or `cover loose`)', has: (each) => conditions.has(each) },
  {
    words: 'a part (such as `gearbox` or `cover`)',
    has: (each) => each === '`drive at`' || (each.startsWith('`') && isPartName(keyword(each.slice(1, -1)))),
  },
];

/** What the lines of a block say, by its rule: a sentence that goes on `It can say …`. */
export function sayingsOf(block: string): string | undefined {
  return Object.hasOwn(sayings, block) ? sayings[block] : undefined;
}

const own = 'and all else in words of your own (`finding "…"`)';

const sayings: Readonly<Record<string, string>> = {
  Plant:
    '`outage`, `crew`, `access unit` and `crane`, what lies `on the shelf` or is `ordered`, ' +
    'times (`lead time`, `unit time`), each `cost`, and limits (`risk`, `threshold`)',
  Liner:
    'what it is made of (`layer` or `thickness`, `material`), its `panel length`, `bolt` and `joint`, ' +
    'and when it is worn (`condemn at`)',
  Screw:
    'its measures (`outside diameter`, `pitch`, `flight`), whether it is `shaftless`, its `hand`, ' +
    'and when it is worn (`condemn flight at`)',
  Conveyor:
    'what it is (`length`, `incline`, `trough`, `screw`, `liner`, `drive at`), what stands on it ' +
    '(`section`, `break`, `hold-down`, `cover`, `point`) and how it runs (`duty`, `conveys`, `commissioned`)',
  Inspection:
    'what a point shows (`P1 thickness 8.4 mm`), what is wrong (`panel torn at 14.2 m serious`), ' +
    'what was done (`serviced gearbox oil changed`), ' +
    'and all else in words of your own (`finding gate at 12.4 m "creeps"`)',
  Reline:
    'its `liner` and `scope`, what was measured (`P1 thickness 12.1 mm`, `fitted`, `offcut`, `old panel`), ' +
    `what was done (\`serviced\`), ${own}`,
  ScrewChange: `the new \`screw\`, its \`scope\`, \`by\` whom, what was done (\`serviced\`), ${own}`,
  PanelsMoved:
    'which panel lies where (`panel 2 of run 1 turned end for end`), ' +
    `what was measured (\`P2 thickness 9.1 mm\`), \`by\` whom, ${own}`,
  Job:
    'what is done (`reline`, `change screw`), when (`outage` or `window`), by whom (`crews`), ' +
    'with what (`access units`, `crane`, `stock`, `tool`), and in which `order`',
  Order: 'a step, such as `isolate`, `covers off`, `strip run 1`, `fit run 1 by Alpha` or `remove isolation`',
};
