// Which conditions are open, and what became of the others? Lines of one kind at one place are one condition: the first says
// since when, each later one that it was still there, and `closed` ends it. A tear goes where its panel is moved to
// (moved-along.ts). A reline that takes the panel away ends what was wrong with it, a screw change what was wrong with the spiral,
// work at the drive what it puts right, and a patch the leak or the crack that it lies over; nothing else ends a condition, and no look
// that is silent, but for a blockage that is another one (blocked-anew.ts).

import type { CalendarDay } from '../units/calendar.js';
import type { Conveyor } from '../model/conveyor.js';
import type { Estate } from '../model/estate.js';
import { isLook, recordsOf } from '../model/dated-records.js';
import { setLying, setSeen } from '../model/exposure.js';
import { isAfter, setsAt } from '../model/liner-sets.js';
import { historyOf, momentOf, type History } from '../model/history.js';
import { screwSetSeen } from '../model/lying-screw.js';
import { isAfterMove } from '../model/panels-moved.js';
import type {
  ConditionLine,
  ConditionSeverity,
  DatedRecord,
  Inspection,
  NotLooked,
  PanelsMoved,
  Patch,
  Reline,
  ScrewChange,
  Service,
  PhotoUse,
} from '../model/records.js';
import { isWorkSomewhere, putsRight, servicesOf } from './service.js';
import {
  areOneThing,
  couldBeOne,
  isMeasurement,
  isSameCondition,
  isSameDrive,
  isSamePlace,
  middleOf,
  needsPlace,
  samePlace,
  saysNoPlace,
  takenWith,
} from './kinds.js';
import { lookBetween } from './blocked-anew.js';
import { movedAlong } from './moved-along.js';
import { patchOver } from './patched.js';
import { answeredIn, repeatedIn, saidOf } from './same-finding.js';
import { isSafeguardOut } from './safeguards.js';
import { isTrialOf, wasGood } from './trials.js';
import { couldSee } from './within-sight.js';

export interface SeenLine {
  readonly line: ConditionLine;
  /** The look, or the work during which it was seen. */
  readonly record: DatedRecord;
}

export type Closing =
  | { readonly day: CalendarDay; readonly by: 'look'; readonly look: SeenLine }
  | { readonly day: CalendarDay; readonly by: 'date'; readonly look: SeenLine }
  | { readonly day: CalendarDay; readonly by: 'reline'; readonly record: Reline }
  | { readonly day: CalendarDay; readonly by: 'screw change'; readonly record: ScrewChange }
  | { readonly day: CalendarDay; readonly by: 'service'; readonly record: Service }
  | { readonly day: CalendarDay; readonly by: 'patch'; readonly record: Patch }
  | { readonly day: CalendarDay; readonly by: 'reading'; readonly record: Inspection };

export interface Condition {
  readonly first: SeenLine;
  /** The last line that saw it there. */
  readonly last: SeenLine;
  /** As last stated. */
  readonly severity: ConditionSeverity | undefined;
  /** Of a finding: lines that said it in other words than the last, oldest first. */
  readonly earlier: readonly SeenLine[];
  /** Lines that say nobody could look, oldest first. */
  readonly notSeen: readonly SeenLine[];
  /** What later looks say of it in words or as measured, oldest first. */
  readonly remarks: readonly SaidInWords[];
  /** Of every line that spoke of it, oldest first. */
  readonly photos: readonly PhotoUse[];
  /** Undefined: open. */
  readonly closed: Closing | undefined;
  /** Open, and the first inspection since the last answer that says nothing of it; undefined where each answered, or none was made. */
  readonly unanswered: Inspection | undefined;
  /** Earlier inspections that said nothing of it while it was urgent, the first of each time until somebody answered again. */
  readonly passedOver: readonly Inspection[];
}

