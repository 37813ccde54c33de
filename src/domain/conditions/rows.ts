// Open conditions as every page shows them: what, where, how bad, since when, and whether the newest look said anything of it.
// One value behind the report, the next inspection sheet and the work pack, so that they cannot disagree.

import type { CalendarDay } from '../units/calendar.js';
import { formatDay } from '../units/calendar.js';
import type { Conveyor } from '../model/conveyor.js';
import { recordWord } from '../model/dated-records.js';
import type { Estate } from '../model/estate.js';
import type { Origin } from '../model/origin.js';
import { installedPanels, panelIn, type InstalledPanels } from '../model/panels.js';
import type { ConditionLine, ConditionSeverity, PhotoUse } from '../model/records.js';
import { runAt, type Run } from '../model/runs.js';
import { chainageOn } from '../model/unit-of-machine.js';
import { gateOf } from './at-a-gate.js';
import { followUp, openConditions, type Closing, type Condition } from './follow-up.js';
import { saidBeside, type Beside } from './said-beside.js';
import { shelfNotes } from './on-the-shelf.js';
import { workWords } from './service.js';
import { isBesideTrough, isSafeguardOut } from './safeguards.js';
import { isUnderLiner } from './within-sight.js';
import {
  conditionAnswerText,
  conditionAskText,
  conditionWords,
  isOfTemperature,
  middleOf,
  partNameOf,
  partOf,
  samePlace,
  type ConditionPart,
} from './kinds.js';

export interface OpenCondition {
  /** Kind and aspect without place and measure, `gearbox oil leak`: what conditions of one kind share. */
  readonly called: string;
  /** How wide, how many or how hot, as last seen and as written; empty where nothing is measured. */
  readonly measure: string;
  /** `panel torn at 14.2 m`. */
  readonly what: string;
  readonly part: ConditionPart;
  /** As a line names it; of a finding the part that it names, where it names one. */
  readonly partName: string | undefined;
  /** Which safeguard, where a name says so. */
  readonly safeguard: ConditionLine['safeguard'];
  /** The slide gate that it speaks of, by its name. */
  readonly gate: string | undefined;
  /** `run 2, panel 3`, `at a break`, or nothing where it has no place along the trough. */
  readonly place: string;
  /** Chainage, mm. */
  readonly at: number | undefined;
  /** The upper end of a stretch, mm. */
  readonly to: number | undefined;
  /** In the direction of flow, hours. */
  readonly clock: number | undefined;
  readonly severity: ConditionSeverity | undefined;
  /** A guard, a stop, a pull cord or an interlock that does not do what it is there for. */
  readonly safeguardOut: boolean;
  /** Steel under the liner that lies there: nobody can look before it is off. */
  readonly underLiner: boolean;
  readonly since: CalendarDay;
  readonly lastSeen: CalendarDay;
  /** The newest look that says nothing of it, or not whether it is over. */
  readonly unanswered: CalendarDay | undefined;
  /** That look says something of its part and place all the same. */
  readonly spokenOfThen: boolean;
  /** What was noted, and why it could not be looked at, oldest first; then what lies on the shelf for the part. */
  readonly notes: readonly string[];
  readonly photos: readonly PhotoUse[];
  /** How a line of the next inspection names it: `panel torn at 14.2 m`. */
  readonly writes: string;
  /** The same with a blank for what it measures: `joint open ____ mm at 17 m`. */
  readonly asks: string;
  readonly origin: Origin;
}

export function openConditionRows(
  estate: Estate,
  conveyor: Conveyor,
  asOf?: CalendarDay,
): readonly OpenCondition[] {
  return openConditions(estate, conveyor, asOf).map((condition) => rowOf(estate, conveyor, condition, asOf));
}

