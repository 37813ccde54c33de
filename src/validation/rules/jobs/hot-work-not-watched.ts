// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const hotWorkNotWatched: Rule = {
  code: 'TL473',
  title: 'Hot work that nobody watches long enough',
  severity: 'error',
  restsOn: [],
  why: 'What smoulders behind the liner breaks into fire when everybody has gone to eat or home.',
  todo: 'Add a fire watch over the place, as long as the permit asks, before anything is closed, left or handed back.',
  given: 'job',
  bad: but(
    soundOrder,
    ['  strip run', '  patch run above Gate by Alpha attended by Bravo cold work\n  strip run'],
    [
      '  clean run above Gate by Alpha attended by Bravo',
      '  patch run above Gate by Alpha attended by Bravo hot work shielded wet\n  clean run above Gate by Alpha attended by Bravo',
    ],
    ['  covers on', '  «covers on»'],
  ),
  good: but(soundOrder, [
    '  clean run above Gate by Alpha attended by Bravo',
    '  patch run above Gate by Alpha attended by Bravo hot work shielded wet\n  fire watch run above Gate takes 60 min\n  clean run above Gate by Alpha attended by Bravo',
  ]),
  cases: [
    {
      name: 'other work before the watch',
      text: but(soundOrder, [
        '  clean run above Gate by Alpha attended by Bravo',
        `${patch('run above Gate')}
  clean run above Gate by Alpha attended by Bravo
  «fire watch» run above Gate takes 60 min`,
      ]),
    },
    {
      name: 'two welds directly after one another under one watch',
      text: but(soundOrder, [
        '  clean run above Gate by Alpha attended by Bravo',
        `${patch('from 7.5 m to 9 m')}
${patch('from 9 m to 12 m')}
  fire watch run above Gate takes 60 min
  clean run above Gate by Alpha attended by Bravo`,
      ]),
    },
  ],
  check: onViolation('fire watch missing', 'fire watch too short', 'fire watch too late'),
};

function patch(where: string): string {
  return `  patch ${where} by Alpha attended by Bravo hot work shielded wet`;
}
