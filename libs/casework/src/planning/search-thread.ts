import { serveTasks } from '@archwright/jobs';
import { searchTasks } from './search-tasks.js';

serveTasks(searchTasks());
