// What could be done about a conveyor? Every way is put down with its day, both risks until then, its cost and its needs:
// look first, reline at each outage that the liner can reach, only what governs, stop unplanned on the first possible day,
// expedite, run less, turn or exchange panels, do nothing. Ranked by option.ts; nothing is left out because it is bad.

import { unitOfMachine } from '../model/unit-of-machine.js';
import { metresWords, fineWords } from '../units/length-words.js';
import { counted, list, lowered } from '../units/wording.js';
import { addDays, formatDay, type CalendarDay } from '../units/calendar.js';
import { formatNumber } from '../units/format.js';
import { exchangeFor, movedReachedBy } from './moved-panels.js';
import { amountText } from './money.js';
import { withNewScrew, type NewScrew } from './new-screw.js';
import { ranked, type DecisionOption } from './option.js';
import { contactCost, percent, reckon, stopCost, type OptionSetting } from './option-setting.js';
import type { ScopeWork } from './scope.js';
import type { Supply } from './supply.js';
import { chancesOn, either, goingBy, keepsRisks, type RiskChances, type TwoChances } from './two-chances.js';
import { valueOfALook } from './value-of-a-look.js';
import { dayPassed, type Chances, type PanelOutlook } from './wear-outlook.js';
import { whatStays } from './what-stays.js';
import { staysText } from './stays-words.js';

/** `screw`: where a change of it is due within the horizon. */
export function optionsOf(setting: OptionSetting, screw?: NewScrew): readonly DecisionOption[] {
  const planned = atOutages(setting);
  const relines = [
    ...planned,
    ...withNewScrew(setting, screw, planned),
    ...unplannedStops(setting),
    ...partFromStock(setting),
  ];
  const others = [
    ...lowerDuty(setting, relines),
    ...turned(setting),
    ...exchanged(setting),
    doNothing(setting),
  ];
  return ranked([...lookFirst(setting, [...relines, ...others]), ...relines, ...others], setting.goesBy);
}

function chances(
  { outlook, accepted, goesBy }: OptionSetting,
  day: CalendarDay,
): TwoChances & Pick<DecisionOption, 'within'> {
  const both = chancesOn(outlook, day);
  return { ...both, within: keepsRisks(goingBy(goesBy, both), accepted) };
}

/**
 * Where the accepted risks do not hold until then by what was seen, somebody has to answer for it by name; where only what nobody
 * has seen stands against it, it has to be looked at.
 */
function signature(setting: OptionSetting, day: CalendarDay): readonly string[] {
  const { accepted, goesBy, outlook } = setting;
  const { condemn, contact, condemnSeen, contactSeen, within } = chances(setting, day);
  if (goesBy === 'all panels' || condemnSeen === undefined || contactSeen === undefined)
    return within
      ? []
      : [`somebody who signs for ${percent(condemn)} of the limit and ${percent(contact)} of steel`];
  const look = keepsRisks({ condemn, contact }, accepted) ? [] : lookAtUnseen(outlook);
  return within
    ? look
    : [
        `somebody who signs for ${percent(condemnSeen)} of the limit and ${percent(contactSeen)} of steel by what was seen`,
        ...look,
      ];
}

function lookAtUnseen({ panels }: OptionSetting['outlook']): readonly string[] {
  const unseen = panels.filter(({ seen }) => !seen).length;
  return unseen === 0
    ? []
    : [`a look at the ${unseen === 1 ? 'panel' : `${unseen} panels`} that nobody has seen`];
}

/** The chances until the work, and of what it leaves lying: the risks have to hold for both. */
function chancesOf(
  setting: OptionSetting,
  scope: ScopeWork,
  day: CalendarDay,
): TwoChances & Pick<DecisionOption, 'within' | 'stays'> {
  const both = chances(setting, day);
  const stays = whatStays(setting, scope, day);
  return { ...both, ...(stays && { stays }), within: both.within && stays?.keeps !== false };
}

