// Which finding is the same as one seen before? Lines move, files are renamed and the check is run from another folder, so a
// finding goes by its rule, by the block and the fact it stands in, and by what that says; a number tells apart what is the
// same in all of these.

import type { Finding } from '../validation/finding.js';
import { blocksOf, type TextBlock, type TextFact } from '../language/blocks.js';
import type { Analysis } from './analysis.js';

/** One for each finding, in their order; no two are alike. */
export function findingKeys(analysis: Analysis, findings: readonly Finding[]): readonly string[] {
  const blocks = new Map<number, readonly TextBlock[]>();
  const seen = new Map<string, number>();
  return findings.map(({ code, origin }) => {
    const whole = { source: origin.source, start: 0, end: Infinity };
    if (!blocks.has(origin.source)) blocks.set(origin.source, blocksOf(analysis.textOf(whole)) ?? []);
    const spot = spotOf(blocks.get(origin.source) ?? [], origin.start);
    const key = `${code}\n${spot ?? lineAt(analysis.textOf(whole), origin.start)}`;
    const count = (seen.get(key) ?? 0) + 1;
    seen.set(key, count);
    return count === 1 ? key : `${key}\n${count}`;
  });
}

/** What is compared with another state: with its key, and its place as a reader names it. */
export interface KeyedFinding {
  readonly code: string;
  readonly severity: Finding['severity'];
  readonly message: string;
  readonly fingerprint: string;
  readonly uri: string;
  readonly line: number;
}

/** Without what the calendar brings: forecasts tell of that, and it moves with the day. */
export function keyedFindings(analysis: Analysis, nameOf: (uri: string) => string): readonly KeyedFinding[] {
  const findings = analysis.findings.filter(({ broughtByTheCalendar }) => !broughtByTheCalendar);
  const keys = findingKeys(analysis, findings);
  return findings.map(({ code, severity, message, origin }, i) => {
    const { uri, line } = analysis.locate(origin);
    return { code, severity, message, fingerprint: keys[i] ?? '', uri: nameOf(uri), line };
  });
}

/** The block and, inside it, the fact; undefined between blocks and in texts that do not parse. */
function spotOf(blocks: readonly TextBlock[], offset: number): string | undefined {
  const holds = ({ start, end }: Pick<TextFact, 'start' | 'end'>): boolean => start <= offset && offset < end;
  const block = blocks.find(holds);
  if (!block) return undefined;
  const fact = [...block.head, ...block.facts].find(holds);
  return `${block.identity}\n${fact?.words ?? ''}`;
}

function lineAt(text: string, offset: number): string {
  const start = Math.max(text.lastIndexOf('\n', offset - 1), text.lastIndexOf('\r', offset - 1)) + 1;
  return (/^[^\r\n]*/.exec(text.slice(start))?.[0] ?? '').trim().replace(/\s+/g, ' ');
}
