// A small works of two conveyors with a few looks each, as texts: enough for every kind of change, and fitted in no time.

export const machine = `plant Tarnholt "Tarnholt Organics" {
  duty 60 h/week ± 15 %
  risk 5 %
  outage Winter27 2027-01-18 to 2027-01-22
  outage Spring27 2027-04-12 to 2027-04-23
  crew Alpha 4 people
  lead time liner 10 week
  shift 07:00 to 17:00
}

liner TwoLayer12 {
  layer grey 6 mm
  layer orange 6 mm
  panel length 1200 mm ± 1 mm
  condemn at 3 mm
  expected life 14000 h ± 30 %
}

screw Spiral400 {
  shaftless
  outside diameter 400 mm
  pitch 350 mm
}

conveyor BR1 "Bark to hall" {
  plant Tarnholt
  length 12 m
  incline 20 deg
  trough inside radius 220 mm side height 230 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  commissioned 2024-01-01 meter 0 h
  break Gate at 6 m to 6.4 m slide gate allowance 15 mm
  access Floor at 0 m to 12 m ground
  isolation Q1 electrical
  point P1 at 3 m clock 5:00
  point P2 at 9 m clock 5:00
}

conveyor BR2 "Bark to bay" {
  plant Tarnholt
  length 10 m
  incline 15 deg
  trough inside radius 220 mm side height 230 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  commissioned 2024-01-01 meter 0 h
  access Floor at 0 m to 10 m ground
  isolation Q2 electrical
  point P1 at 4 m clock 5:00
}

job BR1_Spring "Reline BR1" {
  conveyor BR1
  outage Spring27
  reline all
  crews Alpha
}
`;

const look = (conveyor: string, date: string, meter: number, rows: readonly string[]): string =>
  `inspection ${conveyor} ${date} meter ${meter} h {
  by "first shift"
  view downstream
  gauge ultrasonic ± 0.2 mm
${rows.map((row) => `  ${row}\n`).join('')}}
`;

export const estateTexts: Readonly<Record<string, string>> = {
  'machine.trough': machine,
  'looks/BR1-2025-01.trough': look('BR1', '2025-01-13', 3200, [
    'P1 thickness 9.9 mm',
    'P2 thickness 10.3 mm',
  ]),
  'looks/BR1-2025-09.trough': look('BR1', '2025-09-15', 5300, ['P1 thickness 8.4 mm', 'P2 thickness 9.2 mm']),
  'looks/BR1-2026-06.trough': look('BR1', '2026-06-08', 7600, [
    'P1 thickness 6.9 mm',
    'P2 thickness 7.9 mm',
    'at 4.50 m clock 7:00 colour grey "by the seam"',
  ]),
  'looks/BR2-2026-06.trough': look('BR2', '2026-06-08', 7500, ['P1 thickness 9.0 mm']),
  'history.trough': 'duty BR1 from 2025-06-02 66 h/week\n',
};

export const nextLook = look('BR1', '2026-11-02', 8900, ['P1 thickness 6.0 mm', 'P2 thickness 7.0 mm']);
