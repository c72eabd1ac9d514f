import type { Coursework } from '../../course/coursework/coursework.ts';
import { type Slot, slotsOf } from '../../course/coursework/slots.ts';
import type { Result } from '../../course/coursework/work.ts';
import { type Book, type Graded, makeBook } from '../../course/marks/book.ts';
import { type Chosen, chooseCoursework, type ResultHead } from '../../course/marks/class.ts';
import { courseworkPrint } from '../../course/marks/fingerprint.ts';
import { type Labels, labelSlots } from '../../course/marks/labels.ts';
import { isStray, wrongCircuits } from '../../course/marks/mark-class.ts';
import type { Slip } from '../../course/marks/own-numbers.ts';
import type { Piece } from '../../course/marks/piece.ts';
import { sure } from '../../course/marks/sure.ts';
import { lessonsOf } from '../../course/outline.ts';
import { MOST_FILES } from '../../files/handed-in.ts';
import type { Unpacked } from '../../files/zip.ts';
import { fetchOutline } from '../course/shelf.ts';
import { fetchNames } from '../coursework/names.ts';
import { type Hand, Pool, Stopped } from './pool.ts';
import type { Given } from './talk.ts';

/** What goes on, and how far it is. */
export interface Progress {
  readonly doing: 'Reading' | 'Grading' | 'Comparing';
  readonly done: number;
  readonly of: number;
}

/** Files read at a time, and results graded at first. */
const BATCH = 8;
/** Later as many are graded at a time as take about this long, ms: the bar moves, and the page has time of its own. */
const SPELL = 200;
const MOST_BATCH = 50;
/** Wrong circuits compared at a time. */
const CIRCUITS = 20;

type Job = { readonly given: readonly Given[] } | { readonly inside: readonly Unpacked[] };

function* batches<T>(all: readonly T[], size: number): Generator<readonly T[]> {
  for (let k = 0; k < all.length; k += size) yield all.slice(k, k + size);
}

/** The mark book on the page: what was given, what goes on, and what came of it. */
export class Desk {
  progress = $state.raw<Progress | undefined>();
  /** What was left out, a sentence each. */
  troubles = $state.raw<readonly string[]>([]);
  /** Why all came to a halt, in words. */
  failed = $state('');
  stopped = $state(false);
  tutors = $state.raw<{ readonly coursework: Coursework; readonly file: string } | undefined>();
  book = $state.raw<Book | undefined>();
  labels = $state.raw<Labels>(new Map());
  slips = $state.raw<ReadonlyMap<string, readonly Slip[]>>(new Map());
  /** How many results have been read. */
  read = $state(0);
  /** How long it took from the first file to the table, ms. */
  took = $state(0);

  /** Everything that was given, to be kept on the device if the tutor wants it. */
  readonly given: Given[] = [];
  #pool: Pool | undefined;
  readonly #heads = new Map<string, ResultHead>();
  readonly #hands = new Map<string, Hand>();
  #pieces = new Map<string, readonly Piece[]>();
  #graded = '';
  #slots: readonly Slot[] = [];
  /** Whose work stray pieces are, by file and place. */
  #whose = new Map<string, string>();

  get isBusy(): boolean {
    return this.progress !== undefined;
  }

  /** Has the workers started before there is work for them. */
  ready(): void {
    this.#pool ??= new Pool();
  }

