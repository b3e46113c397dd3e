// Answers first, then the time of each repeat in nanoseconds a case. Each repeat goes over all cases `passes` times.
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

export async function run(cases, one, answers, passes, repeats) {
  for (const subject of cases) {
    console.log(answers(await one(subject)));
  }
  for (let repeat = -1; repeat < repeats; repeat++) {
    const start = process.hrtime.bigint();
    for (let pass = 0; pass < passes; pass++) {
      for (const subject of cases) {
        await one(subject);
      }
    }
    const nanoseconds = Number(process.hrtime.bigint() - start) / (passes * cases.length);
    if (repeat >= 0) {
      console.log(`time ${nanoseconds.toFixed(1)}`);
    }
  }
}
