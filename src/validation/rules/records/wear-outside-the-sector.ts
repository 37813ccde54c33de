// Does the liner wear where its conveyor says it does?

import { originOf } from '../../../domain/model/records.js';
import { formatClock } from '../../../domain/units/clock.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';
import { errorOf } from '../../../domain/model/reading-error.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';

const threshold: RuleThreshold = {
  usual: '15 deg',
  dimension: 'angle',
  what: 'How far beside the declared sector a spot still belongs to it; half an hour on the clock is 15 degrees.',
  basis: 'judgement: a hand’s breadth on a small trough',
};

export const wearOutsideTheSector: Rule = {
  code: 'TL359',
  title: 'Worn most outside the declared sector',
  severity: 'warning',
  restsOn: ['looks', 'history', 'machine'],
  why: 'Points were set where the wear was expected; if it is elsewhere, every reading is of the wrong strip and the steel is reached unseen.',
  todo: 'Read both sides again; if it is so, correct `worn sector`, move the points, and look at hand, rotation and lie of the spiral.',
  threshold,
  given: 'inspection',
  around: { conveyor: 'worn sector 6:30 to 8:30' },
  example: `
  P1 thickness 10.8 mm
  «at 5 m clock ‹5:00|7:00› thickness 9.0 mm»`.replace(
    '«at 5 m clock ‹5:00|7:00› thickness 9.0 mm»',
    '«at 5 m clock 5:00 thickness 9.0 mm|at 5 m clock 7:00 thickness 9.0 mm»',
  ),
  cases: [
    { name: 'half an hour beside it', text: '  P1 thickness 10.8 mm\n  at 5 m clock 6:00 thickness 9.0 mm' },
    { name: 'within the errors', text: '  P1 thickness 10.8 mm\n  at 5 m clock 5:00 thickness 10.4 mm' },
  ],
  *check({ estate }) {
    const { readings, places } = estate;
    for (const inspection of estate.inspections) {
      const { conveyor } = inspection;
      const sector = conveyor.wornSector;
      if (!sector) continue;
      const beside = settled(conveyor.plant, 'TL359', threshold) / 30;
      let inside = Infinity;
      let worst: { row: number; left: number } | undefined;
      for (let row = inspection.firstRow; row < inspection.endRow; row++) {
        const place = places[readings.place[row] ?? -1];
        if (!place || readings.kind[row] !== ReadingKind.thickness) continue;
        const left = readings.value[row] ?? NaN;
        if (place.clock >= sector.from.hours - beside && place.clock <= sector.to.hours + beside)
          inside = Math.min(inside, left);
        else if (left < (worst?.left ?? Infinity)) worst = { row, left };
      }
      if (!worst || !Number.isFinite(inside)) continue;
      if (worst.left >= inside - 2 * Math.SQRT2 * errorOf(estate, worst.row)) continue;
      const place = places[readings.place[worst.row] ?? -1];
      yield {
        origin: originOf(readings, worst.row),
        message:
          `${lengthOn(conveyor, worst.left)} at ${formatClock(place?.clock ?? 6)} is the thinnest of this look, and ` +
          `${conveyor.name} is said to wear from ${sector.from.text} to ${sector.to.text}, where ${lengthOn(conveyor, inside)} ` +
          `is left.`,
        related: [{ origin: sector.origin, message: 'the declared sector' }],
      };
    }
  },
};
