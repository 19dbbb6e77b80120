import { doorFor, homeOf, may, placesOf } from './places-view.js';

it('shows each role its own workplaces in one order and starts the day at the right one', () => {
  expect(placesOf('manager').map((place) => place.key)).toEqual(['desk', 'bench', 'chair', 'practice']);
  expect(placesOf('clinician').map((place) => place.to)).toEqual(['/desk', '/chair']);
  expect(placesOf('lab').map((place) => place.to)).toEqual(['/bench']);
  expect(homeOf('clinician')).toBe('/chair');
  expect(homeOf('front-desk')).toBe('/desk');
});

it('offers treatment to clinicians only and bench work to the laboratory only', () => {
  const roles = ['front-desk', 'lab', 'clinician', 'manager', 'administrator'] as const;
  expect(roles.filter((role) => may.treat(role))).toEqual(['clinician']);
  expect(roles.filter((role) => may.workAtBench(role))).toEqual(['lab']);
  expect(roles.filter((role) => may.seeVisits(role))).toEqual(['front-desk', 'clinician', 'manager', 'administrator']);
});

it.each([
  ['lab', '/desk/cases/7', '/bench/cases/7'],
  ['lab', '/desk/cases/new', '/bench'],
  ['lab', '/chair/stages/7', '/bench'],
  ['lab', '/bench/cases/7', null],
  ['manager', '/bench/cases/7', '/desk/cases/7'],
  ['clinician', '/bench/cases/7', '/desk/cases/7'],
  ['clinician', '/bench', '/chair'],
  ['front-desk', '/practice', '/desk'],
  ['front-desk', '/find', null],
  ['lab', '/find', '/bench/find'],
  ['administrator', '/chair/alerts/7', null],
] as const)('leads the %s who opens %s to %s', (role, pathname, door) => {
  expect(doorFor(role, pathname)).toBe(door);
});
