// Where nobody could look: `no look 18 m to 20 m`, `not seen behind the patch at 18.9 m`, `could not see 4 m to 6 m`.

import { joined } from './joined.js';
import type { BrokenLine } from './broken-line.js';
import { noteOf, takenApart } from './general.js';
import { isOffered, readsSoundly, type SaidBy } from './kept.js';
import type { Otherwise } from './otherwise.js';
import { changed } from './repairs.js';
import { isName } from './said-place.js';
import { imagesOf, keyword, textsIn, type Word } from './word.js';

export function notLookedAt(line: BrokenLine): Otherwise | undefined {
  const { block, words, reached, pattern } = line;
  if (block !== 'Inspection') return undefined;
  const point = ofAPoint(line) ?? ofAnEnd(line) ?? beyond(line);
  if (point) return point;
  const said = sayingOf(words);
  const isSaid = words[0]?.type === 'not seen' && reached < words.length;
  if (said === 0 && !isSaid) return undefined;
  const rest = joined(words.slice(isSaid ? 1 : said));
  const senses = isSaid
    ? []
    : words.slice(0, said).map(({ image }): SaidBy => [image.toLowerCase(), 'not seen']);
  const message = 'Where nobody could look is said with `not seen`';
  for (const offered of [[keyword('not seen'), ...rest], withPlaceFirst(rest)])
    if (offered && isOffered(words, offered, pattern, senses))
      return {
        at: isSaid ? reached : 0,
        message: `${message}: \`${imagesOf(offered)}\`.`,
        repair: changed(words, offered),
        senses,
      };
  return isSaid ? undefined : { at: 0, message: `${message}, \`not seen from 18 m to 20 m "no light"\`.` };
}

const unseen =
  'not seen|no looks?|no access|no view|not looked(?: at)?|not inspected|could not see|cannot see';
const pastAPlace = new RegExp(
  `^(?:${unseen}) (?:past|above|beyond|below|over) (\\d+(?:\\.\\d+)?)(?: ?m)?(?![\\d.]| ?m?(?: to|[a-z])) ?,? ?(.*)$`,
);

/** `no access past 15 m, ice`, `not seen above 14`: where it ends is for whoever looked to say. */
function beyond({ words }: BrokenLine): Otherwise | undefined {
  const plain = imagesOf(words).toLowerCase();
  const found = pastAPlace.exec(plain);
  if (!found) return undefined;
  const [, from = '', why = ''] = found;
  const reason = why.replace(/"/g, '').trim();
  return {
    at: 0,
    message:
      `Where nobody could look is said with \`not seen\`, from where to where: \`not seen from ${from} m to 18 m` +
      `${reason === '' ? '' : ` "${reason}"`}\`, with the end of what was not seen.`,
  };
}

/** `P5 not accessible`, `P5 no reading` */
function ofAPoint({ words, pattern }: BrokenLine): Otherwise | undefined {
  const [point, ...rest] = words;
  const plain = rest.filter(({ type }) => type !== 'STRING');
  if (!point || !isName(point) || (sayingOf(rest) === 0 && imagesOf(plain.slice(0, 2)) !== 'no reading'))
    return undefined;
  const note = noteOf(plain, textsIn(rest));
  const short = [point, keyword('not seen'), ...rest];
  const asItIs = withoutNo(short);
  const line = readsSoundly(asItIs, pattern) ? asItIs : [point, keyword('not seen'), ...(note ? [note] : [])];
  if (!readsSoundly(line, pattern)) return undefined;
  return {
    at: 1,
    message: `Where nobody could look is said with \`not seen\`: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
  };
}

/** `drive end not looked at`: an end is a place, and no stretch. */
function ofAnEnd({ words }: BrokenLine): Otherwise | undefined {
  const [end, ...more] = words;
  const rest = more[0]?.image === 'end' ? more.slice(1) : more;
  if (!end || !['drive', 'head', 'tail'].includes(end.image) || sayingOf(rest) === 0) return undefined;
  const said = imagesOf(rest.filter(({ type }) => type !== 'STRING'));
  const text = [said, ...textsIn(rest)].join(': ');
  const line = [
    keyword('finding'),
    keyword('at'),
    keyword(end.image),
    { type: 'STRING', image: `"${text}"` },
  ];
  return {
    at: 0,
    message:
      'Where nobody could look is said with `not seen`, from where to where: `not seen from 18 m to 20 m "ice"`; ' +
      `of an end alone it is \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
    senses: [['end', end.image]],
  };
}

/** `no access` is one word of the language. */
function withoutNo(line: readonly Word[]): readonly Word[] {
  const at = line.findIndex(({ image }) => image === 'no');
  const reason = at < 0 ? '' : `no ${line[at + 1]?.image ?? ''}`;
  return reason === 'no access' || reason === 'no light'
    ? [...line.slice(0, at), keyword(reason), ...line.slice(at + 2)]
    : line;
}

/** Of how many words it is said. */
function sayingOf(words: readonly Word[]): number {
  const plain = words.map(({ image }) => image.toLowerCase());
  const found = sayings.find((saying) => saying.every((each, at) => plain[at] === each));
  return found?.length ?? 0;
}

const sayings: readonly (readonly string[])[] = [
  'no look',
  'no view',
  'no access',
  'no sight',
  'could not see',
  'cannot see',
  'not looked at',
  'not inspected',
  'not accessible',
  'no inspection',
  'not found',
  'not reached',
  'not reachable',
  'could not find',
  'could not reach',
].map((each) => each.split(' '));

const seenInside: ReadonlySet<string> = new Set(['liner', 'panel', 'bolts', 'trough', 'spiral', 'flight']);

/** `behind the patch at 18.9 m`: a place or a stretch, and why. */
function withPlaceFirst(rest: readonly Word[]): readonly Word[] | undefined {
  const { part, place, told, texts, severity, photo, by } = takenApart(rest);
  // A guard that nobody looked at is no stretch that nobody saw.
  if (part !== undefined && !seenInside.has(part)) return undefined;
  const isPlace = place.length === 2 || place.length === 4;
  if (!isPlace || severity.length + photo.length + by.length > 0) return undefined;
  const isStretch = place.length === 4;
  const note = noteOf(told, texts);
  return [
    keyword('not seen'),
    ...(isStretch ? [keyword('from'), ...place.slice(1)] : place),
    ...(note ? [note] : []),
  ];
}
