/** Which part of the practice, and which stretch of time, a snapshot shows. */
export interface SnapshotScope {
  /** In the order in which the snapshot lists them. */
  readonly clinicIds: readonly string[];
  /** Left out: every laboratory of the organisation. */
  readonly laboratoryIds?: readonly string[];
  readonly fromMs: number;
  readonly untilMs: number;
  /** Cases whose own bookings, laboratory work and holds are left out: those that are about to be planned. */
  readonly withoutCaseIds?: readonly string[];
}
