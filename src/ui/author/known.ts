import type { JobKind } from '../../files/job.ts';
import { href } from '../shell/href.ts';

/** What the course has that a tutor can name, as lists need it. */
export interface Known {
  readonly systems: readonly {
    readonly id: string;
    readonly title: string;
    readonly alsoCalled: readonly string[];
  }[];
  readonly jobs: readonly {
    readonly id: string;
    readonly title: string;
    readonly summary: string;
    readonly system: string;
    readonly kind: JobKind;
  }[];
  readonly callouts: readonly {
    readonly id: string;
    readonly title: string;
    readonly system: string;
    readonly level: number;
  }[];
  readonly lessons: readonly {
    readonly slug: string;
    readonly title: string;
    readonly summary: string;
    readonly part: string;
    readonly minutes: number;
    /** How many questions are asked on it: one for each objective. */
    readonly objectives: number;
  }[];
  readonly quizzes: readonly { readonly id: string; readonly title: string; readonly kind: string }[];
  readonly sums: readonly { readonly id: string; readonly title: string }[];
  readonly makers: readonly {
    readonly id: string;
    readonly title: string;
    readonly needs: 'layout' | 'layouts' | 'quiz' | 'sum';
  }[];
}

/** Fetches it. Rejects when that cannot be done. */
export async function fetchKnown(): Promise<Known> {
  const answer = await fetch(href('/author/known.json'));
  if (!answer.ok) throw new Error(`the lists could not be fetched (${answer.status})`);
  return (await answer.json()) as Known;
}