function rowOf(
  estate: Estate,
  conveyor: Conveyor,
  condition: Condition,
  asOf: CalendarDay | undefined,
): OpenCondition {
  const { first, last, severity, earlier, notSeen, remarks, photos, unanswered } = condition;
  const beside = saidBeside(estate, condition, asOf).filter((each) => each.by === 'work' || !each.isNamed);
  const at = last.line.at?.value;
  const seen = first === last ? [first] : [first, last];
  const { kind, aspect, size, count, temperature } = last.line;
  return {
    called: [kind, last.line.about, last.line.words, aspect ?? (isOfTemperature(last.line) && 'temperature')]
      .filter(Boolean)
      .join(' '),
    measure: [size?.text, count && String(count.count), temperature?.text].filter(Boolean).join(', '),
    what: conditionWords(last.line),
    part: partOf(last.line.kind),
    partName: partNameOf(last.line),
    safeguard: last.line.safeguard,
    gate: gateOf(conveyor, last.line)?.name,
    place: panelWordsOf(estate, conveyor, last.line, asOf),
    at,
    to: last.line.to?.value,
    clock: last.line.clock?.hours ?? first.line.clock?.hours,
    severity,
    safeguardOut: isSafeguardOut(last.line, severity),
    underLiner: isUnderLiner(last.line, last.record),
    since: first.record.date.day,
    lastSeen: last.record.date.day,
    unanswered: unanswered?.date.day,
    spokenOfThen: beside.some(({ by, day }) => by === 'look' && day === unanswered?.date.day),
    notes: [
      ...earlierWords(earlier),
      ...seen.flatMap(({ line }) => line.note ?? []),
      ...notSeen.map(({ line, record }) => {
        // Of a finding the reason stands where its words do.
        const why = line.note ?? (line.words === last.line.words ? undefined : line.words);
        return `not seen on ${formatDay(record.date.day)}${why === undefined ? '' : `: ${why}`}`;
      }),
      ...shelfNotes(estate, conveyor, partNameOf(last.line), asOf),
      ...remarkWords(remarks),
      ...besideWords(beside),
    ],
    photos,
    writes: conditionAnswerText(first.line, last.line),
    asks: conditionAskText(first.line, last.line),
    origin: last.line.origin,
  };
}

/** A finding that was told in other words before: nothing that somebody wrote is lost. */
function earlierWords(earlier: Condition['earlier']): readonly string[] {
  return earlier.map(({ line, record }) => `${formatDay(record.date.day)}: ${line.words ?? ''}`);
}

function remarkWords(remarks: Condition['remarks']): readonly string[] {
  return remarks.map(({ words, record }) => `${formatDay(record.date.day)}: ${words}`);
}

/** What does not say whether it is over, with its day: whoever settles it has to ask. */
function besideWords(beside: readonly Beside[]): readonly string[] {
  return beside.map(({ by, day, words }) =>
    by === 'work' ? `${formatDay(day)}, done there: ${words}` : `${formatDay(day)}, said there: “${words}”`,
  );
}

/** The panel that a line lies on; empty where it has no place along the trough, or lies beside it. */
function panelWordsOf(
  estate: Estate,
  conveyor: Conveyor,
  line: ConditionLine,
  asOf: CalendarDay | undefined,
): string {
  return isBesideTrough(line) ? '' : placeWords(estate, conveyor, line, asOf);
}

/** `run 2, panel 3` of a line with a place, by the panels that lie there; a gate is no panel, and a joint is one of two. */
export function placeWords(
  estate: Estate,
  conveyor: Conveyor,
  line: ConditionLine,
  asOf: CalendarDay | undefined,
): string {
  const at = middleOf(line);
  if (at === undefined) return '';
  const gate = gateOf(conveyor, line);
  if (gate)
    return `slide gate at ${chainageOn(conveyor, gate.from.value)} to ${chainageOn(conveyor, gate.to.value)}`;
  const run = runAt(conveyor, at);
  if (!run) return 'at a break';
  const { layout } = installedPanels(estate, run, asOf);
  const panel = panelsIn(layout, line, at);
  const joint = line.kind === 'joint open' ? jointWords(run, layout, at) : undefined;
  return [`run ${run.number}`, joint ?? panel].filter(Boolean).join(', ');
}

/** `panel 3`, or `panels 3 to 5` of a stretch; undefined where none lies there. */
function panelsIn(
  layout: InstalledPanels['layout'],
  { at: from, to, panel: named }: ConditionLine,
  middle: number,
): string | undefined {
  const touched =
    from && to && !named
      ? layout.panels.filter((each) => Math.min(each.to, to.value) - Math.max(each.from, from.value) > 1)
      : [];
  const [first, last] = [touched[0], touched.at(-1)];
  if (first && last && first !== last) return `panels ${first.number} to ${last.number}`;
  const panel = panelIn(layout, middle);
  return panel && `panel ${panel.number}`;
}

