// Comments that silence findings: `// allow TL201 because "gate is replaced at the next outage"`, with a last day,
// `// allow TL201 until 2027-03-01 because "…"`, or of several codes, `// allow TL201, TL203 because "…"`.
// One holds for its own line of code or, on a line of its own, for the next.
// Whether it is due, or silences anything, is judged where the findings are (analysis).

import type { Origin } from '../domain/model/origin.js';
import type { Problem } from '../domain/model/problem.js';
import type { CalendarDay } from '../domain/units/calendar.js';
import { formatDay } from '../domain/units/calendar.js';
import type { Comment } from './comments.js';
import { readDay } from './lowering/days.js';

export interface Suppression {
  readonly code: string;
  /** Its comment names other codes too. */
  readonly isOneOfSeveral?: true;
  readonly reason: string;
  readonly until?: CalendarDay;
  /** The comment. */
  readonly origin: Origin;
  /** Offsets of the line of code it holds for; findings that begin there are silenced. */
  readonly from: number;
  readonly to: number;
}

const form =
  /^allow\b[ \t]*(TL\d+(?:(?:[ \t]*,[ \t]*|[ \t]+(?:and[ \t]+)?)TL\d+)*)?(?:[ \t]+until[ \t]+(\S+))?(?:[ \t]+because\b[ \t]*(?:"([^"]*)"?|(.*)))?[ \t]*(.*)$/i;

export function suppressionsOf(
  text: string,
  comments: readonly Comment[],
  source: number,
): { readonly suppressions: readonly Suppression[]; readonly problems: readonly Problem[] } {
  const suppressions: Suppression[] = [];
  const problems: Problem[] = [];
  if (!comments.some(speaksOfAllowing)) return { suppressions, problems };
  const codeAfter = codeAfterEach(text, comments);
  for (const [index, comment] of comments.entries()) {
    const parts = speaksOfAllowing(comment) ? form.exec(comment.text) : null;
    if (!parts) continue;
    const origin = { source, start: comment.start, end: comment.end };
    const [, written, until, quoted, bare, rest] = parts;
    const codes = (written?.match(/TL\d+/gi) ?? []).map((code) => code.toUpperCase());
    const day = until === undefined ? undefined : readDay(until);
    const [first] = codes;
    if (first === undefined || rest !== '') {
      problems.push({
        kind: 'syntax',
        origin,
        message:
          'This cannot be read as an exception. Write // allow TL201 because "the reason", with until 2027-03-01 before because where it ends on a day.',
      });
    } else if (day && !day.ok) {
      problems.push(wrongDay(text, comment, source, until ?? '', day));
    } else {
      const reason = (quoted ?? bare ?? '').trim();
      const line = isAfterCode(text, comment.start)
        ? lineAt(text, comment.start)
        : lineAt(text, codeAfter[index] ?? comment.end);
      if (reason === '')
        problems.push({ kind: 'suppression without reason', origin, code: codes.join(', ') });
      else
        for (const code of new Set(codes))
          suppressions.push({
            code,
            reason,
            origin,
            ...line,
            ...(codes.length > 1 ? { isOneOfSeveral: true as const } : {}),
            ...(day?.ok ? { until: day.day } : {}),
          });
    }
  }
  return { suppressions, problems };
}

/** A sentence that happens to begin with "allow" is a remark. */
function speaksOfAllowing(comment: Comment): boolean {
  return comment.kind !== 'doc' && /^allow[ \t]+(TL|until\b|because\b)/i.test(comment.text);
}

function wrongDay(
  text: string,
  comment: Comment,
  source: number,
  until: string,
  day: Exclude<ReturnType<typeof readDay>, { readonly ok: true }>,
): Problem {
  const start = text.indexOf(until, comment.start);
  const origin = { source, start, end: start + until.length };
  if (day.why === 'no such date') return { kind: 'no such date', origin, text: until };
  return {
    kind: 'date form',
    origin,
    text: until,
    ...(day.certain === undefined ? {} : { corrected: formatDay(day.certain) }),
    ...(day.either ? { readings: [formatDay(day.either[0]), formatDay(day.either[1])] as const } : {}),
  };
}

/** For each comment the offset of the first code after it and after the comments that follow it. */
function codeAfterEach(text: string, comments: readonly Comment[]): Int32Array {
  const after = new Int32Array(comments.length);
  for (let i = comments.length - 1; i >= 0; i--) {
    const end = comments[i]?.end ?? 0;
    let at = end;
    while (at < text.length && /\s/.test(text.charAt(at))) at++;
    after[i] = comments[i + 1]?.start === at ? (after[i + 1] ?? at) : at;
  }
  return after;
}

function isAfterCode(text: string, offset: number): boolean {
  const { from } = lineAt(text, offset);
  return text.slice(from, offset).trim() !== '';
}

function lineAt(text: string, offset: number): { readonly from: number; readonly to: number } {
  const breaks = (at: number): boolean => text.charCodeAt(at) === 10 || text.charCodeAt(at) === 13;
  let from = offset;
  let to = offset;
  while (from > 0 && !breaks(from - 1)) from--;
  while (to < text.length && !breaks(to)) to++;
  return { from, to };
}
