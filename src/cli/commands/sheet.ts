// `troughline sheet CONVEYOR`: the inspection sheet on paper, and the page for a phone.

import type { CalendarDay } from '../../domain/units/calendar.js';
import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Estate } from '../../domain/model/estate.js';
import { lookRounds } from '../../generators/remaining-life/decision-words.js';
import { remainingLife } from '../../generators/remaining-life/remaining-life.js';
import { inspectionSheetHtml } from '../../generators/inspection-sheet/html.js';
import { inspectionSheet } from '../../generators/inspection-sheet/inspection-sheet.js';
import { inspectionPhonePage } from '../../generators/inspection-sheet/phone.js';
import type { InspectionSheet } from '../../generators/inspection-sheet/sheet.js';
import { Exit, Trouble, type Console } from '../console.js';
import { conveyorsNamed } from '../conveyors-named.js';
import { chosen, deliver } from '../deliver.js';
import { printPdf } from '../print-pdf.js';
import { soundEstate } from '../sound-estate.js';
import { fileName, type OutputFile } from '../write-files.js';

const formats = ['html', 'phone', 'pdf'] as const;

export interface SheetCommandOptions {
  readonly asOf: CalendarDay | undefined;
  readonly out?: string;
  readonly format: readonly string[];
  readonly paper: 'A4' | 'Letter';
  readonly look?: 'downstream' | 'upstream';
}

export async function sheet(
  name: string,
  paths: readonly string[],
  options: SheetCommandOptions,
  console: Console,
): Promise<number> {
  const wanted = chosen(options.format, formats, ['html']);
  const { estate } = await soundEstate(paths, options.asOf, console);
  const round = /^round(\d*)$/.exec(name);
  const conveyors =
    round && !estate.conveyors.some((each) => each.name === name)
      ? roundCalled(Number(round[1] || '1'), estate, options.asOf)
      : conveyorsNamed(name === 'all' ? [] : [name], estate);
  const files = conveyors.flatMap((conveyor) => {
    const made = inspectionSheet(estate, conveyor, {
      ...(options.asOf !== undefined && { asOf: options.asOf }),
      ...(options.look && { look: options.look }),
    });
    return wanted.map((format) => print(made, fileName(conveyor.name), format, options, console));
  });
  deliver(files, options.out, console);
  return Exit.clean;
}

/** The conveyors of a round of looks, as the report groups them. */
function roundCalled(number: number, estate: Estate, asOf: CalendarDay | undefined): readonly Conveyor[] {
  const rounds = lookRounds(remainingLife(estate, { asOf, track: false }).conveyors);
  const round = rounds[number - 1];
  if (!round)
    throw new Trouble(
      rounds.length === 0
        ? 'no look is due, so there is no round'
        : `there ${rounds.length === 1 ? 'is 1 round' : `are ${rounds.length} rounds`} of looks, and no ${number}`,
    );
  return round.looks.map(({ conveyor }) => conveyor);
}

function print(
  made: InspectionSheet,
  name: string,
  format: (typeof formats)[number],
  options: SheetCommandOptions,
  console: Console,
): OutputFile {
  const html = (): string => inspectionSheetHtml(made, { paper: options.paper });
  switch (format) {
    case 'html':
      return { name: `${name}.html`, content: html() };
    case 'pdf':
      return { name: `${name}.pdf`, content: printPdf(html(), console) };
    case 'phone':
      return { name: `${name}-phone.html`, content: inspectionPhonePage(made) };
  }
}
