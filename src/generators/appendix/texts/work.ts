// Fitting, lifting, planning.

import { symbols, type Formula } from '../formula.js';

export const workFormulas = [
  {
    id: 'closing-error',
    title: 'Error at the closing panel',
    formula: 'worst = n·p + m + g,  likely = √(n·p² + m²) + g,  g = max(0, L·Δα·ΔT − (n − 1)·j)',
    symbols: symbols(
      ['n 1', 'panels of the run'],
      ['p mm', 'panel tolerance, ±'],
      ['m mm', 'measuring tolerance on site, ±'],
      ['g mm', 'growth that is left when the gaps have closed; 0 where panels are butted'],
      ['L mm', 'length fitted since the front started'],
      ['Δα 1/K', 'expansion of liner less that of the trough’s steel'],
      ['ΔT K', 'warmest service less coldest fitting temperature'],
      ['j mm', 'joint gap'],
    ),
    source: 'Tolerances in a row: sum at worst, root of the sum of squares where independent',
    standing: 'derived',
    note:
      'The break at which a run closes must be able to take the worst case. Butted panels are held by their bolts: ' +
      'their growth becomes stress and moves nothing.',
  },
  {
    id: 'panel-layout',
    title: 'Panels of a run',
    formula: 'joints clear of flanges and bolts, then fewest pieces, then least waste, then fewest cuts',
    symbols: [],
    source: 'Exact search on the millimetre',
    standing: 'derived',
    note: 'Whole panels go in from the starting end; where the closing piece would be too short, the panel before it is shortened.',
  },
  {
    id: 'sling',
    title: 'Two-leg sling',
    formula:
      'F = m·g / (2·cos β) level;  F = (m·g/2)·√((tan β·cos θ)² + (1 + tan β·sin θ)²) in the lower leg on a slope',
    symbols: symbols(
      ['F N', 'pull in the leg, the heavier one on a slope'],
      ['m kg', 'load'],
      ['g m/s²', '9.80665'],
      ['β deg', 'angle of a leg from the vertical, the load level'],
      ['θ deg', 'slope at which the load hangs'],
    ),
    source: 'Statics; 45° is the usual limit, 60° never to be passed',
    standing: 'derived',
    note:
      'The hook stands above the middle of the load. Legs of unequal angles bear F₁ = m·g·sin β₂ / sin(β₁ + β₂). ' +
      'The marks on the lifting equipment and a competent person come first.',
  },
  {
    id: 'niosh',
    title: 'Recommended weight limit by hand',
    formula: 'RWL = 23·(25/H)·(1 − 0.003·|V − 75|)·(0.82 + 4.5/D)·(1 − 0.0032·A)·FM·CM',
    symbols: symbols(
      ['RWL kg', 'recommended weight limit'],
      ['H cm', 'hands in front of the ankles, at least 25'],
      ['V cm', 'hands above the floor'],
      ['D cm', 'distance raised, at least 25'],
      ['A deg', 'turn of the body'],
      ['FM 1', 'how often'],
      ['CM 1', 'how well gripped'],
    ),
    source: 'Revised NIOSH lifting equation, DHHS (NIOSH) publication 94-110',
    standing: 'published',
    note: 'The load divided by this limit is the lifting index; above 1 the risk of injury grows.',
  },
  {
    id: 'team-lift',
    title: 'Lifting as a team',
    formula:
      'two people 2/3, three people 1/2 of the sum of what each could lift; turning the body above 45° −10 %, above 90° −20 %',
    symbols: [],
    source:
      'HSE guidance on the Manual Handling Operations Regulations (L23), guideline 25 kg close to the body',
    standing: 'published',
    note: 'The source stops at three people; more are given no more than three.',
  },
  {
    id: 'down-slope',
    title: 'Force down the slope',
    formula: 'F = m·g·sin θ',
    symbols: symbols(
      ['F N', 'force to be restrained'],
      ['m kg', 'mass of the loosened spiral'],
      ['g m/s²', '9.80665'],
      ['θ deg', 'incline'],
    ),
    source: 'Statics, without friction: the safe side for restraint',
    standing: 'derived',
  },
  {
    id: 'spring-back',
    title: 'Stretch under its own weight',
    formula: 'δ = half of what the whole down-slope force at the free end would do',
    symbols: symbols(['δ mm', 'stretch or shortening that is released when the drive is unbolted']),
    source: 'Force growing evenly along the spiral',
    standing: 'derived',
    note: 'Restrain the spiral before the drive plate is unbolted.',
  },
  {
    id: 'step-time',
    title: 'Time of a step',
    formula: 'time = person-hours / people of the crew',
    symbols: symbols(['person-hours h', 'unit time × count or length']),
    source: 'Unit times of the plant where declared, otherwise the defaults shown',
    standing: 'judgement',
  },
  {
    id: 'critical-path',
    title: 'Shortest time',
    formula: 'bound = max(longest chain of steps, work of each crew and access unit)',
    symbols: [],
    source: 'Critical path method and resource bound',
    standing: 'published',
    note: 'No plan can be shorter than the bound; the gap to it is shown.',
  },
] as const satisfies readonly Formula[];
