// Plans: up to four on one calendar, their results, and the weeks in which each control may begin.

import { element } from './dom.js';
import { changed, hives, state } from './draft.js';
import { answer, say } from './hives.js';
import { piece, sentences } from './stand.js';
import { place, strip, words } from './year.js';

const MOST = 4;
const LETTERS = ['A', 'B', 'C', 'D'];
const choice = /** @type {HTMLSelectElement} */ (document.getElementById('plans-hive'));
const edit = document.getElementById('plans-edit');
const calendar = document.getElementById('plans-strip');
const result = document.getElementById('plans-result');
const why = document.getElementById('plans-why');
const map = document.getElementById('plans-map');
let shownFor = '';

/** Shows the screen. */
export function showPlans() {
  const names = hives();
  choice.replaceChildren();
  names.forEach((name) => choice.append(new Option(name, name)));
  if (!names.includes(state.hive)) {
    state.hive = state.stand?.hives[0]?.name ?? names[0] ?? '';
  }
  choice.value = state.hive;
  if (shownFor !== state.hive) {
    result.replaceChildren();
    map.replaceChildren();
    shownFor = state.hive;
  }
  draw();
}

function title(action) {
  return state.controls.find((c) => c.name === action.use)?.title ?? action.title;
}

function draw() {
  edit.replaceChildren();
  state.plans.forEach((plan, p) => edit.append(card(plan, p)));
  if (state.plans.length < MOST) {
    const more = element('button', 'Add a plan');
    more.type = 'button';
    more.addEventListener('click', () => {
      state.plans.push({ name: '', controls: [{ use: 'thymol', start: state.today, title: '' }] });
      changed();
      draw();
      /** @type {HTMLElement | null} */ (edit.querySelector('fieldset:last-of-type input'))?.focus();
    });
    const line = element('p', '', 'buttons');
    line.append(more);
    edit.append(line);
  }
  drawStrip();
}

function card(plan, p) {
  const box = element('fieldset', '', 'plan');
  box.append(element('legend', `Plan ${LETTERS[p]}`));
  plan.controls.forEach((action, c) => {
    const line = element('div', '', 'line');
    const day = element('input');
    day.type = 'date';
    day.value = action.start;
    day.setAttribute('aria-label', `Plan ${LETTERS[p]}, action ${c + 1}: first day`);
    day.disabled = !action.use;
    day.addEventListener('change', () => {
      if (day.value) {
        action.start = day.value;
        changed();
        drawStrip();
      }
    });
    line.append(day);
    if (action.use) {
      const what = element('select');
      state.controls.forEach((control) => what.append(new Option(control.title, control.name)));
      what.value = action.use;
      what.setAttribute('aria-label', `Plan ${LETTERS[p]}, action ${c + 1}: what`);
      what.addEventListener('change', () => {
        action.use = what.value;
        changed();
        drawStrip();
      });
      line.append(what);
    } else {
      line.append(element('span', `${action.title} (as the study has it)`));
    }
    const remove = element('button', 'Remove', 'small');
    remove.type = 'button';
    remove.setAttribute('aria-label', `Remove action ${c + 1} of plan ${LETTERS[p]}`);
    remove.addEventListener('click', () => {
      plan.controls.splice(c, 1);
      if (plan.controls.length === 0) {
        state.plans.splice(p, 1);
      }
      changed();
      draw();
    });
    line.append(remove);
    box.append(line);
  });
  const more = element('button', 'Add an action', 'small');
  more.type = 'button';
  more.setAttribute('aria-label', `Add an action to plan ${LETTERS[p]}`);
  more.addEventListener('click', () => {
    plan.controls.push({ use: 'oxalic-dribble', start: plan.controls.at(-1).start, title: '' });
    changed();
    draw();
  });
  box.append(more);
  return box;
}

