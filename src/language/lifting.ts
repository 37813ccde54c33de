// Regular rows of inspections (`P1 thickness 8.4 mm "wet"`) are read straight off the text into columns, and the parser sees
// blanks in their place. Estates are mostly such rows, and a syntax node for each costs twenty times more than the reading is
// worth. A row that is not regular in every way, or stands behind one that is not, is left to the parser and its messages.
import { parseClock } from '../domain/units/clock.js';
import { visibleText } from '../domain/units/visible-text.js';
import { withoutComments, withoutTexts, type Comment } from './comments.js';
import { chainage as chainageLimit, thickness as thicknessLimit } from './lowering/limits.js';
import { columnAt } from './row-starts.js';
import { createReadingRows, type ReadingRows } from './reading-rows.js';
import { ReadingKind } from '../domain/units/reading-kind.js';

export interface Lifted {
  /** The text with blanks for the rows, of the same length. */
  readonly rest: string;
  /** The rows that were taken out, for the rest of the text's readings to be added to. */
  readonly rows: ReadingRows;
  /** Characters taken out. */
  readonly taken: number;
}

const name = '[A-Za-z_][A-Za-z0-9_]*(?:-[A-Za-z0-9_]+)*';
const quantity = String.raw`(?:(?:\d+[ \t]+)?\d+\/\d+|\d+(?:\.\d+)?)[ \t]*[A-Za-z]+`;
const row = new RegExp(
  String.raw`[ \t]*((?:(${name})|(at[ \t]+(${quantity})[ \t]+clock[ \t]+(\d{1,2}:\d{2})))[ \t]+` +
    String.raw`(?:thickness[ \t]+(${quantity})(?:[ \t]*(?:±|\+\/-)[ \t]*(${quantity}))?|colou?r[ \t]+(${name})|(trough[ \t]+showing)|not[ \t]+seen)` +
    String.raw`(?:[ \t]*"([^"\n\r]*)")?)[ \t]*(?:\/\/[^\n\r]*)?(?:\r\n|\n|\r)`,
  'y',
);
const head = /^[ \t]*inspection(?![\w-])[^\n\r{}"/]*\{[ \t]*(?:\/\/[^\n\r]*)?(?:\r\n|\n|\r)/gm;
/**
 * A fact may go on below its line: what begins so belongs to the row above, and the row to the parser; a photo, and who says
 * so, where they stand further in than the row.
 */
const goesOn = /(?:\s|\/\/[^\n\r]*[\n\r]|\/\*[\s\S]*?\*\/)*(?:"|±|\+\/-|(photo|by)(?![\w-]))/y;
const line = /[^\n\r]*(?:\r\n|\n|\r)?/y;

/** `isKeyword`: words that can be no name. */
export function liftRows(
  text: string,
  comments: readonly Comment[],
  isKeyword: (word: string) => boolean,
): Lifted {
  const rows = createReadingRows();
  const add = addRegularRows(rows, isKeyword);
  const pieces: string[] = [];
  let copied = 0;
  let taken = 0;
  const isInComment = insideComments(comments);
  head.lastIndex = 0;
  for (let found = head.exec(text); found; found = head.exec(text)) {
    if (isInComment(found.index)) continue;
    let at = head.lastIndex;
    let run = at;
    let regular = true;
    const flush = (): void => {
      // The last row's end of line stays, so that what follows stands as far in as it did.
      pieces.push(text.slice(copied, run), at > run ? `${' '.repeat(at - run - 1)}\n` : '');
      copied = at;
      taken += at - run;
    };
    while (at < text.length) {
      // A line inside a comment of several lines says nothing.
      const inComment = isInComment(at);
      row.lastIndex = at;
      const match = regular && !inComment ? row.exec(text) : null;
      const next = row.lastIndex;
      if (match && !rowGoesOn(text, match, next) && add(match)) {
        at = next;
        continue;
      }
      flush();
      line.lastIndex = at;
      const image = line.exec(text)?.[0] ?? '';
      const code = withoutComments(image).trim();
      at += image.length;
      run = at;
      if (!inComment && /[{}]/.test(withoutTexts(code))) break;
      // The next line may belong to this one, unless this one is empty or ends as a finished row does.
      regular = inComment ? regular : code === '' ? regular : finished.test(code);
    }
    flush();
    head.lastIndex = at;
  }
  pieces.push(text.slice(copied));
  return { rest: pieces.join(''), rows, taken };
}

/** Whether a place is inside a comment, for places that only rise. */
function insideComments(comments: readonly Comment[]): (at: number) => boolean {
  let next = 0;
  return (at) => {
    while ((comments[next]?.end ?? Infinity) <= at) next++;
    return (comments[next]?.start ?? Infinity) < at;
  };
}

function rowGoesOn(text: string, row: RegExpExecArray, next: number): boolean {
  goesOn.lastIndex = next;
  const [found, word] = goesOn.exec(text) ?? [];
  if (found === undefined) return false;
  if (word === undefined) return true;
  const [image, body = ''] = row;
  return columnAt(text, next + found.length - word.length) > columnAt(text, row.index + image.indexOf(body));
}

/** Lines of an inspection, other than readings, that need no more. */
const finished = new RegExp(
  String.raw`^(?:by[ \t]+"[^"]*"|view[ \t]+(?:upstream|downstream)|photo[ \t]+"[^"]*"|gauge[ \t]+(?:ultrasonic|depth[ \t]+gauge|calliper|by[ \t]+eye)(?:[ \t]*(?:±|\+\/-)[ \t]*${quantity})?` +
    String.raw`|hold-down[ \t]+at[ \t]+${quantity}[ \t]+gap[ \t]+${quantity}(?:[ \t]*"[^"]*")?)$`,
);

/** Adds a row as `row` matches it; false where a value in it is not regular, which is then for the parser's path to say. */
function addRegularRows(
  rows: ReadingRows,
  isKeyword: (word: string) => boolean,
): (match: RegExpExecArray) => boolean {
  const spots = new Map<string, number | undefined>();
  const colours = new Map<string, number | undefined>();

  const once = (
    known: Map<string, number | undefined>,
    text: string,
    read: () => number | undefined,
  ): number | undefined => {
    if (!known.has(text)) known.set(text, read());
    return known.get(text);
  };
  const chainage = (at = '', clock = ''): number | undefined => {
    const mm = rows.length(at, chainageLimit);
    const hours = parseClock(clock);
    return Number.isNaN(mm) || hours === undefined ? undefined : rows.chainage(mm, hours);
  };

  return (match) => {
    const [image, body = '', point, whole = '', at, clock, thickness, spread, colour, trough, note] = match;
    const spot =
      point === undefined
        ? once(spots, whole, () => chainage(at, clock))
        : once(spots, point, () => (isKeyword(point) ? undefined : rows.point(point)));
    const error = spread === undefined ? NaN : rows.length(spread, thicknessLimit);
    if (spot === undefined || (spread !== undefined && Number.isNaN(error))) return false;
    const start = match.index + image.indexOf(body);
    const row = {
      start,
      end: start + body.length,
      spot,
      error,
      note: note && visibleText(note),
      value: NaN,
      colourStart: 0,
    };
    if (thickness !== undefined) {
      const value = rows.length(thickness, thicknessLimit);
      if (Number.isNaN(value)) return false;
      rows.add({ ...row, kind: ReadingKind.thickness, value });
    } else if (colour !== undefined) {
      const value = once(colours, colour, () => (isKeyword(colour) ? undefined : rows.colour(colour)));
      if (value === undefined) return false;
      // The colour is the last word before the note, which cannot hold a quote.
      const fact = note === undefined ? body : body.slice(0, body.indexOf('"'));
      rows.add({ ...row, kind: ReadingKind.colour, value, colourStart: start + fact.lastIndexOf(colour) });
    } else {
      rows.add({ ...row, kind: trough === undefined ? ReadingKind.notSeen : ReadingKind.trough });
    }
    return true;
  };
}