  /** Reads more files, and grades what is new. */
  async add(files: readonly Given[]): Promise<void> {
    if (this.isBusy || files.length === 0) return;
    const start = performance.now();
    await this.#during(async () => {
      await this.#readAll(files);
      await this.#grade();
      this.took = performance.now() - start;
      await this.#compare();
    });
  }

  /** Marks by a coursework of the tutor's; by the one that most results carry when there is none. */
  async by(tutors: { readonly coursework: Coursework; readonly file: string } | undefined): Promise<void> {
    if (this.isBusy) return;
    this.tutors = tutors;
    if (this.#heads.size === 0) return;
    await this.#during(async () => {
      await this.#grade();
      await this.#compare();
    });
  }

  /** Stops what goes on. What has been read is lost with the workers, so the book starts anew. */
  stop(): void {
    this.#pool?.end();
  }

  /** Forgets the class. */
  forget(): void {
    this.#pool?.end();
    this.#pool = undefined;
    for (const map of [this.#heads, this.#hands, this.#pieces, this.#whose]) map.clear();
    this.given.length = 0;
    this.#graded = '';
    this.#slots = [];
    this.book = undefined;
    this.slips = new Map();
    this.troubles = [];
    this.read = 0;
    this.failed = '';
  }

  /** The whole result of a file, with the work itself. */
  async result(file: string): Promise<Result | undefined> {
    return this.#hands.get(file)?.ask<'result'>({ ask: 'result', file });
  }

  async #during(what: () => Promise<void>): Promise<void> {
    this.failed = '';
    this.stopped = false;
    this.ready();
    try {
      await what();
    } catch (problem) {
      const hadBook = this.book !== undefined;
      if (problem instanceof Stopped) {
        this.forget();
        this.stopped = true;
      } else {
        const why = problem instanceof Error ? problem.message : String(problem);
        this.failed = `${hadBook ? 'The table may not be whole' : 'The class could not be marked'}: ${why}.`;
      }
    } finally {
      this.progress = undefined;
    }
  }

  /** A name that no other file here has. */
  #ownName(name: string, taken: Set<string>): string {
    let own = name;
    for (let k = 2; taken.has(own); k++) own = `${name} (${k})`;
    taken.add(own);
    return own;
  }

  async #readAll(files: readonly Given[]): Promise<void> {
    const pool = sure(this.#pool);
    const taken = new Set(this.#heads.keys());
    const troubles: string[] = [];
    const room = Math.max(0, MOST_FILES - this.#heads.size);
    if (files.length > room)
      troubles.push(
        `All together: expected at most ${MOST_FILES} files, found ${this.#heads.size + files.length}; the rest was left out`,
      );
    const own = files
      .slice(0, room)
      .map(({ name, blob }): Given => ({ name: this.#ownName(name, taken), blob }));
    this.given.push(...own);
    const queue = [...batches(own, BATCH)].map((given): Job => ({ given }));
    let [done, of] = [0, own.length];
    const tell = () => {
      this.progress = { doing: 'Reading', done, of };
    };
    tell();
    await pool.share(queue, async (hand, job) => {
      const opened =
        'given' in job
          ? await hand.ask<'open'>({ ask: 'open', files: job.given })
          : await hand.ask<'read'>({ ask: 'read', files: job.inside });
      troubles.push(...opened.troubles);
      for (const head of opened.heads) {
        this.#heads.set(head.file, head);
        this.#hands.set(head.file, hand);
      }
      const inside = opened.unpacked.map(({ name, bytes }) => ({ name: this.#ownName(name, taken), bytes }));
      for (const batch of batches(inside, BATCH)) queue.push({ inside: batch });
      of += inside.length;
      done += 'given' in job ? job.given.length : job.inside.length;
      this.read = this.#heads.size;
      tell();
    });
    this.troubles = [...this.troubles, ...troubles];
  }

  get #all(): readonly ResultHead[] {
    return [...this.#heads.values()];
  }

  async #grade(): Promise<void> {
    const chosen = chooseCoursework(this.#all, this.tutors?.coursework);
    if (!chosen || this.#heads.size === 0) {
      this.book = undefined;
      return;
    }
    const { coursework } = chosen;
    const print = courseworkPrint(coursework);
    if (print !== this.#graded) {
      this.#graded = print;
      this.#pieces = new Map();
      this.#whose = new Map();
      this.slips = new Map();
      await this.#nameSlots(coursework);
    }
    const fresh = this.#all.filter(
      ({ file, coursework: { id } }) => id === coursework.id && !this.#pieces.has(file),
    );
    let done = 0;
    const tell = () => {
      this.progress = { doing: 'Grading', done, of: fresh.length };
    };
    tell();
    // Each worker grades what it has read.
    const byHand = Map.groupBy(fresh, ({ file }) => sure(this.#hands.get(file)));
    await Promise.all(
      [...byHand].map(async ([hand, own]) => {
        let size = BATCH;
        for (let k = 0; k < own.length; ) {
          const files = own.slice(k, k + size).map(({ file }) => file);
          k += files.length;
          const start = performance.now();
          const graded = await hand.ask<'grade'>({ ask: 'grade', coursework, files });
          const fits = Math.round((files.length * SPELL) / (performance.now() - start + 1));
          size = Math.max(1, Math.min(fits, MOST_BATCH));
          for (const { file, pieces } of graded) this.#pieces.set(file, pieces);
          done += files.length;
          tell();
        }
      }),
    );
    await this.#askWhose(coursework);
    this.#show(chosen);
  }

  async #nameSlots(coursework: Coursework): Promise<void> {
    const [outline, names] = await Promise.all([fetchOutline(), fetchNames()]);
    const lessons = new Map(lessonsOf(outline).map(({ slug, objectives }) => [slug, objectives]));
    const objectives = (lesson: string) => lessons.get(lesson) ?? [];
    this.#slots = slotsOf(coursework, objectives);
    this.labels = labelSlots(this.#slots, {
      objectives,
      job: (id) => names.jobs[id] ?? id,
      callout: (id) => names.callouts[id] ?? id,
      layout: (id) => names.systems[id] ?? id,
    });
  }

  /** Finds out whose variants work was made for that does not fit its own. */
  async #askWhose(coursework: Coursework): Promise<void> {
    const codes = [...new Set(this.#all.map(({ learner: { code } }) => code))];
    const own = this.#all.filter(({ coursework: { id } }) => id === coursework.id);
    const strays = own.flatMap(({ file }) =>
      (this.#pieces.get(file) ?? []).filter((piece) => isStray(piece) && !this.#whose.has(keyOf(piece))),
    );
    await Promise.all(
      [...Map.groupBy(strays, ({ file }) => sure(this.#hands.get(file)))].map(async ([hand, pieces]) => {
        const where = pieces.map(({ file, index }) => ({ file, index }));
        const whose = await hand.ask<'whose'>({ ask: 'whose', pieces: where, codes });
        pieces.forEach((piece, k) => {
          const code = whose[k];
          if (code !== undefined) this.#whose.set(keyOf(piece), code);
        });
      }),
    );
  }

  #show(chosen: Chosen): void {
    const graded = this.#all.map((head): Graded => {
      const pieces = (this.#pieces.get(head.file) ?? []).map((piece) => {
        const whose = this.#whose.get(keyOf(piece));
        return whose === undefined || whose === head.learner.code ? piece : { ...piece, whose };
      });
      return { ...head, pieces };
    });
    this.book = makeBook(chosen, this.#slots, graded, Date.now(), this.slips);
  }

  /** Works out what is wrong with wrong wirings: the table is there meanwhile. */
  async #compare(): Promise<void> {
    const { book } = this;
    if (!book) return;
    const found = new Map(this.slips);
    const wrong = [...wrongCircuits([...this.#pieces.values()].flat())].filter(
      ([circuit]) => !found.has(circuit),
    );
    let done = 0;
    const tell = () => {
      this.progress = { doing: 'Comparing', done, of: wrong.length };
    };
    tell();
    await Promise.all(
      [...Map.groupBy(wrong, ([, { file }]) => sure(this.#hands.get(file)))].map(async ([hand, own]) => {
        for (const batch of batches(own, CIRCUITS)) {
          const circuits = batch.map(([circuit, { file, index }]) => ({ circuit, file, index }));
          for (const [circuit, slips] of await hand.ask<'slips'>({ ask: 'slips', circuits }))
            found.set(circuit, slips);
          done += circuits.length;
          tell();
        }
      }),
    );
    this.slips = found;
    this.#show(book.chosen);
  }
}

const keyOf = ({ file, index }: Pick<Piece, 'file' | 'index'>): string => `${index} ${file}`;
