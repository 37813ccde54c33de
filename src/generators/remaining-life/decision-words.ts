// How the table of decisions reads: the one place from which page, comment, data, lenses and hovers take their words, so that
// they agree. Chances count unseen panels in; what was seen alone stands behind.

import type { ConveyorDecision } from '../../domain/decision/conveyor-decision.js';
import type { OutageDecision } from '../../domain/decision/outage-decision.js';
import type { TwoChances } from '../../domain/decision/two-chances.js';
import { isNow, type OrderCall } from '../../domain/decision/order-call.js';
import type { CalendarDay } from '../../domain/units/calendar.js';
import { amountText, moneyOf } from '../../domain/decision/money.js';
import type { Plant } from '../../domain/model/plant.js';
import { expectedBy, isReline, type DecisionOption } from '../../domain/decision/option.js';
import { percent } from '../../domain/decision/option-setting.js';
import type { ConveyorLife } from './remaining-life.js';
import { pays, roundsOf, type DueLook, type WorthOfLook, type Round } from '../../domain/decision/rounds.js';
import { counted, list } from '../../domain/units/wording.js';
import { date } from './print/wording.js';

/** The first sentence of the report: which conveyors need a decision. */
export function leadSentence(conveyors: readonly ConveyorLife[]): string {
  if (conveyors.length === 0) return 'No conveyor is described.';
  const names = (...levels: readonly ConveyorLife['attention']['level'][]): string[] =>
    conveyors.filter((c) => levels.includes(c.attention.level)).map((c) => c.conveyor.name);
  const past = names('worn through', 'past the limit');
  const late = names('no outage in time');
  const plan = names('reline to plan');
  const look = names('look now', 'not enough seen');
  const verb = (list: readonly string[], one: string, many: string): string =>
    list.length === 1 ? one : many;
  const parts: string[] = [];
  if (past.length > 0) parts.push(`${list(past)} ${verb(past, 'has', 'have')} reached the limit`);
  if (late.length > 0) parts.push(`${list(late)} cannot wait for a planned outage at the risk accepted`);
  if (plan.length > 0)
    parts.push(`${list(plan)} ${verb(plan, 'needs', 'need')} a reline at a planned outage`);
  if (look.length > 0) parts.push(`${list(look)} ${verb(look, 'needs', 'need')} a look`);
  const planned = conveyors.some((c) => c.conveyor.plant.outages.length > 0);
  return parts.length === 0
    ? `No conveyor needs a decision ${planned ? 'before the last planned outage' : 'now'}, as far as it was seen.`
    : `${parts.join('; ')}.`;
}

/** The outage whose chances stand on the first page: the one to reline at, else the last. */
export function shownOutage(life: ConveyorLife): OutageDecision | undefined {
  if (life.worst?.pastLimit) return undefined;
  return life.attention.outage ?? life.decision?.outages.at(-1);
}

/** `68 % by Winter27; of what was seen 34 %; steel 8.5 %`. */
export function riskText(life: ConveyorLife): string {
  const outage = shownOutage(life);
  if (!outage) return '–';
  return (
    `${percent(outage.condemn)} by ${outage.name}${seenText(life.decision, outage)}; ` +
    `steel ${steelText(outage, life.decision)}`
  );
}

/** `100 % (seen < 0.1 %)`: a chance that rests on no look at all never stands alone. */
export function steelText(
  { contact, contactSeen }: Pick<TwoChances, 'contact' | 'contactSeen'>,
  decision: ConveyorDecision | undefined,
): string {
  return inOne(chanceBoth(decision, contact, contactSeen));
}

/** For a narrow cell: what was seen stands beside it where nobody would accept the one and everybody the other. */
export function steelInShort(
  { contact, contactSeen }: Pick<TwoChances, 'contact' | 'contactSeen'>,
  decision: ConveyorDecision,
): string {
  const { contact: accepted } = decision.accepted;
  const apart = contact > 0.5 && contactSeen !== undefined && contactSeen <= accepted;
  return apart ? steelText({ contact, contactSeen }, decision) : percent(contact);
}

/** A number with unseen panels counted in, and of what was seen alone; undefined where the two read alike. */
export interface Twofold {
  readonly all: string;
  readonly seen: string | undefined;
}

/** `100 % (seen < 0.1 %)` */
function inOne({ all, seen }: Twofold): string {
  return seen === undefined ? all : `${all} (seen ${seen})`;
}