function drawStrip() {
  calendar.replaceChildren();
  const days = state.plans.flatMap((plan) => plan.controls.map((action) => action.start)).sort();
  if (days.length === 0) {
    return;
  }
  const first = new Date(Date.parse(days[0]) - 20 * 86400000).toISOString().slice(0, 10);
  const least = new Date(Date.parse(days[0]) + 240 * 86400000).toISOString().slice(0, 10);
  const last = new Date(Date.parse(days.at(-1)) + 40 * 86400000).toISOString().slice(0, 10);
  const made = strip(first, least > last ? least : last);
  state.plans.forEach((plan, p) => made.row(`Plan ${LETTERS[p]}`, plan.controls.map((action) => ({
    from: action.start, words: `${words(action.start)} ${title(action)}`, kind: `plan-${p}`,
  }))));
  calendar.append(made.box);
}

async function compare() {
  if (!state.hive) {
    say('There is no count yet; enter one under Counts.');
    return;
  }
  const found = await answer('plans', { hive: state.hive, plans: state.plans });
  if (!found) {
    return;
  }
  result.replaceChildren();
  result.append(element('h3', `The plans for ${found.hive}`));
  result.append(element('p', found.lines.slice(0, 3).join(' '), 'verdict'));
  found.lines.slice(3).forEach((text) => result.append(element('p', text)));
  result.append(piece(found.table), piece(found.season));
  const cautions = element('div', '', 'caution');
  cautions.append(element('p', found.caution));
  if (found.cautions.length > 0) {
    cautions.append(sentences(found.cautions, 'notes'));
  }
  result.append(cautions);
}

async function windows() {
  if (!state.hive) {
    say('There is no count yet; enter one under Counts.');
    return;
  }
  const found = await answer('windows', { hive: state.hive });
  if (!found) {
    return;
  }
  map.replaceChildren();
  why.textContent = '';
  map.append(element('p', found.first));
  const box = piece(found.map);
  map.append(box);
  for (const size of ['wide', 'narrow']) {
    const picture = box.querySelector(`.${size}`);
    const cover = element('div', '', 'cells');
    cover.setAttribute('role', 'group');
    cover.setAttribute('aria-label', `Weeks of ${found.hive}, by control`);
    found.rows.forEach((row, r) => row.cells.forEach((cell, c) => {
      const button = element('button');
      button.type = 'button';
      const [left, top, width, height] = cell[size];
      place(button, left, left + width);
      button.style.top = `${100 * top}%`;
      button.style.height = `${100 * height}%`;
      button.tabIndex = r === 0 && c === 0 ? 0 : -1;
      button.dataset.cell = `${r}.${c}`;
      button.setAttribute('aria-label', `${row.title} from ${cell.day}: ${cell.words ? `not open, ${cell.why}` : cell.figure}`);
      button.addEventListener('click', () => tap(row, cell));
      button.addEventListener('keydown', (event) => walk(event, cover, r, c));
      cover.append(button);
    }));
    picture.append(cover);
  }
}

function walk(event, cover, r, c) {
  const step = {
    ArrowLeft: [0, -1], ArrowRight: [0, 1], ArrowUp: [-1, 0], ArrowDown: [1, 0],
  }[event.key];
  const next = step && cover.querySelector(`[data-cell="${r + step[0]}.${c + step[1]}"]`);
  if (next) {
    event.preventDefault();
    event.target.tabIndex = -1;
    next.tabIndex = 0;
    next.focus();
  }
}

function tap(row, cell) {
  if (cell.words) {
    why.textContent = `${cell.why}. ${cell.words}.`;
    return;
  }
  if (state.plans.length === MOST) {
    why.textContent = 'No more than four plans. Remove one first.';
    return;
  }
  state.plans.push({ name: '', controls: [{ use: row.use, start: cell.start, title: row.title }] });
  changed();
  draw();
  why.textContent = `Plan ${LETTERS[state.plans.length - 1]}: ${row.title} from ${cell.day}.`
    + `${cell.label ? ' Supers are usually on then; the label decides.' : ''}`;
}

choice.addEventListener('change', () => {
  state.hive = choice.value;
  showPlans();
});
document.getElementById('plans-go').addEventListener('click', compare);
document.getElementById('plans-windows').addEventListener('click', windows);
