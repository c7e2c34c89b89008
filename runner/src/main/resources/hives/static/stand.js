// How each hive stands: the sheet of the apiary, then every hive with its lines and its season.

import { element, target } from './dom.js';
import { state } from './draft.js';
import { answer } from './hives.js';

const body = document.getElementById('stand-body');
let asked = 0;

/** A piece of the report, which the program wrote and escaped, as nodes of this page. */
export function piece(html) {
  const parsed = new DOMParser().parseFromString(html, 'text/html');
  const box = element('div', '', 'piece');
  box.append(...[...parsed.body.childNodes].map((node) => document.importNode(node, true)));
  return box;
}

/** A list of sentences. */
export function sentences(all, className) {
  const list = element('ul', '', className);
  all.forEach((text) => list.append(element('li', text)));
  return list;
}

/** Shows the screen. */
export async function showStand() {
  if (state.stand && !state.dirty) {
    draw(state.stand);
    return;
  }
  body.replaceChildren(element('p', 'Reading your washes. Each hive takes a moment.', 'quiet'));
  asked += 1;
  const mine = asked;
  const found = await answer('stand', {});
  if (mine !== asked) {
    return;
  }
  if (found) {
    state.stand = found;
    draw(found);
    climate(found);
  } else {
    const again = element('button', 'Work it out');
    again.type = 'button';
    again.addEventListener('click', showStand);
    body.replaceChildren(again);
  }
}

/** Asks, once the hives stand there, whether the washes fit another climate far better. */
async function climate(found) {
  const fit = await answer('climate', {});
  if (fit?.words && state.stand === found) {
    found.climate = fit.words;
    if (!document.getElementById('stand').hidden) {
      body.prepend(element('p', fit.words, 'problem'));
    }
  }
}

function draw(found) {
  body.replaceChildren();
  if (found.climate) {
    body.append(element('p', found.climate, 'problem'));
  }
  body.append(element('p', `As of ${found.decisionDate}, the day after your newest wash or treatment.`, 'quiet'));
  const wide = element('div', '', 'beside');
  const sheet = piece(found.sheet);
  const reading = element('aside', '', 'reading');
  reading.append(element('h3', 'How to read this'));
  reading.append(element('p', 'A 90 % interval holds nine of ten simulated colonies that are '
    + 'consistent with your counts.'));
  found.reading.forEach((text) => reading.append(element('p', text)));
  wide.append(sheet, reading);
  body.append(wide);
  if (found.begins) {
    body.append(element('p', found.begins));
  }
  for (const hive of found.hives) {
    const section = element('section', '', 'one-hive');
    section.id = hive.id;
    section.tabIndex = -1;
    section.append(element('h3', hive.name));
    section.append(element('p', hive.lines.slice(0, 3).join(' '), 'verdict'));
    hive.lines.slice(3).forEach((text) => section.append(element('p', text)));
    if (hive.warning) {
      section.append(element('p', hive.warning, 'problem'));
    }
    if (hive.season) {
      section.append(piece(hive.season));
    }
    if (hive.learned.length > 0) {
      const more = element('details');
      more.append(element('summary', 'What the washes do not tell'), sentences(hive.learned, 'notes'));
      section.append(more);
    }
    const plans = element('a', `Plans for ${hive.name}`);
    plans.href = '#plans';
    plans.addEventListener('click', () => { state.hive = hive.name; });
    const line = element('p');
    line.append(plans);
    section.append(line);
    body.append(section);
  }
  if (found.notes.length > 0) {
    body.append(element('h3', 'What is assumed'), sentences(found.notes, 'notes'));
  }
  body.append(element('p', found.caution, 'caution'));
}

// The sheet's names lead to their hives; the address keeps the step.
body.addEventListener('click', (event) => {
  const link = target(event).closest('a[href^="#hive-"]');
  if (link) {
    event.preventDefault();
    const hive = document.getElementById(link.getAttribute('href').slice(1));
    hive?.scrollIntoView({ block: 'start' });
    hive?.focus({ preventScroll: true });
  }
});
