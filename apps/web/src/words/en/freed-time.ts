export const messages = {
  freed: {
    title: 'Freed time',
    sentence: 'Time of one clinician that has become free. The case that gains most by taking it stands first.',
    clinic: 'Clinic',
    clinician: 'Clinician',
    choose: 'Choose',
    day: 'Day',
    from: 'From',
    to: 'To',
    ask: 'Who gains most?',
    loading: 'who gains; each case is planned anew for it, which can take some seconds',
    incomplete:
      'Choose clinic and clinician, and enter a day with a time from and a later one to, such as 09:00 and 09:45.',
    start:
      'Whoever gains by the time will stand here, the one who gains most first. After a visit was moved or cancelled, its case shows the time that it left.',
    none: 'Nobody gains by this time: no visit to come fits into it by its length, its clinician and the work it waits for.',
    looked:
      '{looked, plural, one {# case was} other {# cases were}} looked at{left, plural, =0 {.} other {; # whose next visit is nearer were left out.}}',
    move: 'now {before}, then {after}',
    placement: 'placement {before}, then {after}',
    preview: 'Show what would change',
    previewOf: 'Show what would change for {patient}',
    hide: 'Not this one',
    apply: 'They agreed: change it',
    done: 'Changed. The time is taken by case {number}.',
    calls: 'Calls to make',
    timeOf: '{day}, {from} to {to}',
    freed: '{when} has become free.',
    see: 'See who gains most by it',
  },
};
