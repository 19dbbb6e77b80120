import { caughtMail } from '@archwright/contracts';
import { useQuery } from '@tanstack/react-query';
import { z } from 'zod';
import { read } from '../api/client.js';

const mailList = z.object({ items: z.array(caughtMail) });

/** Mail of the demonstration, the newest first. */
export const useCaughtMail = () =>
  useQuery({
    queryKey: ['caught-mail'],
    queryFn: () => read('/caught-mail', mailList),
    refetchInterval: 5_000,
  });
