import type { Side } from '@core/record/combine';
import { changedExcept, merge, type Clash } from '@core/record/merge';
import { placeKey, valueAt, type Place } from '@core/record/place';
import { same } from '@core/record/same';
import { computed, ref, shallowRef } from 'vue';
import { problemOf, ServiceProblem, type ProblemDetails } from '../service/problem';
import type { DraftSource, Held } from './draft-source';
import { refusals } from './refusals';
import { saveRounds } from './save-rounds';
import { undoSteps } from './undo-steps';

/** Another window may save often; beyond this the maker is told instead. */
const MOST_CONFLICTS = 5;

export interface DraftPorts {
  /** Follows what is unsaved until all of it is acknowledged, so that "Saved" is true; rejected when some is not. */
  follow(whole: Promise<void>): void;
  /** What stands on screen, or what of it is in the library, is another than before. */
  moved(): void;
}

/**
 * A record being edited, of any noun. Every edit is saved soon after it is made, one request at a time. What the
 * service refuses stays on screen with its reason and holds up nothing else. What another window saved meanwhile is
 * merged in field by field; a field changed in both is asked about, and until then the library keeps theirs and the
 * screen shows mine.
 */
export class Draft<T extends object> {
  /** What stands on screen; null until it is read. */
  readonly content = shallowRef<T | null>(null);
  readonly revision = ref(0);
  /** Fields changed here and in another window, each in its own way, and not decided yet. */
  readonly clashes = shallowRef<Clash[]>([]);
  /** Why something on screen is not in the library. */
  readonly problem = computed(() => this.failure.value ?? this.refused.problem.value);
  readonly canUndo = computed(() => this.steps.canUndo.value);
  readonly canRedo = computed(() => this.steps.canRedo.value);

  private readonly failure = shallowRef<ProblemDetails | null>(null);
  private readonly refused: ReturnType<typeof refusals<T>>;
  private readonly steps: ReturnType<typeof undoSteps<T>>;
  private readonly rounds: ReturnType<typeof saveRounds>;
  /** What the library holds; and the same as it was typed here, since the library tidies what it takes. */
  private held: Held<T> | null = null;
  private typed: T | null = null;
  private isOld = false;

  constructor(
    private readonly source: DraftSource<T>,
    private readonly ports: DraftPorts,
  ) {
    this.refused = refusals(source);
    this.steps = undoSteps<T>(source.shape);
    this.rounds = saveRounds({
      send: () => this.send(),
      left: () => this.left(),
      follow: ports.follow,
    });
  }

  /** Reads it for the first time. @throws ServiceProblem when it cannot be read */
  async load(): Promise<void> {
    this.take(await this.source.read());
  }

  /**
   * Another window saved it, or may have: takes what is newer, below what was changed here.
   * @param revision the count of its edits by now, where it is known
   */
  async refresh(revision: number | null = null): Promise<void> {
    if (!this.held || (revision !== null && revision <= this.held.revision)) return;
    this.isOld = true;
    await this.rounds.now();
  }

  /** Changes it. Changes of the same `field` in a row, such as key strokes, are one step of undo. */
  edit(change: (content: T) => T, field: string | null = null): void {
    const before = this.content.value;
    if (!before) return;
    const after = change(before);
    if (after === before) return;
    this.steps.remember(before, after, field);
    this.show(after);
  }

  /** Another screen changed it, and sends the reader here: what stood before is then one Undo away. */
  remember(before: T): void {
    if (this.content.value) this.steps.remember(before, this.content.value, null);
  }

  undo(): void {
    if (this.content.value) this.show(this.steps.undone(this.content.value));
  }
  redo(): void {
    if (this.content.value) this.show(this.steps.redone(this.content.value));
  }

  /** A field was left: what it holds is saved at once, and the next edit is a step of its own. */
  leaveField(): void {
    this.steps.pause();
    if (this.unsaved()) void this.rounds.now();
  }

  /** Decides a field that was changed in both windows. Taking theirs is a step that can be taken back. */
  settle(place: Place, side: Side): void {
    const { content, clashes, typed } = this;
    clashes.value = clashes.value.filter((clash) => placeKey(clash.place) !== placeKey(place));
    this.steps.pause();
    if (side === 'theirs' && typed)
      this.edit((mine) => changedExcept(typed, mine, [place], this.source.shape));
    if (content.value) this.show(content.value);
  }

  /**
   * Puts a state on top of what stands here, as it was changed from another: text that an earlier visit could not save.
   * @param base what it was changed from, where that is known; without it, all of it counts
   */
  adopt(state: T, base: T | null): void {
    const { content, typed } = this;
    if (!content.value || !typed) return;
    const merged = merge(base ?? content.value, state, content.value, this.source.shape);
    this.steps.pause();
    this.ask(merged.clashes);
    this.edit(() => merged.state);
  }

