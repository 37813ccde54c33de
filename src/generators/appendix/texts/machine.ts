// Screw, trough, liner, capacity, drive and heat.

import { symbols, type Formula } from '../formula.js';

export const machineFormulas = [
  {
    id: 'developed-width', title: 'Width of the flat liner sheet', formula: 'W = π·(R − t/2) + 2·h',
    symbols: symbols(['W mm', 'developed width'], ['R mm', 'inside radius of the trough'], ['t mm', 'liner thickness'], ['h mm', 'straight side above the centre line']),
    source: 'Middle line of the bent sheet', standing: 'derived',
  },
  {
    id: 'liner-mass', title: 'Mass of a panel', formula: 'm = W·t·L·ρ',
    symbols: symbols(['m kg', 'mass'], ['W m', 'developed width'], ['t m', 'thickness of all layers'], ['L m', 'panel length'], ['ρ kg/m³', 'density']),
    source: 'Geometry; density of PE-UHMW (PE1000) by ISO 1183 in makers’ data sheets, 930 to 935 kg/m³', standing: 'derived',
  },
  {
    id: 'clock-to-sheet', title: 'Clock position on the sheet', formula: 'y = r·(6 − clock)·π/6',
    symbols: symbols(['y mm', 'distance from the bottom line, positive towards 3 o’clock'], ['r mm', 'liner’s inside radius'], ['clock h', 'clock position, seen in the direction of flow']),
    source: 'Length of arc; the arc runs from 3 to 9 o’clock, above it the sheet is straight', standing: 'derived',
  },
  {
    id: 'radial-clearance', title: 'Clearance between screw and liner', formula: 'e = R − t − D/2',
    symbols: symbols(['e mm', 'radial clearance'], ['R mm', 'inside radius of the trough'], ['t mm', 'liner thickness'], ['D mm', 'screw diameter']),
    source: 'Geometry; the screw lies on the liner, so at the top there is 2e when new and 2e + wear later', standing: 'derived',
  },
  {
    id: 'edge-length', title: 'Edge of the flight', formula: 'L = √((π·d)² + S²)',
    symbols: symbols(['L mm', 'length of the edge a turn'], ['d mm', 'diameter of the edge'], ['S mm', 'pitch']),
    source: 'Handbook form for screw flights', standing: 'published',
  },
  {
    id: 'flat-blank', title: 'Flat blank of a flight', formula: 'Rᵢ = b·Lᵢ / (Lₒ − Lᵢ),  Rₒ = Rᵢ + b,  gap = 360°·(1 − Lₒ / (2π·Rₒ))',
    symbols: symbols(['Rᵢ mm', 'inner radius of the ring'], ['Rₒ mm', 'outer radius of the ring'], ['b mm', 'width of the flight'], ['Lᵢ mm', 'inner edge a turn'], ['Lₒ mm', 'outer edge a turn']),
    source: 'Handbook form for screw flights', standing: 'published',
  },
  {
    id: 'flight-mass', title: 'Mass of the spiral', formula: 'm = ρ·s·∫ √((2πr)² + S²) dr  a turn,  divided by S a metre',
    symbols: symbols(['m kg', 'mass of a turn'], ['ρ kg/m³', 'density'], ['s m', 'thickness of the flight'], ['r m', 'radius, from inside to outside'], ['S m', 'pitch']),
    source: 'Area of the helical surface', standing: 'derived',
  },
  {
    id: 'piece-centre', title: 'Centre of gravity of a piece of spiral', formula: 'a = R_c·|sin(Θ/2) / (Θ/2)|,  along the axis at half length',
    symbols: symbols(['a mm', 'distance from the axis'], ['R_c mm', 'radius of the flight’s centre of area'], ['Θ rad', 'angle of all turns of the piece']),
    source: 'Centre of a helical arc', standing: 'derived', note: 'Whole turns hang true; part turns hang to one side.',
  },
  {
    id: 'spring', title: 'Stretch of the spiral', formula: 'δ = F·R²·ℓ·(cos²α / (G·J) + sin²α / (E·I))',
    symbols: symbols(['δ mm', 'stretch'], ['F N', 'pull along the axis'], ['R mm', 'mean radius'], ['ℓ mm', 'length of the bar'], ['α rad', 'helix angle, tan α = S/(2πR)'], ['G MPa', 'shear modulus'], ['E MPa', 'modulus of elasticity'], ['J mm⁴', 'torsion constant of the bar'], ['I mm⁴', 'second moment of the bar’s width']),
    source: 'Open-coiled helical spring in texts on strength of materials', standing: 'derived',
    note: 'Driven at the discharge the spiral is pulled and stretches; driven at the inlet it is pushed, shortens and lifts, so the hold-downs matter.',
  },
  {
    id: 'capacity', title: 'Capacity', formula: 'Q = 47.124·(D² − d²)·S·n·φ·k',
    symbols: symbols(['Q m³/h', 'volume flow'], ['D m', 'screw diameter'], ['d m', 'shaft diameter, 0 for a spiral whose core fills'], ['S m', 'pitch'], ['n rpm', 'speed'], ['φ 1', 'fill'], ['k 1', 'what the incline leaves']),
    source: 'ISO 7119 and DIN 15262, usual screw form', standing: 'published',
    note: 'Guides give about 75 % at 15° and 50 % at 25°, and losses from 10 to 70 % at 30°: the incline factor is a declared band and not a constant.',
  },
  {
    id: 'axial-speed', title: 'Speed along the axis', formula: 'v = S·n / 60',
    symbols: symbols(['v m/s', 'axial speed'], ['S m', 'pitch'], ['n rpm', 'speed']), source: 'Geometry', standing: 'derived',
  },
  {
    id: 'power', title: 'Power', formula: 'P = Qₘ·(λ·L + H) / 367 + D·L / 20',
    symbols: symbols(['P kW', 'power at the screw'], ['Qₘ t/h', 'mass flow'], ['λ 1', 'resistance factor, 2 to 4 by material'], ['L m', 'length'], ['H m', 'height gained, positive upward'], ['D m', 'screw diameter']),
    source: 'ISO 7119', standing: 'published',
    note: 'The last term is for screws in bearings. A spiral without a centre tube drags on its liner, so its empty power is doubtful.',
  },
  {
    id: 'torque', title: 'Torque', formula: 'T = 9550·P / n',
    symbols: symbols(['T N·m', 'torque'], ['P kW', 'power'], ['n rpm', 'speed']), source: 'Handbook form; 9550 is 30 000/π rounded', standing: 'published',
  },
  {
    id: 'free-growth', title: 'Growth with heat', formula: 'ΔL = L·Δα·ΔT',
    symbols: symbols(['ΔL mm', 'growth of the liner against its trough'], ['L mm', 'length'], ['Δα 1/K', 'expansion of liner less that of steel'], ['ΔT K', 'service less fitting temperature']),
    source: 'Data sheets of PE-UHMW: 150 to 230e-6/K, usually 200e-6; steel 12e-6, stainless 16e-6', standing: 'published',
    note: 'Guides disagree on joints: many ask for a gap and oversize holes, short bolted panels are commonly butted tight. The joint policy is declared; this says what follows.',
  },
  {
    id: 'restrained-stress', title: 'Stress where it cannot grow', formula: 'σ = E·Δα·ΔT',
    symbols: symbols(['σ MPa', 'compression'], ['E MPa', 'modulus of the liner'], ['Δα 1/K', 'difference of expansion'], ['ΔT K', 'rise of temperature']),
    source: 'Strength of materials', standing: 'derived', note: 'Polyethylene creeps, so the stress fades with time.',
  },
  {
    id: 'buckling-pitch', title: 'Bolt spacing against buckling', formula: 'l = π·t / √(3·Δα·ΔT)',
    symbols: symbols(['l mm', 'spacing above which a flat strip buckles'], ['t mm', 'liner thickness'], ['Δα 1/K', 'difference of expansion'], ['ΔT K', 'rise of temperature']),
    source: 'Euler’s strut with clamped ends', standing: 'derived', note: 'On the safe side for the curved bottom, which is stiffer than a flat strip.',
  },
] as const satisfies readonly Formula[];
