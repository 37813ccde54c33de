// The first sentence of the report: which conveyors it names, with what. It is what a manager reads and nothing else.

import { describe, expect, test } from 'vitest';
import { leadSentence } from '../../../src/generators/remaining-life/decision-words.js';
import {
  attentionLevels,
  type AttentionLevel,
} from '../../../src/generators/remaining-life/parts/conveyor-life.js';
import { remainingLife, type ConveyorLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { conveyor, estate, on, origin, plant } from '../../kit/estate.js';

function lives(levels: Readonly<Record<string, AttentionLevel>>, planned = false): readonly ConveyorLife[] {
  const works = plant({
    outages: planned
      ? [
          {
            name: 'Spring27',
            from: on('2027-04-12'),
            to: on('2027-04-16'),
            origin: origin(),
            nameOrigin: origin(),
          },
        ]
      : [],
  });
  return Object.entries(levels).map(([name, level]) => {
    const of = conveyor({ name, plant: works });
    const [life] = remainingLife(estate({ conveyors: [of] }), { depth: 'hand' }).conveyors;
    if (!life) throw new Error('one in, one out');
    return { ...life, attention: { ...life.attention, level } };
  });
}

describe('each level in its own words, one conveyor and several', () => {
  test.each<readonly [AttentionLevel, string, string]>([
    ['worn through', 'A1 has reached the limit.', 'A1 and B2 have reached the limit.'],
    ['past the limit', 'A1 has reached the limit.', 'A1 and B2 have reached the limit.'],
    [
      'no outage in time',
      'A1 cannot wait for a planned outage at the risk accepted.',
      'A1 and B2 cannot wait for a planned outage at the risk accepted.',
    ],
    [
      'reline to plan',
      'A1 needs a reline at a planned outage.',
      'A1 and B2 need a reline at a planned outage.',
    ],
    ['look now', 'A1 needs a look.', 'A1 and B2 need a look.'],
    ['not enough seen', 'A1 needs a look.', 'A1 and B2 need a look.'],
    [
      'in order',
      'No conveyor needs a decision now, as far as it was seen.',
      'No conveyor needs a decision now, as far as it was seen.',
    ],
  ])('%s', (level, one, two) => {
    expect(leadSentence(lives({ A1: level }))).toBe(one);
    expect(leadSentence(lives({ A1: level, B2: level }))).toBe(two);
    // What is in order beside it is not named.
    expect(leadSentence(lives({ A1: level, Z9: 'in order' }))).toBe(one);
  });
});

test('together: the worst first, every conveyor once', () => {
  const all = Object.fromEntries(attentionLevels.map((level, i) => [`C${i + 1}`, level]));
  expect(leadSentence(lives(all))).toBe(
    'C1 and C2 have reached the limit; C3 cannot wait for a planned outage at the risk accepted; ' +
      'C4 needs a reline at a planned outage; C5 and C6 need a look.',
  );
});

test('nothing to decide: until when', () => {
  expect(leadSentence(lives({ A1: 'in order' }, true))).toBe(
    'No conveyor needs a decision before the last planned outage, as far as it was seen.',
  );
  expect(leadSentence([])).toBe('No conveyor is described.');
});
