// The barest program with ink that asks a question and reads a key; the bench bundles it as roofdown is bundled.
import { Box, render, Text, useApp, useInput } from 'ink';
import { createElement, useState } from 'react';

function Question() {
  const { exit } = useApp();
  const [typed, setTyped] = useState('');
  useInput((input, key) => (key.return ? exit() : setTyped(typed + input)));
  const line = createElement(Text, null, 'Is the bare question on screen?');
  return createElement(Box, { flexDirection: 'column' }, line, createElement(Text, null, `> ${typed}`));
}

render(createElement(Question));
