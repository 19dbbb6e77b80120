import type { ShopLayout } from './shop-layout.js';

/**
 * What the last moves turned round and may not be turned back for a while: orders of an operation and a job on one
 * machine, and machines of an operation. Entries hold the move up to which they count.
 */
export class TabuList {
  private readonly orders: Int32Array;
  private readonly machines: Int32Array;

  constructor(private readonly layout: ShopLayout) {
    this.orders = new Int32Array(layout.size * layout.jobCount);
    this.machines = new Int32Array(layout.isFlexible ? layout.size * layout.machineCount : 0);
  }

  clear(): void {
    this.orders.fill(0);
    this.machines.fill(0);
  }

  /** `first` may not come before the operation `second` until after move `until`. */
  forbidOrder(first: number, second: number, until: number): void {
    this.orders[first * this.layout.jobCount + this.layout.job[second]!] = until;
  }

  isOrderForbidden(first: number, second: number, move: number): boolean {
    return this.orders[first * this.layout.jobCount + this.layout.job[second]!]! >= move;
  }

  forbidMachine(id: number, machine: number, until: number): void {
    this.machines[id * this.layout.machineCount + machine] = until;
  }

  isMachineForbidden(id: number, machine: number, move: number): boolean {
    return this.machines[id * this.layout.machineCount + machine]! >= move;
  }
}
