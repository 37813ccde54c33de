// Does everything an inspection gives a chainage for lie on the conveyor, and on its liner where a liner was read?

import { datedRecords } from '../../../domain/model/dated-records.js';
import { partOf } from '../../../domain/conditions/kinds.js';
import type { Conveyor } from '../../../domain/model/conveyor.js';
import { originOf, type DatedRecord } from '../../../domain/model/records.js';
import type { Stated } from '../../../domain/model/stated.js';
import { chainageOn } from '../../../domain/model/unit-of-machine.js';
import type { Found } from '../../finding.js';
import type { Rule } from '../../rule.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';

export const readingBeyondTheConveyor: Rule = {
  code: 'TL326',
  title: 'Reading where there is no liner',
  severity: 'error',
  restsOn: ['machine'],
  why: 'The reading was taken somewhere else, and the spot where it was taken has none.',
  todo: 'Measure from the inside face of the tail-end plate, in the direction of flow, and correct the chainage.',
  given: 'inspection',
  example: '  «at 52 m clock 7:30 thickness 10.6 mm|at 5.2 m clock 7:30 thickness 10.6 mm»',
  cases: [
    { name: 'at the head end', text: '  at 12 m clock 7:30 thickness 10.6 mm' },
    { name: 'a millimetre beyond', text: '  «at 12.001 m clock 7:30 thickness 10.6 mm»' },
    { name: 'on the edge of a break', text: '  at 7.5 m clock 7:30 thickness 10.6 mm' },
    { name: 'a panel that is missing inside a break', text: '  panel missing at «7.2 m»' },
    { name: 'a bent spiral inside a break', text: '  spiral bent at 7.2 m' },
    { name: 'a bent spiral beyond the end', text: '  spiral bent at «13 m»' },
    {
      name: 'a length of the spiral that ends beyond it',
      text: '}\nscrew change DG1 2024-10-07 meter 3900 h {\n  scope from 6 m to «13 m»',
    },
    { name: 'inside it', text: '  «at 7.4 m clock 7:30 thickness 10.6 mm»' },
  ],
  *check({ estate }) {
    const { readings, places } = estate;
    for (const inspection of estate.inspections) {
      const { conveyor } = inspection;
      for (let row = inspection.firstRow; row < inspection.endRow; row++) {
        const place = places[readings.place[row] ?? -1];
        if (!place || place.declared || readings.kind[row] === ReadingKind.notSeen) continue;
        const fault = faultOf(conveyor, place.at);
        if (fault)
          yield {
            origin: originOf(readings, row),
            message: `This reading is at ${chainageOn(conveyor, place.at)}, ${fault}.`,
          };
      }
      for (const { from, to } of inspection.notLooked)
        for (const at of new Set([from, to])) yield* beyond(conveyor, 'What was not seen', at);
      for (const { at } of inspection.plates) yield* beyond(conveyor, 'This plate reading', at);
      for (const { at } of inspection.flightDiameters) yield* beyond(conveyor, 'This diameter', at);
      for (const { at } of inspection.flights) yield* beyond(conveyor, 'This flight reading', at);
      for (const { at } of inspection.holdDownGaps) yield* beyond(conveyor, 'This hold-down gap', at);
      for (const { at } of inspection.wornWidths) yield* beyond(conveyor, 'This worn width', at);
    }
    for (const record of datedRecords(estate)) yield* seenBeyond(record);
    for (const { conveyor, plates } of estate.relines)
      for (const { at } of plates) yield* beyond(conveyor, 'This plate reading', at);
    for (const { conveyor, scope } of estate.screwChanges)
      if (scope)
        for (const at of [scope.from, scope.to]) yield* beyond(conveyor, 'An end of this length', at);
    for (const { conveyor, place, ended } of estate.services)
      for (const at of [place.at, place.to, ended?.at, ended?.to])
        if (at) yield* beyond(conveyor, 'This work', at);
    for (const { conveyor, from, to } of estate.patches)
      for (const at of [from, to]) yield* beyond(conveyor, 'This patch', at);
  },
};

function* seenBeyond({ conveyor, conditions, remarks }: DatedRecord): Iterable<Found> {
  for (const { kind, at, to, point, panel } of conditions)
    if (at && !point && !panel) {
      if (to) yield* beyond(conveyor, `This ${kind}`, to);
      const fault = partOf(kind) === 'liner' ? faultOf(conveyor, at.value) : undefined;
      if (fault) yield { origin: at.origin, message: `This ${kind} is at ${at.text}, ${fault}.` };
      else yield* beyond(conveyor, `This ${kind}`, at);
    }
  for (const { at, to } of remarks)
    for (const each of [at, to]) if (each) yield* beyond(conveyor, 'This finding', each);
}

function faultOf(conveyor: Conveyor, at: number): string | undefined {
  if (at < -0.5 || at > conveyor.length.value + 0.5)
    return `and ${conveyor.name} is ${conveyor.length.text} long`;
  const one = conveyor.breaks.find((candidate) => at > candidate.from.value && at < candidate.to.value);
  return one && `inside break ${one.name} of ${conveyor.name}, from ${one.from.text} to ${one.to.text}`;
}

function* beyond(conveyor: Conveyor, what: string, at: Stated<'length'>): Iterable<Found> {
  if (at.value >= -0.5 && at.value <= conveyor.length.value + 0.5) return;
  yield {
    origin: at.origin,
    message: `${what} is at ${at.text}, and ${conveyor.name} is ${conveyor.length.text} long.`,
  };
}
