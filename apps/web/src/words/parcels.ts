import type { ParcelView } from '@archwright/contracts';
import { messages as english } from './en/parcels.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, { de: () => import('./de/parcels.js'), ar: () => import('./ar/parcels.js') });

const betweenBoth = (clinic: string, lab: string) => ({ clinic, lab });
const ofCode = (code: string) => ({ code });
const ofName = (name: string) => ({ name });
const forwardLabel = filled(said.object.forward.label, (clinic: string) => ({ clinic }));
const forwardThen = filled(said.object.forward.then, (clinic: string) => ({ clinic }));

/** Words of parcels and of the things that travel in them. */
export const parcelWords = {
  ...said.parcel,
  sentence: filled(said.parcel.sentence, (toReceive: number, toCheck: number) => ({
    isAny: toReceive + toCheck > 0 ? 'yes' : 'no',
    toReceive,
    toCheck,
  })),
  ends: {
    'to-lab': filled(said.parcel.ends['to-lab'], betweenBoth),
    'to-clinic': filled(said.parcel.ends['to-clinic'], betweenBoth),
  } satisfies Record<ParcelView['direction'], (clinic: string, lab: string) => string>,
  /** One thing by its two names. */
  object: filled(said.parcel.object, (number: string, code: string) => ({ number, code })),
  declared: filled(said.parcel.declared, (kind: string, what: string) => ({ kind, what })),
  caution: filled(said.parcel.caution, (text: string, source: string) => ({ text, source })),
  takeOutOf: filled(said.parcel.takeOutOf, ofCode),
  finding: filled(said.parcel.finding, ofName),
  place: filled(said.parcel.place, ofName),
  note: filled(said.parcel.note, ofName),
};

/** Words of packing: two identifiers for everything. */
export const packWords = {
  ...said.pack,
  remove: filled(said.pack.remove, ofCode),
};

/** Words of the things themselves. */
export const objectWords = {
  ...said.object,
  kindAt: filled(said.object.kindAt, (kind: string, place: string) => ({ kind, place })),
  declared: filled(said.object.declared, (agent: string, when: string, by: string) => ({ agent, when, by })),
  open: filled(said.object.open, ofCode),
  deed: {
    ...said.object.deed,
    'give-to-patient': { ...said.object.deed['give-to-patient'], hasReason: false as const },
    'book-in': { ...said.object.deed['book-in'], hasReason: false as const },
  },
  forward: (clinic: string) => ({ label: forwardLabel(clinic), then: forwardThen(clinic), hasReason: false as const }),
};

/** Words of declaring disinfection. */
export const disinfectionWords = said.disinfection;

/** Words of keeping something from now on. */
export const registerWords = {
  ...said.register,
  done: filled(said.register.done, ofCode),
};
