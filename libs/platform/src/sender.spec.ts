import { senderOf } from './sender.js';

it.each([
  ['Appointments <a@dentures.example>', 'Appointments', 'a@dentures.example'],
  ['"Front desk, north" <a@dentures.example>', 'Front desk, north', 'a@dentures.example'],
  ['<a@dentures.example>', 'a@dentures.example', 'a@dentures.example'],
  ['a@localhost', 'a@localhost', 'a@localhost'],
])('reads the sender %s', (text, name, mail) => {
  expect(senderOf(text)).toEqual({ name, mail });
});

it('refuses what is no sender, and says what one looks like', () => {
  expect(() => senderOf('Appointments')).toThrow('MAIL_FROM');
});