/** What a part leaves lying, until when, and who has to answer for it. */
function rest({ stays }: Pick<DecisionOption, 'stays'>): readonly string[] {
  if (!stays) return [];
  return [`${staysText(stays)}${stays.keeps ? '' : ', which somebody has to sign for'}`];
}

/** Why no order of work can be built, and what would mend it. */
function builds(scope: ScopeWork): Pick<DecisionOption, 'obstacle' | 'remedies'> {
  const { work } = scope;
  return work.buildable
    ? { obstacle: undefined }
    : {
        obstacle:
          work.obstacles.length > 0 ? work.obstacles.join('; ') : 'the planner finds no order that closes it',
        remedies: work.remedies,
      };
}

function work({ conveyor }: OptionSetting, { work }: ScopeWork): readonly string[] {
  const team = work.together;
  return [
    `${formatNumber(team.duration, 1)} h of ${team.crews.join(' and ') || 'a crew'}${team.units.length > 0 ? ` with ${team.units.join(' and ')}` : ''}` +
      (team.job === undefined ? '' : `, as job ${team.job} is written`),
    `${counted(work.panels, 'panel')}, ${metresWords(work.metres, unitOfMachine(conveyor))}`,
    ...(work.cutToFit.length === 0
      ? []
      : [
          `the closing panel of ${list(work.cutToFit.map((run) => `run ${run}`))} ` +
            'cut to the gap as measured, because no break there takes up the length errors',
        ]),
  ];
}

/** Hours are those of work that begins on that day. */
function onDay(scope: ScopeWork, day: CalendarDay): ScopeWork {
  return { ...scope, work: scope.work.at(day) };
}

/** Every outage to come, for every scope: ordered today, by the cheapest way that is in time. */
function atOutages(setting: OptionSetting): readonly DecisionOption[] {
  return setting.scopes.works.flatMap((scope) =>
    setting.outages.map((outage): DecisionOption => {
      const day = outage.from.day;
      const begun = onDay(scope, day);
      const ways = setting.supplies.get(scope)?.ways ?? [];
      const [supply] = ways.filter((way) => way.day <= day).sort((a, b) => a.price - b.price);
      const sooner = supply?.by === 'expedited';
      const told = chancesOf(setting, scope, day);
      const extra = supply && sooner ? { amount: supply.price, words: 'expedited delivery' } : undefined;
      return {
        kind: sooner ? 'expedite' : scope.work.whole ? 'planned reline' : 'part at an outage',
        what: `${sooner ? 'Expedite the liner and reline' : 'Reline'} ${scope.work.scope} at ${outage.name} (${formatDay(day)})`,
        day,
        outage: outage.name,
        scope: scope.work.scope,
        ...told,
        ...(!scope.work.buildable ? builds(scope) : supply ? { obstacle: undefined } : tooLate(ways, day)),
        ...reckon(setting, { day, scope: begun, planned: true, extra }),
        needs: [
          ...rest(told),
          ...(supply ? [supply.why] : []),
          ...work(setting, begun),
          ...signature(setting, day),
        ],
      };
    }),
  );
}

function tooLate(
  ways: readonly Supply[],
  day: CalendarDay,
): Required<Pick<DecisionOption, 'obstacle' | 'remedies'>> {
  const usual = ways.find(({ by }) => by !== 'expedited');
  return usual
    ? {
        obstacle: `the ${usual.waitsForFixings ? 'fixings arrive' : 'liner arrives'} on ${formatDay(usual.day)} (${usual.why})`,
        remedies: [
          `Find a supply that is there by ${formatDay(day)} (\`expedited lead time liner …\`), or a later outage.`,
        ],
      }
    : noSupply;
}

const noSupply = {
  obstacle: 'no lead time for the liner is declared, and the shelf does not cover it',
  remedies: ['Ask the maker and declare `lead time liner …`, or count what lies on the shelf.'],
};