/** What speaks of an open condition beside a line of its kind: `finding spiral at 9.5 m "hair crack not longer"`, a temperature. */
export interface SaidInWords {
  readonly words: string;
  readonly record: DatedRecord;
}

export interface FollowUp {
  /** In the order first seen. */
  readonly conditions: readonly Condition[];
  /** Where nobody could look for it, and nobody has looked since: the newest line of each place. */
  readonly notLooked: readonly SeenLine[];
  /** Lines that close what is not open. */
  readonly stray: readonly SeenLine[];
}

const known = new WeakMap<History, FollowUp>();

export function followUp(estate: Estate, conveyor: Conveyor, asOf?: CalendarDay): FollowUp {
  const history = historyOf(estate, conveyor, { asOf });
  const along: Along = (moved, line) => movedAlong(estate, moved, line);
  const anew: BlockedAnew = (before, line) => lookBetween(estate, history, before, line);
  const found = known.get(history) ?? build(history, workOf(estate, history), along, anew);
  known.set(history, found);
  return found;
}

/** What was done without a meter of its own. */
interface Work {
  readonly services: readonly Service[];
  /** Those of them by which a safeguard was tried or found good. */
  readonly trials: readonly Service[];
  readonly patches: readonly Patch[];
}

function workOf({ services, patches }: Estate, history: History): Work {
  const { conveyor, asOf } = history;
  const own = servicesOf(services, history);
  return {
    services: own,
    trials: own.filter(wasGood),
    patches: patches.filter((each) => each.conveyor === conveyor && each.date.day <= (asOf ?? Infinity)),
  };
}

/** What work or a date has ended already may be said to be closed by the look that sees it so. */
function endedAlready(drafts: readonly Draft[], line: ConditionLine): boolean {
  return drafts.some(
    ({ closed, last }) => closed && closed.by !== 'look' && isSameCondition(last.line, line),
  );
}

/** Safeguards that are out first, then the worst, of these what was measured since and not called bad last, then the oldest. */
export function openConditions(estate: Estate, conveyor: Conveyor, asOf?: CalendarDay): readonly Condition[] {
  return followUp(estate, conveyor, asOf)
    .conditions.filter(({ closed }) => closed === undefined)
    .sort(
      (a, b) =>
        rank(b) - rank(a) ||
        Number(isMeasuredSince(a)) - Number(isMeasuredSince(b)) ||
        a.first.record.date.day - b.first.record.date.day,
    );
}

/** It was hot, and a later look measured it and did not call it bad. */
function isMeasuredSince({ last, remarks }: Condition): boolean {
  return last.line.temperature !== undefined && remarks.length > 0;
}

function rank({ last, severity }: Condition): number {
  if (isSafeguardOut(last.line, severity)) return 4;
  switch (severity) {
    case 'urgent':
      return 3;
    case 'serious':
      return 2;
    case undefined:
      return 1;
    case 'slight':
      return 0;
  }
}

/** A line where it lies since its panel was moved; undefined where it stayed. */
type Along = (moved: PanelsMoved, line: ConditionLine) => ConditionLine | undefined;

/** The look that read where one of two blockages lies, between the last word of the first and the second. */
type BlockedAnew = (before: Pick<Draft, 'last' | 'answeredAt'>, seen: SeenLine) => Inspection | undefined;

interface Draft {
  first: SeenLine;
  last: SeenLine;
  /** The last day its panel was moved. */
  movedOn: CalendarDay | undefined;
  severity: ConditionSeverity | undefined;
  readonly earlier: SeenLine[];
  readonly notSeen: SeenLine[];
  readonly remarks: SaidInWords[];
  readonly photos: PhotoUse[];
  answeredAt: Pick<DatedRecord, 'date'>;
  /** The first since then that says nothing of it. */
  silent: Inspection | undefined;
  readonly passedOver: Inspection[];
  closed: Closing | undefined;
}

