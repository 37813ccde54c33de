// The sheet as a page for a phone: one file that needs no network, takes readings with large buttons, keeps them if the battery
// dies, says when a reading is worth a second look, and gives back an inspection block to copy, share or save.

import { formatNumber } from '../../domain/units/format.js';
import { formStyles } from '../page/form-styles.js';
import type { LengthUnit } from '../page/lengths.js';
import { chainageWords, lengthWords } from '../page/lengths.js';
import { offlinePage } from '../page/offline-page.js';
import { phoneSheetScript } from '../page/generated/phone-sheet.js';
import type { PhonePoint, PhoneSheetData } from '../../protocol/offline-forms.js';
import { expectWords } from './print/words.js';
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
    key: `${sheet.conveyor.qualified} ${sheet.asOf}`,
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
      about: sheet.meter.about === undefined ? null : Math.round(sheet.meter.about),
    },
    tonnes:
      sheet.tonnes === undefined
        ? null
        : {
            last: sheet.tonnes.last === undefined ? null : Math.round(sheet.tonnes.last),
            date: sheet.tonnes.date ?? null,
          },
    cautions: sheet.cautions,
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
      layers: liner.layers.map((layer) => ({ name: layer.name })),
    })),
    points: sheet.points.map((point) => pointData(point, sheet.unit)),
    conditions: sheet.openConditions.map(({ what, place, severity, since, notes, answer }) => ({
      what: severity === '' ? what : `${what}, ${severity}`,
      known: [place, since, notes].filter(Boolean).join('; '),
      answer,
    })),
    holdDowns: sheet.holdDowns.map((block) => ({
      name: block.name,
      at: formatNumber(block.at / 1000),
      place: chainageWords(block.at, sheet.unit),
      last: block.lastGap === undefined ? '' : lengthWords(block.lastGap, sheet.unit),
    })),
  };
}

function pointData(point: SheetPoint, unit: LengthUnit): PhonePoint {
  const { expect } = point;
  return {
    id: point.writes,
    label: point.name ?? `${chainageWords(point.at, unit)} at ${point.clockText}`,
    writes: point.writes,
    clock: point.clock,
    clockText: point.clockText,
    liner: point.liner,
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
    expect:
      expect.kind === 'range'
        ? {
            words: expectWords(expect, unit),
            least: expect.least,
            most: expect.most,
            layers: expect.layers.filter((name) => name !== 'trough'),
          }
        : { words: expectWords(expect, unit) },
  };
}
