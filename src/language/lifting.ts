// Regular rows of inspections (`P1 thickness 8.4 mm "wet"`) are read straight off the text into columns, and the parser sees
// blanks in their place. Estates are mostly such rows, and a syntax node for each costs twenty times more than the reading is
// worth. A row that is not regular in every way, or stands behind one that is not, is left to the parser and its messages.
import { parseClock } from '../domain/units/clock.js';
import { parseQuantity } from '../domain/units/parse.js';
import { visibleText } from '../domain/units/visible-text.js';
import type { Comment } from './comments.js';
import { chainage as chainageLimit, thickness as thicknessLimit, type Limit } from './lowering/limits.js';
import { ReadingKind } from '../domain/units/reading-kind.js';

/** Rows in the order of the text, a column each. */
export interface LiftedRows {
  readonly start: readonly number[];
  readonly end: readonly number[];
  /** Index into `spots`. */
  readonly spot: readonly number[];
  /** A ReadingKind. */
  readonly kind: readonly number[];
  /** mm for a thickness, index into `colours` for a colour, NaN otherwise. */
  readonly value: readonly number[];
  /** mm, NaN where the row states none. */
  readonly error: readonly number[];
  readonly colourStart: readonly number[];
  readonly notes: ReadonlyMap<number, string>;
  /** A point's name, or a chainage (mm) with the clock position as written (hours). */
  readonly spots: readonly (string | { readonly at: number; readonly clock: number })[];
  readonly colours: readonly string[];
}

export interface Lifted {
  /** The text with blanks for the rows, of the same length. */
  readonly rest: string;
  readonly rows: LiftedRows;
  /** Characters taken out. */
  readonly taken: number;
}

export const noRows: LiftedRows = {
  start: [],
  end: [],
  spot: [],
  kind: [],
  value: [],
  error: [],
  colourStart: [],
  notes: new Map(),
  spots: [],
  colours: [],
};

