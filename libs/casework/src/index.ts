export { type Actor, serviceActor } from './actor.js';
export { NotYoursError, RecordNotFoundError, WrongStateError } from './errors.js';
export {
  endSession,
  hashPassword,
  resumeSession,
  SessionEndedError,
  signIn,
  SignInRefusedError,
  type SignedIn,
} from './access/sign-in.js';
export { loadChain, progressOf, type LoadedChain } from './cases/chain.js';
export { reconcileReminders, scheduleReminders } from './reminders/schedule.js';
