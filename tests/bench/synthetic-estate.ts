// Made-up estates of any size, the same for the same numbers: for benchmarks and load tests only.

export interface Size {
  readonly conveyors: number;
  readonly inspectionsEach: number;
  readonly pointsEach: number;
  /** How often each conveyor was relined, evenly over its looks; 0 where left out. */
  readonly relines?: number;
}

export interface SyntheticEstate {
  readonly texts: readonly { readonly uri: string; readonly text: string }[];
  /** The same facts as plain data, for a process that only parses JSON. */
  readonly data: { readonly conveyors: unknown[]; readonly inspections: unknown[] };
  readonly readings: number;
}

export function syntheticEstate(
  { conveyors, inspectionsEach, pointsEach, relines = 0 }: Size,
  seed = 1,
): SyntheticEstate {
  const random = mulberry32(seed);
  const texts: { uri: string; text: string }[] = [{ uri: 'plant.trough', text: plant }];
  const data: { conveyors: unknown[]; inspections: unknown[] } = { conveyors: [], inspections: [] };
  const length = Math.max(12, Math.ceil(pointsEach * 0.5) + 2);
  for (let c = 0; c < conveyors; c++) {
    const name = `C${c + 1}`;
    texts.push({ uri: `conveyors/${name}.trough`, text: conveyor(name, length, pointsEach) });
    data.conveyors.push({ name, length, points: pointsEach });
    const rates = Array.from({ length: pointsEach }, () => 0.25 * Math.exp(0.25 * gauss(random)));
    const setHours = 24_000 / (relines + 1);
    for (let k = 1; k <= relines; k++) {
      const hours = Math.round(k * setHours) + 1;
      const text = `reline ${name} ${dayAt(hours)} meter ${hours} h { liner TwoLayer12 }\n`;
      texts.push({ uri: `history/${name}-${k}.trough`, text });
    }
    for (let i = 0; i < inspectionsEach; i++) {
      const hours = Math.round((24_000 * (i + 1)) / inspectionsEach);
      const date = dayAt(hours);
      const lain = hours - Math.floor((hours - 1) / setHours) * setHours;
      const rows = rates.map((rate, p) =>
        reading(p + 1, (rate * (relines + 1) * (relines > 0 ? lain : hours)) / 1000, random),
      );
      texts.push({
        uri: `inspections/${name}/${String(i + 1).padStart(5, '0')}.trough`,
        text: `inspection ${name} ${date} meter ${hours} h {\n  view downstream\n  gauge ultrasonic ± 0.2 mm\n${rows.map((row) => `  ${row.text}\n`).join('')}}\n`,
      });
      data.inspections.push({ conveyor: name, date, meter: hours, rows: rows.map((row) => row.data) });
    }
  }
  return { texts, data, readings: conveyors * inspectionsEach * pointsEach };
}

/** By 110 h a week from the first day. */
function dayAt(hours: number): string {
  return new Date(Date.UTC(2022, 0, 3) + Math.round((hours / 110) * 7) * 86_400_000)
    .toISOString()
    .slice(0, 10);
}

function reading(point: number, wear: number, random: () => number): { text: string; data: object } {
  const left = 12 - wear;
  if (left <= 0.1) return { text: `P${point} trough showing`, data: { point: `P${point}`, kind: 'trough' } };
  if (random() < 0.25) {
    const colour = wear < 6 ? 'ivory' : 'teal';
    return { text: `P${point} colour ${colour}`, data: { point: `P${point}`, kind: 'colour', colour } };
  }
  const thickness = Math.max(0.1, left + 0.1 * gauss(random)).toFixed(1);
  return {
    text: `P${point} thickness ${thickness} mm`,
    data: { point: `P${point}`, kind: 'thickness', thickness: Number(thickness) },
  };
}

const plant = `plant Works "Synthetic works" {
  duty 110 h/week ± 15 %
  outage Spring27 2027-04-12 to 2027-04-23 "stop"
  lead time liner 10 week
}

liner TwoLayer12 {
  material PE1000
  layer ivory 6 mm
  layer teal 6 mm
  panel length 1200 mm ± 1 mm
  condemn at 3 mm
}

screw Spiral400 {
  shaftless
  outside diameter 400 mm
  pitch 350 mm
}
`;

function conveyor(name: string, length: number, points: number): string {
  return `conveyor ${name} {
  plant Works
  length ${length} m
  incline 20 deg
  trough inside radius 220 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  commissioned 2022-01-03 meter 0 h
  break Discharge at ${length - 0.6} m to ${length} m discharge allowance ${length + 10} mm
  access Floor at 0 m to ${length} m ground
  isolation Q1 electrical
  point P every ${(length - 2) / points} m from 0.5 m to ${length - 1} m clock 6:00
}
`;
}

/** A small, fast generator with a 32-bit state (public-domain algorithm mulberry32). */
function mulberry32(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

function gauss(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}
