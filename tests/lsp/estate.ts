// A small estate in four files that the editor tests share: a plant, a conveyor, two inspections, a job.

export const plant = `plant Tarnholt "Tarnholt Organics" {
  duty 110 h/week ± 15 %
  risk 5 %
  outage Spring27 2027-04-12 to 2027-04-23 "digester clean-out"
  crew Alpha 4 people skills fitting
  access unit MP1 "mobile platform" reach 12 m
}

liner TwoLayer12 {
  material PE1000
  layer ivory 6 mm
  layer teal 6 mm
  panel length 1200 mm ± 1 mm
  condemn at 3 mm
  joint butted
}

screw Spiral400 {
  shaftless
  outside diameter 400 mm
  pitch 400 mm
  hand right
  flight 80 mm by 25 mm
}
`;

export const conveyor = `/** Lifts digestate cake to the dryer. */
conveyor DG1 "Digestate cake to bay 2" {
  plant Tarnholt
  length 22.4 m
  incline 24 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  drive at head power 5.5 kW speed 18 rpm
  commissioned 2023-01-10 meter 0 h
  break Gate at 12.4 m to 12.9 m slide gate allowance 12 mm
  hold-down every 1.5 m from 2.0 m to 21.5 m both sides
  access A1 at 0 m to 22.4 m ground
  isolation Q1 "local isolator" electrical at 22 m
  point P1 at 6.20 m clock 7:30
  point Q every 2 m from 14 m to 20 m clock 7:30
}
`;

export const inspection = `inspection DG1 2024-03-14 meter 3120 h {
  by "day shift"
  view downstream
  P1 thickness 10.4 mm
  Q3 colour ivory
  Q4 not seen "build-up"
}
`;

export const later = `inspection Tarnholt.DG1 2025-03-12 meter 8120 h {
  view downstream
  P1 thickness 8.4 mm
  Q3 colour teal
}
`;

export const job = `job J1 "Reline above the gate" {
  conveyor DG1
  outage Spring27
  reline run above Gate
  crews Alpha
  access units MP1
  lift limit 500 kg
  order {
    isolate
    prove dead
    a: strip run 2 by Alpha
    clean run 2
    fit run 2 starting at head by Alpha using MP1 after a
    remove isolation
    run empty
    run loaded
  }
}
`;

export const files: Readonly<Record<string, string>> = {
  'plant.trough': plant,
  'DG1.trough': conveyor,
  'inspections/DG1-2024-03-14.trough': inspection,
  'inspections/DG1-2025-03-12.trough': later,
  'jobs.trough': job,
};
