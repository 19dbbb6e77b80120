import { statusOf } from './problem-status.js';

describe('status of an error code', () => {
  it.each([
    ['casework.not-found', 404],
    ['casework.patient-not-found', 404],
    ['casework.plan-conflict', 409],
    ['access.forbidden', 403],
    ['health.unavailable', 503],
    ['platform.precondition-missing', 428], // RFC 6585, section 3
    ['platform.precondition-failed', 412], // RFC 9110, section 13.1.1
    ['platform.idempotency-key-reused', 422],
    ['planner.lag-too-short', 422],
    ['interop.calendar-too-many-times', 422],
    ['planner.unforbidden', 422],
  ])('gives %s the status %d', (code, status) => {
    expect(statusOf(code)).toBe(status);
  });
});
