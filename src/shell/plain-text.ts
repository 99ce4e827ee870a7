/**
 * Text of a file as a terminal may show it: a terminal obeys control characters and marks of writing direction, so that a
 * file could write over what is shown; each becomes a sign that it does not obey.
 */
export const plain = (text: string): string => text.replace(/[\p{Cc}\u202a-\u202e\u2066-\u2069]/gu, '\ufffd')
