import { openLabQuestions, type OpenLabQuestions } from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { z } from 'zod';
import { post, read } from '../api/client.js';

/** What laboratories wait to hear from this person's clinics. */
export const useOpenQuestions = () =>
  useQuery({
    queryKey: ['lab-questions'],
    queryFn: (): Promise<OpenLabQuestions> => read('/lab/questions', openLabQuestions),
    refetchInterval: 30_000,
  });

/** Answers one question; the laboratory may go on. */
export function useAnswer(questionId: string) {
  const client = useQueryClient();
  return useMutation({
    mutationFn: (answer: string) => post(`/lab/questions/${questionId}/answer`, z.unknown(), { answer }),
    onSuccess: () => client.invalidateQueries({ queryKey: ['lab-questions'] }),
  });
}