/** Which joint a chainage means: the nearest, where one lies as near as two tellings of one place may; the ends of a run are joints. */
function jointWords(run: Run, { panels }: InstalledPanels['layout'], at: number): string | undefined {
  const joints = [
    { at: run.from, words: `joint of panel 1 at ${run.tailBreak.name}` },
    ...panels.slice(1).map(({ number, from }) => ({
      at: from,
      words: `joint of panels ${number - 1} and ${number}`,
    })),
    { at: run.to, words: `joint of panel ${panels.length} at ${run.headBreak.name}` },
  ];
  const off = (joint: { readonly at: number }): number => Math.abs(joint.at - at);
  const nearest = joints.reduce((best, each) => (off(each) < off(best) ? each : best));
  return off(nearest) <= samePlace ? nearest.words : undefined;
}

/** `open since 2026-03-09, last seen 2026-08-17`, and what the newest look left out. */
export function sinceWords({ since, lastSeen, unanswered, spokenOfThen }: OpenCondition): string {
  return [
    `open since ${formatDay(since)}`,
    lastSeen === since ? '' : `last seen ${formatDay(lastSeen)}`,
    unanswered === undefined ? '' : unansweredWords(unanswered, spokenOfThen),
  ]
    .filter(Boolean)
    .join('; ');
}

/** `the look of 2026-03-09 says nothing of it`; what one says in words stands in the notes. */
export function unansweredWords(day: CalendarDay, isSpokenOf: boolean): string {
  const look = `the look of ${formatDay(day)}`;
  return isSpokenOf ? `${look} does not say whether it is over` : `${look} says nothing of it`;
}

/** `3 open conditions, 1 urgent`; undefined where there is none. */
export function openConditionsText(rows: readonly OpenCondition[]): string | undefined {
  if (rows.length === 0) return undefined;
  const bad = (['urgent', 'serious'] as const).flatMap((severity) => {
    const count = rows.filter((row) => row.severity === severity).length;
    return count === 0 ? [] : `${count} ${severity}`;
  });
  return [`${rows.length} open condition${rows.length === 1 ? '' : 's'}`, ...bad].join(', ');
}

/**
 * `guard missing at drive (open since 2026-03-09)`, of each safeguard that is out of order; undefined where none is. One text for
 * report, sheet and pack.
 */
export function safeguardsOutText(rows: readonly OpenCondition[]): string | undefined {
  const out = rows.filter(({ safeguardOut }) => safeguardOut);
  return out.length === 0
    ? undefined
    : out.map(({ what, since }) => `${what} (open since ${formatDay(since)})`).join('; ');
}

export function closingWords(closed: Closing): string {
  const on = formatDay(closed.day);
  switch (closed.by) {
    case 'look':
      return `closed by the ${recordWord(closed.look.record)} of ${on}`;
    case 'date':
      return `closed on ${on}`;
    case 'reline':
      return `ended by the reline of ${on}`;
    case 'screw change':
      return `ended by the screw change of ${on}`;
    case 'patch':
      return `patched over on ${on}`;
    case 'reading':
      return `over when the look of ${on} read there`;
    case 'service': {
      const told = workWords(closed.record);
      return `put right on ${on}${told === '' ? '' : `: ${told}`}`;
    }
  }
}

/** A condition that is over. */
export interface ClosedCondition {
  readonly what: string;
  readonly place: string;
  readonly since: CalendarDay;
  readonly day: CalendarDay;
  /** `closed by the look of 2026-03-09`. */
  readonly how: string;
  readonly notes: readonly string[];
  readonly photos: readonly PhotoUse[];
}

/** The one that ended last comes first. */
export function closedConditionRows(
  estate: Estate,
  conveyor: Conveyor,
  asOf?: CalendarDay,
): readonly ClosedCondition[] {
  return followUp(estate, conveyor, asOf)
    .conditions.flatMap(({ first, last, earlier, remarks, photos, closed }): readonly ClosedCondition[] => {
      if (!closed) return [];
      const lines = [
        ...(first === last ? [first] : [first, last]),
        ...('look' in closed ? [closed.look] : []),
      ];
      return [
        {
          what: [conditionWords(last.line), last.line.severity].filter(Boolean).join(', '),
          place: panelWordsOf(estate, conveyor, last.line, last.record.date.day),
          since: first.record.date.day,
          day: closed.day,
          how: closingWords(closed),
          notes: [
            ...new Set([
              ...earlierWords(earlier),
              ...lines.flatMap(({ line }) => line.note ?? []),
              ...remarkWords(remarks),
            ]),
          ],
          photos,
        },
      ];
    })
    .sort((a, b) => b.day - a.day);
}
