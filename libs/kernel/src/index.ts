export { DomainError } from './domain-error.js';
export { seededRandom, type SeededRandom } from './seeded-random.js';
