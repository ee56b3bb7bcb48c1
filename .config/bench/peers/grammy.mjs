// A walk of choices as a conversation of @grammyjs/conversations, its state kept as JSON text.
import { createRequire } from 'node:module';
import { join } from 'node:path';

const require = createRequire(join(process.cwd(), '.bench', 'package.json'));
const { Bot } = require('grammy');
const { conversations, createConversation } = require('@grammyjs/conversations');

const sent = { message_id: 1, date: 0, chat: { id: 1, type: 'private' }, text: '' };
const nothingSent = async () => ({ ok: true, result: sent });
const botInfo = { id: 1, is_bot: true, first_name: 'bench', username: 'bench', can_join_groups: false, can_read_all_group_messages: false, supports_inline_queries: false };

/** Answers a walk once; resolves to the milliseconds that the turns took and how many answers were kept. */
export async function walkOnce(questions, answers) {
  const rows = new Map();
  const adapter = {
    read: (key) => (rows.has(key) ? JSON.parse(rows.get(key)) : undefined),
    write: (key, value) => void rows.set(key, JSON.stringify(value)),
    delete: (key) => void rows.delete(key),
  };
  let kept = 0;
  async function walk(conversation, context) {
    const found = {};
    for (const { id, ask, options } of questions) {
      await context.reply(`${ask} ${options.join(', ')}`);
      for (;;) {
        const { message } = await conversation.waitFor('message:text');
        if (!options.includes(message.text)) continue;
        found[id] = message.text;
        break;
      }
    }
    await conversation.external(() => {
      kept = Object.keys(found).length;
    });
  }
  const bot = new Bot('1:bench', { botInfo });
  bot.api.config.use(nothingSent);
  const silent = async (context, next) => {
    context.api.config.use(nothingSent);
    await next();
  };
  bot.use(conversations({ storage: { type: 'key', adapter } }));
  bot.use(createConversation(walk, { plugins: [silent] }));
  bot.command('start', (context) => context.conversation.enter('walk'));
  const say = (text, at) =>
    bot.handleUpdate({
      update_id: at,
      message: {
        message_id: at,
        date: 0,
        text,
        chat: { id: 1, type: 'private', first_name: 'a' },
        from: { id: 1, is_bot: false, first_name: 'a' },
        ...(text.startsWith('/') ? { entities: [{ type: 'bot_command', offset: 0, length: text.length }] } : {}),
      },
    });
  await say('/start', 1);
  const started = performance.now();
  for (const [at, answer] of answers.entries()) await say(answer, at + 2);
  return { milliseconds: performance.now() - started, kept };
}
