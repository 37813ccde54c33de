// How long does a report take on a plant relined twice: 20 conveyors × 40 points × 30 looks? Prints processor time by stage.
// Run from the project's top folder: npx tsx tests/bench/relined-plant.ts [conveyors] [points] [looks]
import { analyse } from '../../src/analysis/analyse.js';
import { remainingLife } from '../../src/generators/remaining-life/remaining-life.js';
import { syntheticEstate } from './synthetic-estate.js';

const [conveyors = 20, points = 40, looks = 30] = process.argv.slice(2).map(Number);
const { texts, readings } = syntheticEstate({
  conveyors,
  inspectionsEach: looks,
  pointsEach: points,
  relines: 2,
});
const seconds = (from: NodeJS.CpuUsage): string => {
  const { user, system } = process.cpuUsage(from);
  return ((user + system) / 1e6).toFixed(2);
};
const start = process.cpuUsage();
const { estate } = analyse(texts);
console.log(`${readings} readings; read and assembled in ${seconds(start)} s of processor`);
const bare = process.cpuUsage();
remainingLife(estate, { track: false });
console.log(`remaining life without judging the past: ${seconds(bare)} s`);
const whole = process.cpuUsage();
remainingLife(estate);
console.log(`remaining life: ${seconds(whole)} s`);
