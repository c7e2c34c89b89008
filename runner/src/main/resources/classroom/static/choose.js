// Picking one answer.

import { element, pairList } from './dom.js';

export function chooseTask(form) {
  const picked = () => form.querySelector('input[name="choice"]:checked');
  return {
    taken() {
      const at = Number(picked().value);
      return { at, words: picked().closest('label').textContent.trim() };
    },
    clear: () => form.reset(),
    pairs(all, answer) {
      const right = all.filter((pair) => answer.choices[pair.at].right).length;
      return {
        verdict: `${right} of ${all.length} ${all.length === 1 ? 'pair' : 'pairs'} saw it coming.`,
        shown: pairList(all, (pair) => (answer.choices[pair.at].right ? ' (as the model shows)' : '')),
      };
    },
    problem: () => (picked() ? '' : 'Pick an answer first. A guess is fine.'),
    reveal(answer) {
      const mine = Number(picked().value);
      const list = element('ul', '', 'answers-given');
      answer.choices.forEach((choice, i) => {
        const item = element('li', '', choice.right ? 'right' : '');
        const said = choice.right ? 'What the model shows: ' : 'You said: ';
        if (choice.right || i === mine) {
          const both = choice.right && i === mine ? 'You said, and the model shows: ' : said;
          item.append(element('strong', both + choice.text), document.createTextNode(choice.because));
          list.append(item);
        }
      });
      const verdict = answer.choices[mine].right
        ? 'You saw it coming.'
        : 'The model says otherwise. Many people would have said what you said.';
      return { verdict, shown: [list] };
    },
  };
}
