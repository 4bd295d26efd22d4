export { openingHours, readyAfter, workingDays, type WorkingDay } from './working-days';
