// The explorer: flags on the days of one picture, and up to four scenarios over one another.

import './page.js';
import {
  ask, dayAfter, dayWords, daysBetween, element, focused, target, troubleWords,
} from './dom.js';
import { Chart } from './chart.js';
import { dayText, fillMonths } from './readout.js';

const LETTERS = ['a', 'b', 'c', 'd'];
const KINDS = [['on adult bees', 'onBees'], ['in worker cells', 'inWorker'], ['in drone cells', 'inDrone']];
const HALF_A_YEAR = 184; // days from March to September
/** @type {(id: string) => any} */
const get = (id) => document.getElementById(id);
const form = /** @type {HTMLFormElement} */ (get('sets'));
/** @type {Record<string, any>} */
const fields = form.elements;
const chart = new Chart(get('plot-mites'), { height: 19, spanNames: true, letters: 'in worker cells'.length });

let picture = null;
let now = 0; // the scenario whose flags move
let asking = null;
let plans = LETTERS.map((letter) => fields[letter]?.value)
  .filter((text) => text !== undefined)
  .map((text) => text.split(',').filter(Boolean).map((part) => {
    const [control, on] = part.split('@');
    return { control, on };
  }));

function query() {
  const values = new URLSearchParams();
  ['climate', 'south', 'mites', 'brood', 'arrivals'].forEach((name) => values.set(name, fields[name].value));
  plans.forEach((plan, i) => values.set(LETTERS[i], plan.map((a) => `${a.control}@${a.on}`).join(',')));
  return values;
}

async function play() {
  asking?.abort();
  asking = new AbortController();
  const wanted = query();
  try {
    picture = await ask(`/api/season?${wanted}`, asking.signal);
    get('problem').textContent = '';
    history.replaceState(null, '', `/explore?${wanted}`);
    get('share').value = location.href;
    show();
  } catch (error) {
    get('problem').textContent = troubleWords(error);
  }
}

function show() {
  const order = picture.scenarios.map((_, i) => i).filter((i) => i !== now).concat(now);
  chart.show({
    label: 'Where the mites are',
    start: picture.start,
    end: picture.end,
    spans: picture.spans,
    lines: order.flatMap((i) => KINDS.map(([name, series], kind) => ({
      name: i === now ? name : '',
      letter: picture.scenarios.length > 1 && i !== now ? picture.scenarios[i].letter : '',
      values: picture.scenarios[i].series[series],
      kind,
      start: picture.start,
      kept: i !== now,
      beyond: picture.scenarios[i].beyond,
    }))),
  });
  flags();
  tabs();
  sentences();
  fillMonths(get('months'), picture, picture.scenarios[now]);
}

/** Where a day stands, as a share of the width. */
function place(day) {
  return chart.scale ? chart.scale.x(daysBetween(picture.start, day)) : 0;
}

function flags() {
  const held = focused()?.dataset?.flag;
  const made = [];
  let row = 0;
  picture.scenarios.forEach((scenario, i) => scenario.actions.forEach((action, k) => {
    const flag = element('button', `${picture.scenarios.length > 1 ? `${scenario.letter} ` : ''}${action.label}`, 'flag');
    flag.type = 'button';
    flag.dataset.on = action.on;
    const x = place(action.on);
    flag.style.left = `${x}px`;
    flag.classList.toggle('left', x > get('flags').clientWidth * 0.7);
    flag.classList.toggle('low', row % 2 === 1);
    row += 1;
    if (i === now) {
      flag.dataset.flag = String(k);
      flag.setAttribute('role', 'slider');
      flag.setAttribute('aria-label', action.label);
      flag.setAttribute('aria-valuemin', '0');
      flag.setAttribute('aria-valuemax', String(daysBetween(picture.start, picture.end)));
      flag.setAttribute('aria-valuenow', String(daysBetween(picture.start, action.on)));
      flag.setAttribute('aria-valuetext', `${dayWords(action.on)}: ${action.label}`);
      flag.setAttribute('aria-describedby', 'hint');
    } else {
      flag.classList.add('other');
      flag.tabIndex = -1;
      flag.setAttribute('aria-hidden', 'true');
    }
    made.push(flag);
  }));
  get('flags').replaceChildren(...made);
  if (held !== undefined) {
    get('flags').querySelector(`[data-flag="${held}"]`)?.focus({ preventScroll: true });
  }
}

/** Moves an action to a day within the year. */
function move(k, day) {
  const within = day < picture.start ? picture.start : day > picture.end ? picture.end : day;
  if (plans[now][k] && plans[now][k].on !== within) {
    plans[now][k].on = within;
    play();
  }
}

function remove(scenario, k) {
  plans[scenario].splice(k, 1);
  play();
}

get('flags').addEventListener('pointerdown', (event) => {
  const flag = /** @type {HTMLElement} */ (target(event).closest('[data-flag]'));
  if (!flag) {
    return;
  }
  const k = Number(flag.dataset.flag);
  flag.focus();
  const drag = (moved) => {
    move(k, dayAfter(picture.start, chart.scale.dayAt(moved.clientX - get('flags').getBoundingClientRect().left)));
  };
  const done = () => {
    window.removeEventListener('pointermove', drag);
    window.removeEventListener('pointerup', done);
    window.removeEventListener('pointercancel', done);
  };
  window.addEventListener('pointermove', drag);
  window.addEventListener('pointerup', done);
  window.addEventListener('pointercancel', done);
});

