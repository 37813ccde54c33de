// Does the screw turn as fast as the records say? Counted at the shaft, against the duty record in force or the drive's speed.

import { historyOf, recordedSpeed } from '../../../domain/model/history.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';

const threshold: RuleThreshold = {
  usual: '6 %',
  dimension: 'ratio',
  what: 'How far the counted speed may be from the recorded one.',
  basis: 'judgement: slip of the motor and a count by the watch make 3 to 5 %',
};

export const speedNotAsRecorded: Rule = {
  code: 'TL365',
  title: 'Screw that turns at another speed than recorded',
  severity: 'warning',
  restsOn: ['history'],
  why: 'A spiral wears its liner turn by turn: a fifth faster is a fifth less life, and capacity, power and forecasts all take the recorded speed.',
  todo: 'Count again over a minute; if it is so, write a duty record with the speed from the day it was changed.',
  threshold,
  given: 'inspection',
  example: '  speed «22 rpm|18.5 rpm»',
  cases: [
    { name: 'as much faster as a watch can miss', text: '  speed 19 rpm' },
    { name: 'just more', text: '  speed «19.1 rpm»' },
    { name: 'slower', text: '  speed «16.5 rpm»' },
  ],
  *check({ estate }) {
    for (const { conveyor, speeds, date } of estate.inspections) {
      if (speeds.length === 0) continue;
      const recorded = recordedSpeed(historyOf(estate, conveyor), date.day);
      if (!recorded || !(recorded.value > 0)) continue;
      for (const { speed } of speeds) {
        const off = Math.abs(speed.value / recorded.value - 1);
        if (off <= settled(conveyor.plant, 'TL365', threshold) + 1e-9) continue;
        yield {
          origin: speed.origin,
          message: `The screw of ${conveyor.name} was counted at ${speed.text}, and ${recorded.text} is recorded.`,
          related: [{ origin: recorded.origin, message: 'the recorded speed' }],
        };
      }
    }
  },
};
