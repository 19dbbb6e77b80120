import ICAL from 'ical.js';
import { CalendarFileError } from '../errors.js';

/** One content line after unfolding, with the number of its first line in the file. */
export interface ContentLine {
  readonly line: number;
  readonly text: string;
}

/** A component as it stood in the file; `parts` are nested components such as the observances of a time zone. */
export interface RawComponent {
  readonly name: string;
  readonly line: number;
  readonly lines: ContentLine[];
  readonly parts: RawComponent[];
}

/** Something in the file that could not be used, and was left out. */
export interface CalendarProblem {
  readonly line: number;
  /** Name of the component that was left out, such as `VEVENT`. */
  readonly component: string;
  readonly problem: string;
}

/** Thrown inside this folder only, to leave one component out; the reader turns it into a `CalendarProblem`. */
export class ComponentProblem extends Error {
  constructor(
    readonly line: number,
    message: string,
  ) {
    super(message);
  }
}

/** RFC 5545, section 3.1: a line that begins with a space or a tab continues the one before. */
function unfold(text: string): ContentLine[] {
  const unfolded: { line: number; text: string }[] = [];
  text.split(/\r\n|\n|\r/).forEach((piece, index) => {
    const last = unfolded.at(-1);
    if (last !== undefined && /^[ \t]/.test(piece)) last.text += piece.slice(1);
    else if (piece.trim() !== '') unfolded.push({ line: index + 1, text: piece });
  });
  return unfolded;
}

/**
 * The components of all calendars in the file, each kept apart so that one bad one costs only itself.
 *
 * @throws {CalendarFileError} when the text is no calendar, or ends inside one: a download that was cut off would
 *   otherwise free the time of every event it lost
 */
export function splitComponents(text: string): { components: RawComponent[]; problems: CalendarProblem[] } {
  const components: RawComponent[] = [];
  const problems: CalendarProblem[] = [];
  const open: RawComponent[] = [];
  let calendars = 0;
  let insideCalendar = false;

  const abandon = (): void => {
    const [outer] = open.splice(0);
    if (outer === undefined) return;
    problems.push({ line: outer.line, component: outer.name, problem: `begins here but END:${outer.name} is missing` });
  };

  for (const content of unfold(text)) {
    const [, edge, given] = /^(BEGIN|END):\s*([\w-]+)\s*$/i.exec(content.text) ?? [];
    const name = given?.toUpperCase() ?? '';
    if (edge === undefined) {
      open.at(-1)?.lines.push(content);
    } else if (name === 'VCALENDAR') {
      abandon();
      insideCalendar = edge.toUpperCase() === 'BEGIN';
      if (insideCalendar) calendars += 1;
    } else if (edge.toUpperCase() === 'BEGIN') {
      if (/^V(EVENT|TODO|JOURNAL|FREEBUSY|TIMEZONE)$/.test(name)) abandon();
      const component = { name, line: content.line, lines: [], parts: [] };
      open.at(-1)?.parts.push(component);
      open.push(component);
    } else {
      const depth = open.findLastIndex((component) => component.name === name);
      if (depth === 0 && open[0] !== undefined) components.push(open[0]);
      if (depth >= 0) open.length = depth;
    }
  }
  if (calendars === 0) {
    throw new CalendarFileError(
      'not-a-calendar',
      'No BEGIN:VCALENDAR was found. Accepted: an iCalendar file (RFC 5545).',
    );
  }
  if (insideCalendar) {
    throw new CalendarFileError('cut-off', 'The file ends before END:VCALENDAR. Fetch it again; nothing was loaded.');
  }
  return { components, problems };
}

/** One property with its place in the file; `values` are jCal values (RFC 7265), checked where they are used. */
export interface CalendarProperty {
  readonly line: number;
  /** The value as written. */
  readonly text: string;
  readonly values: readonly unknown[];
  parameter(name: string): string | null;
}

/** Properties by upper-case name, in the order of the file. */
export type CalendarProperties = ReadonlyMap<string, readonly CalendarProperty[]>;

/** @throws {ComponentProblem} with the line that cannot be read */
export function readProperties(component: RawComponent): CalendarProperties {
  const properties = new Map<string, CalendarProperty[]>();
  for (const { line, text } of component.lines) {
    if (text.includes('\u0000'))
      throw new ComponentProblem(line, 'the content line holds a character that is none (NUL)');
    const property = parseLine(line, text);
    const name = property.name.toUpperCase();
    const values: unknown[] = property.jCal.slice(3);
    const entry: CalendarProperty = {
      line,
      text: text.slice(text.indexOf(':') + 1).trim(),
      values,
      parameter(parameter) {
        const value: unknown = property.getParameter(parameter);
        return typeof value === 'string' ? value : null;
      },
    };
    properties.set(name, [...(properties.get(name) ?? []), entry]);
  }
  return properties;
}

function parseLine(line: number, text: string): InstanceType<typeof ICAL.Property> {
  try {
    return ICAL.Property.fromString(text);
  } catch (error) {
    // The parser's message may quote the line, and with it a title that is nobody's business here.
    const name = /^[\w-]*/.exec(text)?.[0] ?? '';
    const reason = error instanceof Error && name === 'RRULE' ? ` (${error.message})` : '';
    throw new ComponentProblem(line, `the content line "${name}…" cannot be read${reason}`);
  }
}

/** The only property of that name, or null. @throws {ComponentProblem} when there are two */
export function single(properties: CalendarProperties, name: string): CalendarProperty | null {
  const [first, second] = properties.get(name) ?? [];
  if (second !== undefined) throw new ComponentProblem(second.line, `${name} stands twice; once is allowed`);
  return first ?? null;
}

/** The text of a property, or null when it is absent. */
export function textOf(properties: CalendarProperties, name: string): string | null {
  const value = properties.get(name)?.[0]?.values[0];
  return typeof value === 'string' || typeof value === 'number' ? String(value) : null;
}
