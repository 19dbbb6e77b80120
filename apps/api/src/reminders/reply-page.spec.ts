import { repliedPage, replyPage } from './reply-page.js';

const view = {
  locale: 'en-GB',
  startsAt: new Date('2027-01-05T09:00:00Z'),
  zone: 'Europe/Berlin',
  clinicName: 'North & <Sons>',
  address: '1 High Street',
  stands: true,
};

it('shows the visit by the clinic clock, and a button that does what the link is for', () => {
  const page = replyPage(view, 'confirm');
  expect(page).toContain('5 January 2027 at 10:00');
  expect(page).toContain('<form method="post"><button type="submit">Yes, I am coming</button></form>');
  expect(replyPage(view, 'instructions')).not.toContain('<form');
});

it('lets no name in the address book write into the page', () => {
  expect(replyPage(view, 'confirm')).toContain('North &amp; &lt;Sons&gt;');
});

it('offers nothing for a visit that no longer stands, or that there never was', () => {
  for (const page of [replyPage({ ...view, stands: false }, 'confirm'), replyPage(null, 'ask-to-move')]) {
    expect(page).not.toContain('<form');
    expect(page).toContain('no appointment that still stands');
  }
  expect(repliedPage({ ...view, stands: false }, 'confirm')).not.toContain('Thank you');
});

it.each([
  ['de-AT', 'lang="de-DE" dir="ltr"', 'Danke'],
  ['ar', 'lang="ar" dir="rtl"', 'شكرًا'],
  ['fr', 'lang="en-GB" dir="ltr"', 'Thank you'],
])('speaks to a patient of %s in their language or in English', (locale, tag, thanks) => {
  const page = repliedPage({ ...view, locale }, 'ask-to-move');
  expect(page).toContain(tag);
  expect(page).toContain(thanks);
});