  /** Saves what is waiting now; false when something on screen is not in the library then. */
  async saveNow(): Promise<boolean> {
    if (this.unsaved() || this.isOld) await this.rounds.now();
    return !this.unsaved();
  }

  unsaved(): boolean {
    return this.content.value !== null && this.typed !== null && !same(this.content.value, this.typed);
  }

  /** Whether something will not be saved as it stands: it was refused, or is being asked about. */
  stuck(): boolean {
    return this.problem.value !== null || this.clashes.value.length > 0;
  }

  /** What the unsaved content was changed from; null when nothing is unsaved. */
  changedFrom(): T | null {
    return this.unsaved() ? this.typed : null;
  }

  /** Sends nothing more by itself. */
  stop(): void {
    this.rounds.stop();
  }

  /** What the service said is wrong at a path of the content, such as `name` or `phases.0.lines.2.ppm`. */
  faultAt(path: string): string | null {
    return this.content.value ? this.refused.at(path, this.content.value) : null;
  }
  /** What is wrong anywhere below a path, for lists that show it together. */
  faultsUnder(path: string): string[] {
    return this.refused.under(path);
  }

  private show(next: T): void {
    this.content.value = next;
    this.review();
    this.rounds.later();
    this.ports.moved();
  }

  private take(newer: Held<T>): void {
    const { held, typed: base, content } = this;
    const { shape } = this.source;
    this.isOld = false;
    this.held = newer;
    this.revision.value = newer.revision;
    if (!held || !base || !content.value) {
      this.typed = newer.content;
      content.value = newer.content;
    } else {
      this.typed = merge(held.content, base, newer.content, shape, () => 'theirs').state;
      const merged = merge(base, content.value, this.typed, shape);
      if (merged.state !== content.value) this.steps.pause();
      content.value = merged.state;
      this.ask(merged.clashes);
    }
    this.review();
    this.ports.moved();
  }

  private ask(found: readonly Clash[]): void {
    if (found.length === 0) return;
    const again = new Set(found.map(({ place }) => placeKey(place)));
    const open = this.clashes.value.filter(({ place }) => !again.has(placeKey(place)));
    this.clashes.value = [...open, ...found];
  }

  /** Forgets the questions and refusals that the content has answered by itself. */
  private review(): void {
    const { content, typed, clashes } = this;
    if (!content.value || !typed) return;
    this.refused.review(content.value, typed);
    const at = (state: T | null, place: Place): unknown => valueAt(state, place, this.source.shape);
    const open = clashes.value.filter(({ place }) => !same(at(content.value, place), at(typed, place)));
    if (open.length !== clashes.value.length) clashes.value = open;
  }

  /** All that stands on screen, but for what was refused or is being asked about. */
  private sendable(typed: T, content: T): T {
    const back = [...this.refused.places(), ...this.clashes.value.map(({ place }) => place)];
    return back.length === 0 ? content : changedExcept(typed, content, back, this.source.shape);
  }

  private async send(): Promise<void> {
    try {
      for (let conflicts = 0; conflicts <= MOST_CONFLICTS;) {
        if (this.isOld) this.take(await this.source.read());
        const { held, typed, content } = this;
        if (!held || !typed || !content.value) return;
        const state = this.sendable(typed, content.value);
        if (same(state, typed)) return void (this.failure.value = null);
        if ((await this.put(state, held)) === 'conflict') conflicts += 1;
      }
      throw new ServiceProblem(BUSY);
    } catch (error) {
      this.failure.value = problemOf(error);
    } finally {
      this.ports.moved();
    }
  }

  private async put(state: T, held: Held<T>): Promise<'saved' | 'refused' | 'conflict'> {
    try {
      this.held = await this.source.write(state, held);
    } catch (error) {
      const details = problemOf(error);
      if (details.code === 'conflict') {
        this.isOld = true;
        return 'conflict';
      }
      if (this.content.value && this.refused.hold(details, state, this.content.value)) return 'refused';
      throw error;
    }
    this.revision.value = this.held.revision;
    this.typed = state;
    this.failure.value = null;
    this.review();
    return 'saved';
  }

  private left(): Error | null {
    if (!this.unsaved()) return null;
    return new ServiceProblem(this.problem.value ?? ASKED);
  }
}

const CONFLICT = {
  type: 'tag:stillroom,2026:problem/conflict',
  status: 409,
  code: 'conflict',
  fields: [],
  facts: {},
} as const;

const BUSY: ProblemDetails = {
  ...CONFLICT,
  title: 'This keeps being changed in another window.',
  detail: 'What you typed is still here. Make your change again when the other window is done.',
  fields: [],
};
const ASKED: ProblemDetails = {
  ...CONFLICT,
  title: 'Something was changed in another window too.',
  detail: 'Choose which to keep; the rest is saved.',
  fields: [],
};