function build(history: History, work: Work, along: Along, anew: BlockedAnew): FollowUp {
  const drafts: Draft[] = [];
  const stray: SeenLine[] = [];
  let doubts: SeenLine[] = [];
  for (const record of recordsOf(history)) {
    // What a reline or a screw change took away before this look is over, so a new tear there is a new condition.
    carry(history, work, drafts, record, along);
    closeByWork(history, work, drafts, record);
    for (const line of record.conditions) {
      if (isMeasurement(line)) continue;
      const seen = { line, record };
      endBlockedBefore(drafts, seen, anew);
      const own = spokenOf(drafts, seen);
      const doubted = doubts.some((each) => isSameCondition(each.line, line));
      doubts = doubts.filter((each) => !isSameCondition(each.line, line));
      if (line.answer === 'not seen' && own.length === 0) doubts.push(seen);
      else if (line.answer === 'closed' && own.length === 0) {
        if (!doubted && !endedAlready(drafts, line)) stray.push(seen);
      } else if (own.length > 0) for (const each of own) answer(each, seen);
      else
        drafts.push({
          first: seen,
          last: seen,
          movedOn: undefined,
          severity: line.severity,
          earlier: [],
          notSeen: [],
          remarks: [],
          photos: line.photo ? [line.photo] : [],
          answeredAt: record,
          silent: undefined,
          passedOver: [],
          closed: closedByDate(history, seen),
        });
    }
    answerBeside(drafts, record);
    answerByTrial(drafts, work.trials, record);
    if (isLook(record)) passOver(drafts, record);
  }
  carry(history, work, drafts, undefined, along);
  closeByWork(history, work, drafts, undefined);
  answerByTrial(drafts, work.trials, undefined);
  return {
    conditions: drafts.map(({ answeredAt: _, movedOn: __, silent, ...draft }) => ({
      ...draft,
      unanswered: draft.closed === undefined ? silent : undefined,
    })),
    notLooked: doubts.filter((each) => workThatEnds(history, work, drafts, each) === undefined),
    stray,
  };
}

/** What a look could have told of, and says nothing of. */
function passOver(drafts: readonly Draft[], look: Inspection): void {
  for (const draft of drafts) {
    const { line, record } = draft.last;
    if (draft.closed || look.date.day <= draft.answeredAt.date.day) continue;
    if (couldSee(look, line, record)) draft.silent ??= look;
  }
}

/** A place that was read without a word of its blockage is blocked anew. */
function endBlockedBefore(drafts: readonly Draft[], seen: SeenLine, anew: BlockedAnew): void {
  if (seen.line.kind !== 'product blocked' || seen.line.answer !== undefined) return;
  for (const draft of drafts) {
    if (draft.closed || !isSameCondition(draft.last.line, seen.line)) continue;
    const look = anew(draft, seen);
    if (look) draft.closed = { day: look.date.day, by: 'reading', record: look };
  }
}

/** The open conditions that a line speaks of. */
function spokenOf(drafts: readonly Draft[], { line, record }: SeenLine): readonly Draft[] {
  const open = drafts.filter((each) => each.closed === undefined);
  const alike = open.filter(({ last }) => isSameCondition(last.line, line));
  if (alike.length === 0 && saysNoPlace(line)) return onlyOneLike(open, line);
  if (line.kind !== 'finding') return alike.slice(-1);
  if (line.answer !== undefined) return answeredIn(open, line);
  // Two lines of one record are two findings.
  const before = open.filter(({ last }) => last.record !== record || last.line.words === line.words);
  return repeatedIn(before, line);
}

/** An answer that does not say where speaks of the only one of its kind that is open; so does a cord, of which there is one. */
function onlyOneLike(open: readonly Draft[], line: ConditionLine): readonly Draft[] {
  if (line.answer === undefined && needsPlace(line.kind)) return [];
  if (line.kind === 'finding' && (line.answer === undefined || line.about === undefined)) return [];
  const alike = open.filter(({ last }) => couldBeOne(last.line, line));
  return alike.every(({ last }) => alike[0] && areOneThing(last.line, alike[0].last.line)) ? alike : [];
}

