// Wear, life and decisions.

import { symbols, type Formula } from '../formula.js';

const api =
  'API 570 and API 510, remaining life of thinning walls (method only; the limits are those declared for the liner)';

export const wearFormulas = [
  {
    id: 'exposure',
    title: 'Exposure',
    formula: 'x = Σ (meter taken out − meter put in) + meter now − meter when fitted',
    symbols: symbols(['x h', 'running hours on this liner since it was fitted']),
    source: 'Bookkeeping of hour meters',
    standing: 'derived',
    note:
      'Meter changes are joined. Between records a straight line is taken; ' +
      'after the newest record the duty in force. ' +
      'Where wear is declared to follow tonnes, tonnes stand for hours throughout.',
  },
  {
    id: 'long-term-rate',
    title: 'Long-term wear rate',
    formula: 'LT = (t₀ − t) / x',
    symbols: symbols(
      ['LT mm/h', 'long-term rate'],
      ['t₀ mm', 'thickness when fitted'],
      ['t mm', 'last thickness measured'],
      ['x h', 'exposure at the last reading'],
    ),
    source: api,
    standing: 'published',
  },
  {
    id: 'short-term-rate',
    title: 'Short-term wear rate',
    formula: 'ST = (t₁ − t) / Δx',
    symbols: symbols(
      ['ST mm/h', 'short-term rate'],
      ['t₁ mm', 'last thickness but one'],
      ['t mm', 'last thickness'],
      ['Δx h', 'exposure between the two'],
    ),
    source: api,
    standing: 'published',
    note:
      'The larger of the long-term and the short-term rate rules. ' +
      'Two readings close together in thickness say little: a gauge error counts double in their difference.',
  },
  {
    id: 'remaining-life',
    title: 'Remaining life by hand',
    formula: 'RL = (t − tₘ) / max(LT, ST)',
    symbols: symbols(
      ['RL h', 'running hours until the condemn limit'],
      ['t mm', 'last thickness'],
      ['tₘ mm', 'condemn limit'],
    ),
    source: api,
    standing: 'published',
    note:
      'Newer evidence overrules: a colour seen since that the rate does not expect yet counts as the ' +
      'most it leaves, so RL is at most that; steel seen since leaves nothing. The rule is ours.',
  },
  {
    id: 'next-inspection',
    title: 'Next inspection',
    formula: 'not later than RL / 2, and not later than the day on which P(limit reached) = risk',
    symbols: symbols(
      ['RL h', 'remaining life by hand'],
      ['risk 1', 'declared chance of reaching the condemn limit'],
    ),
    source: `${api}; the second bound is plain probability`,
    standing: 'published',
  },
  {
    id: 'colour-bounds',
    title: 'What a colour says',
    formula: 'd₋ / x ≤ r < d₊ / x',
    symbols: symbols(
      ['r mm/h', 'wear rate'],
      ['d₋ mm', 'depth at which the colour that shows begins'],
      ['d₊ mm', 'depth at which it ends'],
      ['x h', 'exposure'],
    ),
    source:
      'Two-colour liners in the trade: with two equal layers, the second colour showing means that half the thickness is gone; of the usable life ' +
      'down to the condemn limit it is more (two thirds on 6 + 6 mm condemned at 3 mm)',
    standing: 'common practice',
    note: 'A colour is an interval and never a thickness. Layers are taken to end within the declared layer tolerance of their depth.',
  },
  {
    id: 'wear-model',
    title: 'Wear model',
    formula: 'y = eᵘ·x + ε,  u ~ N(μ + pools, τ²),  ε ~ N(0, σ²)',
    symbols: symbols(
      ['y mm', 'wear: fitted thickness less the reading'],
      ['x h', 'exposure'],
      ['u 1', 'natural logarithm of the point’s own rate in mm/h'],
      ['μ 1', 'mean of u over all points'],
      ['τ 1', 'spread of u between points'],
      ['σ mm', 'error of a reading'],
    ),
    source:
      'Lognormal rates with normal reading error; ' +
      'colours, former liners and liners still running enter the same likelihood as interval and ' +
      'censored data (W. Q. Meeker and L. A. Escobar, Statistical Methods for Reliability Data, 1998)',
    standing: 'published',
    note:
      'Points of one run, liner, sector and duty borrow from each other; what was borrowed is shown. ' +
      'Wear is a straight line in exposure: as the worn strip widens the depth grows more slowly, ' +
      'so late in life the line is on the safe side.',
  },
  {
    id: 'depth-life',
    title: 'When a depth is reached',
    formula: 'T(h) = h / eᵘ,  P(T ≤ x) = P(u ≥ ln(h / x))',
    symbols: symbols(
      ['T h', 'exposure at which the wear reaches h'],
      ['h mm', 'depth: a layer’s, the condemn limit’s, the full thickness'],
    ),
    source: 'The wear model turned round',
    standing: 'derived',
    note: 'Quantiles are found as roots of this distribution, with the uncertainty of μ, τ and σ carried in. They are never shown without the interval.',
  },
  {
    id: 'duty-noise',
    title: 'Hours that are not alike',
    formula: 'Var(y | r) = σ² + r²·ψ²·x',
    symbols: symbols(
      ['r mm/h', 'wear rate'],
      ['ψ √h', 'how much wear an hour varies from hour to hour, as a ratio'],
      ['σ mm', 'error of a reading'],
      ['x h', 'exposure'],
    ),
    source: 'Random-walk error added to the straight line',
    standing: 'derived',
  },
  {
    id: 'hours-to-dates',
    title: 'Hours to dates',
    formula: 'day = today + h / duty',
    symbols: symbols(
      ['h h', 'running hours still to come'],
      ['duty h/d', 'running hours a calendar day, declared or observed over the last year'],
    ),
    source: 'The spread of the duty widens the interval',
    standing: 'derived',
  },
  {
    id: 'contact-chance',
    title: 'Chance of trough contact',
    formula: 'P(contact by day) = P(T(full thickness) ≤ exposure by that day)',
    symbols: symbols(['T h', 'exposure at which the full thickness is worn']),
    source: 'The wear model at full thickness',
    standing: 'derived',
    note: 'From there on the screw cuts the trough plate.',
  },
  {
    id: 'order-date',
    title: 'Order date',
    formula: 'order by = first day of the outage − lead time',
    symbols: symbols(['lead time d', 'declared for liner, screw and fixings']),
    source: 'Planning arithmetic',
    standing: 'derived',
  },
  {
    id: 'age-replacement',
    title: 'Cheapest age to replace',
    formula: 'minimise over T: (cₚ·R(T) + c_f·F(T)) / ∫₀ᵀ R(x) dx',
    symbols: symbols(
      ['T h', 'age at planned replacement'],
      ['R 1', 'chance of surviving to that age'],
      ['F 1', '1 − R'],
      ['cₚ money', 'cost of a planned replacement'],
      ['c_f money', 'cost of one after failure'],
    ),
    source: 'R. E. Barlow and F. Proschan, Mathematical Theory of Reliability, 1965, chapter 4',
    standing: 'published',
  },
  {
    id: 'crescent',
    title: 'Shape of the worn strip',
    formula: 'w(ψ) = d·cos ψ + √(r² − d²·sin²ψ) − r − e,  cos ψ₀ = (d² + R² − r²) / (2·d·R),  d = e + w₀',
    symbols: symbols(
      ['w mm', 'wear at an angle'],
      ['ψ deg', 'angle from the deepest line'],
      ['w₀ mm', 'deepest wear'],
      ['ψ₀ deg', 'angle at which the wear begins'],
      ['e mm', 'liner’s inside radius less the screw’s radius'],
      ['r mm', 'screw’s radius'],
      ['R mm', 'liner’s inside radius'],
      ['d mm', 'distance of the two centres'],
    ),
    source: 'Intersection of two circles: that of the screw sunk into that of the liner',
    standing: 'derived',
    note: 'Turned round it tells the deepest wear from the width of the strip, on the hover of a worn strip and in the rule on its width.',
  },
  {
    id: 'gauge-velocity',
    title: 'Ultrasonic gauge',
    formula: 't = reading · c / c_set',
    symbols: symbols(
      ['t mm', 'true thickness'],
      ['c m/s', 'sound velocity in the liner'],
      ['c_set m/s', 'velocity the gauge was set to'],
    ),
    source:
      'Time of flight; gauge tables give about 2080 m/s for LDPE and 2460 for HDPE, ' +
      'a published study 2030 to 2060 for PE80 pipe; none is confirmed for PE-UHMW',
    standing: 'published',
    note: 'One per cent of velocity is one per cent of thickness. The calibration block is the answer: an offcut of the liner, at the temperature on site.',
  },
] as const satisfies readonly Formula[];
