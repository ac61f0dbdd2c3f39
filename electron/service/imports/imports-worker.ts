import { answerJobs } from '../threads/answer-jobs';
import { performImport } from './import-job';

answerJobs(performImport, (answer) =>
  answer && 'bytes' in answer ? [answer.bytes.buffer as ArrayBuffer] : [],
);
