// The options of a conveyor as a table: the best of each kind on the first page, all of them with needs and working on the
// conveyor's own.

import type { ConveyorDecision } from '../../../domain/decision/conveyor-decision.js';
import { rankMark, type DecisionOption } from '../../../domain/decision/option.js';
import { counted } from '../../../domain/units/wording.js';
import { element, group, type Markup } from '../../page/markup.js';
import { table } from '../../page/page.js';
import type { ConveyorLife } from '../remaining-life.js';
import {
  acceptedText,
  chanceBoth,
  cheapWaitingText,
  expectedBoth,
  firstOfAll,
  moneyText,
  moreOptionsText,
  noMoneyText,
  optionChances,
  optionExpected,
  orderOfOptionsText,
  passedText,
  ruledOutText,
  type Twofold,
} from '../decision-words.js';
import { date } from './wording.js';

/** For a conveyor that no planned outage serves. */
export function optionBox(life: ConveyorLife): Markup | undefined {
  const { decision } = life;
  if (!decision || decision.options.length === 0) return undefined;
  const more = moreOptionsText(decision);
  return element(
    'div',
    { class: 'options' },
    element(
      'h3',
      {},
      `What can be done about ${life.conveyor.name}`,
      element('span', { class: 'sub' }, ` accepted: ${acceptedText(decision)}`),
    ),
    ruledOutBox(decision),
    optionTable(decision, firstOfAll(decision.options), false),
    element('p', { class: 'small' }, orderOfOptionsText(decision), more === undefined ? '' : ` ${more}`),
    cheapWaitingBox(decision),
  );
}

function ruledOutBox(decision: ConveyorDecision): Markup | undefined {
  const text = ruledOutText(decision);
  return text === undefined ? undefined : element('p', {}, element('strong', {}, text));
}

function cheapWaitingBox(decision: ConveyorDecision): Markup | undefined {
  const text = cheapWaitingText(decision);
  return text === undefined ? undefined : element('p', { class: 'small' }, text);
}

/** Every option, with its needs and how its numbers came about. */
export function optionSection(life: ConveyorLife): Markup | undefined {
  const { decision } = life;
  if (!decision || decision.options.length === 0) return undefined;
  const note = noMoneyText(decision);
  return group(
    element('h3', {}, 'What can be done'),
    element(
      'p',
      { class: 'small' },
      `Accepted: ${acceptedText(decision)}. Passed on ${passedText(decision)}. `,
      scopeText(decision),
      note === undefined ? '' : ` ${note}`,
    ),
    ruledOutBox(decision),
    optionTable(decision, decision.options, true),
    element('p', { class: 'small' }, orderOfOptionsText(decision)),
    cheapWaitingBox(decision),
    working(decision),
    decision.jobs.length > 0 &&
      element(
        'p',
        { class: 'small' },
        element('strong', {}, 'Jobs already written. '),
        `${decision.jobs.map(({ words }) => words).join('. ')}.`,
      ),
  );
}

/** Which panels do not last, what must come off with them, and what that costs beside the whole. */
export function scopeText(decision: ConveyorDecision): string {
  const { scopes } = decision;
  if (!scopes) return '';
  const governing = scopes.governing.map(({ place }) => place);
  const head =
    governing.length === 0
      ? `By what was seen every panel lasts until ${date(scopes.until)}.`
      : `Until ${date(scopes.until)} the liner does not last at ${governing.join(', ')}.`;
  const small = scopes.works.filter(({ work }) => !work.whole && work.buildable);
  if (small.length === 0) return head;
  const words = small.map(({ work }) => {
    const option = decision.options.find(
      ({ scope, kind }) => kind === 'part at an outage' && scope === work.scope,
    );
    return (
      `${work.scope} (${counted(work.panels, 'panel')}, ` +
      `${work.together.personHours.toFixed(0)} ` +
      `person-hours${option?.cost === undefined ? '' : `, ${moneyText(decision, option.cost)}`})`
    );
  });
  const whole = decision.options.find(({ kind }) => kind === 'planned reline');
  return (
    `${head} An order of work can close ${words.join(', or ')}; ` +
    `the whole conveyor${whole?.cost === undefined ? '' : ` costs ${moneyText(decision, whole.cost)}`}.`
  );
}

function optionTable(decision: ConveyorDecision, options: readonly DecisionOption[], full: boolean): Markup {
  const needs = full ? [{ head: 'Needs, or why not' }] : [];
  return table({
    class: full ? 'tight' : 'choice tight',
    columns: [
      { head: element('span', { class: 'unseen' }, 'Order') },
      { head: 'What' },
      { head: 'Day', class: 'day' },
      { head: 'Limit by then', number: true },
      { head: 'Steel', number: true },
      { head: 'Cost', number: true },
      { head: 'Expected', number: true },
      ...needs,
    ],
    rows: options.map((option) => [
      mark(decision, option),
      full || option.obstacle === undefined
        ? option.what
        : group(option.what, element('span', { class: 'sub' }, `not possible: ${option.obstacle}`)),
      date(option.day),
      limitCell(decision, option),
      steelCell(decision, option),
      moneyText(decision, option.cost),
      seenBelow(expectedBoth(option, decision)),
      ...(full ? [needsText(option)] : []),
    ]),
  });
}

function limitCell(decision: ConveyorDecision, { condemn, condemnSeen }: DecisionOption): Markup | string {
  return condemn === undefined ? '–' : seenBelow(chanceBoth(decision, condemn, condemnSeen));
}

function steelCell(decision: ConveyorDecision, { contact, contactSeen }: DecisionOption): Markup | string {
  return contact === undefined ? '–' : seenBelow(chanceBoth(decision, contact, contactSeen));
}

/** What was seen alone on a line of its own, or three columns of numbers leave no room for words. */
function seenBelow({ all, seen }: Twofold): Markup | string {
  return seen === undefined ? all : group(all, element('span', { class: 'sub' }, ` (seen ${seen})`));
}

/** The number of an option is its place among all of them. */
function mark({ options }: ConveyorDecision, option: DecisionOption): Markup | string {
  const said = rankMark(options, options.indexOf(option));
  return option.obstacle === undefined && option.within ? element('strong', {}, said) : said;
}

function needsText({ needs, obstacle }: DecisionOption): string {
  return obstacle === undefined ? needs.join('; ') : `not possible: ${obstacle}`;
}

function working({ options }: ConveyorDecision): Markup {
  return element(
    'div',
    { class: 'working' },
    element('h4', {}, 'How this was worked out'),
    element(
      'ul',
      {},
      options
        .filter((option) => option.working.length > 0)
        .map((option) =>
          element('li', {}, element('strong', {}, `${option.what}: `), `${option.working.join('; ')}.`),
        ),
    ),
  );
}

/** For the comment: the same rows as text. */
export function optionRows(decision: ConveyorDecision): readonly (readonly string[])[] {
  return decision.options.map((option, i) => [
    rankMark(decision.options, i),
    option.what,
    date(option.day),
    optionChances(option, decision),
    moneyText(decision, option.cost),
    optionExpected(option, decision),
    needsText(option),
  ]);
}
