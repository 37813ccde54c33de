// Can a part of the drive be so hot, or so cold? What cannot was mostly written with a digit too many, or in another unit.

import { datedRecords } from '../../../domain/model/dated-records.js';
import { partOf } from '../../../domain/conditions/kinds.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';

const threshold: RuleThreshold = {
  usual: '180 degC',
  dimension: 'temperature',
  what: 'Hottest that a bearing, a motor or a gearbox can be found running.',
  basis:
    'judgement: grease and oil carbonise and windings burn (class H insulation is rated for 180 degC) before it is warmer outside',
};

/** degC: colder than any place where such a machine is looked at (judgement). */
const coldest = -45;

export const temperatureBeyondADrive: Rule = {
  code: 'TL529',
  title: 'Temperature that no drive can have',
  severity: 'warning',
  restsOn: [],
  why: 'One such number is what later ones are held against: the bearing that really runs hot afterwards is taken for a cool one.',
  todo: 'Check the number and its unit, degC or degF, against the sheet of that day.',
  threshold,
  given: 'inspection',
  example: '  tail bearing temperature «580 degC|58 degC»',
  cases: [
    { name: 'as hot as can be', text: '  motor temperature 180 degC' },
    { name: 'just hotter', text: '  motor temperature «181 degC»' },
    { name: 'in the other unit', text: '  gearbox temperature 136 degF' },
    { name: 'colder than any winter', text: '  gearbox temperature «-58 degC»' },
  ],
  *check({ estate }) {
    for (const { conveyor, conditions } of datedRecords(estate))
      for (const { kind, temperature } of conditions) {
        if (!temperature || partOf(kind) !== 'drive') continue;
        const hottest = settled(conveyor.plant, 'TL529', threshold);
        if (temperature.value >= coldest && temperature.value <= hottest + 1e-9) continue;
        yield {
          origin: temperature.origin,
          message:
            `The ${kind} of ${conveyor.name} is said to be at ${temperature.text}; ` +
            `nothing there runs so ${temperature.value < coldest ? 'cold' : 'hot'}.`,
        };
      }
  },
};
