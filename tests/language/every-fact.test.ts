// A number that nothing uses is a promise broken: somebody measured or asked for it and wrote it down. Walks the grammar, so
// that no fact can be forgotten; finds each number in every-fact.trough; changes it; and sees a finding, a report, a pack, an
// inspection sheet or a drawing change. What still changes nothing is listed with the reason; a fact that has come to matter
// must leave that list.

import { readFileSync, writeFileSync } from 'node:fs';
import { AstUtils, GrammarAST, GrammarUtils, type AstNode } from 'langium';
import { expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import type { Analysis } from '../../src/analysis/analysis.js';
import { inspectionSheetHtml } from '../../src/generators/inspection-sheet/html.js';
import { inspectionSheet } from '../../src/generators/inspection-sheet/inspection-sheet.js';
import { remainingLifeHtml } from '../../src/generators/remaining-life/html.js';
import { remainingLife } from '../../src/generators/remaining-life/remaining-life.js';
import { workPackHtml } from '../../src/generators/work-pack/html.js';
import { workPack } from '../../src/generators/work-pack/work-pack.js';
import { TroughlineGrammar } from '../../src/language/generated/grammar.js';
import { parseText } from '../../src/language/parse.js';

/** Numbers whose change changes nothing yet, and why. */
const withoutEffect: Readonly<Record<string, string>> = {};

const sample = readFileSync(new URL('every-fact.trough', import.meta.url), 'utf8');
const numbers = new Set(['Quantity', 'Numeral', 'Day', 'ClockTime']);

/** `Liner density`, `Cost downtime`, `Outage.from`: every number the grammar lets an author write. */
function factsOfTheGrammar(): ReadonlySet<string> {
  const rules = TroughlineGrammar().rules.filter(GrammarAST.isParserRule);
  const facts = new Set<string>();
  for (const rule of rules) {
    if (rule.fragment || rule.dataType !== undefined) continue;
    // Two rules may make nodes of one type.
    const type = rule.inferredType?.name ?? rule.name;
    const within = [rule, ...fragmentsOf(rule)];
    const assignments = within.flatMap((each) =>
      AstUtils.streamAllContents(each).filter(GrammarAST.isAssignment).toArray(),
    );
    const keys = assignments
      .filter(({ feature }) => feature === 'key' || feature === 'item')
      .flatMap((each) => AstUtils.streamAst(each).filter(GrammarAST.isKeyword).toArray())
      .map(({ value }) => value);
    for (const assignment of assignments) {
      const called = AstUtils.streamAst(assignment).filter(GrammarAST.isRuleCall).toArray();
      if (!called.some(({ rule: ref }) => numbers.has(ref.$refText))) continue;
      if (assignment.feature === 'value' && keys.length > 0)
        for (const key of keys) facts.add(`${type} ${key}`);
      else facts.add(`${type}.${assignment.feature}`);
    }
  }
  return facts;
}

function fragmentsOf(rule: GrammarAST.ParserRule): readonly GrammarAST.ParserRule[] {
  return AstUtils.streamAllContents(rule)
    .filter(GrammarAST.isRuleCall)
    .map((call) => call.rule.ref)
    .filter((called): called is GrammarAST.ParserRule => GrammarAST.isParserRule(called) && called.fragment)
    .toArray();
}

interface Place {
  readonly start: number;
  readonly end: number;
}

/** Where the sample says each of them. */
function placesInTheSample(facts: ReadonlySet<string>): ReadonlyMap<string, readonly Place[]> {
  const places = new Map<string, Place[]>();
  for (const node of AstUtils.streamAst(parseText(sample).root as AstNode)) {
    const keyed = (node as { key?: string }).key ?? (node as { item?: string }).item;
    for (const feature of Object.keys(node)) {
      if (feature.startsWith('$')) continue;
      const fact =
        feature === 'value' && keyed !== undefined ? `${node.$type} ${keyed}` : `${node.$type}.${feature}`;
      if (!facts.has(fact)) continue;
      for (const { offset, end } of GrammarUtils.findNodesForProperty(node.$cstNode, feature))
        places.set(fact, [...(places.get(fact) ?? []), { start: offset, end }]);
    }
  }
  return places;
}

/** Other values for a number as written: a little more, half, and three times as much; a day and a clock time of their own kind. */
function variants(text: string): readonly string[] {
  const day = /^(\d{4}-\d{2})-(\d{2})$/.exec(text);
  if (day) return ['01', '15', '28'].map((d) => `${day[1]}-${d}`).filter((each) => each !== text);
  const clock = /^(\d+):(\d{2})$/.exec(text);
  if (clock) return [`${clock[1]}:${clock[2] === '30' ? '00' : '30'}`, `${Number(clock[1]) + 2}:${clock[2]}`];
  const [number = '', unit = ''] = /^(-?[\d.]+(?:e-?\d+)?)(.*)$/s.exec(text)?.slice(1) ?? [];
  if (unit === '' && /^\d+$/.test(number)) return [String(Number(number) + 1), String(Number(number) + 5)];
  if (Number(number) === 0) return [`0.4${unit}`];
  return [3, 0.5, 1.07].map((by) => `${Number((Number(number) * by).toPrecision(6))}${unit}`);
}

/** An estate as far as it is worth reading for a view: without its jobs, which take longest, or whole. */
type Part = 'without jobs' | 'whole';
const jobs = sample.indexOf('\njob ');

interface View {
  readonly name: string;
  /** So many changes of a fact are tried on it. */
  readonly most: number;
  readonly part: Part;
  readonly of: (read: Analysis) => unknown;
}

/** What follows from a text, the quickest view first. As printed: a value that nobody prints is not used. */
const views: readonly View[] = [
  { name: 'findings without jobs', most: 9, part: 'without jobs', of: findingsOf },
  {
    name: 'report by hand',
    most: 9,
    part: 'without jobs',
    of: ({ estate }) => page(remainingLifeHtml(remainingLife(estate, { depth: 'hand' }))),
  },
  { name: 'findings', most: 6, part: 'whole', of: findingsOf },
  ...['Written', 'Planned'].map((job): View => ({
    name: `pack ${job}`,
    most: 6,
    part: 'whole',
    of: ({ estate }) =>
      estate.jobs
        .filter(({ name }) => name === job)
        .map((each) => page(workPackHtml(workPack(estate, each)))),
  })),
  {
    name: 'sheets',
    most: 9,
    part: 'without jobs',
    of: ({ estate }) =>
      estate.conveyors.map((each) => page(inspectionSheetHtml(inspectionSheet(estate, each)))),
  },
  ...['CP3', 'DG1'].map((conveyor): View => ({
    name: `report ${conveyor}`,
    most: 2,
    part: 'without jobs',
    of: ({ estate }) => {
      const conveyors = estate.conveyors.filter(({ name }) => name === conveyor);
      return page(remainingLifeHtml(remainingLife(estate, { track: false, conveyors })));
    },
  })),
];

function findingsOf({ findings }: Analysis): unknown {
  return findings.map((each) => [each.code, each.message]);
}

/** Without the places in the text, which move when a number is longer. */
const page = (html: string): string => html.replace(/ data-origin="[^"]*"/g, '');

/** What each view shows of a text; parts and views are worked out when they are asked for. */
function lookAt(text: string): (view: View) => string {
  const known = new Map<Part, Analysis>();
  const shown = new Map<View, string>();
  return (view) => {
    const { part, of } = view;
    const read =
      known.get(part) ??
      analyse([
        { uri: 'every-fact.trough', text: part === 'whole' ? text : text.slice(0, text.indexOf('\njob ')) },
      ]);
    known.set(part, read);
    const now = shown.get(view) ?? JSON.stringify(of(read));
    shown.set(view, now);
    return now;
  };
}

const facts = factsOfTheGrammar();
const places = placesInTheSample(facts);

test('the sample says every number of the language', () => {
  expect(facts.size).toBeGreaterThan(120);
  expect([...facts].filter((fact) => !places.has(fact)).sort()).toEqual([]);
});

/** The sample with places changed to their variant of that number; places do not overlap. */
function changed(which: readonly Place[], variant: number): string {
  return [...which]
    .sort((a, b) => b.start - a.start)
    .reduce((text, { start, end }) => {
      const others = variants(sample.slice(start, end));
      return text.slice(0, start) + (others[variant % others.length] ?? '') + text.slice(end);
    }, sample);
}

const written = lookAt(sample);
const differs = (text: string): ((view: View) => boolean) => {
  const other = lookAt(text);
  return (view) => other(view) !== written(view);
};

/** Where each fact was seen the last time: looked at first, so that it need not be searched for. Wrong, it costs time alone. */
const seenFile = new URL('every-fact-seen.txt', import.meta.url);
const seenBefore = new Map(
  readFileSync(seenFile, 'utf8')
    .split('\n')
    .map((line) => line.split(': ') as [string, string]),
);

interface Try {
  readonly view: View;
  readonly change: number;
}
const nameOf = ({ view, change }: Try): string => `${view.name}, change ${change}`;

/** The tries of a fact in which it is seen, as they are asked for. */
function* seenIn(fact: string): Generator<Try> {
  const of = (places.get(fact) ?? []).slice(0, 3);
  const others = [0, 1, 2].flatMap((variant) => of.map((place) => differs(changed([place], variant))));
  const inJobs = of.every(({ start }) => start > jobs);
  const tries = views.flatMap((view) =>
    inJobs && view.part === 'without jobs'
      ? []
      : others.slice(0, view.most).map((_, change): Try => ({ view, change })),
  );
  const first = tries.filter((each) => nameOf(each) === seenBefore.get(fact));
  for (const each of [...first, ...tries]) if (others[each.change]?.(each.view)) yield each;
}

test('every number changes a finding or an output', () => {
  const seen: string[] = [];
  const idle = [...facts].filter((fact) => {
    if (!places.has(fact) || fact in withoutEffect) return false;
    const [found] = seenIn(fact);
    if (found) seen.push(`${fact}: ${nameOf(found)}`);
    return !found;
  });
  if (process.env['TROUGHLINE_RENEW']) writeFileSync(seenFile, `${seen.join('\n')}\n`);
  expect(idle).toEqual([]);
}, 600_000); // some hundred estates are read and printed

test('what is listed as without effect has none: all of them changed together change nothing', () => {
  const names = Object.keys(withoutEffect);
  expect(names.filter((fact) => !facts.has(fact))).toEqual([]);
  const seen = (of: readonly string[], variant: number): boolean => {
    const other = differs(
      changed(
        of.flatMap((fact) => places.get(fact) ?? []),
        variant,
      ),
    );
    return views.some(other);
  };
  for (const variant of names.length > 0 ? [0, 1] : [])
    if (seen(names, variant)) expect(names.filter((fact) => seen([fact], variant))).toEqual([]);
}, 600_000);
