// What stands open from earlier looks: three answers each, and the lines they make. No answer makes no line: it stays open.

import { el, field, quoted, type FormChild } from '../forms/kit.js';
import { data, keep, state, type ConditionAnswer } from './state.js';

const answers: readonly (readonly [ConditionAnswer['answer'], string])[] = [
  ['', 'no answer yet'],
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
      const choice = el(
        'select',
        { 'aria-label': `answer to ${what}`, 'data-condition': id },
        answers.map(([value, words]) => el('option', { value, selected: own.answer === value }, words)),
      );
      choice.addEventListener('change', () => {
        const chosen = answers.find(([value]) => value === choice.value);
        state.conditions[id] = { ...answerTo(id), answer: chosen?.[0] ?? '' };
        keep();
      });
      const take = (note: string): void => {
        state.conditions[id] = { ...answerTo(id), note };
        keep();
      };
      return el('div', { class: 'finding' }, [
        el('p', {}, `${what} (${known})`),
        choice,
        field('Remark', own.note, take, { 'data-condition-note': id }),
      ]);
    }),
  ]);
}

export function unansweredConditions(): readonly string[] {
  return data.conditions.filter(({ answer }) => answerTo(answer).answer === '').map(({ what }) => what);
}

export function conditionLines(): readonly string[] {
  return data.conditions.flatMap(({ answer: id }) => {
    const { answer, note } = answerTo(id);
    if (answer === '') return [];
    const words = note.trim() ? ` ${quoted(note)}` : '';
    return [`  ${answer === 'there' ? '' : `${answer} `}${id}${words}`];
  });
}

function answerTo(id: string): ConditionAnswer {
  // Entries kept by an earlier version of the page have none.
  return (state.conditions as Partial<typeof state.conditions>)[id] ?? { answer: '', note: '' };
}
