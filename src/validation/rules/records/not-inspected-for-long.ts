// Has a conveyor gone without a look for more than thirteen months, measured at the newest record of the estate, never at the
// clock? A yearly round with a month's grace [judgement]; half the remaining life may well ask for less.

import type { Conveyor } from '../../../domain/model/conveyor.js';
import { addDays, formatDay, type CalendarDay } from '../../../domain/units/calendar.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';
import { todayOf, todayWords } from '../../telling/today.js';

const threshold: RuleThreshold = {
  usual: '395 d',
  dimension: 'duration',
  what: 'How long a conveyor may go without a look.',
  basis: 'judgement: a yearly round with a month’s grace; half the remaining life may well ask for less',
};

export const notInspectedForLong: Rule = {
  code: 'TL318',
  title: 'Conveyor not inspected for long',
  severity: 'information',
  restsOn: ['conditions', 'history'],
  why: 'What has not been looked at is not known to be good; the forecast only grows wider with every month.',
  todo: 'Plan a round; if one was made, write it down, even if little was seen.',
  threshold,
  given: 'specifications',
  bad: `
conveyor DG1 {
  plant Tarnholt
  length 12 m
  incline 20 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  commissioned 2024-01-08 meter 0 h
  break Discharge at 11.4 m to 12 m discharge allowance 20 mm
  access A1 at 0 m to 12 m platform
  isolation Q1 "local isolator" electrical
  isolation Feed material
  point P1 at 4 m clock 7:30
}
conveyor «DG2» {
  plant Tarnholt
  length 12 m
  incline 20 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  commissioned 2024-01-08 meter 0 h
  break Discharge at 11.4 m to 12 m discharge allowance 20 mm
  access A1 at 0 m to 12 m platform
  isolation Q1 "local isolator" electrical
  isolation Feed material
}
inspection DG1 2025-09-08 meter 9000 h {
  P1 colour ivory
}`,
  good: `
conveyor DG1 {
  plant Tarnholt
  length 12 m
  incline 20 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  commissioned 2024-01-08 meter 0 h
  break Discharge at 11.4 m to 12 m discharge allowance 20 mm
  access A1 at 0 m to 12 m platform
  isolation Q1 "local isolator" electrical
  isolation Feed material
  point P1 at 4 m clock 7:30
}
conveyor DG2 {
  plant Tarnholt
  length 12 m
  incline 20 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  commissioned 2024-01-08 meter 0 h
  break Discharge at 11.4 m to 12 m discharge allowance 20 mm
  access A1 at 0 m to 12 m platform
  isolation Q1 "local isolator" electrical
  isolation Feed material
  point P1 at 4 m clock 7:30
}
inspection DG1 2025-09-08 meter 9000 h {
  P1 colour ivory
}
inspection DG2 2025-03-10 meter 6200 h {
  P1 colour ivory
}`,
  byTheCalendar: true,
  *check(input) {
    const { estate } = input;
    const newest = todayOf(input);
    if (newest === undefined) return;
    const last = new Map<Conveyor, CalendarDay>();
    const later = (conveyor: Conveyor, day: CalendarDay): void => {
      const known = last.get(conveyor);
      if (known === undefined || day > known) last.set(conveyor, day);
    };
    for (const conveyor of estate.conveyors)
      if (conveyor.commissioned) later(conveyor, conveyor.commissioned.date.day);
    for (const { conveyor, date } of estate.inspections) later(conveyor, date.day);
    for (const { conveyor, date } of [...estate.relines, ...estate.screwChanges]) later(conveyor, date.day);
    for (const [conveyor, day] of last) {
      if (newest <= addDays(day, settled(conveyor.plant, 'TL318', threshold) / 24)) continue;
      const never = conveyor.commissioned?.date.day === day;
      const since = never
        ? `was commissioned on ${formatDay(day)} and not looked at since`
        : `was last looked at on ${formatDay(day)}`;
      yield {
        origin: conveyor.nameOrigin,
        message: `${conveyor.name} ${since}, and ${todayWords(input, newest)}.`,
      };
    }
  },
};
