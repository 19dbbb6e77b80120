import { TOLD } from '@archwright/contracts';

/** The service says them in English itself, so that they stand where it finds them. */
export const messages = { told: TOLD };
