// The sheet as a page for a phone: one file that needs no network, takes readings with large buttons, keeps them if the battery
// dies, says when a reading is worth a second look, and gives back an inspection block to copy, share or save.

import {
  aspectsOf,
  conditionKinds,
  measureOf,
  needsMeasure,
  needsPlace,
  partOf,
  type ConditionPart,
} from '../../domain/conditions/kinds.js';
import { safeguardsAsk } from '../../domain/conditions/safeguards-declared.js';
import type { ConditionKind } from '../../domain/model/records.js';
import { formatClock, clockAsSeen, mirrorClock } from '../../domain/units/clock.js';
import { formatChainage, formatNumber } from '../../domain/units/format.js';
import { formStyles } from '../page/form-styles.js';
import {
  type LengthUnit,
  lengthWords,
  chainageWords,
  chainageText,
} from '../../domain/units/length-words.js';
import { offlinePage } from '../page/offline-page.js';
import { phoneSheetScript } from '../page/generated/phone-sheet.js';
import { sha256Base64 } from '../page/sha256.js';
import type {
  Look,
  PhoneConditionKind,
  PhonePoint,
  PhoneSheetData,
  PhoneView,
} from '../../protocol/offline-forms.js';
import { expectReason, expectWords } from './print/words.js';
import type { InspectionSheet, SheetPoint } from './sheet.js';

export function inspectionPhonePage(sheet: InspectionSheet): string {
  return offlinePage({
    title: `${sheet.conveyor.name} inspection, look ${sheet.look}`,
    styles: formStyles,
    script: phoneSheetScript,
    fallback: 'This page needs JavaScript to take readings. Use the printed sheet instead.',
    data: phoneData(sheet),
  });
}

function phoneData(sheet: InspectionSheet): PhoneSheetData {
  return {
    // Not the date: a page made again finds what was typed into the one before.
    key: `${sheet.conveyor.qualified} ${sha256Base64(sheet.conveyor.identity).slice(0, 12)}`,
    qualified: sheet.conveyor.qualified,
    name: sheet.conveyor.name,
    title: sheet.conveyor.title ?? '',
    length: sheet.conveyor.length,
    asOf: sheet.asOf,
    look: sheet.look,
    unit: sheet.unit,
    meter: {
      last: sheet.meter.last === undefined ? null : Math.round(sheet.meter.last.value),
      date: sheet.meter.last?.date ?? null,
    },
    tonnes:
      sheet.tonnes === undefined
        ? null
        : {
            last: sheet.tonnes.last === undefined ? null : Math.round(sheet.tonnes.last),
            date: sheet.tonnes.date ?? null,
          },
    running: {
      measure: sheet.running.measure,
      from: sheet.running.from,
      daily: sheet.running.daily,
      hoursDaily: sheet.meter.daily,
      perCount: sheet.running.perCount,
      ahead: sheet.running.ahead,
    },
    cautions: [...sheet.cautions, ...safeguardsDeclared(sheet)],
    isolations: sheet.isolations.map((item) =>
      [
        item.name,
        item.title,
        `(${item.kind})`,
        item.at === undefined ? '' : `at ${chainageWords(item.at, sheet.unit)}`,
      ]
        .filter(Boolean)
        .join(' '),
    ),
    liners: sheet.liners.map((liner) => ({
      name: liner.name,
      thickness: liner.thickness,
      thicknessWords: lengthWords(liner.thickness, sheet.unit),
      condemn: liner.condemn,
      condemnWords: lengthWords(liner.condemn, sheet.unit),
      layers: liner.layers.map(({ name, most, least }) => ({ name, thickness: most - least })),
    })),
    lying: sheet.lying,
    points: sheet.points.map((point) => pointData(point, sheet.look, sheet.unit)),
    conditions: sheet.openConditions.map(({ what, place, severity, since, notes, answer }) => ({
      what: severity === '' ? what : `${what}, ${severity}`,
      known: [place, since, notes].filter(Boolean).join('; '),
      answer,
    })),
    kinds: conditionKinds.map(kindData),
    holdDowns: sheet.holdDowns.map((block) => ({
      name: block.name,
      at: formatNumber(block.at / 1000),
      place: chainageWords(block.at, sheet.unit),
      last: block.lastGap === undefined ? '' : lengthWords(block.lastGap, sheet.unit),
    })),
    open: sheet.openRemarks.map(({ date, part, at, text }) => ({
      date,
      part,
      at: at === undefined ? '' : formatNumber(sheet.unit === 'mm' ? at / 1000 : at / 304.8, 2),
      place: at === undefined ? '' : chainageWords(at, sheet.unit),
      text,
    })),
  };
}

function safeguardsDeclared({ safeguards }: InspectionSheet): PhoneSheetData['cautions'] {
  if (safeguards.length === 0) return [];
  const all = safeguards.map(
    ({ what, found, tried }) => `${what} (${[found, tried].filter(Boolean).join('; ')})`,
  );
  return [{ heading: 'Safeguards declared.', text: `${all.join('; ')}. ${safeguardsAsk}` }];
}

const groups: Readonly<Record<ConditionPart, string>> = {
  liner: 'Liner',
  product: 'Material',
  spiral: 'Spiral',
  'hold-down': 'Hold-downs',
  brace: 'Braces',
  cover: 'Covers and hatches',
  hatch: 'Covers and hatches',
  gate: 'Gates',
  trough: 'Trough',
  drive: 'Bearings, gearbox, motor',
  safeguard: 'Guards, stops, interlocks',
  surroundings: 'Around the machine',
  other: 'Anything else',
};

function kindData(kind: ConditionKind): PhoneConditionKind {
  return {
    kind,
    group: groups[partOf(kind)],
    measure: measureOf(kind),
    needed: needsMeasure(kind),
    place: needsPlace(kind),
    mayBeThrough: partOf(kind) === 'liner',
    aspects: aspectsOf(kind),
  };
}

function pointData(point: SheetPoint, look: Look, unit: LengthUnit): PhonePoint {
  const downstream = clockAsSeen(point.clock, look);
  return {
    id: point.name ?? `${formatChainage(point.at)} ${formatClock(downstream)}`,
    seen: {
      downstream: viewOf(point, downstream, unit),
      upstream: viewOf(point, mirrorClock(downstream), unit),
    },
    liner: point.liner,
    fitted: point.fitted,
    where: [
      `${chainageWords(point.at, unit)} from the tail`,
      `${chainageWords(point.fromHead, unit)} from the head`,
      [point.cover && `cover ${point.cover}`, point.panel !== undefined && `panel ${point.panel}`]
        .filter(Boolean)
        .join(', '),
      point.note,
    ].filter((text) => text !== ''),
    last:
      point.last === undefined
        ? null
        : { date: point.last.date, words: point.last.words, thickness: point.last.thickness ?? null },
    expect: point.table
      ? { ...point.table, basis: expectReason(point.expect) }
      : { words: expectWords(point.expect, unit) },
  };
}

function viewOf(point: SheetPoint, clock: number, unit: LengthUnit): PhoneView {
  const clockText = formatClock(clock);
  return {
    label: point.name ?? `${chainageWords(point.at, unit)} at ${clockText}`,
    writes: point.name ?? `at ${chainageText(point.at, unit)} clock ${clockText}`,
    clock,
    clockText,
  };
}
