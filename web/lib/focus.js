// Where the keyboard is after a page has changed, and what a listener hears.
const opener = { address: '', key: '' };

/** Remembers the link that led to a form, to come back to it. */
export function leaveFrom(element) {
  opener.address = location.hash;
  opener.key = element.getAttribute('href') ?? '';
}

/** The page that led to this form; the fallback if nobody came by a link. */
export const cameFrom = fallback => (opener.key === location.hash && opener.address ? opener.address : fallback);

export function settle(main, first) {
  if (first) return;
  const back = location.hash === opener.address && opener.key ? main.querySelector(`a[href="${CSS.escape(opener.key)}"]`) : null;
  const target = back ?? main.querySelector('h1') ?? main;
  if (back) opener.key = '';
  if (!target.hasAttribute('tabindex') && target.tagName !== 'A') target.setAttribute('tabindex', '-1');
  if (!back) window.scrollTo(0, 0);
  target.focus({ preventScroll: !back });
}

export function say(text) {
  document.getElementById('said').textContent = text;
}
