// A lesson: the learner commits to an answer, then the curves come.

import './page.js';
import { ask, calm, dayAfter, daysBetween, element, target, troubleWords } from './dom.js';
import { Chart } from './chart.js';
import { chooseTask } from './choose.js';
import { drawTask } from './draw.js';
import { washesTask } from './washes.js';

const name = /** @type {HTMLElement} */ (document.querySelector('.lesson')).dataset.lesson;
const form = document.getElementById('task');
const get = (id) => document.getElementById(id);
const task = { choose: chooseTask, draw: drawTask, washes: washesTask }[form.dataset.kind](form);

function lastDay(lines) {
  return lines
    .map((line) => dayAfter(line.start, line.values.length - 1))
    .reduce((a, b) => (a > b ? a : b));
}

/** Hives whose washes judge a treatment; the first visit takes a few seconds to work them out. */
const judged = new Map();

function showJudged(hive, i) {
  const made = judged.get(hive);
  if (made) {
    return made;
  }
  const figure = element('figure', '', 'chart judged');
  const said = element('p', 'Working it out …');
  figure.append(element('figcaption', `Hive ${hive}: what its washes say of the treatment`), said);
  judged.set(hive, figure);
  ask(`/api/lessons/${name}/judged/${i + 1}`).then(({ words }) => {
    said.textContent = words;
    const picture = element('img');
    picture.alt = `Hive ${hive}: its mites with the treatment and without it, and how likely each `
      + 'efficacy is, before the washes and with them.';
    picture.src = `/lessons/${name}/judged/${i + 1}`;
    figure.insertBefore(picture, said);
  }).catch((error) => {
    judged.delete(hive);
    said.textContent = troubleWords(error);
  });
  return figure;
}

function showCharts(answer) {
  get('charts').replaceChildren(...answer.judged.map(showJudged));
  const names = answer.charts.filter(({ lines }) => lines.length > 1)
    .flatMap(({ lines }) => lines.map((line) => line.name.length));
  const letters = Math.max(0, ...names);
  answer.charts.forEach((chart, i) => {
    const figure = element('figure', '', 'chart');
    const plot = element('div', '', 'plot');
    figure.append(element('figcaption', chart.title), plot);
    get('charts').append(figure);
    const alone = chart.lines.length === 1;
    new Chart(plot, { height: 11, letters }).show({
      label: chart.title,
      start: chart.lines[0].start,
      end: lastDay(chart.lines),
      marks: answer.marks.filter(
        (mark) => daysBetween(mark.on, lastDay(chart.lines)) >= 0 && (i === 0 || !alone)),
      lines: chart.lines.map((line, kind) => ({ ...line, kind, name: alone ? '' : line.name })),
    });
  });
}

function showFigures(figures) {
  get('figures').replaceChildren(...figures.map(({ say, value }) => {
    const row = element('tr');
    const head = element('th', say);
    head.scope = 'row';
    row.append(head, element('td', value));
    return row;
  }));
}

/** What pairs said, for as long as the page is open. */
const pairs = [];

function listPairs() {
  get('pairs').replaceChildren(...pairs.map((pair, i) => {
    const item = element('li', `Pair ${i + 1}: ${pair.words} `);
    const remove = element('button', 'Remove');
    remove.type = 'button';
    remove.setAttribute('aria-label', `Remove pair ${i + 1}`);
    remove.addEventListener('click', () => {
      pairs.splice(i, 1);
      listPairs();
    });
    item.append(remove);
    return item;
  }));
}

get('pair').addEventListener('click', () => {
  const problem = task.problem();
  get('problem').textContent = problem;
  if (!problem) {
    pairs.push(task.taken());
    task.clear();
    listPairs();
  }
});

async function reveal() {
  const problem = task.problem();
  get('problem').textContent = pairs.length > 0 ? '' : problem;
  if (problem && pairs.length === 0) {
    return;
  }
  await showReveal(problem ? byHands : async (answer) => task.reveal(answer, name));
  if (!get('reveal').hidden) {
    stage('reveal');
  }
}

/** The reveal, with what a part of the page says about an answer. */
async function showReveal(said) {
  try {
    const answer = await ask(`/api/lessons/${name}`);
    const part = await said(answer);
    const told = pairs.length > 0 ? task.pairs(pairs, answer) : null;
    get('answer').replaceChildren(...part.shown, ...(told ? [told.shown] : []));
    get('reveal-text').textContent = answer.reveal;
    get('reveal').hidden = false;
    shown = answer;
    showFigures(answer.figures);
    get('verdict').replaceChildren(...[part.verdict, told?.verdict].filter((text) => text)
      .map((text) => element('p', text)));
    get('gone').textContent = '';
  } catch (error) {
    get('gone').textContent = troubleWords(error);
  }
}

/** Nobody typed an answer: the class has said by hands what it thinks. */
async function byHands(answer) {
  const counts = hands();
  const most = Math.max(...counts.map((h) => h.count));
  const verdict = most > 0
    ? `Most hands: ${counts.filter((h) => h.count === most).map((h) => h.text).join(' and ')}.`
    : (pairs.length > 0 ? '' : 'No prediction was made.');
  const list = element('ul', '', 'answers-given');
  (answer.choices ?? []).filter((choice) => choice.right).forEach((choice) => {
    const item = element('li', '', 'right');
    item.append(element('strong', `What the model shows: ${choice.text}`),
      document.createTextNode(choice.because));
    list.append(item);
  });
  const alone = await task.alone?.(name);
  return {
    verdict: [verdict, alone?.verdict].filter((text) => text).join(' '),
    shown: [...(list.childElementCount > 0 ? [list] : []), ...(alone?.shown ?? [])],
  };
}