/** On the first day on which the whole liner can be there, by the usual way and by the expedited one. */
function unplannedStops(setting: OptionSetting): readonly DecisionOption[] {
  const whole = setting.scopes.works.at(-1);
  if (!whole) return [];
  const ways = (setting.supplies.get(whole)?.ways ?? []).filter(
    ({ by }) => by !== 'shelf' || whole.work.whole,
  );
  const stops = ways.map((way) => stopAt(setting, whole, way));
  return stops.length > 0
    ? stops
    : [
        {
          kind: 'unplanned stop',
          what: 'Stop unplanned and reline the whole conveyor',
          day: undefined,
          outage: undefined,
          condemn: undefined,
          contact: undefined,
          condemnSeen: undefined,
          contactSeen: undefined,
          within: false,
          ...noSupply,
          cost: undefined,
          expected: undefined,
          needs: [],
          working: [],
        },
      ];
}

function stopAt(setting: OptionSetting, whole: ScopeWork, way: Supply): DecisionOption {
  const day = way.day;
  const scope = onDay(whole, day);
  const inside = setting.outages.find((outage) => outage.from.day <= day && outage.to.day >= day);
  const extra = way.price > 0 ? { amount: way.price, words: 'expedited delivery' } : undefined;
  return {
    kind: way.by === 'expedited' ? 'expedite' : 'unplanned stop',
    what: `${way.by === 'expedited' ? 'Expedite the liner, stop' : 'Stop'} unplanned on ${formatDay(day)} and reline ${scope.work.scope}`,
    day,
    outage: inside?.name,
    ...chances(setting, day),
    ...builds(scope),
    ...reckon(setting, { day, scope, planned: inside !== undefined, extra }),
    needs: [
      way.why,
      ...work(setting, scope),
      ...(inside ? [] : ['a stop that is not planned']),
      ...signature(setting, day),
    ],
  };
}

/** Only what governs, with what lies on the shelf. */
function partFromStock(setting: OptionSetting): readonly DecisionOption[] {
  return setting.scopes.works
    .filter(({ work: each }) => !each.whole)
    .map((scope): DecisionOption => {
      const supplies = setting.supplies.get(scope);
      const shelf = supplies?.ways.find(({ by }) => by === 'shelf');
      const day = shelf?.day ?? setting.outlook.asOf;
      const begun = onDay(scope, day);
      const told = chancesOf(setting, scope, day);
      return {
        kind: 'part from stock',
        what: `Stop unplanned and reline only ${scope.work.scope} from the shelf`,
        day: shelf && day,
        outage: undefined,
        ...told,
        ...(!scope.work.buildable
          ? builds(scope)
          : { obstacle: shelf ? undefined : (supplies?.shelf ?? 'nothing is on the shelf') }),
        ...reckon(setting, { day, scope: begun, planned: false }),
        needs: [
          ...rest(told),
          ...(shelf ? [shelf.why] : []),
          ...work(setting, begun),
          'a stop that is not planned',
        ],
      };
    });
}

