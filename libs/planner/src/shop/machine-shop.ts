/** A machine that may do an operation, and how long it then takes. */
export interface MachineChoice {
  /** From 0. */
  readonly machine: number;
  /** Whole units of time, 0 or more. */
  readonly duration: number;
}

/**
 * Jobs whose operations follow one another, each on one machine at a time without a break. With one choice for every
 * operation this is the job shop, with more the flexible job shop. A bench with one place is such a machine.
 */
export interface MachineShop {
  readonly machineCount: number;
  /** `[job][operation]`: the choices, at least one. */
  readonly jobs: readonly (readonly (readonly MachineChoice[])[])[];
}

/** Times and machines as `[job][operation]`. */
export interface ShopPlan {
  readonly makespan: number;
  readonly starts: readonly (readonly number[])[];
  readonly machines: readonly (readonly number[])[];
}
