import type { Proposal } from '@core/datasheets/proposal';
import { readDataSheet } from '@core/datasheets/read-data-sheet';
import { readTyped, typedText, withTaken, type FromSheet, type Taken } from '@core/datasheets/take';
import type { MaterialDocument } from '@core/materials/document';
import { storedContent, type Material, type MaterialContent } from '@core/materials/material';
import type { DocumentKind } from '@core/materials/vocabulary';
import { Problem } from '@core/problems/problem';
import { onScopeDispose, shallowReactive } from 'vue';
import { keepFile } from '../kit/keep-file';
import { answer, problemOf, service, type ProblemDetails } from '../service/client';
import { useSettings } from '../settings/store';
import { useSaving } from '../shell/saving';
import { MOST_PAGES, openSheet, scanned, type OpenSheet } from './sheet-file';

/** A proposal on the screen: as read, or as its maker wrote it instead. */
export interface Row {
  proposal: Proposal | null;
  key: string;
  taken: boolean;
  text: string;
}

/** Without these there is no material: they can be written where the sheet does not say them. */
const NEEDED = ['tradeName', 'composition'];
const SAFETY_SHEET =
  /safety data sheet|\bM?SDS\b|sicherheitsdatenblatt|données de sécurité|datos de seguridad/i;

type Written = { material: Material; before: Material | null };

/** A supplier's data sheet on its way into a material: read, looked at beside its page, taken, and taken back. */
export class ReadingSheet {
  file: File | null = null;
  sheet: OpenSheet | null = null;
  rows: Row[] = [];
  /** The row whose line is marked on its page. */
  shown = 0;
  page = 1;
  kind: DocumentKind = 'specification';
  /** The material that it tells of; null makes a new one. */
  material: Material | null = null;
  /** The page that is being read; null while none is. */
  readingPage: number | null = null;
  problem: ProblemDetails | null = null;
  written: Written | null = null;
  busy = false;
  private stop = new AbortController();

  constructor(
    private readonly settings: ReturnType<typeof useSettings>,
    private readonly saving: ReturnType<typeof useSaving>,
  ) {}

  get title(): string {
    return (this.file?.name ?? '').replace(/\.[a-z]+$/i, '').slice(0, 200) || 'Data sheet';
  }

  get from(): FromSheet {
    const today = new Date().toISOString().slice(0, 10);
    return { title: this.title, today, currency: this.settings.current.currency };
  }

  /** How many pages were left unread. */
  get unread(): number {
    return Math.max(0, (this.sheet?.pdf.numPages ?? 0) - MOST_PAGES);
  }

  async openMaterial(id: string): Promise<void> {
    try {
      this.material = await answer(service.materials[':id'].$get({ param: { id } }));
    } catch (error) {
      this.problem = problemOf(error);
    }
  }

  drop(): void {
    this.stop.abort();
    this.sheet?.close();
    this.sheet = null;
    this.readingPage = null;
  }

  async choose(file: File): Promise<void> {
    this.drop();
    // Another sheet of the same material goes on from what the last one made of it.
    if (this.material && this.written) this.material = this.written.material;
    this.problem = this.written = null;
    this.rows = [];
    this.file = file;
    this.stop = new AbortController();
    const { signal } = this.stop;
    this.readingPage = 1;
    try {
      const bytes = new Uint8Array(await file.arrayBuffer());
      const sheet = await openSheet(bytes, signal, (page) => (this.readingPage = page));
      const { proposals, hasText } = readDataSheet(sheet.pages);
      if (!hasText) {
        sheet.close();
        throw scanned();
      }
      this.sheet = sheet;
      const head =
        sheet.pages[0]?.items
          .map(({ text }) => text)
          .join(' ')
          .slice(0, 4000) ?? '';
      this.kind = SAFETY_SHEET.test(head) ? 'safety data sheet' : 'specification';
      this.rows = this.rowsOf(proposals);
      this.show(0);
    } catch (error) {
      if (!signal.aborted) this.problem = problemOf(error);
    } finally {
      if (!signal.aborted) this.readingPage = null;
    }
  }

