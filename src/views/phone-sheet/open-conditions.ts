// What stands open from earlier looks: three buttons each, and the lines they make. No answer makes no line: it stays open.

import { el, field, quoted, type FormChild } from '../forms/kit.js';
import { show } from './screen.js';
import { choiceOf, severityChoice } from './something-wrong.js';
import { data, keep, state, type ConditionAnswer } from './state.js';

const answers: readonly (readonly [Exclude<ConditionAnswer['answer'], ''>, string])[] = [
  ['there', 'still there'],
  ['closed', 'put right'],
  ['not seen', 'could not look'],
];

export function openConditionFields(): FormChild {
  if (data.conditions.length === 0) return undefined;
  return el('section', { id: 'conditions' }, [
    el('h2', {}, 'Still open: answer every one'),
    ...data.conditions.map(({ what, known, answer: id }) => {
      const own = answerTo(id);
      const set = (change: Partial<ConditionAnswer>): void => {
        state.conditions[id] = { ...answerTo(id), ...change };
        keep();
        show();
      };
      const take = (note: string): void => {
        state.conditions[id] = { ...answerTo(id), note };
        keep();
      };
      return el('div', { class: 'finding', role: 'group', 'aria-label': what, 'data-condition': id }, [
        el('p', {}, `${what} (${known})`),
        el(
          'div',
          { class: 'grid two' },
          answers.map(([answer, words]) =>
            choiceOf(id, words, own.answer === answer, () =>
              set({ answer: own.answer === answer ? '' : answer, severity: '' }),
            ),
          ),
        ),
        own.answer === 'there' && severityChoice(id, own.severity ?? '', (severity) => set({ severity })),
        field(`Remark on ${what}`, own.note, take, { 'data-condition-note': id }),
      ]);
    }),
  ]);
}

export function unansweredConditions(): readonly string[] {
  return data.conditions.filter(({ answer }) => answerTo(answer).answer === '').map(({ what }) => what);
}

export function conditionLines(): readonly string[] {
  return data.conditions.flatMap(({ answer: id }) => {
    const { answer, severity = '', note } = answerTo(id);
    if (answer === '') return [];
    const words = [answer === 'there' ? '' : answer, id, severity, note.trim() && quoted(note)];
    return [`  ${words.filter((word) => word !== '').join(' ')}`];
  });
}

function answerTo(id: string): ConditionAnswer {
  // Entries kept by an earlier version of the page have none.
  return (state.conditions as Partial<typeof state.conditions>)[id] ?? { answer: '', note: '' };
}
