// Can a worn strip be that wide? A screw that lies e off the liner's centre wears a crescent whose edge stands at
// the intersection of two circles (geometry/crescent.ts); a wider strip needs more depth than the liner has.

import { depthFromEdge } from '../../../domain/geometry/crescent.js';
import { historyOf } from '../../../domain/model/history.js';
import { screwSeen } from '../../../domain/model/lying-screw.js';
import { setSeen } from '../../../domain/model/exposure.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { clearanceOf } from '../../evidence/lined-section.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';

const threshold: RuleThreshold = {
  usual: '25 %',
  dimension: 'ratio',
  what: 'By how much a strip may be wider than new parts would wear it, as a share of the liner’s thickness in depth.',
  basis: 'judgement: the worn screw and the spiral’s sag',
};

export const wornWidthTooWide: Rule = {
  code: 'TL320',
  title: 'Worn strip wider than the liner can wear',
  severity: 'warning',
  restsOn: ['history', 'machine'],
  why: 'Either the strip was not read to its edges, or the liner is through already and the readings say otherwise.',
  todo: 'Look at both edges again, with the clock seen in the direction of the view, and read the thickness in the middle.',
  threshold,
  given: 'inspection',
  example: '  worn at 5.2 m clock «4:00|5:30» to ‹8:30|7:30›',
  *check({ estate }) {
    for (const inspection of estate.inspections) {
      if (inspection.wornWidths.length === 0) continue;
      const history = historyOf(estate, inspection.conveyor);
      for (const { at, from, to } of inspection.wornWidths) {
        const screw = screwSeen(estate, inspection, at.value);
        const liner = setSeen(history, at.value, inspection)?.liner ?? inspection.conveyor.liner;
        const e = clearanceOf(inspection.conveyor, liner, screw);
        const half = Math.abs(to.hours - from.hours) * 15;
        if (e === undefined || e <= 0 || half <= 0) continue;
        const screwRadius = screw.outsideDiameter.value / 2;
        const deep = half >= 89 ? Infinity : (depthFromEdge({ e, screwRadius }, half) ?? Infinity);
        if (deep <= (1 + settled(inspection.conveyor.plant, 'TL320', threshold)) * liner.thickness.value)
          continue;
        yield {
          origin: from.origin,
          message:
            `A worn strip from ${from.text} to ${to.text} on ${inspection.conveyor.name} ` +
            `${Number.isFinite(deep) ? `would be ${lengthOn(inspection.conveyor, deep)} deep` : 'is wider than this screw wears at any depth'}, ` +
            `and ${liner.name} is ${liner.thickness.text} thick.`,
        };
      }
    }
  },
};
