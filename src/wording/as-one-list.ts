/** Labels that follow one another in a sentence: only the first keeps its capital, but for "I" and for initials. */
export function asOneList(labels: readonly string[]): string[] {
  return labels.map((label, position) =>
    position === 0 || /^(?:I\b|\p{Lu}{2})/u.test(label)
      ? label
      : label.charAt(0).toLowerCase() + label.slice(1),
  );
}
