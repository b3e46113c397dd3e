import { Engine } from 'json-rules-engine';
import { line, read, run } from './timing.mjs';

const [folder, complete, timed, repeats] = [process.argv[2], process.argv[3] === 'complete', Number(process.argv[4]), Number(process.argv[5])];
const engine = new Engine();
const rules = Object.entries(read(folder, 'json-rules.json'));
rules.forEach(([name, conditions], place) => engine.addRule({
  conditions,
  event: { type: name },
  // A finding becomes a fact for the rules after it.
  priority: rules.length - place,
  onSuccess: (_, almanac) => almanac.addFact(name, true),
  onFailure: (_, almanac) => almanac.addFact(name, false),
}));

await run(read(folder, 'cases.json'), subject => engine.run(subject), ({ events }) => {
  const met = new Set(events.map(event => event.type));
  return line(i => met.has(`c${i}`), i => !complete && met.has(`p${i}`));
}, timed, repeats);
