// A merge conflict that nobody has settled: two versions of the text, and neither is the truth.

import type { Rule } from '../../rule.js';
import { onProblem } from '../../telling/on-problem.js';
import { list } from '../../telling/wording.js';

// Put together, so that git takes no line of this file for a marker.
const [ours, middle, theirs] = ['<', '=', '>'].map((sign) => sign.repeat(7));

export const conflictMarker: Rule = {
  code: 'TL131',
  title: 'Merge conflict that is not settled',
  severity: 'error',
  restsOn: [],
  why: 'Two versions of a record stand in the text and only one can be true, so nothing is judged, forecast or planned from this estate until it is settled.',
  todo: 'Keep what is true of both versions, delete the three lines of markers, and check again before the merge is committed.',
  given: 'whole',
  bad: `
plant Tarnholt {
«${ours} HEAD»
  duty 60 h/week
${middle}
  duty 84 h/week
${theirs} summer
}`,
  good: `
plant Tarnholt {
  duty 84 h/week
}`,
  check: onProblem('conflict marker', ({ lines }) => ({
    message:
      lines.length === 1
        ? `A merge left a conflict here, on line ${lines[0]}, and it is not settled.`
        : `A merge left ${lines.length} conflicts in this text, on lines ${list(lines.map(String))}, and they are not settled.`,
  })),
};
