import { ZenEngine } from '@gorules/zen-engine';
import { line, read, run } from './timing.mjs';

const [folder, complete, timed, repeats] = [process.argv[2], process.argv[3] === 'complete', Number(process.argv[4]), Number(process.argv[5])];
const decision = new ZenEngine().createDecision(read(folder, 'zen.json'));

await run(read(folder, 'cases.json'), subject => decision.evaluate(subject), ({ result }) =>
  line(i => result[`c${i}`], i => !complete && result[`p${i}`]), timed, repeats);
