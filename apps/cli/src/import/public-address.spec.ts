import { isPublicAddress } from './public-address.js';

describe('a public address', () => {
  it.each(['8.8.8.8', '172.32.0.1', '100.128.0.1', '2a00:1450:4001::200e', '2600::1'])('is %s', (address) => {
    expect(isPublicAddress(address)).toBe(true);
  });

  it.each([
    '127.0.0.1',
    '0.0.0.0',
    '10.1.2.3',
    '172.16.0.1',
    '172.31.255.255',
    '192.168.1.1',
    '169.254.169.254',
    '100.64.0.1',
    '224.0.0.1',
    '255.255.255.255',
    '::',
    '::1',
    '::ffff:127.0.0.1',
    '::ffff:8.8.8.8',
    '64:ff9b::7f00:1',
    'fc00::1',
    'fe80::1',
    'ff02::1',
    '2001:db8::1',
    '2002:7f00:1::',
    'no address',
  ])('is not %s', (address) => {
    expect(isPublicAddress(address)).toBe(false);
  });
});
