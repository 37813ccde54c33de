// Lines of a plant in the words of whoever writes it down: `shift 07:00 to 17:00 on mon to fri`, `crew Mech 3 people welding and fitting`, `lead
// time TwoLayer12 10 weeks`.

import type { BrokenLine } from './broken-line.js';
import { readsSoundly, type SaidBy } from './kept.js';
import type { LineSaying, Otherwise } from './otherwise.js';
import { changed } from './repairs.js';
import { isName } from './said-place.js';
import { imagesOf, keyword, type Word } from './word.js';

export const plantLines: readonly LineSaying[] = [daysOfAShift];

/** Where no line lies near. */
export const crewLines: readonly LineSaying[] = [skillsOfACrew, leadTimeOfALiner];

const week = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

function dayOf(image: string): number {
  return week.indexOf(image.toLowerCase().slice(0, 3));
}

/** `on mon to fri`, `mon-fri`, `weekdays`, `every day` */
function daysOfAShift({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const [first, from, to, until, ...rest] = words;
  if (block !== 'Plant' || first?.type !== 'shift' || to?.type !== 'to' || !from || !until) return undefined;
  const said = rest.filter(({ type }) => type !== 'on');
  const days = daysIn(imagesOf(said).toLowerCase());
  if (days.length === 0) return undefined;
  const names = days.flatMap((day, i): readonly Word[] => [
    ...(i > 0 ? [keyword(',')] : []),
    { type: 'ID', image: week[day] ?? '' },
  ]);
  const line = [first, from, to, until, keyword('on'), ...names];
  if (!readsSoundly(line, pattern)) return undefined;
  return {
    at: 4,
    message: `The days are named one by one: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
    senses: said.map(({ image }): SaidBy => [image.toLowerCase(), 'on']),
  };
}

function daysIn(text: string): readonly number[] {
  if (/^(?:on )?(?:weekdays|working days|workdays)$/.test(text)) return [0, 1, 2, 3, 4];
  if (/^(?:daily|every day|all days|all week|7 days)$/.test(text)) return [0, 1, 2, 3, 4, 5, 6];
  const [, from = '', to = ''] = /^([a-z]+) ?(?:-|to) ?([a-z]+)$/.exec(text) ?? [];
  const [first, last] = [dayOf(from), dayOf(to)];
  return first < 0 || last < first ? [] : week.flatMap((_, i) => (i >= first && i <= last ? [i] : []));
}

/** `crew Mech 3 people welding and fitting`, `crew Mech 3 men skills fitting` */
function skillsOfACrew({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const [first, name, ...rest] = words.filter(({ type }) => type !== ':');
  const [size, ...more] = rest;
  const count = /^(\d+)(?: ?(?:men|man|persons|heads|pers))?$/.exec(size?.image ?? '')?.[1];
  if (block !== 'Plant' || first?.type !== 'crew' || !name || count === undefined) return undefined;
  const cost = more.findIndex(({ type }) => type === 'cost');
  const skilled = (cost < 0 ? more : more.slice(0, cost)).filter(
    ({ type, image }) =>
      !/^(?:people|person|skills|and|,|men|man)$/.test(type) && !/^(?:and|men|man|persons|for)$/.test(image),
  );
  if (skilled.length === 0 || skilled.some(({ type }) => /QUANTITY|NUMBER/.test(type))) return undefined;
  const skills = skilled.flatMap((word, i) => (i > 0 ? [keyword(','), word] : [word]));
  const people = keyword(count === '1' ? 'person' : 'people');
  const line = [
    ...[first, name, { type: 'NUMBER', image: count }, people, keyword('skills'), ...skills],
    ...(cost < 0 ? [] : more.slice(cost)),
  ];
  if (!readsSoundly(line, pattern)) return undefined;
  return {
    at: 2,
    message: `What a crew can do stands behind \`skills\`: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
    senses: ['and', 'men', 'man', 'persons', 'for'].map((each): SaidBy => [each, 'skills']),
  };
}

/** `lead time TwoLayer12 10 weeks`: it is one for all liners of a plant. */
function leadTimeOfALiner({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const [first, name, time, ...more] = words;
  if (block !== 'Plant' || first?.type !== 'lead time' || !isName(name) || !time || more.length > 0)
    return undefined;
  const line = (item: string): readonly Word[] => [first, keyword(item), time];
  if (!readsSoundly(line('liner'), pattern)) return undefined;
  return {
    at: 1,
    message:
      'How long things take to come is said of all liners of a plant, or of all its screws: ' +
      `\`${imagesOf(line('liner'))}\` or \`${imagesOf(line('screw'))}\`.`,
  };
}
