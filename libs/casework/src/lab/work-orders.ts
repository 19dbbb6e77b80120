import type { RecordCapture, SignPrescription, WorkOrder } from '@archwright/contracts';
import { measurementByCode, type Reading } from '@archwright/measures';
import type { CaseChain } from '@archwright/protocol';
import { Prescription, UserAccount } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { KeptEntry } from '../capture/settle-tracing.js';

/** What a signed prescription keeps, as signing wrote it. */
interface Content extends Omit<SignPrescription, 'disinfection'> {
  readonly stage: string;
  readonly round: number;
  readonly arches: ('upper' | 'lower')[];
  /** Codes of the laboratory steps that follow. */
  readonly work: readonly string[];
  readonly readings: readonly Reading[];
  readonly tracings: readonly KeptEntry[];
  readonly otherCentricRelation: RecordCapture['otherCentricRelation'];
  readonly disinfection: SignPrescription['disinfection'];
  readonly objects: readonly string[];
  /** As chosen with the patient; left out where nothing was said. */
  readonly arrangement?: string;
  readonly wish?: string;
}

/** Every hand-over of a case that was signed, the latest first, in the words of the trade. */
export async function workOrdersOf(tx: EntityManager, caseId: string, chain: CaseChain): Promise<WorkOrder[]> {
  const signed = await tx.find(Prescription, { where: { caseId }, order: { signedAt: 'DESC', id: 'DESC' } });
  const signers = await tx.findBy(UserAccount, { id: In(signed.map(({ signedBy }) => signedBy)) });
  return signed.map(({ id, signedAt, signedBy, supersededAt, content: document }) => {
    const content = document as Content;
    const titleIn = (parts: readonly { code: string; title: string }[], code: string) =>
      parts.find((part) => part.code === code)?.title ?? code;
    return {
      id,
      stage: content.stage,
      title: titleIn(chain.stages, content.stage),
      round: content.round,
      arches: content.arches,
      signedAt: signedAt.toISOString(),
      signedBy: signers.find((each) => each.id === signedBy)?.name ?? '',
      superseded: supersededAt !== null,
      work: content.work.map((code) => titleIn(chain.steps, code)),
      values: valuesOf(document as Readonly<Record<string, unknown>>),
      objects: [...content.objects],
    };
  });
}

/**
 * What a signed hand-over says beside the work itself, in the words of the trade.
 *
 * @param document as signing wrote it, or as it went along with an order
 */
export function valuesOf(document: Readonly<Record<string, unknown>>): WorkOrder['values'] {
  const content = document as Partial<Content>;
  const { shade, mould, arrangement, wish, note, disinfection } = content;
  const wishes = {
    'Tooth shade': shade,
    'Tooth mould': mould,
    'Arrangement of the teeth': arrangement,
    'Wish of the patient': wish,
    Note: note,
  };
  return [
    ...Object.entries(wishes).flatMap(([name, value]) => (value ? [{ name, value }] : [])),
    ...(content.readings ?? []).map((reading) => ({ name: nameOf(reading), value: valueOf(reading) })),
    ...(content.tracings ?? []).map((tracing, index) => ({
      name: `Needle-point tracing ${String(index + 1)}`,
      value: tracingInWords(tracing),
    })),
    ...(content.otherCentricRelation ?? []).map(({ method, occlusalVerticalDimension: at, closures }) => ({
      name: 'Centric relation record',
      value: [
        inWords(method),
        ...(at === undefined ? [] : [`at ${String(at.valueMm)} mm`]),
        ...(closures === undefined ? [] : [`${String(closures.count)} closures, scatter ${String(closures.rmsMm)} mm`]),
      ].join(', '),
    })),
    ...(disinfection === undefined ? [] : [{ name: 'Disinfected with', value: disinfection.agent }]),
  ];
}

function nameOf({ code, arch, side, region }: Reading): string {
  const of = [arch, side, region].flatMap((each) => (each === undefined ? [] : [inWords(each)]));
  return [measurementByCode(code).name, ...of].join(', ');
}

function valueOf({ code, value, unit, method }: Reading): string {
  const measurement = measurementByCode(code);
  const choices = measurement.kind === 'enum' ? measurement.options : [];
  const said =
    typeof value === 'boolean'
      ? value
        ? 'yes'
        : 'no'
      : (choices.find((choice) => choice.code === value)?.label ?? String(value));
  const marks = Object.values(method ?? {}).map(inWords);
  return [unit === undefined || unit === 'count' ? said : `${said} ${unit}`, ...marks].join(', ');
}

function tracingInWords(tracing: Content['tracings'][number]): string {
  const { apex, form, stylusOn, view, posture, occlusalVerticalDimension: at } = tracing;
  const parts = [
    apex === 'none' ? 'no apex' : `${apex} apex`,
    ...(form === undefined ? [] : [`form ${inWords(form)}`]),
    `stylus on the ${stylusOn} base`,
    inWords(view),
    inWords(posture),
    ...(at === undefined ? [] : [`at ${String(at.valueMm)} mm`]),
  ];
  return parts.join(', ');
}

const inWords = (code: string): string => code.replaceAll('-', ' ');