/** The answer for which a hand was counted last by its key; 0 for none. */
let last = 0;
const buttons = [.../** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('.hand'))];
const hands = () => buttons.map((button) => ({
  text: button.childNodes[1].textContent.replace(/: $/, '').trim(),
  count: Number(button.querySelector('output').textContent),
}));

function raise(number, by) {
  const button = buttons[number - 1];
  if (button) {
    const output = button.querySelector('output');
    output.textContent = String(Math.max(0, Number(output.textContent) + by));
    const all = hands().reduce((sum, h) => sum + h.count, 0);
    get('hands-said').textContent = `${all} ${all === 1 ? 'hand' : 'hands'} in all.`;
  }
}

buttons.forEach((button) => button.addEventListener('click', () => raise(Number(button.dataset.hand), 1)));
const fewer = /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('.fewer'));
fewer.forEach((button) => button.addEventListener(
  'click', () => raise(Number(button.dataset.fewer), -1)));

/** Pixels of a stage that may lie beyond the window without a page of their own. */
const SLACK = 40;
const stages = ['story', 'predict', 'reveal', 'talk'];
const article = /** @type {HTMLElement} */ (document.querySelector('.lesson'));
const stageButtons = /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('.stages button'));
let shown = null;

/** Goes to a stage of the evening; the reveal is asked for on the first visit. */
async function stage(next) {
  if ((next === 'reveal' || next === 'talk') && !shown) {
    await showReveal(byHands);
    if (!shown) {
      return;
    }
  }
  article.dataset.stage = next;
  stageButtons.forEach((button) => {
    button.setAttribute('aria-current', button.dataset.stage === next ? 'step' : 'false');
  });
  window.dispatchEvent(new Event('resize'));
  if (next === 'reveal') {
    showCharts(shown);
  }
  const heading = /** @type {HTMLElement} */ (document.querySelector(`[data-part="${next}"] h2`));
  heading.tabIndex = -1;
  heading.focus({ preventScroll: true });
  document.querySelector('.stages').scrollIntoView({ behavior: calm() ? 'auto' : 'smooth', block: 'start' });
}

/**
 * A page further within the stage while something of it lies beyond the window, so that a clicker
 * alone shows all of a reveal; false when nothing does.
 */
function pageOn(by) {
  const part = document.querySelector(`[data-part="${article.dataset.stage}"]`).getBoundingClientRect();
  const top = document.querySelector('.stages').getBoundingClientRect().height;
  const left = by > 0 ? part.bottom - innerHeight : top - part.top;
  if (left < SLACK) {
    return false;
  }
  window.scrollBy({
    top: by * Math.min(left + SLACK, 0.8 * innerHeight), behavior: calm() ? 'auto' : 'smooth',
  });
  return true;
}

/**
 * Goes a stage on or back, and from the first and last stage to the lesson beside this one. Until
 * it is there, further steps are not taken: whoever presses again while a reveal is worked out
 * would pass it by.
 */
async function step(by) {
  if (article.ariaBusy === 'true') {
    return;
  }
  article.ariaBusy = 'true';
  const at = stages.indexOf(article.dataset.stage) + by;
  if (at < 0 || at >= stages.length) {
    location.assign(at < 0 ? article.dataset.before : article.dataset.after);
    return;
  }
  await stage(stages[at]);
  article.ariaBusy = 'false';
}

/** A clicker sends Page Down and Page Up; what is typed into a field stays there. */
document.addEventListener('keydown', (event) => {
  const typing = target(event).closest?.('input, select, textarea');
  if (typing || event.ctrlKey || event.altKey || event.metaKey) {
    return;
  }
  const pressed = target(event).closest?.('button, a, summary, [tabindex="0"]');
  const by = { PageDown: 1, ArrowRight: 1, PageUp: -1, ArrowLeft: -1 }[event.key];
  if (by || (event.key === ' ' && !pressed)) {
    event.preventDefault();
    const way = by ?? (event.shiftKey ? -1 : 1);
    // A key that is held down pages on within the stage and no further.
    if ((event.key.startsWith('Arrow') || !pageOn(way)) && !event.repeat) {
      step(way);
    }
  } else if (article.dataset.stage === 'predict' && /^[1-5]$/.test(event.key)) {
    last = Number(event.key);
    raise(last, 1);
  } else if (article.dataset.stage === 'predict' && event.key === 'Backspace' && last > 0) {
    raise(last, -1);
    last = 0;
  }
});

stageButtons.forEach((button) => {
  button.addEventListener('click', () => stage(button.dataset.stage));
});
document.querySelector('.stages button').setAttribute('aria-current', 'step');
article.classList.add('live');
window.addEventListener('pageshow', ({ persisted }) => {
  if (persisted) {
    article.ariaBusy = 'false'; // the browser's own way back shows the page as it was left
  }
});
if (location.hash === '#talk') {
  step(stages.length - 1); // Page Up came back from the lesson after this one
}

form.addEventListener('submit', (event) => {
  event.preventDefault();
  reveal();
});
form.addEventListener('again', reveal);