get('flags').addEventListener('keydown', (event) => {
  const flag = /** @type {HTMLElement} */ (target(event).closest('[data-flag]'));
  const by = { ArrowLeft: -1, ArrowRight: 1, ArrowDown: -1, ArrowUp: 1, PageUp: 7, PageDown: -7 }[event.key];
  if (flag && by) {
    event.preventDefault();
    move(Number(flag.dataset.flag), dayAfter(plans[now][Number(flag.dataset.flag)].on, by));
  } else if (flag && event.key === 'Delete') {
    remove(now, Number(flag.dataset.flag));
  }
});

function tabs() {
  const made = picture.scenarios.map((scenario, i) => {
    const tab = element('button', `Season ${scenario.letter}`);
    tab.type = 'button';
    tab.setAttribute('aria-pressed', String(i === now));
    tab.addEventListener('click', () => {
      now = i;
      show();
      get('tabs').children[i].focus();
    });
    return tab;
  });
  if (plans.length < LETTERS.length) {
    const more = element('button', `Copy ${picture.scenarios[now].letter} as season ${LETTERS[plans.length].toUpperCase()}`);
    more.type = 'button';
    more.id = 'copy';
    more.addEventListener('click', () => {
      plans.push(plans[now].map((action) => ({ ...action })));
      now = plans.length - 1;
      play();
    });
    made.push(more);
  }
  if (plans.length > 1) {
    const fewer = element('button', `Drop season ${picture.scenarios[now].letter}`);
    fewer.type = 'button';
    fewer.addEventListener('click', () => {
      plans.splice(now, 1);
      now = 0;
      play();
    });
    made.push(fewer);
  }
  get('tabs').replaceChildren(...made);
}

function sentences() {
  const held = focused()?.dataset?.date;
  get('scenarios').replaceChildren(...picture.scenarios.map((scenario, i) => {
    const part = element('section', '', `scenario${i === now ? ' now' : ''}`);
    part.append(element('h2', `Season ${scenario.letter}`));
    const list = element('ul');
    scenario.actions.forEach((action, k) => {
      const item = element('li', `${action.words} `);
      const date = element('input');
      date.type = 'date';
      date.value = action.on;
      date.min = picture.start;
      date.max = picture.end;
      date.dataset.date = `${i}-${k}`;
      date.setAttribute('aria-label', `Day of ${action.label}, season ${scenario.letter}`);
      date.addEventListener('change', () => {
        if (date.value >= picture.start && date.value <= picture.end) {
          plans[i][k].on = date.value;
          play();
        }
      });
      const gone = element('button', 'Remove');
      gone.type = 'button';
      gone.setAttribute('aria-label', `Remove ${action.label}, ${dayWords(action.on)}, season ${scenario.letter}`);
      gone.addEventListener('click', () => remove(i, k));
      item.append(date, ' ', gone);
      list.append(item);
    });
    if (scenario.actions.length === 0) {
      list.append(element('li', 'No action.'));
    }
    part.append(list);
    [scenario.wash, scenario.winter, scenario.outcome].filter(Boolean)
      .forEach((text) => part.append(element('p', text)));
    const notes = element('ul', '', 'notes');
    notes.append(...scenario.notes.map((note) => element('li', note)));
    part.append(notes);
    return part;
  }));
  if (held) {
    get('scenarios').querySelector(`[data-date="${held}"]`)?.focus({ preventScroll: true });
  }
}

form.addEventListener('submit', (event) => {
  event.preventDefault();
  if (!fields.add.value) {
    get('problem').textContent = 'Choose a treatment or measure first.';
    return;
  }
  if (plans[now].length >= 6) {
    get('problem').textContent = 'A season holds at most six actions. Remove one first.';
    return;
  }
  const on = fields.on.value;
  if (!(on >= picture.start && on <= picture.end)) {
    get('problem').textContent = `Give a day from ${picture.start} to ${picture.end}.`;
    return;
  }
  plans[now].push({ control: fields.add.value, on });
  play();
});

form.addEventListener('input', (event) => {
  const changed = target(event);
  if (changed.dataset.for) {
    fields[changed.dataset.for].value = changed.value;
  } else if (get(`range-${changed.name}`)) {
    get(`range-${changed.name}`).value = changed.value;
  }
  if (changed.name === 'south') {
    const by = changed.value === 'yes' ? HALF_A_YEAR : -HALF_A_YEAR;
    plans = plans.map((plan) => plan.map((a) => ({ ...a, on: dayAfter(a.on, by) })));
    const first = changed.value === 'yes' ? '2026-09-01' : '2026-03-01';
    const last = changed.value === 'yes' ? '2027-09-30' : '2027-03-31';
    plans = plans.map((plan) => plan.map((a) => ({ ...a, on: a.on < first ? first : a.on > last ? last : a.on })));
    fields.on.value = dayAfter(fields.on.value, by);
    [fields.on.min, fields.on.max] = [first, last];
  }
  if (!['add', 'on', 'to'].includes(changed.name)) {
    play();
  }
});

chart.onDay = (day) => {
  chart.read(day);
  get('readout').textContent = dayText(picture, picture.scenarios[now], day);
};
new ResizeObserver(() => picture && flags()).observe(get('flags'));
document.querySelector('.explorer').classList.add('live');
play();
