import * as z from 'zod';

const Chat = z.object({ id: z.number().int() });
const ChatMessage = z.object({
  chat: Chat,
  text: z.string().exactOptional(),
  caption: z.string().exactOptional(),
});

/** The parts of an update that are read; others are left alone. */
export const Update = z.object({
  update_id: z.number().int(),
  message: ChatMessage.exactOptional(),
  edited_message: ChatMessage.exactOptional(),
  callback_query: z
    .object({
      from: Chat,
      message: z.object({ chat: Chat }).exactOptional(),
      data: z.string().exactOptional(),
    })
    .exactOptional(),
});
export type Update = z.infer<typeof Update>;
