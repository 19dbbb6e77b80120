import { useState } from 'react';

/**
 * What is typed over a record, with the version that it was typed over: the record may come in anew while somebody types,
 * and saving over a version that they have not seen has to be refused by the service, not done in silence.
 *
 * @param latest version of the record as the service has it now
 */
export function useVersionedDraft<Draft>(latest: number) {
  const [typed, setTyped] = useState<{ draft: Draft; version: number } | null>(null);
  return {
    /** Null while nothing is typed. */
    typed: typed?.draft ?? null,
    version: typed?.version ?? latest,
    type: (draft: Draft): void => {
      setTyped((before) => ({ draft, version: before?.version ?? latest }));
    },
    /** The same words over a later version, once both have been seen. */
    keepOver: (version: number): void => {
      setTyped((before) => (before === null ? null : { ...before, version }));
    },
    forget: (): void => {
      setTyped(null);
    },
  };
}
