// Five questions that a beekeeper can answer; they lead to a climate and say what speaks for it.

import { element } from './dom.js';
import { send, words } from './asking.js';
import { state } from './draft.js';

const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August',
  'September', 'October', 'November', 'December'];
const PARTS = [['early', '05'], ['mid', '15'], ['late', '25']];
const AMOUNTS = [['none', 'none'], ['little', 'a little'], ['plenty', 'plenty']];

/** What was answered, kept while the page is open. */
const answers = {};

/** Answers as options: parts of months, or amounts. */
function options(kind) {
  if (kind === 'AMOUNT') {
    return AMOUNTS;
  }
  return MONTHS.flatMap((month, i) => PARTS.map(([part, day]) =>
    [`${String(i + 1).padStart(2, '0')}-${day}`, `${part} ${month}`]));
}

function control(question) {
  if (question.kind === 'DEGREES') {
    const number = element('input');
    number.type = 'number';
    number.min = '10';
    number.max = '50';
    return number;
  }
  const choice = element('select');
  choice.append(new Option('I do not know', ''));
  options(question.kind).forEach(([value, text]) => choice.append(new Option(text, value)));
  return choice;
}

/** The questions; `use` takes the climate and the answers once the beekeeper agrees. */
export function questions(use, south) {
  const box = element('fieldset', '', 'questions');
  box.append(element('legend', 'Which climate is yours? Answer what you know'));
  const found = element('div', '', 'found');
  found.setAttribute('role', 'status');
  let asked = 0;
  const ask = async () => {
    asked += 1;
    const mine = asked;
    try {
      const answer = await send('place', { answers, south: south() });
      if (mine === asked) {
        show(answer);
      }
    } catch (error) {
      found.replaceChildren(element('p', words(error), 'fault'));
    }
  };
  const show = (answer) => {
    found.replaceChildren(...answer.sentences.map((s) => element('p', s)));
    if (answer.climate) {
      const button = element('button', 'Use this climate');
      button.type = 'button';
      button.addEventListener('click', () => use(answer.climate, answers));
      found.append(button);
    }
  };
  for (const question of state.questions) {
    const label = element('label', question.text);
    const input = control(question);
    input.name = question.id;
    input.value = answers[question.id] ?? '';
    input.addEventListener('change', () => {
      answers[question.id] = input.value;
      ask();
    });
    label.append(input, element('small', question.moves));
    box.append(label);
  }
  box.append(found);
  if (Object.values(answers).some((a) => a)) {
    ask();
  }
  return box;
}
