import type { SetupKind } from '@archwright/contracts';
import { chairKeeper, kitKeeper } from './chairs-and-kits.js';
import { clinicKeeper } from './clinics.js';
import { closureKeeper } from './closures.js';
import { courierKeeper } from './couriers.js';
import { deviceKeeper } from './devices.js';
import type { Keeper } from './keeper.js';
import { laboratoryKeeper } from './laboratories.js';
import { personKeeper } from './people.js';
import { workCentreKeeper } from './work-centres.js';

const KEEPERS: { readonly [Kind in SetupKind]: Keeper<Kind> } = {
  clinic: clinicKeeper,
  chair: chairKeeper,
  kit: kitKeeper,
  person: personKeeper,
  laboratory: laboratoryKeeper,
  'work-centre': workCentreKeeper,
  courier: courierKeeper,
  device: deviceKeeper,
  closure: closureKeeper,
};

/** Kinds in the order in which they build on one another. */
export const setupKinds = Object.keys(KEEPERS) as SetupKind[];

export function keeperOf<Kind extends SetupKind>(kind: Kind): Keeper<Kind> {
  return KEEPERS[kind];
}
