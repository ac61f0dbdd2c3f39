import { answerJobs } from '../threads/answer-jobs';
import { perform } from './jobs';

answerJobs(perform);
