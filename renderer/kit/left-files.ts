/** What to say where several files were given and one was taken; empty where one was given. */
export function leftFiles(files: FileList): string {
  const others = files.length - 1;
  if (others < 1) return '';
  const left = others === 1 ? 'the other one was' : `the ${others} others were`;
  return `One file at a time: “${files[0]?.name ?? ''}” was taken, ${left} left.`;
}
