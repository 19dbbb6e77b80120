export const messages = {
  lot: {
    title: 'Who wears this lot?',
    start:
      'Enter the number of a lot as it stands on the container. Every case that it went into is listed, with whom to call.',
    found:
      '{n, plural, =0 {No case has lot “{lot}” on record.} one {Lot “{lot}” went into # case.} other {Lot “{lot}” went into # cases.}}',
    of: '{material}, {arches}',
    recorded: '{when}, {by}',
    first: 'Only the first {n} entries are counted and shown.',
    link: 'Find a lot of material',
    lot: 'Lot',
    material: 'Material, if several makers use the number',
    find: 'Find',
    need: 'Enter a lot of up to 60 characters.',
    none: 'Nothing was recorded under this number. Check it against the container; spelling counts, capitals do not.',
    columns: {
      who: 'Patient',
      phone: 'Telephone',
      case: 'Case',
      what: 'Material',
      expires: 'Use by',
      recorded: 'Recorded',
    },
    noExpiry: 'none printed',
  },
};
