// How the programme reads, the same in every form: rows of its table, loads of its outages, what more would save.

import { type Programme, type ProgrammeAnswer, type ProgrammeLine } from '../../domain/decision/programme.js';
import { amountText } from '../../domain/decision/money.js';
import { callText, missingCostsText } from './decision-words.js';
import { percent } from '../../domain/decision/option-setting.js';
import { staysText } from '../../domain/decision/stays-words.js';
import { formatDay } from '../../domain/units/calendar.js';
import { formatNumber } from '../../domain/units/format.js';
import { list } from '../../domain/units/wording.js';

export const programmeHead = [
  'Conveyor',
  'Outage',
  'Scope',
  'Crew',
  'Hours',
  'Limit by then, seen',
  'Order liner by',
  'Expected',
  'Not kept, and why',
] as const;

/** One row a conveyor, in the order of `programmeHead`. */
export function programmeRow(programme: Programme, line: ProgrammeLine): readonly string[] {
  const { choice, conveyor, reason = '' } = line;
  switch (choice.kind) {
    case 'reline': {
      const { candidate } = choice;
      const outage = programme.problem.outages[candidate.outage];
      return [
        conveyor,
        outage ? `${outage.name} (${formatDay(outage.from)})` : '–',
        candidate.scope + (candidate.stays?.keeps ? `; ${staysText(candidate.stays)}` : ''),
        candidate.crews.join(' and '),
        formatNumber(candidate.hours, 1),
        percent(candidate.condemn),
        `${callText(candidate.order)}${candidate.expedited ? ', expedited' : ''}`,
        expected(programme, candidate.expected),
        reason,
      ];
    }
    case 'nothing':
      return [conveyor, 'none needed', '–', '–', '–', '–', '–', expected(programme, choice.expected), reason];
    case 'left out':
      return [conveyor, 'cannot be kept', '–', '–', '–', '–', '–', '–', reason];
  }
}

/** What work costs. */
export function money({ currency }: Programme, value: number | undefined): string {
  if (currency === undefined) return 'no costs';
  return value === undefined ? 'not known' : amountText(value, currency);
}

/** With the chance of steel in it: only where everything is declared that it takes. */
function expected(programme: Programme, value: number): string {
  return isPriced(programme) ? money(programme, value) : 'not known';
}

/** Where it is not, what is weighed are chances, and no sum of them is money. */
export function isPriced({ currency, problem }: Programme): boolean {
  return currency !== undefined && (problem.missingCosts ?? []).length === 0;
}

/** A sentence: what is done when, and what it costs beside choosing alone. */
export function programmeSentence(programme: Programme): string {
  const relines = programme.lines.flatMap(({ conveyor, choice }) =>
    choice.kind === 'reline' ? [{ conveyor, outage: choice.candidate.outage }] : [],
  );
  const byOutage = programme.problem.outages.flatMap(({ name }, index) => {
    const names = relines.filter(({ outage }) => outage === index).map(({ conveyor }) => conveyor);
    return names.length > 0 ? [`${list(names)} at ${name}`] : [];
  });
  const open = programme.lines.filter(({ reason }) => reason !== undefined).map(({ conveyor }) => conveyor);
  const head = byOutage.length === 0 ? 'No outage is needed.' : `Reline ${list(byOutage)}.`;
  const rest =
    open.length === 0
      ? 'Every accepted risk is kept by what was seen.'
      : `The accepted risk is not kept for ${list(open)}: the table says why.`;
  return isPriced(programme)
    ? `${head} ${rest} Expected cost ${money(programme, programme.expected)} up to the last outage; ${aloneText(programme)}`
    : `${head} ${rest} ${unpricedText(programme)}`;
}

function unpricedText({ plant, currency, problem }: Programme): string {
  const why =
    currency === undefined
      ? `plant ${plant} declares no costs in one currency`
      : missingCostsText(problem.missingCosts ?? []);
  return `Expected costs are not known: ${why}; what is chosen goes by the chances of the limit and of steel.`;
}

