/** Something that takes time and places at renewable resources, without a break. */
export interface Activity {
  /** Whole units of time, 0 or more. */
  readonly duration: number;
  /** Places needed of each resource while it runs. */
  readonly needs: readonly number[];
}

/**
 * `to` starts `lag` after the start of `from` or later. With `lag` the duration of `from` this is a precedence; a
 * negative lag from the later to the earlier activity is the longest wait between their starts.
 */
export interface StartLag {
  readonly from: number;
  readonly to: number;
  readonly lag: number;
}

/** Activities on renewable resources. A work centre with several places is such a resource. */
export interface Project {
  readonly capacities: readonly number[];
  readonly activities: readonly Activity[];
  readonly lags: readonly StartLag[];
}

/** When each activity starts, in the order of the project; the makespan is the latest end. */
export interface ProjectPlan {
  readonly makespan: number;
  readonly starts: readonly number[];
}
