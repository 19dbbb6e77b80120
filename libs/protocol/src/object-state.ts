import { IllegalTransitionError } from './errors.js';

/** Where a thing that changes hands stands. With its holder: in use; everything else may not be worked with. */
export type ObjectState =
  'expected' | 'in-use' | 'packed' | 'in-transit' | 'quarantined' | 'given-to-patient' | 'discarded' | 'lost';

export type ObjectAction =
  | 'book-in'
  | 'quarantine'
  | 'release'
  | 'give-to-patient'
  | 'forward'
  | 'take-back'
  | 'discard'
  | 'declare-lost'
  | 'find'
  | 'pack'
  | 'take-out'
  | 'hand-over'
  | 'receive'
  | 'set-aside';

interface Transition {
  readonly from: readonly ObjectState[];
  readonly to: ObjectState;
}

const TRANSITIONS: Readonly<Record<ObjectAction, Transition>> = {
  'book-in': { from: ['expected'], to: 'in-use' },
  quarantine: { from: ['in-use'], to: 'quarantined' },
  release: { from: ['quarantined'], to: 'in-use' },
  'give-to-patient': { from: ['in-use'], to: 'given-to-patient' },
  // Between two clinics there is no parcel: the other one books it in.
  forward: { from: ['in-use'], to: 'expected' },
  'take-back': { from: ['given-to-patient'], to: 'in-use' },
  discard: { from: ['expected', 'in-use', 'quarantined', 'lost'], to: 'discarded' },
  'declare-lost': { from: ['expected', 'in-use', 'quarantined'], to: 'lost' },
  // What turns up again is looked at before anybody works with it.
  find: { from: ['lost'], to: 'quarantined' },
  pack: { from: ['in-use'], to: 'packed' },
  'take-out': { from: ['packed'], to: 'in-use' },
  'hand-over': { from: ['packed'], to: 'in-transit' },
  receive: { from: ['in-transit'], to: 'in-use' },
  // A mismatch on arrival; a thing that nobody announced may come from anywhere.
  'set-aside': {
    from: ['expected', 'in-use', 'packed', 'in-transit', 'quarantined', 'given-to-patient', 'lost'],
    to: 'quarantined',
  },
};

/**
 * The state an object takes.
 *
 * @throws {IllegalTransitionError} naming the actions that may follow
 */
export function changeObjectState(from: ObjectState, action: ObjectAction): ObjectState {
  const { from: accepted, to } = TRANSITIONS[action];
  if (!accepted.includes(from)) throw new IllegalTransitionError('object', from, to, nextStates(from));
  return to;
}

const nextStates = (from: ObjectState): ObjectState[] => [
  ...new Set(
    Object.values(TRANSITIONS)
      .filter((each) => each.from.includes(from))
      .map(({ to }) => to),
  ),
];
