// Every rule there is, and how they are run. A code, once given, is never reused (tests/validation/codes.txt).

import type { Finding } from './finding.js';
import type { Problem } from '../domain/model/problem.js';
import type { Rule, RuleInput } from './rule.js';
import { formatDay } from '../domain/units/calendar.js';
import { likelySlips } from './evidence/likely-slips.js';
import { noEstate } from './evidence/no-estate.js';
import type { RuleThreshold } from './threshold.js';
import { rulesByGroup } from './generated/rules.js';
import { dateOfAnotherYear } from './rules/records/date-of-another-year.js';
import { pointsExchanged } from './rules/records/points-exchanged.js';

/**
 * By code. TL1xx: the text itself, one rule for each kind of problem that reading it can meet. TL2xx: can the machine be as it is
 * described? TL3xx: do the records agree with one another and with the machine? TL4xx: can the job be done, in the order written?
 * TL50x to TL53x: what the wear calls for. From TL54x: what a decision rests on (stock, lead times, money, jobs).
 */
export const rules: readonly Rule[] = Object.values(rulesByGroup)
  .flat()
  .sort((a, b) => (a.code < b.code ? -1 : 1));

const byCode = new Map<string, Rule>(rules.map((rule) => [rule.code, rule]));
const thresholds = new Map<string, RuleThreshold | undefined>(
  rules.map(({ code, threshold }) => [code, threshold]),
);

/** The rule of a code, in any letter case; undefined where there is none. */
export function ruleOf(code: string): Rule | undefined {
  return byCode.get(code.toUpperCase());
}

/** All findings, in the order of the text: by source, start, then code. */
export function runRules(input: RuleInput): Finding[] {
  const found = withoutFollowers(
    rules.flatMap((rule) => findingsOf(rule, input)),
    input,
  );
  return inTextOrder(input.asOf === undefined ? found : markCalendar(found, input));
}

/**
 * What is gone once the likely slips are mended follows from them, and only they are told; the rest in the words it has then, but for
 * a day that nobody wrote.
 */
function withoutFollowers(found: Finding[], input: RuleInput): Finding[] {
  const { mended, dates } = likelySlips(input.estate);
  if (!mended) return found;
  const placeOf = ({ code, origin }: Finding): string => `${code} ${origin.source} ${origin.start}`;
  const still = new Map(
    rules
      .flatMap((rule) => findingsOf(rule, { ...input, estate: mended }))
      .map((finding) => [placeOf(finding), finding]),
  );
  const supposed = dates.map(({ meant }) => formatDay(meant));
  return found.flatMap((finding) => {
    if (tellsASlip(finding.code)) return [finding];
    const then = still.get(placeOf(finding));
    return (then && supposed.some((day) => then.message.includes(day)) ? finding : then) ?? [];
  });
}

function tellsASlip(code: string): boolean {
  return code === dateOfAnotherYear.code || code === pointsExchanged.code;
}

/** What was not there on the day of the newest record was brought by the calendar. */
function markCalendar(found: readonly Finding[], input: RuleInput): Finding[] {
  const timed = rules.filter(({ byTheCalendar }) => byTheCalendar);
  const placeOf = ({ code, origin }: Finding): string => `${code} ${origin.source} ${origin.start}`;
  const then = new Set(timed.flatMap((rule) => findingsOf(rule, { ...input, asOf: undefined })).map(placeOf));
  const codes = new Set<string>(timed.map(({ code }) => code));
  return found.map((finding) =>
    codes.has(finding.code) && !then.has(placeOf(finding))
      ? { ...finding, broughtByTheCalendar: true as const }
      : finding,
  );
}

/** Findings for problems alone, for those that are known only after the rules have run (suppressions that hide nothing). */
export function reportProblems(problems: readonly Problem[]): Finding[] {
  const input = { estate: noEstate, problems };
  return inTextOrder(rulesByGroup.text.flatMap((rule) => findingsOf(rule, input)));
}

function findingsOf(rule: Rule, input: RuleInput): Finding[] {
  const findings: Finding[] = [];
  for (const found of rule.check({ ...input, thresholds })) {
    findings.push({ todo: rule.todo, why: rule.why, ...found, code: rule.code, severity: rule.severity });
  }
  return findings;
}

function inTextOrder(findings: Finding[]): Finding[] {
  return findings.sort(
    (a, b) =>
      a.origin.source - b.origin.source ||
      a.origin.start - b.origin.start ||
      (a.code < b.code ? -1 : a.code > b.code ? 1 : 0),
  );
}
