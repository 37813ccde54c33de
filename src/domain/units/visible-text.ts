// Which characters of a text does nobody see, and how are they shown? Control characters can drive a terminal, and the marks
// that turn the direction of writing (Unicode UAX #9) can make a line read otherwise than it stands, so both are kept out of
// every page, list and terminal: `[U+202E]` stands in their place. Joiners (U+200C, U+200D) belong to some scripts and stay.

const classes = [
  String.raw`\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F-\u009F`, // controls, but tab and line ends
  String.raw`\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069`, // direction of writing
  String.raw`\u00AD\u200B\u2028\u2029\u2060-\u2065\u206A-\u206F\uFEFF\uFFF9-\uFFFB`, // without width, other line ends
  String.raw`\p{Cs}\uFFFE\uFFFF\u{E0000}-\u{E007F}`, // no characters at all, and tags
].join('');
const hidden = new RegExp(`[${classes}]`, 'gu');
const hiddenOrBreak = new RegExp(`[${classes}\\t\\n\\r]`, 'gu');
const anyHidden = new RegExp(`[${classes}]`, 'u');

export interface HiddenCharacter {
  /** UTF-16 offset. */
  readonly start: number;
  readonly end: number;
  /** `U+202E`. */
  readonly name: string;
}

/** The hidden characters of a text, in order. A byte order mark at its start is none. */
export function hiddenCharacters(text: string): readonly HiddenCharacter[] {
  if (!anyHidden.test(text)) return [];
  return [...text.matchAll(hidden)]
    .filter((match) => match[0] !== '\uFEFF' || match.index > 0)
    .map((match) => ({
      start: match.index,
      end: match.index + match[0].length,
      name: codePoint(match[0]),
    }));
}

/** The text with its hidden characters shown; tabs and line ends stay. */
export function visibleText(text: string): string {
  return anyHidden.test(text) ? text.replace(hidden, (found) => `[${codePoint(found)}]`) : text;
}

/** The same on one line: tabs and line ends are shown too, as in the name of a file. */
export function visibleLine(text: string): string {
  return text.replace(hiddenOrBreak, (found) => `[${codePoint(found)}]`);
}

function codePoint(character: string): string {
  return `U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`;
}
