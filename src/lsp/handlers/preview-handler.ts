// Finished pages for the editor's previews: the same generators as on the command line. Elements that carry
// `data-origin="SOURCE:START:END"` can be followed to the text; the places they stand for go along with the page.

import { URI, Utils } from 'vscode-uri';
import type { ProgrammeSolver } from '../../domain/decision/integer-programme.js';
import { parseDay, type CalendarDay } from '../../domain/units/calendar.js';
import type { Estate } from '../../domain/model/estate.js';
import type { Job } from '../../domain/model/job.js';
import type { Conveyor } from '../../domain/model/conveyor.js';
import { inspectionSheet } from '../../generators/inspection-sheet/inspection-sheet.js';
import { inspectionSheetPage } from '../../generators/inspection-sheet/html.js';
import { remainingLife } from '../../generators/remaining-life/remaining-life.js';
import {
  programmePage,
  remainingLifePage,
  type ReportPageOptions,
} from '../../generators/remaining-life/html.js';
import type { WorkPack } from '../../generators/work-pack/pack.js';
import { workPack } from '../../generators/work-pack/work-pack.js';
import { workPackPage } from '../../generators/work-pack/html.js';
import { embeddedPage, htmlPage, type PageOptions } from '../../generators/page/page.js';
import type { MakePreview, MakePreviewAnswer, SourcePosition } from '../../protocol/messages.js';
import type { Session } from '../session.js';
import { split } from '../expected.js';
import { conveyorOf, modelOf } from '../model-at.js';
import type { EstateRevision } from '../revisions.js';
import { comparisonPage } from './comparison-page.js';
import { drawingPage } from './drawing-page.js';

/** The programme takes every conveyor, so a page of one has none. */
export function asksForProgramme({ kind, subject }: MakePreview): boolean {
  return kind === 'programme' || (kind === 'report' && subject === undefined);
}

/** A page with what only the server can fetch for it. */
export interface PreviewOrder extends MakePreview {
  /** Of a comparison: what the estate is compared with. */
  readonly revision?: EstateRevision;
}

/** For one page: the `data:` address of a photo, by the text that names it; undefined where it is not to be had. */
export type PagePhotos = () => (textUri: string, photo: string) => string | undefined;

/** `solver`: for the programme over all outages, where it could be loaded. */
export function preview(
  session: Session,
  wanted: PreviewOrder,
  solver?: ProgrammeSolver,
  photos?: PagePhotos,
): MakePreviewAnswer {
  const asOf = wanted.asOf === undefined ? undefined : parseDay(wanted.asOf);
  if (wanted.asOf !== undefined && asOf === undefined)
    return refuse(`'${wanted.asOf}' is not a date. Write it as 2026-03-14.`);
  const [conflict] = session.analysis().inConflict;
  if (conflict !== undefined)
    return refuse(
      `${Utils.basename(URI.parse(conflict))} holds a merge conflict that is not settled. Nothing is forecast or planned from it.`,
    );
  const estate = session.estate();
  switch (wanted.kind) {
    case 'comparison': {
      if (!wanted.revision) return refuse('There is no revision to compare with.');
      const made = comparisonPage(session.analysis(), wanted.revision);
      return made.ok ? page(session, `Since ${wanted.revision.name}`, made.page) : refuse(made.reason);
    }
    case 'report': {
      if (estate.conveyors.length === 0)
        return refuse('There is no complete conveyor yet. The Problems view says what is missing.');
      const conveyor = wanted.subject === undefined ? undefined : conveyorCalled(session, wanted.subject);
      if (wanted.subject !== undefined && !conveyor) return refuse(notComplete('conveyor', wanted.subject));
      const report = remainingLife(estate, { asOf, ...(conveyor ? { conveyors: [conveyor] } : { solver }) });
      return page(
        session,
        conveyor ? `Remaining life: ${conveyor.name}` : 'Remaining life',
        remainingLifePage(report, { photo: photosOf(session, photos) }),
      );
    }
    case 'programme': {
      if (!solver) return refuse('The solver of the programme could not be loaded.');
      const report = remainingLife(estate, { asOf, track: false, solver });
      return report.programmes?.length
        ? page(session, 'Programme over all outages', programmePage(report))
        : refuse('No conveyor is due before the last outage, or no outage is declared.');
    }
    case 'work pack': {
      const job = wanted.subject === undefined ? undefined : jobCalled(session, wanted.subject);
      if (!job) return refuse(notComplete('job', wanted.subject ?? ''));
      return page(session, `Work pack: ${job.name}`, workPackPage(packOf(estate, job, asOf)));
    }
    case 'inspection sheet':
    case 'drawing': {
      const conveyor = wanted.subject === undefined ? undefined : conveyorCalled(session, wanted.subject);
      if (!conveyor) return refuse(notComplete('conveyor', wanted.subject ?? ''));
      if (wanted.kind === 'drawing')
        return page(session, `Drawing: ${conveyor.name}`, drawingPage(estate, conveyor, asOf));
      return page(
        session,
        `Inspection sheet: ${conveyor.name}`,
        inspectionSheetPage(inspectionSheet(estate, conveyor, asOf === undefined ? {} : { asOf })),
      );
    }
  }
}

function photosOf(session: Session, photos: PagePhotos | undefined): ReportPageOptions['photo'] {
  const show = photos?.();
  return show && (({ path, origin }) => show(session.analysis().uriOf(origin.source), path));
}

/** With how the liner stands at the window, as the report of that day says it. */
function packOf(estate: Estate, job: Job, asOf: CalendarDay | undefined): WorkPack {
  const { conveyor } = job;
  const [life] = remainingLife(estate, { asOf, track: false, conveyors: [conveyor] }).conveyors;
  return workPack(estate, job, { decision: life?.decision, ...(asOf === undefined ? {} : { asOf }) });
}

function refuse(reason: string): MakePreviewAnswer {
  return { ok: false, reason };
}

function notComplete(what: string, name: string): string {
  return `The ${what} ${name} is not complete enough to be shown. The Problems view says what is missing.`;
}

function conveyorCalled(session: Session, name: string): Conveyor | undefined {
  return conveyorOf(session, session.symbols().conveyorOf(split(name))[0]);
}

function jobCalled(session: Session, name: string): Job | undefined {
  const declared = session
    .symbols()
    .declared('job')
    .find((job) => job.name === name);
  return declared && modelOf(session, session.estate().jobs, declared);
}

function page(session: Session, title: string, made: PageOptions): MakePreviewAnswer {
  const { styles, body } = embeddedPage(made);
  const origins: Record<string, SourcePosition> = {};
  for (const [, key = '', source, start, end] of body.matchAll(/data-origin="((\d+):(\d+):(\d+))"/g)) {
    origins[key] ??= spot(session, Number(source), Number(start), Number(end));
  }
  return { ok: true, title, html: htmlPage(made), styles, body, origins, revision: session.revision };
}

function spot(session: Session, source: number, start: number, end: number): SourcePosition {
  const { uri, range } = session.locationOf({ source, start, end });
  return { uri, line: range.start.line, column: range.start.character };
}
