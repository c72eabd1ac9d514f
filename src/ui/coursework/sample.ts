/** A sample coursework as the page lists it. */
export interface Sample {
  readonly id: string;
  readonly title: string;
  readonly says: string;
}