/** What passed over it in silence before is no longer asked, and of what was urgent it is kept. */
function speakOf(draft: Draft, record: Draft['answeredAt']): void {
  if (draft.silent && draft.severity === 'urgent') draft.passedOver.push(draft.silent);
  draft.silent = undefined;
  draft.answeredAt = record;
}

function answer(draft: Draft, seen: SeenLine): void {
  const { line, record } = seen;
  speakOf(draft, record);
  if (line.photo) draft.photos.push(line.photo);
  if (line.answer === 'closed') {
    draft.closed = { day: record.date.day, by: 'look', look: seen };
    return;
  }
  if (line.answer === 'not seen') {
    draft.notSeen.push(seen);
    return;
  }
  const before = draft.last;
  draft.last = { ...seen, line: withPlaceOf(before.line, withWordsOf(before.line, line)) };
  if (draft.last.line.words !== before.line.words) draft.earlier.push(before);
  else if (isAsBefore(line) && line.words !== before.line.words)
    draft.remarks.push({ words: line.words ?? '', record });
  draft.severity = line.severity ?? draft.severity;
  if (line.closed) draft.closed = { day: line.closed.day, by: 'date', look: seen };
}

/**
 * What a record says of an open condition without a line of its kind: that nobody could look along a stretch, the temperature as
 * measured now, a finding in words of its part and place. It was looked at or for, and nobody says that it is over.
 */
function answerBeside(drafts: readonly Draft[], record: DatedRecord): void {
  for (const draft of drafts) {
    if (draft.closed !== undefined || draft.answeredAt.date.day >= record.date.day) continue;
    const { line } = draft.last;
    const said = [
      ...measuredIn(line, record),
      ...saidOf(line, record).flatMap(({ words, isNamed }) => (isNamed ? [words] : [])),
    ];
    const behind = notLookedIn(line, record);
    if (said.length === 0 && !behind) continue;
    speakOf(draft, record);
    draft.remarks.push(...said.map((words) => ({ words, record })));
    if (said.length === 0 && behind)
      draft.notSeen.push({ line: { ...line, ...behind, answer: 'not seen' }, record });
  }
}

/** A safeguard that stands open and was tried since, or found good: it was looked at, and nobody says that it is over. */
function answerByTrial(
  drafts: readonly Draft[],
  trials: readonly Service[],
  until: DatedRecord | undefined,
): void {
  for (const draft of drafts) {
    const { line, record } = draft.last;
    if (draft.closed) continue;
    for (const trial of trials) {
      const { day } = trial.date;
      if (day < record.date.day || day > (until?.date.day ?? Infinity) || !isTrialOf(trial, line)) continue;
      if (day > draft.answeredAt.date.day) speakOf(draft, trial);
    }
  }
}

/** The temperature of the same part, measured again and not called bad. */
function measuredIn(line: ConditionLine, { conditions }: DatedRecord): readonly string[] {
  if (line.temperature === undefined) return [];
  return conditions.flatMap((each) =>
    each.kind === line.kind && isSameDrive(each, line) && isMeasurement(each) && each.temperature
      ? [each.temperature.text]
      : [],
  );
}

/** Where nobody could look along a stretch that it lies in. */
function notLookedIn(line: ConditionLine, record: DatedRecord): NotLooked | undefined {
  const at = middleOf(line);
  if (at === undefined || !('notLooked' in record)) return undefined;
  return record.notLooked.find(({ from, to }) => from.value <= at && at <= to.value);
}

