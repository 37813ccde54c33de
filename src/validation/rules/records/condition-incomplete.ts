// Does a condition say where it is and how much? A gap without its width and bolts without their number cannot be followed.

import { datedRecords } from '../../../domain/model/dated-records.js';
import { followUp, type FollowUp } from '../../../domain/conditions/follow-up.js';
import { measureOf, needsPlace, partOf } from '../../../domain/conditions/kinds.js';
import type { ConditionLine } from '../../../domain/model/records.js';
import type { Rule } from '../../rule.js';

export const conditionIncomplete: Rule = {
  code: 'TL352',
  title: 'Condition without its place or measure',
  severity: 'warning',
  restsOn: [],
  why: 'Nobody finds it again, nobody can tell whether it grew, and the crew takes along the wrong number of bolts.',
  todo: 'Add the place (a chainage from the tail, or a point), how far a joint is open, the number of bolts, or what is wrong with a bearing.',
  given: 'inspection',
  example: '  «panel torn|panel torn at 4.2 m»',
  cases: [
    { name: 'a gap without its width', text: '  «joint open at 4.2 m»' },
    { name: 'a gap', text: '  joint open 9 mm at 4.2 m' },
    { name: 'bolts without a number', text: '  «bolts missing at 4.2 m»' },
    { name: 'a gearbox of which nothing is said', text: '  «gearbox»' },
    { name: 'a motor that was hot', text: '  «motor temperature serious»' },
    { name: 'a gearbox with a note', text: '  gearbox "hums at start"' },
    { name: 'a finding that stands open, with its words', text: '  finding motor serious "cable chafed"' },
    { name: 'a finding without words', text: '  «finding motor serious»' },
    { name: 'a guard of which nobody says which', text: '  «guard missing»' },
    {
      name: 'a gate, where there is one',
      text: '  gate stuck\n  finding gate serious "stem bent"',
    },
    { name: 'a hold-down, where there are several', text: '  «hold-down loose»' },
    { name: 'an end is a place', text: '  guard loose at head' },
    { name: 'a pull cord is as long as the machine', text: '  pull cord slack' },
    { name: 'a point is a place', text: '  bolts missing 2 at P1' },
  ],
  *check({ estate }) {
    for (const { conveyor, conditions } of datedRecords(estate)) {
      for (const line of conditions) {
        const lacks = lacking(line);
        // What was told before in words is the same again.
        if (lacks && (line.kind !== 'finding' || startsOne(followUp(estate, conveyor), line)))
          yield { origin: line.origin, message: `${capitalised(line.kind)} ${lacks}.` };
      }
    }
  },
};

function lacking(line: ConditionLine): string | undefined {
  const { kind, at, point, end, size, count, aspect, temperature, note, answer, words } = line;
  if (answer !== undefined) return undefined; // of the only one of its kind, else TL351
  if (needsPlace(kind) && !at && !point && !end) return 'has no place along the trough';
  if (line.unread) return undefined;
  if (kind === 'finding') return words === undefined ? 'does not say what was found' : undefined;
  if (kind === 'joint open' && !size) return 'does not say how far';
  if (measureOf(kind) === 'count' && !count) return 'has no number';
  if (line.hot) return 'does not say how hot';
  return partOf(kind) === 'drive' && !aspect && !temperature && note === undefined
    ? 'does not say what is wrong: noise, temperature, oil, a seal, water, or a note'
    : undefined;
}

/** Not the repeat of one that stood open. */
function startsOne({ conditions }: FollowUp, { origin }: ConditionLine): boolean {
  return conditions.some(({ first }) => first.line.origin === origin);
}

function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
