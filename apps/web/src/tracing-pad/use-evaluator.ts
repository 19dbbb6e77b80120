import { useQuery } from '@tanstack/react-query';
import { scriptQuery } from '../look/late-part.js';
import type { Evaluator } from './drawn-tracing.js';

const script = scriptQuery('drawn-tracing', (): Promise<Evaluator> => import('./drawn-tracing.js'));

/** What reads drawings; null until there is a drawing to read and the script is here. */
export const useEvaluator = (isWanted: boolean): Evaluator | null =>
  useQuery({ ...script, enabled: isWanted }).data ?? null;