  private rowsOf(proposals: readonly Proposal[]): Row[] {
    const rows = proposals.map((proposal): Row => {
      const { key, value, sure } = proposal;
      const named = key === 'tradeName' && this.material !== null;
      return { proposal, key, taken: sure === 'sure' && !named, text: typedText(key, value) };
    });
    if (this.material) return rows;
    const missing = NEEDED.filter((key) => !rows.some((row) => row.key === key));
    for (const row of rows) if (row.key === 'tradeName') row.taken = true;
    return [...missing.map((key): Row => ({ proposal: null, key, taken: true, text: '' })), ...rows];
  }

  show(at: number): void {
    this.shown = at;
    this.page = this.rows[at]?.proposal?.page ?? this.page;
  }

  turn(page: number): void {
    this.page = Math.min(Math.max(1, page), this.sheet?.pdf.numPages ?? 1);
  }

  change(at: number, part: Partial<Row>): void {
    this.rows = this.rows.map((row, index) => {
      if (index === at) return { ...row, ...part };
      // One value for one thing: another reading of it is put back.
      return part.taken && row.key === this.rows[at]?.key ? { ...row, taken: false } : row;
    });
  }

  /** What a row holds: as read while its text is, else what its text says. */
  valueOf({ proposal, key, text }: Row): ReturnType<typeof readTyped> {
    if (proposal && text === typedText(key, proposal.value)) return { ok: true, value: proposal.value };
    return readTyped(key, text);
  }

  takenOf(row: Row): Taken | null {
    const read = this.valueOf(row);
    if (!read.ok || read.value === undefined) return null;
    return { key: row.key, value: read.value, page: row.proposal?.page ?? null };
  }

  /** What is wrong with a row that is to be taken; null where nothing is. */
  faultOf(row: Row): string | null {
    if (!row.taken) return null;
    const read = this.valueOf(row);
    if (!read.ok) return read.message;
    if (read.value !== undefined) return null;
    if (row.proposal) return 'Write a value, or leave it out.';
    return row.key === 'tradeName'
      ? 'The sheet does not say it. Write it here.'
      : 'No INCI name was found. Write it here.';
  }

  private async attached(): Promise<MaterialDocument> {
    const { kept } = await keepFile(this.file!);
    return { kind: this.kind, title: this.title, dated: '', validUntil: '', ...kept };
  }

  private async write(): Promise<Written> {
    const before = this.material;
    const taken = this.rows.filter((row) => row.taken).flatMap((row) => this.takenOf(row) ?? []);
    const document = await this.attached();
    const held = before ? storedContent.parse(before) : null;
    const content = withTaken(held, taken, this.from);
    const documents = content.documents.some(({ sha256 }) => sha256 === document.sha256)
      ? content.documents
      : [...content.documents, document];
    return { before, material: await this.put({ ...content, documents }, before) };
  }

  private put(content: MaterialContent, before: Material | null): Promise<Material> {
    if (!before) return answer(service.materials.$post({ json: content }));
    const json = { revision: before.revision, content };
    return answer(service.materials[':id'].$put({ param: { id: before.id }, json }));
  }

  private async doing(work: () => Promise<void>): Promise<void> {
    this.busy = true;
    this.problem = null;
    try {
      await this.saving.track(work());
    } catch (error) {
      this.problem = problemOf(error);
    } finally {
      this.busy = false;
    }
  }

  /** Writes what is taken into the material, the sheet attached: one change. */
  async take(): Promise<void> {
    if (this.rows.some((row) => this.faultOf(row) !== null)) this.problem = problemOf(unreadable());
    else await this.doing(async () => void (this.written = await this.write()));
  }

  /** Makes the material as it was before; one that was made goes. */
  takeBack(): Promise<void> {
    return this.doing(async () => {
      const { written } = this;
      if (!written) return;
      const { material, before } = written;
      if (!before) await answer(service.materials[':id'].$delete({ param: { id: material.id } }));
      else {
        const json = { revision: material.revision, content: storedContent.parse(before) };
        this.material = await answer(service.materials[':id'].$put({ param: { id: material.id }, json }));
      }
      this.written = null;
    });
  }
}

const unreadable = (): Problem =>
  new Problem({
    code: 'invalid-input',
    title: 'Some of the values you chose cannot be read yet.',
    advice: 'Correct it where it is marked, or leave it out. Nothing was written.',
  });

/** A data sheet on its way in, for as long as its screen is open. */
export function useReadingSheet(): ReadingSheet {
  const reading = shallowReactive(new ReadingSheet(useSettings(), useSaving()));
  onScopeDispose(() => reading.drop());
  return reading;
}
