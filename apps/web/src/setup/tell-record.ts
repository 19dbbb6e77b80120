import type { SetupView } from '@archwright/contracts';
import type { DraftPart } from '../drafts/differences.js';
import { enumerated, spelled } from '../words/plural.js';
import { setupWords as words } from '../words/setup.js';
import type { RecordDraft } from './record-draft.js';
import { labelOf, RECORD_FIELDS } from './record-fields.js';
import { ruleInWords } from './rule-words.js';
import { namesOf } from './setup-view.js';

const ID = /^[\da-f]{8}-[\da-f-]{27}$/;

/** A record in words, field by field: names for ids, recurring times as people say them. */
export function tellRecord(draft: RecordDraft, setup: SetupView): DraftPart[] {
  const nameOf = namesOf(setup);
  const inWords = (value: unknown): string => {
    switch (typeof value) {
      case 'string':
        if (ID.test(value)) return nameOf(value);
        return value.startsWith('FREQ=') ? ruleInWords(value) : spelledCode(value);
      case 'number':
        return String(value);
      case 'boolean':
        return value ? words.yes : words.no;
      case 'object':
        return value === null ? '' : enumerated(Object.values(value).map(inWords).filter(Boolean));
      default:
        return '';
    }
  };
  return RECORD_FIELDS[draft.kind].map(({ key }) => ({
    key,
    label: labelOf(key),
    text: inWords(draft[key]),
  }));
}

/** Codes of the trade come as words; what a person has written stays as it is. */
const spelledCode = (text: string): string => (/^[a-z]+(-[a-z]+)+$/.test(text) ? spelled(text) : text);