export function chanceBoth(
  decision: Pick<ConveyorDecision, 'panels' | 'panelsSeen'> | undefined,
  counted: number,
  seen: number | undefined,
): Twofold {
  const all = percent(counted);
  const alone = seen === undefined ? undefined : percent(seen);
  const alike = !decision || decision.panels === decision.panelsSeen || alone === all;
  return { all, seen: alike ? undefined : alone };
}

/** The decision goes by what was seen, and panels that nobody has seen are left out of it. */
function bySeenAlone({ goesBy, panels, panelsSeen }: ConveyorDecision): boolean {
  return goesBy === 'what was seen' && panels > panelsSeen;
}

/** Only where it differs: with every panel seen there is nothing to tell apart. */
export function seenText(decision: ConveyorDecision | undefined, chances: TwoChances): string {
  return chances.condemnSeen === undefined || !decision || decision.panels === decision.panelsSeen
    ? ''
    : `; of what was seen ${percent(chances.condemnSeen)}`;
}

/** `now (was 2026-11-09)`, `2027-02-01`, `on the shelf`, or a dash where nothing is to be ordered. */
export function orderText({ order }: Pick<ConveyorLife, 'order'>): string {
  return order ? callText(order) : '–';
}

export function callText(call: OrderCall): string {
  switch (call.kind) {
    case 'on the shelf':
      return 'on the shelf';
    case 'ordered':
      return `ordered, there on ${date(call.arrives)}`;
    case 'no lead time':
      return 'no lead time declared';
    case 'order': {
      const { day, latest } = call;
      if (!isNow(call)) return date(day);
      return latest !== undefined && latest < day ? `now (was ${date(latest)})` : 'now';
    }
  }
}

/** For a column of days; undefined where nothing is to be ordered, or nothing says by when. */
export function orderDay(call: OrderCall | undefined): CalendarDay | undefined {
  return call?.kind === 'order' ? call.day : undefined;
}

/** The day before which the whole conveyor cannot be relined, and why. */
export function earliestText(life: ConveyorLife): string {
  const earliest = life.decision?.earliest;
  const whole = life.decision?.scopes?.works.at(-1)?.work;
  if (whole && !whole.buildable) return 'no order of work can be built';
  if (!earliest) return whole ? 'no lead time declared' : '–';
  return `${date(earliest.day)}, ${earliest.why}${expeditedText(life.decision)}`;
}

/** `; expedited from 2026-11-09`, where that is sooner; else nothing. */
function expeditedText(decision: Pick<ConveyorDecision, 'expedited'> | undefined): string {
  return decision?.expedited === undefined ? '' : `; expedited from ${date(decision.expedited)}`;
}

/** `Look again by 2026-10-30`, `now`, or a dash. */
export function lookDay(life: ConveyorLife): string {
  const look = life.model?.look;
  switch (look?.kind) {
    case 'now':
      return 'now';
    case 'by':
      return date(look.day);
    default:
      return '–';
  }
}

export function acceptedText({ accepted }: ConveyorDecision): string {
  const none = (risk: number): string => (risk === 0 ? '0 %' : percent(risk));
  return `limit ${none(accepted.condemn)}, steel ${none(accepted.contact)}${accepted.contactAssumed ? ' (assumed)' : ''}`;
}

export function passedText({ passed, passedSeen, panels, panelsSeen }: ConveyorDecision): string {
  const seen =
    panels === panelsSeen
      ? ''
      : `; by what was seen ${passedSeen === undefined ? 'beyond 40 years' : date(passedSeen)}`;
  return passed === undefined ? 'beyond 40 years' : `${date(passed.day)} (${passed.by})${seen}`;
}

export function currencyOf({ money }: ConveyorDecision): string | undefined {
  return money.kind === 'money' ? money.money.currency : undefined;
}

export function moneyText(decision: ConveyorDecision, amount: number | undefined): string {
  const currency = currencyOf(decision);
  return amount === undefined || currency === undefined ? 'not known' : amountText(amount, currency);
}

/** `cost unplanned reline` is not declared, nor what would stand for it. */
export function missingCostsText(missing: readonly string[]): string {
  const names = list(missing.map((each) => `\`${each}\``));
  return `${names} ${missing.length === 1 ? 'is' : 'are'} not declared, nor the price of every liner and the rate of every crew, which would stand for it`;
}

