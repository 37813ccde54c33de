// 2026-02-30: well written, and not in the calendar.

import type { Rule } from '../../rule.js';
import { onProblem } from '../../telling/on-problem.js';

export const noSuchDate: Rule = {
  code: 'TL109',
  title: 'Date that does not exist',
  severity: 'error',
  restsOn: [],
  why: 'A record without a true date cannot be put in order with the others.',
  todo: 'Look the date up in the day book and write it as year-month-day.',
  given: 'conveyor',
  example: '  commissioned «2024-02-30|2024-02-29» meter 0 h',
  check: onProblem('no such date', (problem) => ({
    message: `There is no day ${problem.text} in the calendar.`,
  })),
};
