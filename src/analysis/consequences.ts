// Findings that only follow from what cannot be read: a reading "on no liner" because its reline has a slip, a sum that lacks a
// section, a crew without the skill that its line would have named. The line itself is told; these are not, until it is mended.

import type { Conveyor } from '../domain/model/conveyor.js';
import type { Estate } from '../domain/model/estate.js';
import type { Origin } from '../domain/model/origin.js';
import type { Problem, ProblemKind } from '../domain/model/problem.js';
import type { Finding } from '../validation/finding.js';

export interface WhatIsUnread {
  /** Conveyors with a record that is left out, or used without a line that cannot be read. */
  readonly doubted: ReadonlySet<Conveyor>;
  /** Blocks in which something cannot be read. */
  readonly unsound: readonly Origin[];
  readonly problems: readonly Problem[];
}

/** Reckoned from all records of a conveyor: liner sets, running hours, rates, what was read when. */
const ofHistory = codes(
  'TL117 TL301 TL302 TL305 TL306 TL307 TL308 TL309 TL313 TL325 TL350 TL351 TL356 TL370 TL501 TL502 TL505 TL510 ' +
    'TL521 TL523 TL544 TL546',
);
/** What later looks say of an earlier one, and when the next is due. */
const ofLooks = codes('TL313 TL350 TL351 TL356 TL502 TL503');
/** Of a block that lacks something which may stand in the line that cannot be read. */
const ofAbsence = codes('TL211 TL230 TL261 TL311 TL313 TL317 TL324 TL325 TL350 TL360 TL453');
/** Of a job, about what its plant has or its conveyor allows. */
const ofJobs = codes('TL453 TL462 TL464 TL466 TL469 TL479 TL534');
/** Of a record, about what its conveyor states. */
const ofRecords = codes('TL512');

export function withoutConsequences(
  findings: readonly Finding[],
  estate: Estate,
  { doubted, unsound, problems }: WhatIsUnread,
  lineAt: (origin: Origin) => string,
): readonly Finding[] {
  if (problems.length === 0) return findings;
  const isUnsound = ({ origin }: { readonly origin: Origin }): boolean =>
    unsound.some((place) => isWithin(origin, [place]));
  const looked = new Set(estate.inspections.filter(isUnsound).map(({ conveyor }) => conveyor));
  const jobs = estate.jobs.filter(({ conveyor }) =>
    [conveyor, conveyor.plant, conveyor.screw, conveyor.liner].some(isUnsound),
  );
  // A plant whose heading cannot be read is stood in for where the conveyor names it.
  const plantless = estate.jobs.filter(({ conveyor }) => isWithin(conveyor.plant.origin, [conveyor.origin]));
  const held: readonly (readonly [ReadonlySet<string>, readonly Origin[]])[] = [
    [ofHistory, placesOf(estate, doubted)],
    [ofLooks, placesOf(estate, looked)],
    [ofAbsence, unsound],
    [ofJobs, [...jobs, ...plantless].map(({ origin }) => origin)],
    [ofRecords, placesOf(estate, new Set(estate.conveyors.filter(isUnsound)))],
  ];
  const misread = new Set(
    problems.filter(({ kind }) => values.has(kind)).map(({ origin }) => lineAt(origin)),
  );
  return findings.filter(
    ({ code, origin }) =>
      !held.some(([those, places]) => those.has(code) && isWithin(origin, places)) &&
      (code.startsWith('TL1') || misread.size === 0 || !misread.has(lineAt(origin))),
  );
}

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

function codes(list: string): ReadonlySet<string> {
  return new Set(list.split(' '));
}

/** Where anything is said of these conveyors: their own blocks, their records, their jobs. */
function placesOf(estate: Estate, conveyors: ReadonlySet<Conveyor>): readonly Origin[] {
  if (conveyors.size === 0) return [];
  const { inspections, relines, screwChanges, meterChanges, dutyChanges, patches, jobs } = estate;
  const records = [inspections, relines, screwChanges, meterChanges, dutyChanges, patches, jobs].flat();
  return [
    ...[...conveyors].map(({ origin }) => origin),
    ...records.flatMap(({ conveyor, origin }) => (conveyors.has(conveyor) ? [origin] : [])),
  ];
}

function isWithin(origin: Origin, places: readonly Origin[]): boolean {
  return places.some(
    (place) => place.source === origin.source && place.start <= origin.start && origin.end <= place.end,
  );
}