function aloneText(programme: Programme): string {
  const difference = programme.expected - programme.expectedAlone;
  const [only, another] = programme.lines;
  const alone =
    only && !another
      ? `what ${only.conveyor} would choose with all crews at hand`
      : 'choosing each conveyor alone';
  if (!programme.aloneFits && difference < 1)
    return `${alone} would not fit the crews, and fitting it costs nothing more.`;
  if (!programme.aloneFits)
    return `${alone} would not fit the crews, and fitting it costs ${money(programme, Math.max(0, difference))} more.`;
  return Math.abs(difference) < 1
    ? `${alone} would come to the same.`
    : `${alone} would come to ${money(programme, programme.expectedAlone)}.`;
}

/** How good the answer is, and what it goes by. */
export function programmeNotes(programme: Programme): readonly string[] {
  const { gap, breachesOverLeast } = programme;
  const least = isPriced(programme) ? 'least cost' : 'smallest chances';
  const written = programme.lines.flatMap(({ choice }) =>
    choice.kind === 'reline' && choice.candidate.job !== undefined ? [choice.candidate.job] : [],
  );
  return [
    gap < 0.0005
      ? `The ${least} possible, proven`
      : `Nothing that keeps as much can cost over ${formatNumber(gap * 100, 1)} % less: proven by a bound, and no better was found`,
    ...(breachesOverLeast > 0 ? ['Whether more risks could be kept is not proven'] : []),
    'Chances and costs are by what was seen, because a look comes first where little was seen',
    'Each conveyor is relined at most once up to the last outage',
    'Crew hours are those of the plan that a work pack prints for the same scope, crews and days, with all crews or with one alone' +
      `${written.length === 0 ? '' : `, and of ${list(written.map((job) => `job ${job}`))} as written`}; ` +
      'what a conveyor costs follows its crew, and its own page reckons with all of them, or with those that its job names; ' +
      'platforms are held from a job’s first hour to its last',
  ];
}

/** `Winter27: Alpha 24.2 of 50 h, Bravo 30.9 of 50 h, platforms 46.9 of 100 h`. */
export function loadText(programme: Programme, index: number): string {
  const load = programme.loads[index];
  if (!load) return '';
  const { outage, used, unitsUsed } = load;
  const crews = [...used].map(
    ([crew, hours]) => `${crew} ${hoursText(hours)} of ${hoursText(outage.hours)} h`,
  );
  const units =
    programme.problem.units > 0
      ? [`platforms ${hoursText(unitsUsed)} of ${hoursText(outage.hours * programme.problem.units)} h`]
      : [];
  return `${outage.name}: ${[...crews, ...units].join(', ')}`;
}

/** What saves nothing is said in one line. */
export function savingTexts(programme: Programme): readonly string[] {
  if (!isPriced(programme)) return helpTexts(programme);
  const useful = programme.savings.flatMap((saving, i) =>
    saving.saves === undefined || Math.abs(saving.saves) >= 1 || saving.helps.length > 0
      ? [savingText(programme, i)]
      : [],
  );
  return useful.length > 0
    ? useful
    : [
        `no further crew, platform or day would save anything${programme.aloneFits ? ': every conveyor has what it would choose alone' : ''}`,
      ];
}

/** Without money only what more would keep can be told. */
function helpTexts({ savings }: Programme): readonly string[] {
  const useful = savings.flatMap(({ what, helps }) =>
    helps.length > 0 ? [`${what} keeps the risk of ${list(helps)}`] : [],
  );
  return useful.length > 0 ? useful : ['no further crew, platform or day would keep a further risk'];
}

function savingText(programme: Programme, index: number): string {
  const saving = programme.savings[index];
  if (!saving) return '';
  const helps = saving.helps.length > 0 ? `, and keeps the risk of ${list(saving.helps)}` : '';
  return `${saving.what} saves ${saving.about ? 'about ' : ''}${saving.saves === undefined ? 'an amount not found in time' : money(programme, saving.saves)}${helps}`;
}

export function noProgrammeText(answer: Extract<ProgrammeAnswer, { kind: 'none' }>): string {
  return `No programme: ${answer.why}.`;
}

function hoursText(hours: number): string {
  return formatNumber(hours, 1);
}
