// Comments that silence a finding: `// allow TL201 because "gate is replaced at the next outage"`, or with a last day,
// `// allow TL201 until 2027-03-01 because "…"`. One holds for its own line of code or, on a line of its own, for the next.
// Whether it is due, or silences anything, is judged where the findings are (analysis).

import type { Origin } from '../domain/model/origin.js';
import type { Problem } from '../domain/model/problem.js';
import type { CalendarDay } from '../domain/units/calendar.js';
import { formatDay } from '../domain/units/calendar.js';
import type { Comment } from './comments.js';
import { readDay } from './lowering/days.js';

export interface Suppression {
  readonly code: string;
  readonly reason: string;
  readonly until?: CalendarDay;
  /** The comment. */
  readonly origin: Origin;
  /** Offsets of the line of code it holds for; findings that begin there are silenced. */
  readonly from: number;
  readonly to: number;
}

const form = /^allow\b[ \t]*(TL\d+)?(?:[ \t]+until[ \t]+(\S+))?(?:[ \t]+because\b[ \t]*(?:"([^"]*)"?|(.*)))?[ \t]*(.*)$/i;

export function suppressionsOf(text: string, comments: readonly Comment[], source: number): { readonly suppressions: readonly Suppression[]; readonly problems: readonly Problem[] } {
  const suppressions: Suppression[] = [];
  const problems: Problem[] = [];
  for (const comment of comments) {
    const parts = comment.kind === 'doc' ? null : form.exec(comment.text);
    // A sentence that happens to begin with "allow" is a remark.
    if (!parts || (!parts[1] && !/^allow[ \t]+(TL|until\b|because\b)/i.test(comment.text))) continue;
    const origin = { source, start: comment.start, end: comment.end };
    const [, code, until, quoted, bare, rest] = parts;
    const day = until === undefined ? undefined : readDay(until);
    if (code === undefined || rest !== '') {
      problems.push({ kind: 'syntax', origin, message: 'This cannot be read as an exception. Write // allow TL201 because "the reason", with until 2027-03-01 before because where it ends on a day.' });
    } else if (day && !day.ok) {
      const certain = day.why === 'form' ? day.certain : undefined;
      const start = text.indexOf(until ?? '', comment.start);
      const place = { source, start, end: start + (until ?? '').length };
      problems.push(day.why === 'no such date' ? { kind: 'no such date', origin: place, text: until ?? '' } : { kind: 'date form', origin: place, text: until ?? '', ...(certain === undefined ? {} : { corrected: formatDay(certain) }) });
    } else {
      const reason = (quoted ?? bare ?? '').trim();
      if (reason === '') problems.push({ kind: 'suppression without reason', origin, code: code.toUpperCase() });
      else suppressions.push({ code: code.toUpperCase(), reason, origin, ...lineOfCode(text, comments, comment), ...(day?.ok ? { until: day.day } : {}) });
    }
  }
  return { suppressions, problems };
}

/** The comment's own line where code stands before it, else the next line with code on it. */
function lineOfCode(text: string, comments: readonly Comment[], comment: Comment): { readonly from: number; readonly to: number } {
  const own = lineAt(text, comment.start);
  if (text.slice(own.from, comment.start).trim() !== '') return own;
  let at = comment.end;
  for (let next = comments.indexOf(comment) + 1; at < text.length; ) {
    at += /^\s*/.exec(text.slice(at, at + 100_000))?.[0].length ?? 0;
    const following = comments[next];
    if (!following || following.start !== at) break;
    at = following.end;
    next++;
  }
  return lineAt(text, at);
}

function lineAt(text: string, offset: number): { readonly from: number; readonly to: number } {
  const from = Math.max(text.lastIndexOf('\n', offset - 1), text.lastIndexOf('\r', offset - 1)) + 1;
  const ends = [text.indexOf('\n', offset), text.indexOf('\r', offset)].filter((end) => end >= 0);
  return { from, to: Math.min(text.length, ...ends) };
}