/** Run so much less that both risks just hold at the first outage at which it can be relined. */
function lowerDuty(setting: OptionSetting, relines: readonly DecisionOption[]): readonly DecisionOption[] {
  const { outlook, money } = setting;
  const target = relines.find(isPlannedWhole);
  if (target?.day === undefined || target.within) return [];
  // Where what nobody has seen is beyond the risk today, less running can only keep what was seen within it.
  const counted = lastWithin(setting, outlook.counted, target.day);
  const last = counted ?? (outlook.seen && lastWithin(setting, outlook.seen, target.day));
  const full = outlook.hoursBy(target.day);
  const wear = outlook.exposureBy(target.day);
  const share = last === undefined || !(wear > 0) ? 0 : outlook.exposureBy(last) / wear;
  // What was seen lasts that long anyway: running less would not help against what nobody has seen.
  if (share >= 1) return [];
  const lost = full * (1 - share);
  const extra =
    money?.downtime === undefined
      ? undefined
      : { amount: lost * money.downtime, words: `${formatNumber(lost, 0)} running hours not run` };
  const dear = (extra?.amount ?? 0) > (contactCost(setting) ?? Infinity);
  const days = Math.max(1, target.day - outlook.asOf);
  const weekly = (hours: number): string => formatNumber((hours * 7) / days, 0);
  const until = target.outage ?? formatDay(target.day);
  const whole = setting.scopes.works.at(-1);
  const scope = whole && onDay(whole, target.day);
  const { working, cost, expected, expectedSeen } = reckon(setting, {
    day: target.day,
    asWornOn: last,
    scope,
    planned: true,
    extra,
  });
  return [
    {
      kind: 'lower duty',
      what:
        last === undefined
          ? `Run less until ${until}`
          : `Run ${weekly(full * share)} h a week instead of ${weekly(full)} until ${until}, and reline then`,
      day: target.day,
      outage: target.outage,
      ...chances(setting, last ?? outlook.asOf),
      within: last !== undefined && (counted !== undefined || setting.goesBy === 'what was seen'),
      obstacle:
        last === undefined
          ? 'an accepted risk is passed already: no duty is low enough'
          : dear
            ? `the ${formatNumber(lost, 0)} running hours given up would cost more than steel that is touched does`
            : undefined,
      // What no duty is low enough for, or nobody would pay, has no price.
      ...(extra === undefined || last === undefined || dear
        ? { cost: undefined, expected: undefined, expectedSeen: undefined }
        : { cost, expected, expectedSeen }),
      needs: [
        'somewhere else for what it carries',
        ...(counted === undefined
          ? ['a look at what nobody has seen: only what was seen is kept within the risk']
          : []),
        ...(scope ? work(setting, scope) : []),
      ],
      working: [
        ...(last === undefined
          ? []
          : [
              'solved for: wear follows running, ' +
                `so the chances of ${formatDay(last)} are kept until ${formatDay(target.day)} with ` +
                `${formatNumber(share * 100, 0)} % of the hours`,
            ]),
        ...working,
      ],
      duty: share,
    },
  ];
}

function isPlannedWhole({ kind, obstacle }: DecisionOption): boolean {
  return kind === 'planned reline' && obstacle === undefined;
}

function isPlannedPart({ kind, obstacle }: DecisionOption): boolean {
  return kind === 'part at an outage' && obstacle === undefined;
}

/** The last day on which both accepted risks still hold, up to a day; undefined where they are passed today. */
function lastWithin(
  { outlook, accepted }: OptionSetting,
  { condemnBy, contactBy }: Chances,
  until: CalendarDay,
): CalendarDay | undefined {
  const passed = [
    dayPassed(condemnBy, accepted.condemn, outlook.asOf, until),
    dayPassed(contactBy, accepted.contact, outlook.asOf, until),
  ].flatMap((day) => day ?? []);
  if (passed.length === 0) return until;
  const first = passed.reduce((a, b) => (b < a ? b : a));
  return first <= outlook.asOf ? undefined : addDays(first, -1);
}

