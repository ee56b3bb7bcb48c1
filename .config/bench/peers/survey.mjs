// A walk of choices as a survey of survey-core, one question a page, its data kept as JSON text between the turns.
import { createRequire } from 'node:module';
import { join } from 'node:path';

const require = createRequire(join(process.cwd(), '.bench', 'package.json'));
const { Model } = require('survey-core');

/** Answers a walk once, a survey made from its definition at each turn, as a server without sessions does. */
export async function walkOnce(questions, answers) {
  const definition = {
    pages: questions.map(({ id, ask, options }) => ({
      name: `page-${id}`,
      elements: [{ type: 'radiogroup', name: id, title: ask, choices: options, isRequired: true }],
    })),
  };
  let stored = JSON.stringify({ data: {}, page: 0 });
  const started = performance.now();
  for (const answer of answers) {
    const { data, page } = JSON.parse(stored);
    const survey = new Model(definition);
    survey.data = data;
    survey.currentPageNo = page;
    const [question] = survey.currentPage.questions;
    const choice = question.choices.find((one) => one.text === answer || one.value === answer);
    if (choice) question.value = choice.value;
    if (!survey.currentPage.hasErrors() && page < questions.length - 1) survey.nextPage();
    const [next] = survey.currentPage.questions;
    const reply = `${next.processedTitle} ${next.choices.map((one) => one.text).join(', ')}`;
    if (reply.length === 0) throw new Error('No reply.');
    stored = JSON.stringify({ data: survey.data, page: survey.currentPageNo });
  }
  const milliseconds = performance.now() - started;
  return { milliseconds, kept: Object.keys(JSON.parse(stored).data).length };
}
