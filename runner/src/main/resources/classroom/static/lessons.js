// The lessons of the evening: a clicker opens the marked one, digits mark another.

import './page.js';
import { target } from './dom.js';

/** Milliseconds within which a second digit belongs to the first. */
const TOGETHER = 1500;
const row = document.querySelector('.row');
const links = [.../** @type {NodeListOf<HTMLAnchorElement>} */ (row.querySelectorAll('.lesson-link'))];
let marked = 0;
let typed = '';
let typedAt = 0;

function mark(at) {
  marked = at;
  links.forEach((link, i) => link.parentElement.classList.toggle('marked', i === at));
}

links.forEach((link, i) => link.addEventListener('focus', () => mark(i)));

document.addEventListener('keydown', (event) => {
  if (event.ctrlKey || event.altKey || event.metaKey || target(event).closest?.('input')) {
    return;
  }
  if (event.key === 'PageDown') {
    event.preventDefault();
    if (!event.repeat) {
      location.assign(links[marked].href);
    }
  } else if (/^[0-9]$/.test(event.key)) {
    const both = event.timeStamp - typedAt < TOGETHER ? typed + event.key : event.key;
    typed = links[Number(both) - 1] ? both : event.key;
    typedAt = event.timeStamp;
    links[Number(typed) - 1]?.focus();
  }
});

mark(0);
row.classList.add('live');
