// A walk of choices as a waterfall of botbuilder-dialogs, its state kept in its own JSON memory storage.
import { createRequire } from 'node:module';
import { join } from 'node:path';

const require = createRequire(join(process.cwd(), '.bench', 'package.json'));
const { ConversationState, MemoryStorage, TestAdapter } = require('botbuilder');
const { ChoicePrompt, DialogSet, DialogTurnStatus, WaterfallDialog } = require('botbuilder-dialogs');

/** Answers a walk once; resolves to the milliseconds that the turns took and how many answers were kept. */
export async function walkOnce(questions, answers) {
  const state = new ConversationState(new MemoryStorage());
  const dialogs = new DialogSet(state.createProperty('dialogs'));
  let kept = 0;
  const steps = questions.map((question, at) => async (step) => {
    if (at > 0) step.values[questions[at - 1].id] = step.result.value;
    return step.prompt('choice', { prompt: question.ask, choices: question.options, retryPrompt: 'Which one?' });
  });
  const last = async (step) => {
    step.values[questions.at(-1).id] = step.result.value;
    kept = questions.filter(({ id }) => step.values[id] !== undefined).length;
    return step.endDialog();
  };
  dialogs.add(new ChoicePrompt('choice')).add(new WaterfallDialog('walk', [...steps, last]));
  const adapter = new TestAdapter(async (context) => {
    const dialog = await dialogs.createContext(context);
    const { status } = await dialog.continueDialog();
    if (status === DialogTurnStatus.empty && kept === 0) await dialog.beginDialog('walk');
    await state.saveChanges(context, true);
  });
  await adapter.receiveActivity('hello');
  const started = performance.now();
  for (const answer of answers) {
    await adapter.receiveActivity(answer);
    adapter.activeQueue.length = 0;
  }
  return { milliseconds: performance.now() - started, kept };
}
