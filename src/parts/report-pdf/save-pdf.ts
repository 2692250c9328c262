/** The report as a PDF, with the app's own font. Loaded only when one is wanted. */
import type { ReportDocument } from '../../../shared/formats/report-document';
import fontAddress from './arpeggiary-serif.ttf?url';
import { paperFor } from './paper';
import { type Pdf, reportPdf } from './report-pdf';

/** Rejects if the font cannot be read. */
export async function pdfOf(report: ReportDocument, language: string, made: Date): Promise<Pdf> {
  const answer = await fetch(fontAddress);
  if (!answer.ok) throw new Error(`the font of the report: ${answer.status}`);
  const font = new Uint8Array(await answer.arrayBuffer());
  return reportPdf(report, { font, paper: paperFor(language), made });
}
