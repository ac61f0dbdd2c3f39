import { answerJobs } from '../threads/answer-jobs';
import { printSheet } from './job';

answerJobs(printSheet);
