import { answerJobs } from '../threads/answer-jobs';
import { performMeeting } from './meeting-job';

answerJobs(performMeeting);
