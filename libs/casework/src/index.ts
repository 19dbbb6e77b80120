export { type Actor } from './actor.js';
export { NotYoursError } from './errors.js';
export { endSession, resumeSession, SessionEndedError, signIn, type SignedIn } from './access/sign-in.js';