/** Read the panels that matter today, decide then: wait for the outage if the look reassures, else take the next best. */
function lookFirst(setting: OptionSetting, others: readonly DecisionOption[]): readonly DecisionOption[] {
  const { outlook, accepted, money } = setting;
  const target = others.find(isPlannedWhole) ?? others.find(isPlannedPart);
  // Where only what nobody has seen stands against it, the look is what the plan asks for.
  const { condemn = 1, contact = 1 } = target ?? {};
  if (target?.day === undefined || keepsRisks({ condemn, contact }, accepted)) return [];
  const value = valueOfALook({ outlook, accepted, until: target.day, gauge: setting.gauge });
  const best = ranked(others, setting.goesBy).find(
    ({ within, obstacle, kind }) => within && obstacle === undefined && kind !== 'do nothing',
  );
  const next = best ?? target;
  const inspection = money?.inspection;
  const damage = contactCost(setting);
  const expectedOf = (
    first: number | undefined,
    steel: number | undefined,
    otherwise: number | undefined,
  ): { readonly waits: number; readonly expected: number } | undefined => {
    if (inspection === undefined || first === undefined || otherwise === undefined || damage === undefined)
      return undefined;
    const waits = first - Math.max(0, (steel ?? 0) - accepted.contact) * damage;
    return {
      waits,
      expected: inspection + value.reassures * waits + (1 - value.reassures) * otherwise,
    };
  };
  const reckoned = expectedOf(target.expected, target.contact, next.expected);
  const { waits, expected } = reckoned ?? {};
  const seen = expectedOf(target.expectedSeen, target.contactSeen, next.expectedSeen)?.expected;
  const say = (amount: number): string => amountText(amount, money?.currency ?? '');
  const places = value.panels.slice(0, 6).map(({ place }) => place);
  const more = value.panels.length > 6 ? ` and ${value.panels.length - 6} more` : '';
  return [
    {
      kind: 'look first',
      what: `Look now, then decide: with a chance of ${percent(value.reassures)} the look shows that it may wait for ${target.outage ?? formatDay(target.day)}`,
      day: outlook.asOf,
      outage: undefined,
      ...chances(setting, outlook.asOf),
      // Nothing can be done sooner than today, and a look risks nothing more than today's chances.
      within: true,
      obstacle: undefined,
      cost: inspection,
      expected,
      expectedSeen: seen,
      needs: [`a reading at ${places.join(', ')}${more}`, `if it does not reassure: ${lowered(next.what)}`],
      working: [
        `before the look the chance of the limit by ${formatDay(target.day)} is ` +
          `${percent(outlook.counted.condemnBy(target.day))} (${percent(value.before.condemn)} by panels ` +
          `taken as independent); readings are taken to be right to ± ${fineWords(setting.gauge, unitOfMachine(setting.conveyor))}; ` +
          'each possible reading gives a new chance by Bayes’ rule',
        ...(expected === undefined
          ? []
          : [
              `expected: the look ${say(inspection ?? 0)}, then with ${percent(value.reassures)} waiting for the outage ` +
                `(${say(waits ?? 0)}), else the next best (${say(next.expected ?? 0)})`,
            ]),
      ],
      reassures: value.reassures,
      saves: savedBy(setting, next, { expected, expectedSeen: seen }),
    },
  ];
}

/** Expected money that the look saves against the next best without one, by the panels that the decision goes by. */
function savedBy(
  { goesBy }: OptionSetting,
  next: Pick<DecisionOption, 'expected' | 'expectedSeen'>,
  look: Pick<DecisionOption, 'expected' | 'expectedSeen'>,
): number | undefined {
  const bySeen =
    goesBy === 'what was seen' && next.expectedSeen !== undefined && look.expectedSeen !== undefined;
  const [without, withLook] = bySeen
    ? [next.expectedSeen, look.expectedSeen]
    : [next.expected, look.expected];
  return without === undefined || withLook === undefined ? undefined : without - withLook;
}

/** End for end, where the liner allows it and the other side was seen. */
function turned(setting: OptionSetting): readonly DecisionOption[] {
  const { conveyor, scopes } = setting;
  const [governing] = scopes.governing;
  if (!governing || !(governing.liner ?? conveyor.liner).turning) return [];
  const what = `Stop and turn the panel of ${governing.place} end for end`;
  if (!governing.otherSide)
    return [
      {
        ...impossible('turn', what),
        obstacle: `nothing was seen on the other side of that panel, so nobody knows what would come to lie under the screw`,
        needs: ['a reading on the other side'],
      },
    ];
  const after = moved(governing.otherSide, governing.life, setting);
  return [movedOption(setting, 'turn', what, [governing], after)];
}

/** With the panel of the same run and length that lasts longest. */
function exchanged(setting: OptionSetting): readonly DecisionOption[] {
  const { outlook, scopes } = setting;
  const [governing] = scopes.governing;
  if (!governing) return [];
  const other = exchangeFor(governing, outlook.panels);
  if (!other) return [];
  const what = `Stop and exchange the panel of ${governing.place} for that of ${other.place}`;
  const [here, there] = [
    moved(other.life, governing.life, setting),
    moved(governing.life, other.life, setting),
  ];
  return [movedOption(setting, 'exchange', what, [governing, other], eitherOf(here, there))];
}

