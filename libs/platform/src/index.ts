export { Clock, SharedClock, SystemClock } from './clock.js';
export { ConfigurationError, parseConfiguration, type Configuration } from './configuration.js';
export { CursorInvalidError, decodeCursor, encodeCursor, pageOf, type Cursor } from './cursor.js';
export { DatabaseLoginRefusedError, requireHarmlessLogin, type QueryRows } from './database-login.js';
export { DatabaseModule } from './database.module.js';
export {
  answerOnce,
  Idempotent,
  IdempotencyKeyReusedError,
  IdempotentRequestRunningError,
  type IdempotencyLedger,
  type IdempotentRequest,
  type LedgerEntry,
} from './idempotency.js';
export { createLogger, FrameworkLogger } from './logger.js';
export { CONFIGURATION, LOGGER, PlatformModule } from './platform.module.js';
export { etagOf, IfMatch, PreconditionFailedError, requireVersion } from './preconditions.js';
export { announceReady, endInOrder } from './process-lifetime.js';
export { ProblemFilter } from './problem-filter.js';
export { PUBLIC, Public } from './public.js';
export { currentRequestId, withinRequest } from './request-scope.js';
export { senderOf } from './sender.js';
export { StorableTextPipe } from './storable-text.js';
export { RequestInvalidError, validationPipe, type FieldProblem } from './validation.js';
export { wantedHeader } from './wanted-header.js';