const name = '[A-Za-z_][A-Za-z0-9_]*(?:-[A-Za-z0-9_]+)*';
const quantity = String.raw`(?:(?:\d+[ \t]+)?\d+\/\d+|\d+(?:\.\d+)?)[ \t]*[A-Za-z]+`;
const row = new RegExp(
  String.raw`[ \t]*((?:(${name})|(at[ \t]+(${quantity})[ \t]+clock[ \t]+(\d{1,2}:\d{2})))[ \t]+` +
    String.raw`(?:thickness[ \t]+(${quantity})(?:[ \t]*(?:±|\+\/-)[ \t]*(${quantity}))?|colou?r[ \t]+(${name})|(trough[ \t]+showing)|not[ \t]+seen)` +
    String.raw`(?:[ \t]*"([^"\n\r]*)")?)[ \t]*(?:\/\/[^\n\r]*)?(?:\r\n|\n|\r)`,
  'y',
);
const head = /^[ \t]*inspection[ \t][^\n\r{}"/]*\{[ \t]*(?:\/\/[^\n\r]*)?(?:\r\n|\n|\r)/gm;
const line = /[^\n\r]*(?:\r\n|\n|\r)?/y;

/** `isKeyword`: words that can be no name. */
export function liftRows(
  text: string,
  comments: readonly Comment[],
  isKeyword: (word: string) => boolean,
): Lifted {
  const columns = createColumns(isKeyword);
  const pieces: string[] = [];
  let copied = 0;
  let taken = 0;
  let comment = 0;
  head.lastIndex = 0;
  for (let found = head.exec(text); found; found = head.exec(text)) {
    while ((comments[comment]?.end ?? Infinity) <= found.index) comment++;
    if ((comments[comment]?.start ?? Infinity) < found.index) continue;
    let at = head.lastIndex;
    let run = at;
    let regular = true;
    const flush = (): void => {
      if (at > run) {
        pieces.push(text.slice(copied, run), ' '.repeat(at - run));
        copied = at;
        taken += at - run;
      }
    };
    while (at < text.length) {
      while ((comments[comment]?.end ?? Infinity) <= at) comment++;
      // A line inside a comment of several lines says nothing.
      const inComment = (comments[comment]?.start ?? Infinity) < at;
      row.lastIndex = at;
      const match = regular && !inComment ? row.exec(text) : null;
      if (match && columns.add(match)) {
        at = row.lastIndex;
        continue;
      }
      flush();
      line.lastIndex = at;
      const image = line.exec(text)?.[0] ?? '';
      const code = image.replace(/\/\/.*$/, '').trim();
      at += image.length;
      run = at;
      if (!inComment && /[{}]/.test(code.replace(/"[^"]*"/g, ''))) break;
      // The next line may belong to this one, unless this one is empty or ends as a finished row does.
      regular = inComment ? regular : code === '' ? regular : finished.test(code);
    }
    flush();
    head.lastIndex = Math.max(at, found.index + 1);
  }
  pieces.push(text.slice(copied));
  return { rest: taken === 0 ? text : pieces.join(''), rows: columns.rows, taken };
}

/** Lines of an inspection, other than readings, that need no more. */
const finished = new RegExp(
  String.raw`^(?:by[ \t]+"[^"]*"|view[ \t]+(?:upstream|downstream)|photo[ \t]+"[^"]*"|finding\b.*"[^"]*"|gauge[ \t]+(?:ultrasonic|depth[ \t]+gauge|calliper|by[ \t]+eye)(?:[ \t]*(?:±|\+\/-)[ \t]*${quantity})?` +
    String.raw`|hold-down[ \t]+at[ \t]+${quantity}[ \t]+gap[ \t]+${quantity}(?:[ \t]*"[^"]*")?)$`,
);

function createColumns(isKeyword: (word: string) => boolean): {
  readonly rows: LiftedRows;
  add(match: RegExpExecArray): boolean;
} {
  const start: number[] = [];
  const end: number[] = [];
  const spot: number[] = [];
  const kind: number[] = [];
  const value: number[] = [];
  const error: number[] = [];
  const colourStart: number[] = [];
  const notes = new Map<number, string>();
  const spots: (string | { readonly at: number; readonly clock: number })[] = [];
  const spotNumbers = new Map<string, number>();
  const colours: string[] = [];
  const colourNumbers = new Map<string, number>();
  const lengths = new Map<string, number>();

  /** mm; NaN where it is not a length in the limits, which is then for the parser's path to say. */
  const length = (text: string, limit: Limit): number => {
    let mm = lengths.get(text);
    if (mm === undefined) {
      const parsed = parseQuantity(text, 'length');
      mm = parsed.ok ? parsed.quantity.value : NaN;
      lengths.set(text, mm);
    }
    return mm >= limit.from && mm <= limit.to ? mm : NaN;
  };
  /** -1 where the spot cannot be read. */
  const spotNumber = (
    point: string | undefined,
    whole: string | undefined,
    at: string | undefined,
    clock: string | undefined,
  ): number => {
    const key = point ?? whole ?? '';
    const known = spotNumbers.get(key);
    if (known !== undefined) return known;
    let made = -1;
    if (point !== undefined) {
      if (!isKeyword(point)) made = spots.push(point) - 1;
    } else {
      const mm = length(at ?? '', chainageLimit);
      const hours = parseClock(clock ?? '');
      if (!Number.isNaN(mm) && hours !== undefined) made = spots.push({ at: mm, clock: hours }) - 1;
    }
    spotNumbers.set(key, made);
    return made;
  };
  const colourNumber = (colour: string): number => {
    const known = colourNumbers.get(colour);
    if (known !== undefined) return known;
    const made = isKeyword(colour) ? -1 : colours.push(colour) - 1;
    colourNumbers.set(colour, made);
    return made;
  };

  return {
    rows: { start, end, spot, kind, value, error, colourStart, notes, spots, colours },
    add(match) {
      const [image, body = '', point, whole, at, clock, thickness, spread, colour, trough, note] = match;
      const where = spotNumber(point, whole, at, clock);
      const mm = thickness === undefined ? NaN : length(thickness, thicknessLimit);
      const layer = colour === undefined ? NaN : colourNumber(colour);
      const deviation = spread === undefined ? NaN : length(spread, thicknessLimit);
      if (
        where < 0 ||
        (thickness !== undefined && Number.isNaN(mm)) ||
        layer < 0 ||
        (spread !== undefined && Number.isNaN(deviation))
      )
        return false;
      const from = match.index + image.indexOf(body);
      const index = start.push(from) - 1;
      end.push(from + body.length);
      spot.push(where);
      error.push(deviation);
      if (thickness !== undefined) {
        kind.push(ReadingKind.thickness);
        value.push(mm);
        colourStart.push(0);
      } else if (colour !== undefined) {
        kind.push(ReadingKind.colour);
        value.push(layer);
        // The colour is the last word before the note, which cannot hold a quote.
        colourStart.push(
          from + (note === undefined ? body : body.slice(0, body.indexOf('"'))).lastIndexOf(colour),
        );
      } else {
        kind.push(trough === undefined ? ReadingKind.notSeen : ReadingKind.trough);
        value.push(NaN);
        colourStart.push(0);
      }
      if (note !== undefined) notes.set(index, visibleText(note));
      return true;
    },
  };
}
