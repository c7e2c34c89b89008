// Where the hives stand: the year of the place as a ribbon, and what the page has to know of it.

import { element } from './dom.js';
import { changed, state } from './draft.js';
import { questions } from './questions.js';
import { dayOfYear, monthDay, place, words } from './year.js';

const body = document.getElementById('where-body');
const MONTHS = ['J', 'F', 'M', 'A', 'M', 'J', 'J', 'A', 'S', 'O', 'N', 'D'];
const NEIGHBOURS = {
  isolated: 'none within flying distance', sparse: 'a few', dense: 'many',
};

function usual(climate, south) {
  return south
    ? { supers: climate.southSupers, winterBees: climate.southWinterBees }
    : { supers: climate.supers, winterBees: climate.winterBees };
}

function choose(name, south) {
  const climate = state.climates.find((c) => c.name === name);
  const old = state.place ?? { neighbours: 'sparse', threshold: 'kulhanek-2021' };
  state.place = {
    ...old, climate: name, south, ...(climate ? usual(climate, south) : {}),
  };
  changed();
  showWhere();
}

/** Shows the screen. */
export function showWhere() {
  body.replaceChildren();
  const now = state.place;
  const form = element('div', '', 'form');
  const climates = element('select');
  climates.id = 'climate';
  climates.append(new Option('Choose a climate', ''));
  for (const climate of state.climates) {
    climates.append(new Option(climate.title, climate.name));
  }
  if (now && !state.climates.some((c) => c.name === now.climate)) {
    climates.append(new Option(now.title, now.climate));
  }
  climates.value = now?.climate ?? '';
  const south = element('input');
  south.type = 'checkbox';
  south.checked = now?.south ?? false;
  climates.addEventListener('change', () => {
    if (climates.value) {
      choose(climates.value, south.checked);
    }
  });
  south.addEventListener('change', () => {
    if (climates.value) {
      choose(climates.value, south.checked);
    }
  });
  form.append(labelled('Climate', climates), labelled('South of the equator', south));
  body.append(questions((name, answers) => {
    choose(name, south.checked);
    if (answers['winter-bees']) {
      state.place.winterBees = [answers['winter-bees'], state.place.winterBees[1]];
    }
    if (answers['supers-off']) {
      state.place.supers = [state.place.supers[0], answers['supers-off']];
    }
    changed();
    showWhere();
  }, () => south.checked), form);
  if (!now) {
    return;
  }
  body.append(ribbon());
  const more = element('div', '', 'form');
  more.append(
    labelled('Other colonies around', select(state.neighbours, now.neighbours,
      (word) => NEIGHBOURS[word] ?? word, (word) => { now.neighbours = word; changed(); })),
    labelled('Treatment threshold', select(
      [...new Set([...state.thresholds, now.threshold])], now.threshold, (word) => word,
      (word) => { now.threshold = word; changed(); })));
  body.append(more);
  const next = element('p', '', 'next');
  const link = element('a', 'Next: your counts');
  link.href = '#counts';
  next.append(link);
  body.append(next);
}

function labelled(text, control) {
  const label = element('label', `${text} `);
  label.append(control);
  return label;
}

function select(all, value, name, act) {
  const made = element('select');
  all.forEach((word) => made.append(new Option(name(word), word)));
  made.value = value;
  made.addEventListener('change', () => act(made.value));
  return made;
}

function ribbon() {
  const box = element('figure', '', 'ribbon');
  const months = element('div', '', 'months');
  months.setAttribute('aria-hidden', 'true');
  MONTHS.forEach((letter, i) => {
    const label = element('span', letter);
    place(label, i / 12);
    months.append(label);
  });
  box.append(months, band('Honey supers', 'supers'), band('Winter bees are raised', 'winterBees'));
  box.append(element('figcaption',
    'Your year. Drag an edge, or choose it and use the arrow keys.'));
  return box;
}

function band(name, field) {
  const row = element('div', '', 'band-row');
  const title = element('span', '', 'strip-name');
  const track = element('div', '', 'track');
  const bars = [element('span', '', `bar ${field}`), element('span', '', `bar ${field}`)];
  track.append(...bars);
  const edges = [0, 1].map((end) => edge(track, name, field, end, draw));
  track.append(...edges);
  function draw() {
    const span = state.place[field];
    const [from, to] = span.map((day) => dayOfYear(day) / 365);
    title.textContent = `${name}: ${words(span[0])} to ${words(span[1])}`;
    bars[1].hidden = from <= to;
    place(bars[0], from, from <= to ? to : 1);
    place(bars[1], 0, to);
    edges.forEach((handle, end) => {
      place(handle, end === 0 ? from : to);
      handle.setAttribute('aria-valuenow', String(dayOfYear(span[end])));
      handle.setAttribute('aria-valuetext', words(span[end]));
    });
  }
  draw();
  row.append(title, track);
  return row;
}

function edge(track, name, field, end, draw) {
  const handle = element('span', '', 'edge');
  handle.tabIndex = 0;
  handle.setAttribute('role', 'slider');
  handle.setAttribute('aria-label', `${name}: ${end === 0 ? 'first day' : 'last day'}`);
  handle.setAttribute('aria-valuemin', '0');
  handle.setAttribute('aria-valuemax', '364');
  const move = (day) => {
    state.place[field] = state.place[field].map((old, i) => (i === end ? monthDay(day) : old));
    draw();
  };
  handle.addEventListener('pointerdown', (event) => {
    handle.setPointerCapture(event.pointerId);
    event.preventDefault();
    handle.focus();
  });
  handle.addEventListener('pointermove', (event) => {
    if (handle.hasPointerCapture(event.pointerId)) {
      const box = track.getBoundingClientRect();
      move(Math.min(364, Math.max(0, (365 * (event.clientX - box.left)) / box.width)));
    }
  });
  handle.addEventListener('pointerup', () => changed());
  handle.addEventListener('keydown', (event) => {
    const step = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1, PageUp: 7, PageDown: -7 }[event.key];
    if (step) {
      event.preventDefault();
      move(dayOfYear(state.place[field][end]) + step);
      changed();
    }
  });
  return handle;
}
