import { answerJobs } from '../threads/answer-jobs';
import { writeExport } from './job';

answerJobs(writeExport);
