// What inspections and relines wrote down beside the liner: findings in words, gaps of hold-downs, motor currents, speeds, and
// which readings were corrected. As written, newest first; gaps of one block (within 50 mm, as the sheet takes them) stand
// together, so that one can see them grow.

import { amendedWords } from '../../../domain/conditions/amended-words.js';
import { amendedText } from '../../../domain/model/amended.js';
import { servicesOf, workPlaceWords } from '../../../domain/conditions/service.js';
import { driveReadings, type DriveReadings } from '../../../domain/conditions/drive-readings.js';
import { formatDay, type CalendarDay } from '../../../domain/units/calendar.js';
import { followUp } from '../../../domain/conditions/follow-up.js';
import { openConditionRows, type OpenCondition } from '../../../domain/conditions/rows.js';
import {
  declaredSafeguards,
  type DeclaredSafeguard,
} from '../../../domain/conditions/safeguards-declared.js';
import { isTrial } from '../../../domain/conditions/trials.js';
import { conditionWords, panelWords, partNameOf, spotWords } from '../../../domain/conditions/kinds.js';
import type { Conveyor } from '../../../domain/model/conveyor.js';
import { holdDownName } from '../../../domain/model/part-names.js';
import type { Estate } from '../../../domain/model/estate.js';
import type { LinerSet } from '../../../domain/model/liner-sets.js';
import { recordedSpeed, type History } from '../../../domain/model/history.js';
import type { Origin } from '../../../domain/model/origin.js';
import type { Inspection, PanelUse, PhotoUse, NotedFinding } from '../../../domain/model/records.js';
import type { StatedDay } from '../../../domain/model/stated.js';

export interface BesideLiner {
  readonly findings: readonly FoundBeside[];
  readonly gaps: readonly GapsAt[];
  readonly currents: readonly CurrentRead[];
  readonly speeds: readonly SpeedRead[];
  /** How wide the worn strip was, tail first. */
  readonly worn: readonly WornAt[];
  /** Bearings and gearbox. */
  readonly drive: readonly DriveReadings[];
  readonly corrections: readonly CorrectedBeside[];
  readonly moved: readonly MovedBeside[];
  readonly serviced: readonly ServicedBeside[];
  /** Of those declared, when each was last tried; the trials themselves are among the work. */
  readonly safeguards: readonly DeclaredSafeguard[];
}

/** Work on a day, and which open conditions it ended. */
export interface ServicedBeside {
  readonly day: CalendarDay;
  readonly part: string;
  readonly work: string;
  /** Of a safeguard that was tried or looked at. */
  readonly isTrial: boolean;
  readonly ended: readonly string[];
  readonly by: string | undefined;
  readonly note: string | undefined;
  readonly photo: PhotoUse | undefined;
  readonly origin: Origin;
}

/** A panel that was turned end for end, or exchanged with another. */
export interface MovedBeside {
  readonly day: CalendarDay;
  /** `panel 2 of run 1 turned end for end`. */
  readonly what: string;
  /** From when its wear counts where it lies now, and from what: `P2 9.1 mm, from 2025-04-16`; or that nothing was measured. */
  readonly counts: string;
  readonly by: string | undefined;
  readonly note: string | undefined;
  readonly origin: Origin;
}

/** A reading that was found wrong later. */
export interface CorrectedBeside {
  readonly day: CalendarDay;
  readonly place: string;
  /** The day it was read. */
  readonly read: CalendarDay;
  /** As first written, and as it counts since: `4.7 mm`, `does not count`. */
  readonly was: string;
  readonly now: string;
  readonly by: string | undefined;
  readonly why: string | undefined;
  readonly origin: Origin;
}

export interface FoundBeside {
  readonly day: CalendarDay;
  readonly part: string | undefined;
  /** Chainage, mm. */
  readonly at: number | undefined;
  /** What is said of the place beyond its chainage; empty for nothing. */
  readonly spot: string;
  readonly text: string;
  readonly origin: Origin;
}

export interface GapsAt {
  /** The block's name where one is declared there. */
  readonly name: string | undefined;
  /** Chainage, mm. */
  readonly at: number;
  /** mm, newest first. */
  readonly read: readonly {
    readonly day: CalendarDay;
    readonly gap: number;
    readonly note: string | undefined;
  }[];
}

