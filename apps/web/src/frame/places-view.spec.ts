import { homeOf, may, placesOf } from './places-view.js';

it('shows each role its own workplaces in one order and starts the day at the right one', () => {
  expect(placesOf('manager').map((place) => place.key)).toEqual(['desk', 'bench', 'chair']);
  expect(placesOf('clinician').map((place) => place.to)).toEqual(['/desk', '/chair']);
  expect(placesOf('lab').map((place) => place.to)).toEqual(['/bench']);
  expect(homeOf('clinician')).toBe('/chair');
  expect(homeOf('front-desk')).toBe('/desk');
});

it('offers treatment to clinicians only and bench work to the laboratory only', () => {
  const roles = ['front-desk', 'lab', 'clinician', 'manager', 'administrator'] as const;
  expect(roles.filter((role) => may.treat(role))).toEqual(['clinician']);
  expect(roles.filter((role) => may.workAtBench(role))).toEqual(['lab']);
  expect(roles.filter((role) => may.seeVisits(role))).toEqual(['front-desk', 'clinician', 'manager']);
});