/** Why no option has a price. */
export function noMoneyText({ money, conveyor, missingCosts }: ConveyorDecision): string | undefined {
  switch (money.kind) {
    case 'money':
      return missingCosts.length === 0
        ? undefined
        : `Expected costs are not known: ${missingCostsText(missingCosts)}; options are compared by their chances alone.`;
    case 'no costs':
      return `Plant ${conveyor.plant.name} declares no costs, so options are compared by their chances alone.`;
    case 'currencies':
      return (
        `Costs of plant ${conveyor.plant.name} are stated in ${money.currencies.join(' and ')}: ` +
        'sums of different currencies mean nothing, so no costs are compared.'
      );
  }
}

/** Limit and steel until the option is done, and of what was seen alone. */
export function optionChances(option: DecisionOption, decision: ConveyorDecision): string {
  const { condemn, contact, condemnSeen, contactSeen } = option;
  if (condemn === undefined || contact === undefined) return '–';
  return `${inOne(chanceBoth(decision, condemn, condemnSeen))}, steel ${steelText({ contact, contactSeen }, decision)}`;
}

/** `64410 EUR (seen 1510 EUR)`: with the chance of steel of all panels, and of those seen. */
export function optionExpected(option: DecisionOption, decision: ConveyorDecision): string {
  return inOne(expectedBoth(option, decision));
}

export function expectedBoth(option: DecisionOption, decision: ConveyorDecision): Twofold {
  const all = moneyText(decision, option.expected);
  const seen = moneyText(decision, option.expectedSeen);
  const alike = option.expectedSeen === undefined || decision.panels === decision.panelsSeen || seen === all;
  return { all, seen: alike ? undefined : seen };
}

/** Why waiting may look cheaper than every reline though it passes the risk; undefined where it does not. */
export function cheapWaitingText(decision: ConveyorDecision): string | undefined {
  const { options, goesBy } = decision;
  const nothing = options.find(({ kind }) => kind === 'do nothing');
  const waiting = nothing && expectedBy(goesBy, nothing);
  if (waiting === undefined || nothing?.within !== false) return undefined;
  const relines = options.flatMap((option) =>
    isReline(option) && option.obstacle === undefined ? (expectedBy(goesBy, option) ?? []) : [],
  );
  const least = Math.min(...relines);
  if (relines.length === 0 || waiting >= least) return undefined;
  const [own, others] = [moneyText(decision, waiting), moneyText(decision, least)];
  if (own === others) return undefined;
  return (
    `Doing nothing until ${date(nothing.day)} is expected to cost ${own}` +
    `${bySeenAlone(decision) ? ' by what was seen' : ''}, less than any reline ` +
    `(${others} at least), because only steel touched by then costs money here: a limit that is passed costs nothing, nor ` +
    'does the reline that is still to come after that day. It passes the accepted risk, so it stands last whatever it costs.'
  );
}

/** What is left where nothing can be done: why, and what would make something possible. */
export function ruledOutText({ ruledOut }: ConveyorDecision): string | undefined {
  if (!ruledOut) return undefined;
  const { waiting, why, remedies } = ruledOut;
  return (
    `Nothing that was tried can be done, and waiting until ${date(waiting.day)} passes the limit with a chance of ` +
    `${percent(waiting.condemn ?? 1)}: ${why.join('; ')}.` +
    (remedies.length === 0 ? '' : ` What would make it possible: ${remedies.join(' ')}`)
  );
}

const mostOnFirstPage = 4;

/** The first of them, so that their numbers are those of the conveyor's page without a gap. */
export function firstOfAll(options: readonly DecisionOption[]): readonly DecisionOption[] {
  return options.slice(0, mostOnFirstPage);
}

/** How many more stand on the conveyor's page; undefined where none does. */
export function moreOptionsText({ options, conveyor }: ConveyorDecision): string | undefined {
  const rest = options.slice(mostOnFirstPage);
  if (rest.length === 0) return undefined;
  const not = rest.filter(({ obstacle }) => obstacle !== undefined).length;
  const can = rest.length - not;
  const last = rest[can - 1];
  const waiting =
    last?.kind === 'do nothing' ? ` (the last of them, ${options.length - not}: ${last.what})` : '';
  const parts = [
    ...(can > 0 ? [`${counted(can, 'more option')}${waiting}`] : []),
    ...(not > 0 ? [`${not} that cannot be done`] : []),
  ];
  return `${parts.join(', and ')}: on the page of ${conveyor.name}, with the same numbers.`;
}