/** Chances of moved panels by the outage after next, from today. */
function moved(
  from: PanelOutlook['life'],
  to: PanelOutlook['life'],
  { outlook, scopes }: OptionSetting,
): RiskChances {
  const coming = outlook.exposureBy(scopes.until);
  return {
    condemn: movedReachedBy(from, to, 'limit')(coming),
    contact: movedReachedBy(from, to, 'through')(coming),
  };
}

function eitherOf(a: RiskChances, b: RiskChances): RiskChances {
  return { condemn: either(a.condemn, b.condemn), contact: either(a.contact, b.contact) };
}

function movedOption(
  setting: OptionSetting,
  kind: 'turn' | 'exchange',
  what: string,
  panels: readonly PanelOutlook[],
  after: RiskChances,
): DecisionOption {
  const { outlook, accepted, money, scopes, goesBy } = setting;
  const { until } = scopes;
  const withRest = ({ condemnBy, contactBy }: Chances): RiskChances =>
    eitherOf(after, { condemn: condemnBy(until), contact: contactBy(until) });
  const { condemn, contact } = withRest(outlook.rest(panels));
  const seen = withRest(outlook.restSeen(panels));
  const then = { condemn, contact, condemnSeen: seen.condemn, contactSeen: seen.contact };
  const damage = contactCost(setting);
  // What has to come off to get at a panel is what a reline of it would open; only the liner itself is not bought.
  const scope = scopes.works[0] && onDay(scopes.works[0], outlook.asOf);
  const stop = scope && stopCost(setting, scope);
  const labour = scope && money?.labour(scope.work.together.crews, scope.work.together.duration);
  const cost = stop === undefined || labour === undefined ? undefined : stop + labour;
  return {
    kind,
    what,
    day: outlook.asOf,
    outage: undefined,
    ...chances(setting, outlook.asOf),
    within: keepsRisks(goingBy(goesBy, then), accepted),
    obstacle: undefined,
    cost,
    expected: cost === undefined || damage === undefined ? undefined : cost + contact * damage,
    expectedSeen: cost === undefined || damage === undefined ? undefined : cost + seen.contact * damage,
    needs: [
      `then, until ${formatDay(until)}: limit ${percent(condemn)}, steel ${percent(contact)}`,
      'a stop that is not planned',
      ...(scope ? work(setting, scope) : []),
    ],
    working: [
      `chances until ${formatDay(until)}: ` +
        'a panel that has used the share x/T of its life at one place has (1 − x/T) of the life of the ' +
        'other place left there; the rest of the conveyor as it is',
      ...(cost === undefined || !money
        ? []
        : [
            `crews ${amountText(labour ?? 0, money.currency)}, downtime ${amountText(stop ?? 0, money.currency)}`,
          ]),
    ],
  };
}

function doNothing(setting: OptionSetting): DecisionOption {
  const { horizon, money } = setting;
  const damage = contactCost(setting);
  const both = chances(setting, horizon);
  return {
    kind: 'do nothing',
    what: `Do nothing until ${formatDay(horizon)}`,
    day: horizon,
    outage: undefined,
    ...both,
    obstacle: undefined,
    cost: money && 0,
    expected: damage === undefined ? undefined : both.contact * damage,
    expectedSeen: damage === undefined ? undefined : (both.contactSeen ?? both.contact) * damage,
    needs: signature(setting, horizon),
    working:
      damage === undefined || !money
        ? []
        : [
            `expected: steel with a chance of ${percent(both.contact)}, ` +
              `which would cost ${amountText(damage, money.currency)} (unplanned reline, repair of the trough, ` +
              'downtime); a limit passed without steel touched costs nothing here, which is no reason to pass it',
          ],
  };
}

function impossible(kind: DecisionOption['kind'], what: string): DecisionOption {
  return {
    kind,
    what,
    day: undefined,
    outage: undefined,
    condemn: undefined,
    contact: undefined,
    condemnSeen: undefined,
    contactSeen: undefined,
    within: false,
    obstacle: '',
    cost: undefined,
    expected: undefined,
    needs: [],
    working: [],
  };
}
