// Answers first, then the time of each repeat in nanoseconds a case, after as many that are not counted. A repeat goes over the first cases.
import { readFileSync } from 'node:fs';

export const read = (folder, name) => JSON.parse(readFileSync(`${folder}/${name}`, 'utf8'));

const count = 50;

export function line(certain, possible) {
  let text = 'answers ';
  for (let i = 0; i < count; i++) {
    text += certain(i) ? 'M' : possible(i) ? 'U' : 'N';
  }
  return text;
}

export async function run(cases, one, answers, timed, repeats) {
  for (const subject of cases) {
    console.log(answers(await one(subject)));
  }
  const first = cases.slice(0, timed);
  for (let repeat = -repeats; repeat < repeats; repeat++) {
    const start = process.hrtime.bigint();
    for (const subject of first) {
      await one(subject);
    }
    const nanoseconds = Number(process.hrtime.bigint() - start) / first.length;
    if (repeat >= 0) {
      console.log(`time ${nanoseconds.toFixed(1)}`);
    }
  }
}
