// Findings that only follow from what cannot be read: a reading "on no liner" because its reline has a slip, a sum that lacks a
// section, a crew without the skill that its line would have named. The line itself is told; these are not, until it is mended.
// What a rule rests on is said by the rule (`restsOn`); here is only which places are in doubt.

import type { Conveyor } from '../domain/model/conveyor.js';
import type { Estate } from '../domain/model/estate.js';
import type { Origin } from '../domain/model/origin.js';
import type { Lacking, Problem, ProblemKind } from '../domain/model/problem.js';
import { ruleOf } from '../validation/catalogue.js';
import type { Finding } from '../validation/finding.js';
import type { Premise } from '../validation/rule.js';

export interface WhatIsUnread {
  /** Conveyors with a record that is left out, or used without a line that cannot be read. */
  readonly doubted: ReadonlySet<Conveyor>;
  /** Blocks in which something cannot be read, and what that can have been. */
  readonly unsound: readonly (Origin & { readonly lacks?: Lacking })[];
  readonly problems: readonly Problem[];
  /** A job is left out. */
  readonly lacksJobs: boolean;
}

export function withoutConsequences(
  findings: readonly Finding[],
  estate: Estate,
  unread: WhatIsUnread,
  lineAt: (origin: Origin) => string,
): readonly Finding[] {
  const { problems } = unread;
  if (problems.length === 0) return findings;
  const inDoubt = placesInDoubt(estate, unread);
  const misread = new Set(
    problems.filter(({ kind }) => values.has(kind)).map(({ origin }) => lineAt(origin)),
  );
  return findings.filter(
    ({ code, origin }) =>
      !(ruleOf(code)?.restsOn ?? []).some((premise) => isWithin(origin, inDoubt[premise])) &&
      (code.startsWith('TL1') || misread.size === 0 || !misread.has(lineAt(origin))),
  );
}

/** Where a finding must not be told that rests on this. */
function placesInDoubt(
  estate: Estate,
  { doubted, unsound: blocks, problems, lacksJobs }: WhatIsUnread,
): Readonly<Record<Premise, readonly Origin[]>> {
  const unsound = blocks.filter(({ lacks }) => lacks !== 'words');
  const block = [...unsound, ...blocksWith(estate, problems)];
  const beside = problems.filter(({ kind }) => kind !== 'unknown colour');
  const blockBeside = [...unsound, ...blocksWith(estate, beside)];
  // What is wrong or was put right is no reading.
  const ofReadings = problems.filter((each) => !(each.kind === 'syntax' && each.lacks === 'conditions'));
  const withoutReadings = [
    ...unsound.filter(({ lacks }) => lacks !== 'conditions'),
    ...blocksWith(estate, ofReadings),
  ];
  const isUnsound = ({ origin }: { readonly origin: Origin }): boolean => isWithin(origin, block);
  const lookedAt = (places: readonly Origin[]): ReadonlySet<Conveyor> => {
    const looks = estate.inspections.filter(({ origin }) => isWithin(origin, places));
    return new Set([...looks.map(({ conveyor }) => conveyor), ...doubted]);
  };
  // A plant whose heading cannot be read is stood in for where the conveyor names it.
  const machines = estate.conveyors.filter(
    (conveyor) =>
      [conveyor, conveyor.plant, conveyor.screw, conveyor.liner].some(isUnsound) ||
      isWithin(conveyor.plant.origin, [conveyor.origin]),
  );
  // A job that is part of one nobody knows is part of none: two jobs at once are told all the same.
  const unreadJobs = estate.jobs.filter(({ origin }) => isWithin(origin, unsound));
  const withJobs = [...doubted, ...unreadJobs.map(({ conveyor }) => conveyor)];
  return {
    block,
    looks: placesOf(estate, lookedAt(withoutReadings)),
    conditions: placesOf(estate, lookedAt(blockBeside)),
    history: placesOf(estate, doubted),
    machine: [
      ...placesOf(estate, new Set(machines)),
      ...machines.flatMap(({ liner, screw }) => [liner.origin, screw.origin]),
    ],
    jobs: placesOf(estate, new Set(lacksJobs ? estate.conveyors : withJobs)),
  };
}

/** Blocks that read as they stand and name something that cannot be made out: a point, a colour, a liner. */
function blocksWith(estate: Estate, problems: readonly Problem[]): readonly Origin[] {
  const { plants, liners, screws, conveyors, inspections, relines, screwChanges, panelsMoved, jobs } = estate;
  const blocks = [
    plants,
    liners,
    screws,
    conveyors,
    inspections,
    relines,
    screwChanges,
    panelsMoved,
    jobs,
  ].flat();
  const told = problems.filter(leavesUnread).map(({ origin }) => origin);
  return blocks.flatMap(({ origin }) => (told.some((place) => isWithin(place, [origin])) ? [origin] : []));
}

/** True where it takes something out of what is known. */
export function leavesUnread(problem: Problem): boolean {
  return !ofWholeTexts.has(problem.kind) && !(problem.kind === 'syntax' && problem.lacks === 'words');
}

const ofWholeTexts: ReadonlySet<ProblemKind> = new Set<ProblemKind>([
  'repeated fact',
  'repeated name',
  'hidden character',
  'suppression without reason',
  'suppression of unknown code',
  'unused suppression',
  'expired suppression',
]);

/** Values that are told themselves: what else is said of their line rests on them. */
const values: ReadonlySet<ProblemKind> = new Set<ProblemKind>([
  'missing unit',
  'unknown unit',
  'wrong dimension',
  'comma decimal',
  'not a number',
  'out of range',
  'date form',
  'no such date',
  'clock form',
]);

/** Where anything is said of these conveyors: their own blocks, their records, their jobs. */
function placesOf(estate: Estate, conveyors: ReadonlySet<Conveyor>): readonly Origin[] {
  if (conveyors.size === 0) return [];
  const { inspections, relines, screwChanges, meterChanges, dutyChanges, patches, jobs } = estate;
  const { panelsMoved, services, corrections, amendments, driveChanges } = estate;
  const records = [inspections, relines, screwChanges, meterChanges, dutyChanges, patches, panelsMoved, jobs];
  return [
    ...[...conveyors].map(({ origin }) => origin),
    ...[...records.flat(), ...services, ...corrections, ...amendments, ...driveChanges].flatMap(
      ({ conveyor, origin }) => (conveyors.has(conveyor) ? [origin] : []),
    ),
  ];
}

function isWithin(origin: Origin, places: readonly Origin[]): boolean {
  return places.some(
    (place) => place.source === origin.source && place.start <= origin.start && origin.end <= place.end,
  );
}
