import {
  setupEntry,
  setupPreview,
  setupView,
  type SetupChange,
  type SetupEntry,
  type SetupPreview,
  type SetupView,
} from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { z } from 'zod';
import { post, put, read, remove } from '../api/client.js';

/** A change with the version that it is based on; 0 where nothing was there before. */
export interface VersionedChange {
  change: SetupChange;
  version: number;
}

/** What the practice consists of, a look at what a change would do, and the change itself. */
export function useSetup() {
  const client = useQueryClient();
  const setup = useQuery({ queryKey: ['setup'], queryFn: (): Promise<SetupView> => read('/setup', setupView) });
  const preview = useMutation({
    mutationFn: (change: SetupChange): Promise<SetupPreview> => post('/setup/preview', setupPreview, change),
  });
  const save = useMutation({
    mutationFn: send,
    // Everything planned rests on it: whatever is shown elsewhere may have changed.
    onSettled: () => client.invalidateQueries(),
  });
  return { setup, preview, save };
}

/** Answers null for a closure that was removed: nothing is left to show. */
async function send({ change, version }: VersionedChange): Promise<SetupEntry | null> {
  switch (change.do) {
    case 'add':
      return post('/setup/records', setupEntry, change.record);
    case 'replace':
      return put(`/setup/records/${change.id}`, setupEntry, change.record, version);
    case 'drop':
      await remove(`/setup/closures/${change.id}`, z.unknown());
      return null;
    default:
      return put(`/setup/records/${change.id}/retirement`, setupEntry, { isRetired: change.do === 'retire' }, version);
  }
}
