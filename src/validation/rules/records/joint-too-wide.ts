// Is a joint told to be open so far that it is no joint any more? Panels that are bolted open by millimetres;
// where three fingers go in, one has left its bolts or a piece is gone [judgement].

import { datedRecords } from '../../../domain/model/dated-records.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';

const threshold: RuleThreshold = {
  usual: '50 mm',
  dimension: 'length',
  what: 'How far a joint may be open and still be taken for a joint.',
  basis: 'judgement',
};

export const jointTooWide: Rule = {
  code: 'TL525',
  title: 'Joint wider open than a joint can be',
  severity: 'warning',
  restsOn: [],
  why: 'Where a piece of liner is gone the steel wears from that day on, and as an open joint nobody counts those hours; or a figure slipped.',
  todo: 'Write panel missing where a piece is gone or a panel has slid away, or correct the figure.',
  threshold,
  given: 'inspection',
  example: '  joint open «900 mm|9 mm» at 4.2 m',
  cases: [
    { name: 'as wide as three fingers', text: '  joint open 50 mm at 4.2 m' },
    { name: 'just wider', text: '  joint open «51 mm» at 4.2 m' },
    { name: 'a slip of the unit', text: '  joint open «9 m» at 4.2 m' },
  ],
  *check({ estate }) {
    for (const { conveyor, conditions } of datedRecords(estate)) {
      const most = settled(conveyor.plant, 'TL525', threshold);
      for (const { kind, size, answer } of conditions) {
        if (kind !== 'joint open' || !size || size.value <= most || answer === 'closed') continue;
        yield {
          origin: size.origin,
          message: `A joint of ${conveyor.name} is told to be open by ${size.text}, more than ${lengthOn(conveyor, most)}.`,
        };
      }
    }
  },
};