/** A place, a side or a clock position that was said once stands until another is said. */
function withPlaceOf(
  { at, to, point, panel, end, safeguard, side, clock }: ConditionLine,
  line: ConditionLine,
): ConditionLine {
  return {
    ...line,
    ...(saysNoPlace(line) && {
      ...(at && { at }),
      ...(to && { to }),
      ...(point && { point }),
      ...(panel && { panel }),
      ...(end && { end }),
      ...(safeguard && { safeguard }),
    }),
    ...(line.side === undefined &&
      line.clock === undefined && {
        ...(side !== undefined && { side }),
        ...(clock !== undefined && { clock }),
      }),
  };
}

/** A finding that is told again without words, or as it was, is the one that was told. */
function withWordsOf({ words }: ConditionLine, line: ConditionLine): ConditionLine {
  return words === undefined || (line.words !== undefined && !isAsBefore(line)) ? line : { ...line, words };
}

/** What its words say is no more than that it is as it was. */
function isAsBefore({ kind, words = '' }: ConditionLine): boolean {
  const said = words.toLowerCase().replace(/^(?:(?:still|all|the)\s+)+/, '');
  return kind === 'finding' && asBefore.has(said);
}

/** Judgement. */
const asBefore: ReadonlySet<string> = new Set(
  'as before,like before,as last time,as it was,no change,unchanged,not changed,same,same as before,there,so,ditto'.split(
    ',',
  ),
);

function closedByDate(history: History, seen: SeenLine): Closing | undefined {
  const { closed } = seen.line;
  return closed && closed.day <= (history.asOf ?? Infinity)
    ? { day: closed.day, by: 'date', look: seen }
    : undefined;
}

/** Moves of panels before a look take along what is in the sheet, unless something ended it before. */
function carry(
  history: History,
  work: Work,
  drafts: readonly Draft[],
  look: DatedRecord | undefined,
  along: Along,
): void {
  for (const moved of history.panelsMoved)
    for (const draft of drafts) {
      const { date } = moved;
      if (draft.closed || isAfterMove(draft.last.record, moved) || date.day <= (draft.movedOn ?? -Infinity))
        continue;
      if (look && !isAfterMove(look, moved)) continue;
      const closing = workThatEnds(history, work, drafts, draft.last, draft.movedOn);
      if (closing && closing.day <= date.day) continue;
      const [first, last] = [along(moved, draft.first.line), along(moved, draft.last.line)];
      if (!first || !last) continue;
      draft.first = { ...draft.first, line: first };
      draft.last = { ...draft.last, line: last };
      draft.movedOn = date.day;
    }
}

/** What was done before a look; everything where there is none. */
function closeByWork(
  history: History,
  work: Work,
  drafts: readonly Draft[],
  look: DatedRecord | undefined,
): void {
  for (const draft of drafts) {
    if (draft.closed) continue;
    const closing = workThatEnds(history, work, drafts, draft.last, draft.movedOn);
    if (closing && (!look || isBefore(history, closing, look))) draft.closed = closing;
  }
}

/** Work at the drive and dates carry no meter: of one day the look comes first. */
function isBefore(history: History, closing: Closing, look: DatedRecord): boolean {
  const seen = momentOf(history, look);
  switch (closing.by) {
    case 'reline':
    case 'screw change':
      return isAfter(seen, momentOf(history, closing.record));
    default:
      return closing.day < seen.day;
  }
}

/** Whichever comes first. */
function workThatEnds(
  history: History,
  work: Work,
  drafts: readonly Draft[],
  seen: SeenLine,
  movedOn?: CalendarDay,
): Closing | undefined {
  const { services, patches } = work;
  const done = services.find(
    (each) =>
      ends(each, seen) &&
      (isMeant(drafts, each, seen) ?? (!isWorkSomewhere(each) || isTheOnlyOne(services, drafts, each, seen))),
  );
  const patch = patchOver(patches, seen.line, seen.record.date.day);
  const ways: readonly (Closing | undefined)[] = [
    changeThatEnds(history, seen, movedOn),
    done && { day: done.date.day, by: 'service', record: done },
    patch && { day: patch.date.day, by: 'patch', record: patch },
  ];
  return ways
    .filter((each) => each !== undefined)
    .reduce<Closing | undefined>((first, each) => (first && first.day <= each.day ? first : each), undefined);
}