export interface WornAt {
  /** Chainage, mm. */
  readonly at: number;
  /** In the direction of flow, hours; newest first. */
  readonly read: readonly {
    readonly day: CalendarDay;
    readonly from: number;
    readonly to: number;
    readonly note: string | undefined;
  }[];
}

export interface SpeedRead {
  readonly day: CalendarDay;
  /** rpm, counted. */
  readonly speed: number;
  /** rpm, as recorded for that day: of the duty in force, otherwise the drive's. */
  readonly recorded: number | undefined;
  readonly note: string | undefined;
}

export interface CurrentRead {
  readonly day: CalendarDay;
  /** A. */
  readonly empty: number | undefined;
  readonly loaded: number | undefined;
  readonly note: string | undefined;
}

const oneBlock = 50;

export function besideLiner(
  estate: Estate,
  history: History,
  open: readonly OpenCondition[] = openConditionRows(estate, history.conveyor, history.asOf),
): BesideLiner {
  const { inspections, relines, panelsMoved, screwSets, conveyor } = history;
  const newestFirst = <T extends { readonly day: CalendarDay }>(all: readonly T[]): readonly T[] =>
    [...all].sort((a, b) => b.day - a.day);
  const findings = [
    ...inspections.flatMap(({ inspection: { date, remarks } }) =>
      remarks.map((remark) => ({ ...noted(remark), day: date.day, part: remark.part })),
    ),
    ...found('reline', relines),
    ...found('panels moved', panelsMoved),
    ...found('screw change', [...new Set(screwSets.flatMap(({ change }) => change ?? []))]),
  ];
  const gaps: { at: number; read: { day: CalendarDay; gap: number; note: string | undefined }[] }[] = [];
  for (const { inspection } of inspections)
    for (const { at, gap, note } of inspection.holdDownGaps) {
      const known = gaps.find((each) => Math.abs(each.at - at.value) <= oneBlock);
      const row = { day: inspection.date.day, gap: gap.value, note };
      if (known) known.read.push(row);
      else gaps.push({ at: at.value, read: [row] });
    }
  const currents = inspections.flatMap(({ inspection }) => currentsOfLook(inspection));
  const speeds = inspections.flatMap(({ inspection: { date, speeds: read } }) =>
    read.map(({ speed, note }) => ({
      day: date.day,
      speed: speed.value,
      recorded: recordedSpeed(history, date.day)?.value,
      note,
    })),
  );
  return {
    findings: newestFirst(findings),
    gaps: gaps
      .map(({ at, read }) => ({ name: blockAt(conveyor, at), at, read: newestFirst(read) }))
      .sort((a, b) => a.at - b.at),
    currents: newestFirst(currents),
    speeds: newestFirst(speeds),
    worn: wornOf(history),
    drive: driveReadings(history, estate.services),
    corrections: newestFirst([...correctionsOf(estate, conveyor), ...amendmentsOf(estate, conveyor)]),
    moved: newestFirst(movedOf(history)),
    serviced: newestFirst(servicedOf(estate, history)),
    safeguards: declaredSafeguards(estate, conveyor, open),
  };
}

/** Readings within 100 mm of each other are of one place (judgement: what a torch shows). */
function wornOf({ inspections }: History): readonly WornAt[] {
  const places: { at: number; read: WornAt['read'][number][] }[] = [];
  for (const { inspection } of inspections)
    for (const { at, from, to, note } of inspection.wornWidths) {
      const row = { day: inspection.date.day, from: from.hours, to: to.hours, note };
      const known = places.find((each) => Math.abs(each.at - at.value) <= 100);
      if (known) known.read.unshift(row);
      else places.push({ at: at.value, read: [row] });
    }
  return places.sort((a, b) => a.at - b.at);
}

/** Empty and loaded of one look are one row, also where they stand on two lines; what was read twice has a row more. */
function currentsOfLook({ date, currents }: Inspection): readonly CurrentRead[] {
  const empty = currents.flatMap((each) => each.empty?.value ?? []);
  const loaded = currents.flatMap((each) => each.loaded?.value ?? []);
  const notes = currents.flatMap(({ note }) => note ?? []).join('; ');
  return Array.from({ length: Math.max(empty.length, loaded.length) }, (_, i) => ({
    day: date.day,
    empty: empty[i],
    loaded: loaded[i],
    note: i === 0 && notes !== '' ? notes : undefined,
  }));
}

