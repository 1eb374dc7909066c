// The view Print: on what, which part, by which printer.

export async function show() {}
