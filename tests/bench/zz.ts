import { benchSystems } from './systems';
const a = process.cpuUsage();
const r = await benchSystems();
const b = process.cpuUsage(a);
console.log(r, 'cpu per call', (b.user + b.system) / 1000 / 24);
