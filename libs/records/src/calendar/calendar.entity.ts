import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** Recurring local time of one subject: opening hours, working pattern, departures, protected minutes. */
@Entity('calendar_rule')
export class CalendarRule extends TenantRow {
  @Column('uuid', { nullable: true }) clinicId!: string | null;
  @Column('uuid', { nullable: true }) practitionerId!: string | null;
  @Column('uuid', { nullable: true }) laboratoryId!: string | null;
  @Column('uuid', { nullable: true }) workCentreId!: string | null;
  @Column('uuid', { nullable: true }) courierId!: string | null;
  @Column('uuid', { nullable: true }) protectedTimeId!: string | null;
  /** Where a practitioner works these hours; null for other subjects. */
  @Column('uuid', { nullable: true }) atClinicId!: string | null;
  @Column('text', { nullable: true }) direction!: 'to-lab' | 'to-clinic' | null;
  @Column('date') startOn!: string;
  /** Time of day such as `09:00`. */
  @Column('text') startsLocal!: string;
  @Column('integer') minutes!: number;
  @Column('text') rrule!: string;
  /** Starts that do not take place, such as `2027-01-04T09:00`. */
  @Column('text', { array: true }) exceptLocal!: string[];
}

/** Time in which a subject is closed or absent: whole local dates, or instants. The truth about absence. */
@Entity('closure')
export class Closure extends TenantRow {
  @Column('uuid', { nullable: true }) clinicId!: string | null;
  @Column('uuid', { nullable: true }) laboratoryId!: string | null;
  @Column('uuid', { nullable: true }) workCentreId!: string | null;
  @Column('uuid', { nullable: true }) resourceId!: string | null;
  @Column('date', { nullable: true }) fromOn!: string | null;
  /** First date after the closure. */
  @Column('date', { nullable: true }) untilOn!: string | null;
  @Column('timestamptz', { nullable: true }) startsAt!: Date | null;
  @Column('timestamptz', { nullable: true }) endsAt!: Date | null;
  @Column('text') reason!: string;
  @Column('uuid', { nullable: true }) importedCalendarId!: string | null;
  @Column('text', { nullable: true }) sourceUid!: string | null;
  @Column('integer', { default: 1 }) version!: number;
}

/** Minutes that a clinic keeps for sore spots and breakages; when they recur is a calendar rule. */
@Entity('protected_time')
export class ProtectedTime extends TenantRow {
  @Column('uuid') clinicId!: string;
  @Column('text') reason!: string;
  @Column('integer') releasedHoursBefore!: number;
}

/** An outside calendar that blocks one resource, with the digest of what was last read. */
@Entity('imported_calendar')
export class ImportedCalendar extends TenantRow {
  @Column('uuid') resourceId!: string;
  @Column('text') source!: string;
  @Column('text') contentHash!: string;
  @Column('timestamptz') importedAt!: Date;
}
