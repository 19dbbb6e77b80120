import type { StageView } from '@archwright/contracts';
import { z } from 'zod';
import type { Clash } from '../drafts/rebase.js';
import type { ClashRow } from '../look/clash-sheet.js';
import { stageWords as words } from '../words/chair.js';
import { spelled } from '../words/plural.js';
import { captureFields, subjectsOf, type FieldEntry } from './capture-boxes.js';
import type { Boxes } from './capture-draft.js';

/**
 * Boxes of a stage by what belongs together: readings stand with the answers how they were measured, so that nobody's
 * readings end up between somebody else's landmarks. By group, then by box.
 */
export type BoxGroups = Record<string, Record<string, string>>;

interface Group {
  key: string;
  label: string;
  boxes: string[];
  /** What stands in a box, in words. */
  say: (box: string, text: string) => string;
}

function groupsOfField(field: FieldEntry): Group[] {
  const { code, name, kind, choices, method } = field;
  const say = (box: string, text: string): string => {
    if (method.some(({ stored }) => stored === box)) return spelled(text);
    if (kind === 'boolean') return text === 'true' ? words.yes : words.no;
    return choices.find((choice) => choice.code === text)?.label ?? text;
  };
  if (method.length > 0) {
    const boxes = [...field.entries.map(({ key }) => key), ...method.map(({ stored }) => stored)];
    return [{ key: code, label: name, boxes, say }];
  }
  return subjectsOf(field).map((entries) => {
    const [first] = entries;
    const label = entries.length === 1 && first?.label ? `${name}, ${first.label}` : name;
    return { key: first?.key ?? code, label, boxes: entries.map(({ key }) => key), say };
  });
}

const valueGroups = (view: StageView): Group[] => captureFields(view).flatMap(groupsOfField);
const lineKey = (code: string): string => `checklist|${code}`;
const TICKED = 'true';

export function toGroups(view: StageView, { values, ticks, counts }: Boxes): BoxGroups {
  const groups: BoxGroups = {};
  for (const { key, boxes } of valueGroups(view))
    groups[key] = Object.fromEntries(boxes.map((box) => [box, values[box] ?? '']));
  for (const { code, counted } of view.checklist)
    groups[lineKey(code)] = { [code]: counted ? (counts[code] ?? '') : ticks[code] === true ? TICKED : '' };
  return groups;
}

export function fromGroups(view: StageView, groups: BoxGroups): Boxes {
  const boxes: Boxes = { values: {}, ticks: {}, counts: {} };
  for (const { key } of valueGroups(view)) Object.assign(boxes.values, groups[key]);
  for (const { code, counted } of view.checklist) {
    const text = groups[lineKey(code)]?.[code] ?? '';
    if (counted) boxes.counts[code] = text;
    else boxes.ticks[code] = text === TICKED;
  }
  return boxes;
}

/** What two people recorded differently at once, in words. A line that both ticked differently can't be among it. */
export function captureClashes(view: StageView, clashes: readonly Clash<BoxGroups>[]): ClashRow[] {
  const groups = new Map(valueGroups(view).map((group) => [group.key, group]));
  const lines = new Map(view.checklist.map(({ code, text }) => [lineKey(code), text]));
  return clashes.map(({ field, mine, theirs }) => {
    const group = groups.get(field);
    const inWords = (typed: Record<string, string> | undefined): string =>
      Object.entries(typed ?? {})
        .flatMap(([box, text]) => (text === '' ? [] : [group?.say(box, text) ?? text]))
        .join(', ');
    const label = group?.label ?? lines.get(field) ?? field;
    return { key: field, label, mine: inWords(mine), theirs: inWords(theirs) };
  });
}

const keptGroups = z.record(z.string(), z.record(z.string(), z.string()));

/** Groups that the browser kept over a reload; null when they are none. */
export const readGroups = (kept: unknown): BoxGroups | null => keptGroups.safeParse(kept).data ?? null;