function servicedOf(estate: Estate, history: History): readonly ServicedBeside[] {
  const own = servicesOf(estate.services, history);
  if (own.length === 0) return [];
  const { conditions } = followUp(estate, history.conveyor, history.asOf);
  return own.map((service) => ({
    day: service.date.day,
    part: service.ended
      ? `${partNameOf(service.ended) ?? ''}${workPlaceWords(service.ended)}`.trim()
      : `${service.part ?? ''}${workPlaceWords(service.place)}`.trim(),
    work: service.work ?? service.words ?? (service.ended ? 'put right' : ''),
    isTrial: isTrial(service),
    ended: conditions
      .filter(({ closed }) => closed?.by === 'service' && closed.record === service)
      .map(({ last }) => conditionWords(last.line)),
    by: service.by,
    note: service.note,
    photo: service.photo,
    origin: service.origin,
  }));
}

/** What a record of work noted: about the part it names, else about the work. */
function found(
  work: string,
  records: readonly { readonly date: StatedDay; readonly remarks: readonly NotedFinding[] }[],
): readonly FoundBeside[] {
  return records.flatMap(({ date, remarks }) =>
    remarks.map((remark) => ({
      ...noted(remark),
      day: date.day,
      part: remark.part === undefined ? work : `${remark.part}, ${work}`,
    })),
  );
}

function noted(remark: NotedFinding): Pick<FoundBeside, 'at' | 'spot' | 'text' | 'origin'> {
  return { at: remark.at?.value, spot: spotWords(remark), text: remark.text, origin: remark.origin };
}

function movedOf({ panelsMoved, linerSets }: History): readonly MovedBeside[] {
  return panelsMoved.flatMap((moved) =>
    moved.moves.map(({ panel, other, note, origin }) => ({
      day: moved.date.day,
      what: `${panelWords(panel)} ${other ? `exchanged with ${panelWords(other)}` : 'turned end for end'}`,
      counts: [panel, ...(other ? [other] : [])]
        .map((each) => startOf(linerSets, each, other ? `${panelWords(each)}: ` : ''))
        .join('; '),
      by: moved.by,
      note,
      origin,
    })),
  );
}

function startOf(sets: readonly LinerSet[], panel: PanelUse, named: string): string {
  const start = sets.find(({ reline }) => reline?.moved && reline.scope.includes(panel))?.reline;
  if (!start) return `${named}nothing measured since, forecast as if it lay as before`;
  const from = start.asFitted.map(({ point, thickness }) => `${point.name} ${thickness.text}`).join(', ');
  return `${named}${from}, from ${formatDay(start.date.day)}`;
}

function correctionsOf(
  { readings, places, inspections }: Estate,
  conveyor: Conveyor,
): readonly CorrectedBeside[] {
  return [...readings.corrected].flatMap(([row, { versions }]) => {
    const place = places[readings.place[row] ?? -1];
    const look = inspections[readings.inspection[row] ?? -1];
    if (!place || !look || place.conveyor !== conveyor) return [];
    return versions.flatMap(({ correction, words }, i) =>
      correction
        ? [
            {
              day: correction.date.day,
              place: place.name,
              read: look.date.day,
              was: versions[i - 1]?.words ?? '',
              now: words,
              by: correction.by,
              why: correction.note,
              origin: correction.origin,
            },
          ]
        : [],
    );
  });
}

function amendmentsOf({ amendments }: Estate, conveyor: Conveyor): readonly CorrectedBeside[] {
  return amendments
    .filter((each) => each.conveyor === conveyor && each.outcome === 'counts')
    .map((each) => ({
      day: each.date.day,
      place: amendedWords({ of: each.lies ?? each.of }),
      read: each.read.day,
      was: each.was,
      now: amendedText(each.says),
      by: each.by,
      why: each.note,
      origin: each.origin,
    }));
}

function blockAt(conveyor: Conveyor, at: number): string | undefined {
  const blocks = conveyor.holdDowns;
  const found = blocks.findIndex((each) => Math.abs((each.from.value + each.to.value) / 2 - at) <= oneBlock);
  const block = blocks[found];
  return block && holdDownName(conveyor, block, found);
}
