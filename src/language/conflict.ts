// Does a text hold a merge conflict that nobody has settled? Git writes both versions into the text, between lines of seven
// signs; neither version is the truth. What such a text says is not judged, and nothing is forecast or planned from it:
// only its names stay known, so that the one error is not drowned by all that refers to them.

export interface MergeConflict {
  /** Where the first marker stands. */
  readonly start: number;
  readonly end: number;
  /** Lines (from 1) on which a conflict begins, or on which a marker is left over. */
  readonly lines: readonly number[];
}

// A marker alone on its line, or with the name of a version behind it. Blanks before it come from a formatter.
const marker = /^[ \t]*(<{7,}|\|{7,}|>{7,})(?:[ \t][^\n\r]*)?$/gm;
const middle = /^[ \t]*={7,}[ \t]*$/gm;

export function hasConflict(text: string): boolean {
  return conflictOf(text) !== undefined;
}

export function conflictOf(text: string): MergeConflict | undefined {
  if (!text.includes('<<<<<<<') && !text.includes('>>>>>>>')) return undefined;
  const found = [...text.matchAll(marker)].filter((match) => match[1]?.startsWith('|') !== true);
  const [first] = found;
  if (!first) return undefined;
  const opening = found.filter((match) => match[1]?.startsWith('<'));
  const told = opening.length > 0 ? opening : found;
  const start = first.index + first[0].search(/[<>|]/);
  return {
    start,
    end: first.index + first[0].length,
    lines: told.map((match) => text.slice(0, match.index).split(/\r\n|\n|\r/).length),
  };
}

/** The versions of the text: as it would be with the first, and with the second side of every conflict. */
export function sidesOf(text: string): readonly [string, string] {
  return [side(text, 'first'), side(text, 'second')];
}

function side(text: string, wanted: 'first' | 'second'): string {
  let now: 'both' | 'first' | 'base' | 'second' = 'both';
  const kept: string[] = [];
  for (const line of text.split(/\r\n|\n|\r/)) {
    const sign = matches(marker, line)
      ? line.trim().charAt(0)
      : matches(middle, line) && now !== 'both'
        ? '='
        : '';
    if (sign === '<') now = 'first';
    else if (sign === '|') now = 'base';
    else if (sign === '=') now = 'second';
    else if (sign === '>') now = 'both';
    else if (now === 'both' || now === wanted) kept.push(line);
  }
  return kept.join('\n');
}

function matches(pattern: RegExp, line: string): boolean {
  pattern.lastIndex = 0;
  return pattern.test(line);
}