function ends(work: Service, { record, line }: SeenLine): boolean {
  return work.date.day >= record.date.day && putsRight(work, line);
}

/** Of several findings of one part and place, work ends those that its words are of; undefined where words tell nothing. */
function isMeant(
  drafts: readonly Draft[],
  { date, ended, note }: Service,
  seen: SeenLine,
): boolean | undefined {
  if (ended?.kind !== 'finding' || !drafts.some(({ last }) => last === seen)) return undefined;
  const open = drafts.filter(
    ({ closed, last }) =>
      (closed === undefined || closed.day >= date.day) && last.record.date.day <= date.day,
  );
  const meant = answeredIn(open, ended, ended.words ?? note);
  return meant.length === 0 ? undefined : meant.some(({ last }) => last === seen);
}

/** `pull cord renewed` is of the one that was broken, where no other stood open on that day. */
function isTheOnlyOne(
  services: readonly Service[],
  drafts: readonly Draft[],
  work: Service,
  { line }: SeenLine,
): boolean {
  const before = services.filter((each) => each.date.day <= work.date.day && !isWorkSomewhere(each));
  return drafts
    .filter(({ closed, last }) => !closed && ends(work, last) && !before.some((each) => ends(each, last)))
    .every(({ last }) => (work.ended ? areOneThing : isSamePlace)(last.line, line));
}

/** Whoever fits panels tells of a gap or a bolt as it is now; what is torn, cracked or lost was so on what came out. */
function isOfTheNew({ kind }: ConditionLine, record: DatedRecord): boolean {
  if (isLook(record)) return false;
  switch (kind) {
    case 'panel torn':
    case 'panel cracked':
    case 'panel missing':
    case 'material behind liner':
      return false;
    default:
      return true;
  }
}

function changeThatEnds(
  history: History,
  { line, record }: SeenLine,
  movedOn: CalendarDay | undefined,
): Closing | undefined {
  const part = takenWith(line);
  const at = middleOf(line);
  if (part === 'liner' && at !== undefined) {
    const seen = isOfTheNew(line, record)
      ? setLying(history, at, record.date.day)
      : setSeen(history, at, record);
    const sets = setsAt(history.linerSets, at);
    // Panels that were moved took their conditions along; only what a reline takes out is gone.
    const gone = sets
      .slice(seen ? sets.indexOf(seen) : sets.length)
      .find(
        ({ removed }) =>
          removed !== undefined && !removed.reline.moved && removed.day > (movedOn ?? -Infinity),
      );
    const removed = gone?.removed;
    return removed && { day: removed.day, by: 'reline', record: removed.reline };
  }
  if (part === 'spiral') {
    const change =
      at !== undefined
        ? (screwSetSeen(history, record, at)?.removedBy ?? jointMadeAnew(history, { line, record }, at))
        : history.screwSets.findLast(({ removedBy }) => removedBy && !removedBy.scope)?.removedBy;
    return change && { day: change.date.day, by: 'screw change', record: change };
  }
  return undefined;
}

/** The first change after it of a length that ends at this joint: its bolts or its weld are made anew, on both sides. */
function jointMadeAnew(history: History, { line, record }: SeenLine, at: number): ScrewChange | undefined {
  if (line.kind !== 'spiral bolts loose' && line.kind !== 'spiral weld cracked') return undefined;
  const seen = momentOf(history, record);
  return history.screwSets.find(
    ({ change, from, to, fitted }) =>
      change !== undefined &&
      change !== record &&
      fitted !== undefined &&
      !isAfter(seen, fitted) &&
      [from, to].some((end) => Math.abs(end - at) <= samePlace),
  )?.change;
}