/** What the numbers of the options mean. */
export function orderOfOptionsText(decision: ConveyorDecision): string {
  const priced = noMoneyText(decision) === undefined;
  const seen = bySeenAlone(decision) ? ' of what was seen (in brackets)' : '';
  return (
    'In order: what keeps the risks, what does not, a look that hardly helps, waiting; ' +
    (priced
      ? `among these by expected cost${seen}.`
      : `among these by the chances${seen}, planned stops first, the sooner, the smaller work.`) +
    belowZeroText(decision) +
    exceededText(decision)
  );
}

/** Whoever wrote a price and reads another is told which counts, and why. */
function exceededText(decision: ConveyorDecision): string {
  return decision.exceededCosts
    .map(
      ({ item, declared, reckoned }) =>
        ` ${item === 'reline' ? 'A reline' : 'An unplanned reline'} of the whole is written down as ` +
        `${moneyText(decision, declared)}, and its liner and crews alone come to ` +
        `${moneyText(decision, reckoned)}: the larger counts.`,
    )
    .join('');
}

/** Only a change of the screw in the same stop spares something later: who reads a negative cost is told what. */
function belowZeroText({ options }: Pick<ConveyorDecision, 'options'>): string {
  return options.some(({ expected = 0 }) => expected < 0)
    ? ' An expected cost below 0: a change of the screw by itself later is spared, and what that would cost is taken off.'
    : '';
}

export function unseenText({ panels, panelsSeen }: ConveyorDecision): string {
  return panelsSeen === panels
    ? `all ${counted(panels, 'panel')} seen`
    : `${panelsSeen} of ${counted(panels, 'panel')} seen`;
}

/** Rounds of the looks that are due, by the day each is due and what each is worth. */
export function lookRounds(lives: readonly ConveyorLife[]): readonly Round[] {
  return roundsOf(
    lives.flatMap((life) => {
      const look = life.model?.look;
      const day = look?.kind === 'by' ? look.day : look?.kind === 'now' ? life.decision?.asOf : undefined;
      return day === undefined ? [] : [{ conveyor: life.conveyor, day, worth: worthOf(life) }];
    }),
  );
}

/** What the next look is worth: by how much its best reading narrows the date, and what it saves where something hangs on it. */
function worthOf({ model, decision, points }: ConveyorLife): WorthOfLook {
  const never = points.some(({ state }) => state === 'none' || state === 'not seen');
  const best = Math.max(0, ...(model?.lookAt ?? []).map(({ share }) => share));
  const first = decision?.options.find(({ kind }) => kind === 'look first');
  const unseen = model?.look.kind === 'now' && model.look.because === 'panels never seen';
  return { narrows: never || unseen ? 1 : best, saves: first?.saves, reassures: first?.reassures };
}

/** `narrows the date by 34 %, saves 1200 EUR`; undefined where nothing is known of it. */
export function worthText({ conveyor, worth }: DueLook): string {
  const parts = [
    worth.narrows >= 1
      ? 'places never seen'
      : worth.narrows >= 0.005
        ? `narrows the date by ${percent(worth.narrows)}`
        : 'tells little',
    ...(worth.reassures === undefined ? [] : [`may wait after it with ${percent(worth.reassures)}`]),
    ...(pays(worth) ? [`expected to save ${moneyIn(conveyor.plant, worth.saves ?? 0)}`] : []),
  ];
  return parts.join(', ');
}

function moneyIn(plant: Plant, amount: number): string {
  const money = moneyOf(plant);
  return money.kind === 'money' ? amountText(amount, money.money.currency) : '';
}

function roundText({ by, access, units, looks }: Round, number: number): string {
  const names = looks.map((look) => `${look.conveyor.name} (${worthText(look)})`);
  const how = units.length > 0 ? `with ${list(units, 'or')}` : `from ${access}`;
  return `by ${date(by)} ${how}: ${list(names)}; sheets with \`troughline sheet round${number === 1 ? '' : number}\``;
}

/** All rounds in a sentence each, the soonest first; empty on the page of one conveyor. */
export function roundTexts(lives: readonly ConveyorLife[]): readonly string[] {
  const rounds = lives.length > 1 ? lookRounds(lives) : [];
  return rounds.map((round, i) => roundText(round, i + 1));
}
